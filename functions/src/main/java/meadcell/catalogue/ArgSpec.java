package meadcell.catalogue;

import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/** One declared argument: how to describe it, and how to read it from what a cell holds. */
public final class ArgSpec {
  private final Arg arg;
  private final Kind kind;
  private final List<Quantity> columns;
  private final Object[] constants;
  private final boolean optional;

  private ArgSpec(Arg arg, Kind kind, Object[] constants, boolean optional) {
    this.arg = arg;
    this.kind = kind;
    this.columns = List.of(arg.columns());
    this.constants = constants;
    this.optional = optional;
  }

  static ArgSpec of(Parameter parameter) {
    Arg arg = parameter.getAnnotation(Arg.class);
    if (arg == null) {
      throw new IllegalStateException(
          parameter.getDeclaringExecutable() + ": parameter without @Arg: " + parameter.getName());
    }
    Class<?> type = parameter.getType();
    Kind kind;
    if (type == double.class || type == OptionalDouble.class) {
      kind = Kind.NUMBER;
    } else if (type == String.class) {
      kind = Kind.TEXT;
    } else if (type.isEnum()) {
      kind = Kind.CHOICE;
    } else if (type == double[].class) {
      kind = Kind.NUMBERS;
    } else if (type == String[].class) {
      kind = Kind.TEXTS;
    } else if (type == double[][].class) {
      kind = Kind.NUMBER_TABLE;
    } else if (type == Object[][].class) {
      kind = Kind.TABLE;
    } else if (type == Object[].class && parameter.isVarArgs()) {
      kind = Kind.REST;
    } else {
      throw new IllegalStateException(parameter + ": no kind of argument has the type " + type);
    }
    boolean optional =
        !arg.byDefault().isEmpty() || type == OptionalDouble.class || kind == Kind.REST;
    return new ArgSpec(arg, kind, type.getEnumConstants(), optional);
  }

  public String name() {
    return arg.name();
  }

  public Kind kind() {
    return kind;
  }

  public Quantity quantity() {
    return arg.is();
  }

  public boolean isOptional() {
    return optional;
  }

  public Arg declaration() {
    return arg;
  }

  /** Whether a value of this argument depends on the system of units. */
  boolean isDimensional() {
    return arg.is().isDimensional() || columns.stream().anyMatch(Quantity::isDimensional);
  }

  /** The words of a choice, as a user types them. */
  public List<String> choices() {
    return constants == null ? List.of() : Arrays.stream(constants).map(ArgSpec::word).toList();
  }

  private static String word(Object constant) {
    return ((Enum<?>) constant).name().toLowerCase(Locale.ROOT).replace("_", "");
  }

  /** The default as a user would type it, or an empty text. */
  public String defaultText(UnitSystem system) {
    if (arg.byDefault().isEmpty() || kind != Kind.NUMBER) {
      return arg.byDefault();
    }
    return Numbers.text(quantity().fromMetric(defaultNumber(system), system));
  }

  private double defaultNumber(UnitSystem system) {
    return system == UnitSystem.US && !arg.byDefaultUs().isEmpty()
        ? quantity().toMetric(Double.parseDouble(arg.byDefaultUs()), system)
        : Double.parseDouble(arg.byDefault());
  }

  /** The range in words, without the unit: {@code 2 to 45}; empty where every number is taken. */
  public String range(UnitSystem system) {
    return range(system, UnaryOperator.identity());
  }

  private String range(UnitSystem system, UnaryOperator<String> words) {
    if (Double.isFinite(arg.from()) && Double.isFinite(arg.to())) {
      return words.apply("%s to %s").formatted(bound(arg.from(), system), bound(arg.to(), system));
    }
    List<String> limits = new ArrayList<>();
    limit(limits, words.apply("at least %s"), arg.from(), system);
    limit(limits, words.apply("above %s"), arg.above(), system);
    limit(limits, words.apply("at most %s"), arg.to(), system);
    limit(limits, words.apply("below %s"), arg.below(), system);
    return String.join(", ", limits);
  }

