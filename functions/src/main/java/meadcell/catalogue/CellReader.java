package meadcell.catalogue;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntFunction;

/**
 * Reads what cells hold as one argument's values: checked, in metric units. Every argument and
 * every column of a table is read here, so that one rule holds: a text that is nothing but a number
 * is that number; a text of blanks is blank.
 */
final class CellReader {
  /** What takes this many % vol is the strength of a drink, not the uncertainty of one. */
  private static final double STRONG = 20;

  private final ArgSpec spec;
  private final String argument;
  private final Quantity quantity;
  private final Range range;
  private final Object[] constants;

  /**
   * @param argument what refusals name
   */
  CellReader(ArgSpec spec, String argument) {
    this.spec = spec;
    this.argument = argument;
    this.quantity = spec.quantity();
    this.range = spec.range();
    this.constants = spec.type().getEnumConstants();
  }

  private Refusal refusal(Reason reason, Place place) {
    return new Refusal(reason).about(argument, place);
  }

  Refusal blank(Place place) {
    return refusal(General.BLANK, place);
  }

  static Object blankToNull(Object value) {
    return value instanceof String text && text.isBlank() ? null : value;
  }

  static Object unwrapped(Object raw) {
    return raw instanceof Object[][] cells && cells.length == 1 && cells[0].length == 1
        ? cells[0][0]
        : raw;
  }

  /** Whether a blank cell may stand here: it comes as 0, or as an empty text. */
  static boolean isNothing(Object cell) {
    return blankToNull(cell) == null || Double.valueOf(0).equals(cell);
  }

  static boolean isBlank(Object[] row) {
    for (Object cell : row) {
      if (blankToNull(cell) != null) {
        return false;
      }
    }
    return true;
  }

  static boolean isBlankTable(Object raw) {
    Object cell = unwrapped(raw);
    return cell instanceof Object[][] cells
        ? Arrays.stream(cells).allMatch(CellReader::isBlank)
        : isNothing(cell);
  }

  /** The Java value of an argument that is not a column. */
  Object argument(Object raw, UnitSystem system) {
    return switch (spec.kind()) {
      case NUMBER, TEXT, CHOICE -> value(single(raw), null, system);
      case NUMBER_TABLE -> numberTable(table(raw), system);
      case TABLE -> {
        if (spec.rows() == null) {
          yield cells(table(raw), system);
        }
        Rows<Record> rows = spec.rows().read(table(raw), system);
        yield spec.isOptional() ? Optional.of(rows) : rows;
      }
      case NUMBERS, TEXTS, REST ->
          throw new IllegalStateException(spec.name() + ": columns are read together");
    };
  }

  /** The Java value of one cell that is not blank. */
  Object value(Object raw, Place place, UnitSystem system) {
    return switch (spec.kind()) {
      case NUMBER -> typed(strength(number(raw, place, system), place));
      case TEXT -> text(raw, place);
      case CHOICE -> choice(text(raw, place), place);
      default -> throw new IllegalStateException(spec.name() + " is not one value");
    };
  }

  /** A checked number as the parameter's Java type. */
  Object typed(double value) {
    Class<?> type = spec.type();
    if (type == double.class) {
      return value;
    }
    if (type == int.class) {
      return (int) value;
    }
    return type == boolean.class ? (Object) (value == 1) : OptionalDouble.of(value);
  }

  double number(Object raw, Place place, UnitSystem system) {
    double given;
    if (raw instanceof Double value) {
      given = value;
    } else if (raw instanceof String text && Numbers.plain(text).isPresent()) {
      given = Numbers.plain(text).getAsDouble();
    } else {
      throw refusal(General.NUMBER_DUE, place).with("value", raw);
    }
    if (Double.isNaN(given) || Double.isInfinite(given)) {
      throw refusal(General.NOT_A_NUMBER, place);
    }
    double value = quantity.toMetric(given, system);
    if (!range.contains(value)) {
      throw valued(General.OUTSIDE, value, place)
          .with("range", range, quantity)
          .withSlip(quantity.likelySlip(given, system));
    }
    if (given == 0 && spec.zeroIsBlank()) {
      throw valued(General.ZERO, value, place).withSlip(quantity.likelySlip(given, system));
    }
    if (spec.isWhole() && value != Math.rint(value)) {
      throw valued(General.NOT_WHOLE, value, place);
    }
    if (spec.isTruth() && value != 0 && value != 1) {
      throw valued(General.NOT_TRUTH, value, place);
    }
    return value;
  }

  /** A strength between 0 and 1 % vol is likelier the hundredth that a percent cell holds. */
  private double strength(double value, Place place) {
    boolean isStrength =
        quantity == Quantity.PERCENT_VOL && range.contains(0) && range.contains(STRONG);
    if (isStrength && value > 0 && value < 1) {
      throw valued(General.FRACTION, value, place)
          .withSlip(quantity.likelySlip(value, UnitSystem.METRIC));
    }
    return value;
  }

