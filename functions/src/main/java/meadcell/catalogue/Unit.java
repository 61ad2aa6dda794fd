package meadcell.catalogue;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Units as people write them. Gallons are US gallons. All factors are exact by definition: the inch
 * of 2.54 cm, the pound of 0.45359237 kg, the gallon of 231 cubic inches, standard gravity of
 * 9.80665 m/s² (NIST Special Publication 811, appendix B; from memory).
 */
public enum Unit {
  /** The degree Celsius. */
  CELSIUS(Dimension.TEMPERATURE, 1, "°C", "c", "degc", "celsius"),
  /** The degree Fahrenheit, 5/9 of a degree Celsius; its scale begins elsewhere. */
  FAHRENHEIT(Dimension.TEMPERATURE, 1 / 1.8, "°F", "f", "degf", "fahrenheit"),
  /** The litre. */
  LITRE(Dimension.VOLUME, 1, "L", "ltr", "litre", "litres", "liter", "liters"),
  /** 100 litres. */
  HECTOLITRE(Dimension.VOLUME, 100, "hL"),
  /** 1/1000 of a litre. */
  MILLILITRE(Dimension.VOLUME, 0.001, "mL"),
  /** The US gallon of 231 cubic inches. */
  GALLON(Dimension.VOLUME, 3.785411784, "US gal", "gal", "gals", "gallon", "gallons"),
  /** The kilogram. */
  KILOGRAM(Dimension.MASS, 1, "kg"),
  /** 1/1000 of a kilogram. */
  GRAM(Dimension.MASS, 0.001, "g"),
  /** 1/1000 of a gram. */
  MILLIGRAM(Dimension.MASS, 0.000001, "mg"),
  /** The avoirdupois pound. */
  POUND(Dimension.MASS, 0.45359237, "lb", "lbs", "pound", "pounds"),
  /** Kilograms per hour. */
  KILOGRAM_PER_HOUR(Dimension.MASS_FLOW, 1, "kg/h"),
  /** Pounds per hour. */
  POUND_PER_HOUR(Dimension.MASS_FLOW, 0.45359237, "lb/h"),
  /** The centimetre. */
  CENTIMETRE(Dimension.LENGTH, 1, "cm"),
  /** 1/10 of a centimetre. */
  MILLIMETRE(Dimension.LENGTH, 0.1, "mm"),
  /** 100 centimetres. */
  METRE(Dimension.LENGTH, 100, "m"),
  /** The inch of 2.54 cm. */
  INCH(Dimension.LENGTH, 2.54, "in", "inch", "inches", "\"", "″"),
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
  GRAVITY(Dimension.GRAVITY, 1, "SG"),
  /** Degrees Brix, a scale of gravity. */
  BRIX(Dimension.GRAVITY, Double.NaN, "°Bx", "bx", "brix", "°brix"),
  /** Degrees Baumé, a scale of gravity. */
  BAUME(Dimension.GRAVITY, Double.NaN, "°Bé", "bé", "be", "baumé", "baume"),
  /** Degrees Oechsle, a scale of gravity. */
  OECHSLE(Dimension.GRAVITY, Double.NaN, "°Oe", "oe", "oechsle"),
  /** Percent by volume, 12 and not 0.12. */
  PERCENT_VOL(Dimension.STRENGTH, 1, "% vol", "%vol", "vol%", "% abv", "abv", "%"),
  /** Grams per litre. */
  GRAM_PER_LITRE(Dimension.CONCENTRATION, 1, "g/L"),
  /** Milligrams per litre. */
  MILLIGRAM_PER_LITRE(Dimension.CONCENTRATION, 0.001, "mg/L", "ppm"),
  /** Kilograms per litre. */
  KILOGRAM_PER_LITRE(Dimension.DENSITY, 1, "kg/L"),
  /** Pounds per US gallon. */
  POUND_PER_GALLON(Dimension.DENSITY, 0.45359237 / 3.785411784, "lb/US gal", "lb/gal"),
  /** Gravity points, of 0.001, that 1 kg gives to 1 L. */
  POINTS_LITRE_PER_KILOGRAM(Dimension.YIELD, 1, "points·L/kg"),
  /** Gravity points, of 0.001, that 1 lb gives to 1 US gal. */
  POINTS_GALLON_PER_POUND(Dimension.YIELD, 3.785411784 / 0.45359237, "points·gal/lb"),
  /** The day. */
  DAY(Dimension.TIME, 1, "d", "day", "days");

  /**
   * What can be turned into each other by a factor, or for temperature and gravity by a formula.
   */
  public enum Dimension {
    /** How warm it is; the scales begin at different points. */
    TEMPERATURE,
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
    String plain = word.strip().toLowerCase(Locale.ROOT).replace('º', '°').replace("° ", "°");
    return Optional.ofNullable(BY_WORD.get(plain));
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