  private void limit(List<String> limits, String words, double metric, UnitSystem system) {
    if (Double.isFinite(metric)) {
      limits.add(words.formatted(bound(metric, system)));
    }
  }

  private String bound(double metric, UnitSystem system) {
    return Numbers.text(quantity().fromMetric(metric, system), 4);
  }

  /** Help, unit, range and default in one line, as a function wizard shows it. */
  public String description() {
    return description(UnaryOperator.identity());
  }

  /** The same in another language, given what turns our phrases into it. */
  public String description(UnaryOperator<String> words) {
    StringBuilder text = new StringBuilder(words.apply(arg.help()));
    String unit = columns.isEmpty() ? quantity().units(words) : "";
    if (!unit.isEmpty()) {
      text.append(", ").append(unit);
    }
    if (!choices().isEmpty()) {
      text.append(": \"").append(String.join("\", \"", choices())).append('"');
    }
    String range = range(UnitSystem.METRIC, words);
    if (!range.isEmpty()) {
      text.append(", ").append(range);
      if (quantity().isDimensional()) {
        text.append(" (").append(range(UnitSystem.US, words)).append(')');
      }
    }
    text.append('.');
    if (!arg.byDefault().isEmpty()) {
      String metric = defaultText(UnitSystem.METRIC);
      String us = defaultText(UnitSystem.US);
      String value = metric.equals(us) ? metric : metric + " (" + us + ")";
      text.append(' ').append(words.apply("If left out: %s.").formatted(value));
    }
    return text.toString();
  }

  // ---- reading ----------------------------------------------------------------------------

  /** The Java value of a left-out argument. */
  Object whenLeftOut(Class<?> type, UnitSystem system) {
    if (type == OptionalDouble.class) {
      return OptionalDouble.empty();
    }
    return switch (kind) {
      case NUMBER -> defaultNumber(system);
      case TEXT -> arg.byDefault();
      case CHOICE -> choice(arg.byDefault());
      default -> throw new IllegalStateException(name() + ": a range cannot have a default");
    };
  }

  /** The Java value of what a cell or range holds, in metric units, checked. */
  Object read(Object raw, Class<?> type, UnitSystem system) {
    return switch (kind) {
      case NUMBER -> {
        double value = number(single(raw), "", system);
        yield type == OptionalDouble.class ? OptionalDouble.of(value) : (Object) value;
      }
      case TEXT -> text(single(raw), "");
      case CHOICE -> choice(text(single(raw), ""));
      case NUMBER_TABLE -> numberTable(table(raw), system);
      case TABLE -> mixedTable(table(raw), system);
      case NUMBERS, TEXTS, REST ->
          throw new IllegalStateException(name() + ": columns are read together");
    };
  }

  private Object single(Object raw) {
    if (raw instanceof Object[][] cells) {
      if (cells.length != 1 || cells[0].length != 1) {
        throw Refusal.wrongKind(name() + " takes one cell, not a range of several.");
      }
      return cells[0][0] == null ? "" : cells[0][0];
    }
    return raw;
  }

  /** The values of a column or row, blanks as null. */
  Object[] column(Object raw) {
    if (!(raw instanceof Object[][] cells)) {
      return new Object[] {blankToNull(raw)};
    }
    if (cells.length == 1) {
      return Arrays.stream(cells[0]).map(ArgSpec::blankToNull).toArray();
    }
    Object[] column = new Object[cells.length];
    for (int i = 0; i < cells.length; i++) {
      if (cells[i].length != 1) {
        throw Refusal.wrongKind(name() + " takes one column or one row, not a block of cells.");
      }
      column[i] = blankToNull(cells[i][0]);
    }
    return column;
  }

