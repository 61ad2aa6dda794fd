package meadcell.batch.plan;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import meadcell.batch.book.Figures;

/**
 * Units as people write them in headers and behind readings. Gallons are US gallons. All factors
 * are exact by definition: the inch of 2.54 cm, the pound of 0.45359237 kg, the gallon of 231 cubic
 * inches, standard gravity of 9.80665 m/s² (NIST Special Publication 811, appendix B; from memory).
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
  CENTIMETRE(Dimension.LENGTH, 1, "cm"),
  MILLIMETRE(Dimension.LENGTH, 0.1, "mm"),
  METRE(Dimension.LENGTH, 100, "m"),
  INCH(Dimension.LENGTH, 2.54, "in", "inch", "inches", "\"", "″"),
  KILOPASCAL(Dimension.PRESSURE, 1, "kPa"),
  BAR(Dimension.PRESSURE, 100, "bar"),
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
  DAY(Dimension.TIME, 1, "d", "day", "days");

  private enum Dimension {
    TEMPERATURE,
    VOLUME,
    MASS,
    LENGTH,
    PRESSURE,
    GRAVITY,
    STRENGTH,
    CONCENTRATION,
    DENSITY,
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

  /** The unit that a word names, in any case. */
  public static Optional<Unit> named(String word) {
    Unit exact = BY_WORD.get(word);
    if (exact != null) {
      return Optional.of(exact);
    }
    String plain = word.strip().toLowerCase(Locale.ROOT).replace('º', '°').replace("° ", "°");
    return Optional.ofNullable(BY_WORD.get(plain));
  }

  /** The word it is usually written with. */
  public String word() {
    return words.get(0);
  }

  public boolean fits(Unit other) {
    return dimension == other.dimension;
  }

  /** A formula that turns {@code operand}, in this unit, into another unit that fits. */
  public String converted(String operand, Unit to) {
    if (this == to) {
      return operand;
    }
    if (dimension == Dimension.TEMPERATURE) {
      return this == FAHRENHEIT ? "((" + operand + "-32)/1.8)" : "(" + operand + "*1.8+32)";
    }
    if (dimension == Dimension.GRAVITY) {
      return to.throughGravity("TO", this.throughGravity("FROM", operand));
    }
    double ratio = factor / to.factor;
    return ratio >= 1
        ? operand + "*" + Figures.of(ratio)
        : operand + "/" + Figures.of(to.factor / factor);
  }

  private String throughGravity(String direction, String operand) {
    return this == GRAVITY ? operand : "GRAVITY." + direction + name() + "(" + operand + ")";
  }
}
