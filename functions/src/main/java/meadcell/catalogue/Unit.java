package meadcell.catalogue;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Units as people write them. Gallons are US gallons. All factors are exact by definition: the inch
 * of 2.54 cm, the pound of 0.45359237 kg, the gallon of 231 cubic inches, the imperial gallon of
 * 4.54609 L, standard gravity of 9.80665 m/s² (NIST Special Publication 811, appendix B; from
 * memory).
 */
public enum Unit {
  /** The degree Celsius. */
  CELSIUS(Dimension.TEMPERATURE, 1, "°C", "c", "celsius"),
  /** The degree Fahrenheit, 5/9 of a degree Celsius; its scale begins elsewhere. */
  FAHRENHEIT(Dimension.TEMPERATURE, 1 / 1.8, "°F", "f", "fahrenheit"),
  /** The kelvin: a difference of 1 °C. */
  KELVIN(Dimension.TEMPERATURE_DIFFERENCE, 1, "K", "kelvin"),
  /** A difference of 1 °F. */
  FAHRENHEIT_DEGREE(Dimension.TEMPERATURE_DIFFERENCE, 1 / 1.8, "F°", "fahrenheit degrees"),
  /** The litre. */
  LITRE(Dimension.VOLUME, 1, "L", "ltr", "litre", "litres", "liter", "liters"),
  /** 1/100 of a litre. */
  CENTILITRE(Dimension.VOLUME, 0.01, "cL"),
  /** 1/10 of a litre. */
  DECILITRE(Dimension.VOLUME, 0.1, "dL"),
  /** 100 litres. */
  HECTOLITRE(Dimension.VOLUME, 100, "hL", "hektoliter", "hectolitre", "hectolitres"),
  /** 1/1000 of a litre. */
  MILLILITRE(Dimension.VOLUME, 0.001, "mL", "cc", "milliliter", "millilitre", "millilitres"),
  /** The US gallon of 231 cubic inches. */
  GALLON(
      Dimension.VOLUME,
      3.785411784,
      "US gal",
      "gal",
      "gals",
      "gallon",
      "gallons",
      "us gallons",
      "gal us"),
  /** A quarter of a US gallon. */
  QUART(Dimension.VOLUME, 0.946352946, "US qt", "qt", "qts", "quart", "quarts"),
  /** An eighth of a US gallon. */
  PINT(Dimension.VOLUME, 0.473176473, "US pt", "pt", "pint", "pints"),
  /** A US gallon has 128. */
  FLUID_OUNCE(Dimension.VOLUME, 0.0295735295625, "US fl oz", "fl oz", "floz"),
  /** The imperial gallon of 4.54609 L. */
  IMPERIAL_GALLON(
      Dimension.VOLUME, 4.54609, "imp gal", "imperial gallons", "uk gal", "gal uk", "gal imp"),
  /** The kilogram. */
  KILOGRAM(Dimension.MASS, 1, "kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramm"),
  /** 1/1000 of a kilogram. */
  GRAM(Dimension.MASS, 0.001, "g", "gram", "grams", "gramm"),
  /** 1/1000 of a gram. */
  MILLIGRAM(Dimension.MASS, 0.000001, "mg"),
  /** The avoirdupois pound. */
  POUND(Dimension.MASS, 0.45359237, "lb", "lbs", "pound", "pounds"),
  /** A sixteenth of a pound. */
  OUNCE(Dimension.MASS, 0.028349523125, "oz", "ounce", "ounces"),
  /** Kilograms per hour. */
  KILOGRAM_PER_HOUR(Dimension.MASS_FLOW, 1, "kg/h"),
  /** Pounds per hour. */
  POUND_PER_HOUR(Dimension.MASS_FLOW, 0.45359237, "lb/h"),
  /** The centimetre. */
  CENTIMETRE(Dimension.LENGTH, 1, "cm", "cms", "centimetre", "centimetres", "zentimeter"),
  /** 10 centimetres. */
  DECIMETRE(Dimension.LENGTH, 10, "dm"),
  /** 1/10 of a centimetre. */
  MILLIMETRE(Dimension.LENGTH, 0.1, "mm", "millimetre", "millimetres", "millimeter"),
  /** 100 centimetres. */
  METRE(Dimension.LENGTH, 100, "m", "metre", "metres", "meter"),
  /** The inch of 2.54 cm. */
  INCH(Dimension.LENGTH, 2.54, "in", "inch", "inches", "zoll", "\"", "″", "''"),
  /** 12 inches. */
  FOOT(Dimension.LENGTH, 30.48, "ft", "foot", "feet"),
  /** The square metre. */
  SQUARE_METRE(Dimension.AREA, 1, "m²", "m2", "sqm"),
  /** The square of 12 inches. */
  SQUARE_FOOT(Dimension.AREA, 0.09290304, "ft²", "ft2", "sqft"),
  /** The cubic metre. */
  CUBIC_METRE(Dimension.ROOM, 1, "m³", "m3"),
  /** The cube of 12 inches. */
  CUBIC_FOOT(Dimension.ROOM, 0.028316846592, "ft³", "ft3"),
  /** The kilopascal. */
  KILOPASCAL(Dimension.PRESSURE, 1, "kPa"),
  /** 100 kilopascals. */
  BAR(Dimension.PRESSURE, 100, "bar"),
  /** 1 lb × 9.80665 m/s² on 1 in². */
  PSI(Dimension.PRESSURE, 0.45359237 * 9.80665 / 0.64516, "psi"),
  /** Specific gravity 20/20, such as 1.085. */
  GRAVITY(Dimension.GRAVITY, 1, "SG", "s.g", "sp.gr"),
  /** Degrees Brix, a scale of gravity. */
  BRIX(Dimension.GRAVITY, Double.NaN, "°Bx", "bx", "brix", "°P", "plato"),
  /** Degrees Baumé, a scale of gravity. */
  BAUME(Dimension.GRAVITY, Double.NaN, "°Bé", "bé", "°be", "be", "baumé", "baume"),
  /** Degrees Oechsle, a scale of gravity. */
  OECHSLE(Dimension.GRAVITY, Double.NaN, "°Oe", "oe", "oechsle"),
  /** Percent by volume, 12 and not 0.12. */
  PERCENT_VOL(
      Dimension.STRENGTH,
      1,
      "% vol",
      "%vol",
      "vol%",
      "vol %",
      "vol.%",
      "vol.-%",
      "vol-%",
      "% v/v",
      "% abv",
      "abv",
      "%"),
  /** Grams per litre. */
  GRAM_PER_LITRE(Dimension.CONCENTRATION, 1, "g/L", "g/liter", "g/litre"),
  /** Milligrams per litre. */
  MILLIGRAM_PER_LITRE(Dimension.CONCENTRATION, 0.001, "mg/L", "mg/liter", "mg/litre", "ppm"),
  /** Kilograms per litre. */
  KILOGRAM_PER_LITRE(Dimension.DENSITY, 1, "kg/L"),
  /** Pounds per US gallon. */
  POUND_PER_GALLON(Dimension.DENSITY, 0.45359237 / 3.785411784, "lb/US gal", "lb/gal"),
  /** Gravity points, of 0.001, that 1 kg gives to 1 L. */
  POINTS_LITRE_PER_KILOGRAM(Dimension.YIELD, 1, "points·L/kg"),
  /** Gravity points, of 0.001, that 1 lb gives to 1 US gal. */
  POINTS_GALLON_PER_POUND(Dimension.YIELD, 3.785411784 / 0.45359237, "points·gal/lb"),
  /** The day. */
  DAY(Dimension.TIME, 1, "d", "day", "days", "tag", "tage");