  /** Checked numbers or texts from a column without blanks; {@code rows} are their positions. */
  Object values(Object[] column, int[] rows, UnitSystem system) {
    if (kind == Kind.TEXTS) {
      String[] texts = new String[column.length];
      for (int i = 0; i < texts.length; i++) {
        texts[i] = text(column[i], " in row " + rows[i]);
      }
      return texts;
    }
    double[] numbers = new double[column.length];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = number(column[i], " in row " + rows[i], system);
    }
    return numbers;
  }

  private static Object blankToNull(Object value) {
    return value instanceof String text && text.isBlank() ? null : value;
  }

  private static Object[][] table(Object raw) {
    Object[][] cells = raw instanceof Object[][] range ? range : new Object[][] {{raw}};
    return Arrays.stream(cells)
        .map(row -> Arrays.stream(row).map(ArgSpec::blankToNull).toArray())
        .toArray(Object[][]::new);
  }

  private double[][] numberTable(Object[][] cells, UnitSystem system) {
    double[][] numbers = new double[cells.length][];
    int kept = 0;
    for (int i = 0; i < cells.length; i++) {
      if (Arrays.stream(cells[i]).allMatch(cell -> cell == null)) {
        continue;
      }
      double[] row = new double[cells[i].length];
      for (int j = 0; j < row.length; j++) {
        String where = " in row " + (i + 1) + ", column " + (j + 1);
        if (cells[i][j] == null) {
          throw Refusal.wrongKind(name() + where + " is blank.");
        }
        row[j] = number(cells[i][j], where, system);
      }
      numbers[kept++] = row;
    }
    if (kept == 0) {
      throw Refusal.wrongKind(name() + " has only blank cells.");
    }
    return Arrays.copyOf(numbers, kept);
  }

  private Object[][] mixedTable(Object[][] cells, UnitSystem system) {
    for (Object[] row : cells) {
      for (int j = 0; j < row.length && !columns.isEmpty(); j++) {
        Quantity quantity = columns.get(Math.min(j, columns.size() - 1));
        if (row[j] instanceof Double value) {
          row[j] = quantity.toMetric(value, system);
        }
      }
    }
    return cells;
  }

  private double number(Object raw, String where, UnitSystem system) {
    double given;
    if (raw instanceof Double value) {
      given = value;
    } else if (raw instanceof String text && Numbers.plain(text).isPresent()) {
      given = Numbers.plain(text).getAsDouble();
    } else {
      throw Refusal.wrongKind(name() + where + " is the text \"" + raw + "\"; a number is due.");
    }
    if (Double.isNaN(given) || Double.isInfinite(given)) {
      throw Refusal.wrongKind(name() + where + " is not a number.");
    }
    double value = quantity().toMetric(given, system);
    boolean allowed =
        value >= arg.from()
            && value <= arg.to()
            && value > arg.above()
            && value < arg.below()
            && !(given == 0 && arg.zeroIsBlank());
    if (!allowed) {
      throw outOfRange(given, where, system);
    }
    return value;
  }

  private Refusal outOfRange(double given, String where, UnitSystem system) {
    String unit = quantity().unit(system);
    String range = range(system);
    return Refusal.outOfRange(
        name()
            + where
            + " is "
            + Numbers.text(given)
            + (unit.isEmpty() ? "" : " " + unit)
            + "; it must be "
            + (range.isEmpty() ? "other than 0" : range)
            + "."
            + quantity().likelySlip(given, system));
  }

  private String text(Object raw, String where) {
    if (raw instanceof String text && !text.isBlank()) {
      return text.trim();
    }
    String given = raw instanceof Double number ? Numbers.text(number) : "blank";
    throw Refusal.wrongKind(
        name()
            + where
            + " is "
            + given
            + "; a text is due."
            + (raw instanceof Double number && number == 0 ? " It is 0 or a blank cell." : ""));
  }

  private Object choice(String given) {
    String word = given.replace("_", "").replace(" ", "").toLowerCase(Locale.ROOT);
    for (Object constant : constants) {
      if (word(constant).equals(word)) {
        return constant;
      }
    }
    String hint = Nearest.to(word, choices()).map(near -> " Did you mean " + near + "?").orElse("");
    throw Refusal.outOfRange(
        name()
            + " is \""
            + given
            + "\"; it must be one of \""
            + String.join("\", \"", choices())
            + "\"."
            + hint);
  }
}
