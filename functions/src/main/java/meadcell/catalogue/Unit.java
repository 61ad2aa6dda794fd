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
  CELSIUS(Dimension.TEMPERATURE, 1, "°C", "c", "degc", "celsius"),
  FAHRENHEIT(Dimension.TEMPERATURE, 1 / 1.8, "°F", "f", "degf", "fahrenheit"),
  LITRE(Dimension.VOLUME, 1, "L", "ltr", "litre", "litres", "liter", "liters"),
  HECTOLITRE(Dimension.VOLUME, 100, "hL"),
  MILLILITRE(Dimension.VOLUME, 0.001, "mL"),
  GALLON(Dimension.VOLUME, 3.785411784, "US gal", "gal", "gals", "gallon", "gallons"),
  KILOGRAM(Dimension.MASS, 1, "kg"),
  GRAM(Dimension.MASS, 0.001, "g"),
  MILLIGRAM(Dimension.MASS, 0.000001, "mg"),
  POUND(Dimension.MASS, 0.45359237, "lb", "lbs", "pound", "pounds"),
  KILOGRAM_PER_HOUR(Dimension.MASS_FLOW, 1, "kg/h"),
  POUND_PER_HOUR(Dimension.MASS_FLOW, 0.45359237, "lb/h"),
  CENTIMETRE(Dimension.LENGTH, 1, "cm"),
  MILLIMETRE(Dimension.LENGTH, 0.1, "mm"),
  METRE(Dimension.LENGTH, 100, "m"),
  INCH(Dimension.LENGTH, 2.54, "in", "inch", "inches", "\"", "″"),
  SQUARE_METRE(Dimension.AREA, 1, "m²", "m2", "sqm"),
  SQUARE_FOOT(Dimension.AREA, 0.09290304, "ft²", "ft2", "sqft"),
  CUBIC_METRE(Dimension.ROOM, 1, "m³", "m3"),
  CUBIC_FOOT(Dimension.ROOM, 0.028316846592, "ft³", "ft3"),
  KILOPASCAL(Dimension.PRESSURE, 1, "kPa"),
  BAR(Dimension.PRESSURE, 100, "bar"),
  /** 1 lb × 9.80665 m/s² on 1 in². */
  PSI(Dimension.PRESSURE, 0.45359237 * 9.80665 / 0.64516, "psi"),
  GRAVITY(Dimension.GRAVITY, 1, "SG"),
  BRIX(Dimension.GRAVITY, Double.NaN, "°Bx", "bx", "brix", "°brix"),
  BAUME(Dimension.GRAVITY, Double.NaN, "°Bé", "bé", "be", "baumé", "baume"),
  OECHSLE(Dimension.GRAVITY, Double.NaN, "°Oe", "oe", "oechsle"),
  PERCENT_VOL(Dimension.STRENGTH, 1, "% vol", "%vol", "vol%", "% abv", "abv", "%"),
  GRAM_PER_LITRE(Dimension.CONCENTRATION, 1, "g/L"),
  MILLIGRAM_PER_LITRE(Dimension.CONCENTRATION, 0.001, "mg/L", "ppm"),
  KILOGRAM_PER_LITRE(Dimension.DENSITY, 1, "kg/L"),
  POUND_PER_GALLON(Dimension.DENSITY, 0.45359237 / 3.785411784, "lb/US gal", "lb/gal"),
  POINTS_LITRE_PER_KILOGRAM(Dimension.YIELD, 1, "points·L/kg"),
  POINTS_GALLON_PER_POUND(Dimension.YIELD, 3.785411784 / 0.45359237, "points·gal/lb"),
  DAY(Dimension.TIME, 1, "d", "day", "days");

  /**
   * What can be turned into each other by a factor, or for temperature and gravity by a formula.
   */
  public enum Dimension {
    TEMPERATURE,
    VOLUME,
    MASS,
    MASS_FLOW,
    LENGTH,
    AREA,
    ROOM,
    PRESSURE,
    GRAVITY,
    STRENGTH,
    CONCENTRATION,
    DENSITY,
    YIELD,
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

  /** {@return the unit that a word names, in any case} */
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

  /** {@return whether both measure the same} */
  public boolean fits(Unit other) {
    return dimension == other.dimension;
  }

  /**
   * How many metric units of its dimension one of it is (of temperature, one degree); not a number
   * for a scale of gravity, which no factor turns into another.
   */
  public double factor() {
    return factor;
  }
}
