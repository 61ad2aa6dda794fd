package meadcell.samples.sheet;

import java.time.LocalDate;
import java.util.List;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.UnitSystem;
import meadcell.cellar.Cellar;

/**
 * What a cell holds: the quantity, how many decimals it is shown with, and for an input what may be
 * typed. Where an input feeds a function, limits and help are that argument's own.
 */
public record Field(
    Quantity quantity, int decimals, String help, double from, double to, List<String> words) {
  /** As many decimals as were typed. */
  public static final int AS_TYPED = -1;

  public static final Field TEXT = of(Quantity.TEXT, 0);
  public static final Field DATE = of(Quantity.DATE, 0);
  public static final Field DAYS = of(Quantity.DAYS, 0);
  public static final Field NUMBER = of(Quantity.NUMBER, 2);
  public static final Field COUNT = of(Quantity.COUNT, 0);
  public static final Field PERCENT = of(Quantity.PERCENT, 1);
  public static final Field PROBABILITY = of(Quantity.PROBABILITY, 4);
  public static final Field SG = of(Quantity.SPECIFIC_GRAVITY, 4);
  public static final Field ABV = of(Quantity.PERCENT_VOL, 2);
  public static final Field VOLUME = of(Quantity.VOLUME, 1);
  public static final Field MASS = of(Quantity.MASS, 1);
  public static final Field LENGTH = of(Quantity.LENGTH, 1);
  public static final Field TEMPERATURE = of(Quantity.TEMPERATURE, 1);
  public static final Field GRAMS_PER_LITRE = of(Quantity.GRAM_PER_LITRE, 1);
  public static final Field MILLIGRAMS_PER_LITRE = of(Quantity.MILLIGRAM_PER_LITRE, 0);

  /** A number without limits. */
  public static Field of(Quantity quantity, int decimals) {
    return between(quantity, decimals, "", Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
  }

  /** A number between two limits, in the metric unit. */
  public static Field between(
      Quantity quantity, int decimals, String help, double from, double to) {
    return new Field(quantity, decimals, help, from, to, List.of());
  }

  /** A number that a function takes: its quantity, limits and help come from the catalogue. */
  public static Field arg(String function, String argument, int decimals) {
    ArgSpec spec =
        Cellar.catalogue().get(function).args().stream()
            .filter(arg -> arg.name().equals(argument))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException(function + " takes no " + argument));
    return new Field(
        spec.choices().isEmpty() ? spec.quantity() : Quantity.TEXT,
        decimals,
        spec.description(),
        spec.range().lowest(),
        spec.range().highest(),
        spec.choices());
  }

  /**
   * A field from its text: {@code FUNCTION argument decimals}, {@code QUANTITY decimals}, {@code
   * QUANTITY decimals from..to}, {@code one/of/these}, {@code TEXT} or {@code DATE}.
   */
  static Field of(String text, String help) {
    String[] words = text.split(" ");
    if (words.length == 1) {
      return text.contains("/") ? words(text.split("/")) : of(Quantity.valueOf(text), 0);
    }
    if (words[0].contains(".")) {
      return arg(words[0], words[1], Integer.parseInt(words[2]));
    }
    Quantity quantity = Quantity.valueOf(words[0]);
    int decimals = Integer.parseInt(words[1]);
    if (words.length == 2) {
      return of(quantity, decimals);
    }
    String[] limits = words[2].split("\\.\\.");
    return between(
        quantity, decimals, help, Double.parseDouble(limits[0]), Double.parseDouble(limits[1]));
  }

  /** One of a few words. */
  public static Field words(String... words) {
    return new Field(
        Quantity.TEXT, 0, "", Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, List.of(words));
  }

  /** The same for US units, which are larger: one decimal more. */
  Field fine() {
    boolean finer = (quantity == Quantity.VOLUME || quantity == Quantity.LENGTH) && decimals >= 0;
    return finer ? new Field(quantity, decimals + 1, help, from, to, words) : this;
  }

  /** The number format without a unit, as tables show it. */
  String plain() {
    return switch (quantity) {
      case TEXT -> "General";
      case DATE -> "yyyy\\-mm\\-dd";
      default ->
          decimals == AS_TYPED ? "General" : decimals == 0 ? "0" : "0." + "0".repeat(decimals);
    };
  }

  /** The number format with the unit behind the number. */
  String withUnit(UnitSystem system) {
    String unit = unit(system);
    return unit.isEmpty() ? plain() : plain() + "\" " + unit + "\"";
  }

  /** The unit as shown; scales that need none stay without. */
  String unit(UnitSystem system) {
    return switch (quantity) {
      case SPECIFIC_GRAVITY, PH, PROBABILITY, REFRACTIVE_INDEX, DATE -> "";
      default -> quantity.unit(system);
    };
  }

  public boolean isNumber() {
    return quantity != Quantity.TEXT;
  }

  public boolean isDimensional() {
    return quantity.isDimensional();
  }

  /** A demonstration value from its text. */
  Object parse(String text) {
    return switch (quantity) {
      case TEXT -> text;
      case DATE -> LocalDate.parse(text);
      default -> Double.valueOf(text);
    };
  }

  /** A metric number as a formula that follows the units switch, such as {@code 225*litre}. */
  public String following(double metric) {
    return scaled(Double.toString(metric).replaceAll("\\.0$", ""));
  }

  /** A metric number as a formula in the unit that the book is kept in. */
  String kept(double metric) {
    return isDimensional()
        ? "IF(kept=\"US\"," + quantity.fromMetric(metric, UnitSystem.US) + "," + metric + ")"
        : Double.toString(metric);
  }

  /** A number or cell that was meant in the other system of units, in the one that is shown. */
  public String fromOther(String number) {
    double one = quantity.fromMetric(1, UnitSystem.US) - quantity.fromMetric(0, UnitSystem.US);
    return "IF(units=\"US\"," + scaled(number) + "," + number + "/" + one + ")";
  }

  /** A number or cell, times the factor of its quantity. */
  String scaled(String number) {
    return switch (quantity) {
      case VOLUME -> number + "*litre";
      case MASS, MASS_PER_HOUR -> number + "*kilogram";
      case LENGTH -> number + "*centimetre";
      case TEMPERATURE -> number + "*degree+freezing";
      case PRESSURE -> number + "*kilopascal";
      case AREA -> number + "*squaremetre";
      case ROOM -> number + "*cubicmetre";
      case DENSITY -> number + "*kilogram/litre";
      default -> {
        if (isDimensional()) {
          throw new IllegalArgumentException("no factor for " + quantity);
        }
        yield number;
      }
    };
  }
}
