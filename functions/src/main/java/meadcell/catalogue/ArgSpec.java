package meadcell.catalogue;

import java.lang.reflect.AnnotatedElement;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;

/** One declared argument, or one column of a table: how it is described and what it takes. */
public final class ArgSpec {
  private final Declared declared;
  private final Class<?> type;
  private final Kind kind;
  private final Range range;
  private final boolean optional;

  /** For a table of records, what its rows hold. */
  private final RowSpec rows;

  final CellReader reader;

  private ArgSpec(Declared declared, Class<?> type, Kind kind, RowSpec rows, String argument) {
    this.declared = declared;
    this.type = type;
    this.kind = kind;
    this.rows = rows;
    this.range = type == boolean.class ? Range.between(0, 1) : declared.range();
    this.optional =
        kind == Kind.REST
            || type == OptionalDouble.class
            || type == Optional.class
            || !Double.isNaN(declared.byDefault())
            || !declared.byDefaultWord().isEmpty();
    this.reader = new CellReader(this, argument);
  }

  /**
   * @param element the parameter or record component that carries the declaration
   * @param owner key of the function or record it belongs to
   * @param argument what refusals name: the table of a column; null for the argument itself
   */
  static ArgSpec of(
      AnnotatedElement element, Class<?> type, Type generic, String owner, String argument) {
    Declared declared = Declared.of(element, owner);
    Type table = type == Optional.class ? only(generic) : generic;
    RowSpec rows =
        type == Rows.class || type == Optional.class
            ? RowSpec.of((Class<?>) only(table), declared.name())
            : null;
    return new ArgSpec(
        declared, type, Kind.of(type), rows, argument == null ? declared.name() : argument);
  }

  /** What stands between the brackets of a generic type. */
  private static Type only(Type generic) {
    return ((ParameterizedType) generic).getActualTypeArguments()[0];
  }

  /** {@return the argument's name} */
  public String name() {
    return declared.name();
  }

  /** {@return what it takes} */
  public Kind kind() {
    return kind;
  }

  /** {@return what its numbers measure} */
  public Quantity quantity() {
    return declared.quantity();
  }

  /** {@return the numbers it takes, in the metric unit} */
  public Range range() {
    return range;
  }

  /** {@return whether exactly 0 is refused, because a blank cell is likelier} */
  public boolean zeroIsBlank() {
    return declared.zeroIsBlank();
  }

  /** {@return whether it may be left out} */
  public boolean isOptional() {
    return optional;
  }

  /** {@return whether only whole numbers are taken} */
  public boolean isWhole() {
    return type == int.class;
  }

  /** {@return whether only 1 and 0 are taken} */
  public boolean isTruth() {
    return type == boolean.class;
  }

  /**
   * {@return what it is, in a few words, in a language}
   *
   * @param words the language
   */
  public String help(Words words) {
    return words.text(declared.key(), declared.help());
  }

  /**
   * {@return whether a number is in the range}
   *
   * @param value the number, in the caller's unit
   * @param system the units of the caller
   */
  public boolean takes(double value, UnitSystem system) {
    return range.contains(quantity().toMetric(value, system)) && !(value == 0 && zeroIsBlank());
  }

  Class<?> type() {
    return type;
  }

  RowSpec rows() {
    return rows;
  }

  /** Whether a value of this argument depends on the system of units. */
  boolean isDimensional() {
    return quantity().isDimensional() || rows != null && rows.isDimensional();
  }

  /** Every text of the declaration with its key. */
  void texts(BiConsumer<String, String> each) {
    each.accept(declared.key(), declared.help());
    if (rows != null) {
      rows.texts(each);
    }
  }

  /** {@return the words of a choice, as a user types them} */
  public List<String> choices() {
    return type.isEnum()
        ? Arrays.stream(type.getEnumConstants()).map(c -> Statement.word((Enum<?>) c)).toList()
        : List.of();
  }

  /**
   * {@return the default as a user would type it, or an empty text}
   *
   * @param system the units of the caller
   */
  public String defaultText(UnitSystem system) {
    return defaultText(system, Words.ENGLISH);
  }

  /**
   * Whether what a cell holds leaves the argument out. A blank cell comes as 0 in every host, so 0
   * does, too, wherever it is not a value that the argument takes. A table may be blank throughout.
   */
  boolean isLeftOutBy(Object raw, UnitSystem system) {
    if (raw == null) {
      return true;
    }
    if (optional && kind == Kind.TABLE) {
      return CellReader.isBlankTable(raw);
    }
    Object cell = CellReader.unwrapped(raw);
    return optional
        && kind.isScalar()
        && CellReader.isNothing(cell)
        && !(takesZero(system) && Double.valueOf(0).equals(cell));
  }

  private boolean takesZero(UnitSystem system) {
    return kind == Kind.NUMBER && !zeroIsBlank() && range.contains(quantity().toMetric(0, system));
  }

  String defaultText(UnitSystem system, Words words) {
    return Double.isNaN(declared.byDefault())
        ? declared.byDefaultWord()
        : words.number(quantity().fromMetric(defaultNumber(system), system), Numbers.DIGITS);
  }