  private Refusal valued(Reason reason, double value, Place place) {
    return refusal(reason, place).with("value", value, quantity);
  }

  private String text(Object raw, Place place) {
    if (raw instanceof String text && !spaced(text).isEmpty()) {
      return spaced(text);
    }
    if (!(raw instanceof Double number)) {
      throw blank(place);
    }
    if (place != null) { // a lot's name may be a number
      return number == Math.rint(number) ? Long.toString((long) (double) number) : "" + number;
    }
    throw refusal(General.TEXT_DUE, place)
        .with("value", number, Quantity.NUMBER)
        .withSlip(Quantity.NUMBER.likelySlip(number, UnitSystem.METRIC));
  }

  /** A person sees no difference between one space, two, and one that does not break. */
  private static String spaced(String text) {
    String plain = text.replace('\u00a0', ' ').replace('\u202f', ' ').trim();
    return plain.contains("  ") ? plain.replaceAll(" +", " ") : plain;
  }

  /** The constant that a word names, in any case, with or without spaces. */
  Object choice(String given, Place place) {
    String word = given.replace("_", "").replace(" ", "");
    for (Object constant : constants) {
      if (Statement.word((Enum<?>) constant).equalsIgnoreCase(word)) {
        return constant;
      }
    }
    throw refusal(General.NOT_A_CHOICE, place)
        .with("value", given)
        .with("choices", spec.choices().stream().map(choice -> '"' + choice + '"').toList())
        .withSuggestion(Nearest.to(word, spec.choices()));
  }

  private Object single(Object raw) {
    if (raw instanceof Object[][] cells) {
      if (cells.length != 1 || cells[0].length != 1) {
        throw refusal(General.ONE_CELL_DUE, null);
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
      return Arrays.stream(cells[0]).map(CellReader::blankToNull).toArray();
    }
    Object[] column = new Object[cells.length];
    for (int i = 0; i < cells.length; i++) {
      if (cells[i].length != 1) {
        throw refusal(General.ONE_COLUMN_DUE, null);
      }
      column[i] = blankToNull(cells[i][0]);
    }
    return column;
  }

  /** Where a value stands in a column, or in a row that is given as one. */
  static Place place(Object raw, int at) {
    boolean isRow = raw instanceof Object[][] cells && cells.length == 1 && cells[0].length > 1;
    return isRow ? Place.cell(1, at) : Place.row(at);
  }

  /** Where in its range a number stands that a function finds in a row of those not blank. */
  static Place place(Object raw, Place among) {
    Object[][] cells = table(raw);
    int row = 0;
    for (int read = 0; read < among.row(); row++) {
      read += isBlank(cells[row]) ? 0 : 1;
    }
    return new Place(row, among.column(), among.columnName());
  }

  /** Checked numbers or texts from a column without blanks, and where each stands. */
  Object values(Object[] column, IntFunction<Place> places, UnitSystem system) {
    if (spec.kind() == Kind.TEXTS) {
      String[] texts = new String[column.length];
      for (int i = 0; i < texts.length; i++) {
        texts[i] = text(column[i], places.apply(i));
      }
      return texts;
    }
    double[] numbers = new double[column.length];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = number(column[i], places.apply(i), system);
    }
    // beside a strength of 12, one of 0.5 is meant; among nothing but fractions it is one
    if (Arrays.stream(numbers).allMatch(number -> number < 1)) {
      for (int i = 0; i < numbers.length; i++) {
        strength(numbers[i], places.apply(i));
      }
    }
    return numbers;
  }

  private static Object[][] table(Object raw) {
    return raw instanceof Object[][] range ? range : new Object[][] {{raw}};
  }

  private double[][] numberTable(Object[][] cells, UnitSystem system) {
    double[][] numbers = new double[cells.length][];
    int kept = 0;
    for (int i = 0; i < cells.length; i++) {
      if (isBlank(cells[i])) {
        continue;
      }
      double[] row = new double[cells[i].length];
      for (int j = 0; j < row.length; j++) {
        Place place = Place.cell(i + 1, j + 1);
        if (blankToNull(cells[i][j]) == null) {
          throw blank(place);
        }
        row[j] = number(cells[i][j], place, system);
      }
      numbers[kept++] = row;
    }
    if (kept == 0) {
      throw refusal(General.ONLY_BLANKS, null);
    }
    return Arrays.copyOf(numbers, kept);
  }

  private Cell[][] cells(Object[][] raw, UnitSystem system) {
    Cell[][] cells = new Cell[raw.length][];
    for (int i = 0; i < raw.length; i++) {
      cells[i] = new Cell[raw[i].length];
      for (int j = 0; j < raw[i].length; j++) {
        cells[i][j] = new Cell(this, raw[i][j], Place.cell(i + 1, j + 1), system);
      }
    }
    return cells;
  }
}