  /**
   * What can be turned into each other by a factor, or for temperature and gravity by a formula.
   */
  public enum Dimension {
    /** How warm it is; the scales begin at different points. */
    TEMPERATURE,
    /** How much warmer; both scales begin at none. */
    TEMPERATURE_DIFFERENCE,
    /** The volume of a liquid. */
    VOLUME,
    /** The mass of a thing. */
    MASS,
    /** Mass per time. */
    MASS_FLOW,
    /** A length. */
    LENGTH,
    /** An area. */
    AREA,
    /** The volume of a room. */
    ROOM,
    /** Gauge pressure. */
    PRESSURE,
    /** How dense it is beside water, on any scale. */
    GRAVITY,
    /** Alcohol by volume. */
    STRENGTH,
    /** Mass in a volume of liquid. */
    CONCENTRATION,
    /** Mass per volume. */
    DENSITY,
    /** Gravity that a mass of an ingredient gives to a volume. */
    YIELD,
    /** A duration. */
    TIME
  }

  private static final Map<String, Unit> BY_WORD = new HashMap<>();

  /** The degree sign in its spellings. */
  private static final Pattern DEGREES =
      Pattern.compile("^(?:degrees?|deg\\.?|grad|[°º˚])\\s*(?=\\p{L})");

  static {
    for (Unit unit : values()) {
      unit.words.forEach(word -> BY_WORD.put(word.toLowerCase(Locale.ROOT), unit));
      BY_WORD.put(unit.word(), unit);
    }
  }

  private final Dimension dimension;
  private final double factor;
  private final List<String> words;

  Unit(Dimension dimension, double factor, String... words) {
    this.dimension = dimension;
    this.factor = factor;
    this.words = List.of(words);
  }

  /**
   * {@return the unit that a word names, in any case}
   *
   * @param word the word
   */
  public static Optional<Unit> named(String word) {
    Unit exact = BY_WORD.get(word);
    if (exact != null) {
      return Optional.of(exact);
    }
    String plain =
        DEGREES
            .matcher(word.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " "))
            .replaceFirst("°")
            .replaceFirst("(?<=.)\\.$", "");
    Unit named = BY_WORD.get(plain);
    if (named == null && plain.startsWith("°")) {
      Unit bare = BY_WORD.get(plain.substring(1));
      boolean hasDegrees =
          bare != null
              && (bare.dimension == Dimension.TEMPERATURE || bare.dimension == Dimension.GRAVITY);
      return hasDegrees ? Optional.of(bare) : Optional.empty();
    }
    return Optional.ofNullable(named);
  }

  /** {@return the word it is usually written with} */
  public String word() {
    return words.get(0);
  }

  /** {@return what it measures} */
  public Dimension dimension() {
    return dimension;
  }

  /**
   * {@return whether both measure the same}
   *
   * @param other another unit
   */
  public boolean fits(Unit other) {
    return dimension == other.dimension;
  }

  /**
   * {@return how many metric units of its dimension one of it is (of temperature, one degree); not
   * a number for a scale of gravity, which no factor turns into another}
   */
  public double factor() {
    return factor;
  }
}