  private double defaultNumber(UnitSystem system) {
    return system == UnitSystem.US && !Double.isNaN(declared.byDefaultUs())
        ? quantity().toMetric(declared.byDefaultUs(), system)
        : declared.byDefault();
  }

  /** The Java value when left out. */
  Object whenLeftOut(UnitSystem system) {
    if (type == OptionalDouble.class) {
      return OptionalDouble.empty();
    }
    if (type == Optional.class) {
      return Optional.empty();
    }
    return switch (kind) {
      case NUMBER -> reader.typed(defaultNumber(system));
      case TEXT -> declared.byDefaultWord();
      case CHOICE -> reader.choice(declared.byDefaultWord(), null);
      default -> throw new IllegalStateException(name() + ": a range cannot have a default");
    };
  }

  /**
   * {@return the range in words, without the unit: {@code 2 to 45}; empty where every number is
   * taken}
   *
   * @param system the units of the caller
   */
  public String range(UnitSystem system) {
    return range.text(quantity(), system, Words.ENGLISH);
  }

  /** {@return help, unit, range and default in one line, as a function wizard shows it} */
  public String description() {
    return description(Words.ENGLISH);
  }

  /**
   * {@return the same in another language}
   *
   * @param words the language
   */
  public String description(Words words) {
    StringBuilder text = new StringBuilder(shortly(words));
    text.append('.');
    if (rows != null) {
      text.append(' ').append(words.say(Phrase.COLUMNS, "columns", rows.description(words)));
    }
    String metric = defaultText(UnitSystem.METRIC, words);
    boolean takesZero = takesZero(UnitSystem.METRIC);
    if (!metric.isEmpty()) {
      String us = defaultText(UnitSystem.US, words);
      String value = metric.equals(us) ? metric : metric + " (" + us + ")";
      Phrase phrase = takesZero ? Phrase.LEFT_OUT : Phrase.LEFT_OUT_OR_BLANK;
      text.append(' ').append(words.say(phrase, "value", value));
    }
    if (optional && takesZero && !metric.equals("0")) {
      text.append(' ').append(words.say(Phrase.BLANK_IS_ZERO));
    }
    return text.toString();
  }

  /** Help, unit and range. */
  String shortly(Words words) {
    StringBuilder text = new StringBuilder(help(words));
    String unit = words.units(quantity());
    if (!unit.isEmpty()) {
      text.append(", ").append(unit);
    }
    if (!choices().isEmpty()) {
      text.append(": \"").append(String.join("\", \"", choices())).append('"');
    }
    String metricRange = range.text(quantity(), UnitSystem.METRIC, words);
    if (!metricRange.isEmpty() && !isTruth()) {
      text.append(", ").append(metricRange);
      String usRange = range.text(quantity(), UnitSystem.US, words);
      if (!usRange.equals(metricRange)) {
        text.append(" (").append(usRange).append(')');
      }
    }
    return text.toString();
  }

  /** What stands in the annotation, directly or in one that carries it. */
  private record Declared(
      String key,
      String name,
      String help,
      Quantity quantity,
      Range range,
      boolean zeroIsBlank,
      double byDefault,
      double byDefaultUs,
      String byDefaultWord) {

    static Declared of(AnnotatedElement element, String owner) {
      Arg own = element.getAnnotation(Arg.class);
      if (own != null) {
        return of(own, Map.of(), key(element, owner, own.name()));
      }
      for (var shared : element.getAnnotations()) {
        Class<?> annotation = shared.annotationType();
        Arg arg = annotation.getAnnotation(Arg.class);
        if (arg != null) {
          Map<String, Object> overrides = Overrides.of(shared);
          String key =
              overrides.containsKey("help")
                  ? key(element, owner, (String) overrides.getOrDefault("name", arg.name()))
                  : Words.section(annotation) + ".arg." + annotation.getSimpleName();
          return of(arg, overrides, key);
        }
      }
      throw new IllegalStateException(owner + ": no @Arg on " + element);
    }

    private static String key(AnnotatedElement element, String owner, String name) {
      return owner
          + ".arg."
          + (element instanceof RecordComponent component ? component.getName() : name);
    }

    private static Declared of(Arg arg, Map<String, Object> overrides, String key) {
      return new Declared(
          key,
          (String) overrides.getOrDefault("name", arg.name()),
          (String) overrides.getOrDefault("help", arg.help()),
          arg.is(),
          new Range(
              (Double) overrides.getOrDefault("from", arg.from()),
              (Double) overrides.getOrDefault("to", arg.to()),
              (Double) overrides.getOrDefault("above", arg.above()),
              (Double) overrides.getOrDefault("below", arg.below())),
          arg.zeroIsBlank(),
          (Double) overrides.getOrDefault("byDefault", arg.byDefault()),
          arg.byDefaultUs(),
          (String) overrides.getOrDefault("byDefaultWord", arg.byDefaultWord()));
    }
  }
}
