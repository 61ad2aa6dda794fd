package meadcell.catalogue;

import java.util.Optional;

/**
 * What a number measures, with its metric and its US unit.
 *
 * <p>Factors are those of {@link Unit}.
 */
public enum Quantity {
  /** A number without a unit. */
  NUMBER(""),
  /** No number at all. */
  TEXT(""),
  /** How many there are. */
  COUNT(""),
  /** A duration in days. */
  DAYS("days"),
  /** A day, as the serial number that the spreadsheet gives it. */
  DATE("day number"),
  /** A duration in minutes. */
  MINUTES("min"),
  /** A duration in seconds. */
  SECONDS("s"),
  /** True specific gravity 20/20, such as 1.085. */
  SPECIFIC_GRAVITY("SG"),
  /** Fall or rise of specific gravity in a day. */
  GRAVITY_PER_DAY("SG per day"),
  /** Sucrose by mass, in degrees Brix. */
  BRIX("°Bx"),
  /** Degrees Baumé. */
  BAUME("°Bé"),
  /** Degrees Oechsle. */
  OECHSLE("°Oe"),
  /** Refractive index at 589 nm and 20 °C. */
  REFRACTIVE_INDEX("n"),
  /** Acidity as pH. */
  PH("pH"),
  /** A share as a percent number: 12, not 0.12. */
  PERCENT("%"),
  /** A share in a year, as a percent number. */
  PERCENT_PER_YEAR("% per year"),
  /** Alcohol by volume at 20 °C, as a percent number. */
  PERCENT_VOL("% vol"),
  /** A share by mass, as a percent number. */
  PERCENT_MASS("% mass"),
  /** A probability, 0 to 1. */
  PROBABILITY("probability"),
  /** Points of a taster. */
  SCORE("points"),
  /** Delle units: sugar in g/100 mL plus 4.5 times the alcohol in percent by volume. */
  DELLE("Delle units"),
  /** The size of a nail, in pennies. */
  PENNY("penny"),
  /** Concentration of an acid or base, in equivalents per litre. */
  NORMALITY("mol/L"),
  /** A concentration in g/L, in both systems. */
  GRAM_PER_LITRE("g/L"),
  /** A concentration in mg/L, in both systems. */
  MILLIGRAM_PER_LITRE("mg/L"),
  /** A concentration that a year adds, in mg/L. */
  MILLIGRAM_PER_LITRE_YEAR("mg/L per year"),
  /** Parts of a million; of a gas by volume. */
  PARTS_PER_MILLION("ppm"),
  /** A dose in g, in both systems. */
  GRAM("g"),
  /** A dose in mg, in both systems. */
  MILLIGRAM("mg"),
  /** A bottle, a sample or a dose in mL, in both systems. */
  MILLILITRE("mL"),
  /** A dose of a solid in g or of a liquid in mL. */
  GRAM_OR_MILLILITRE("g or mL"),
  /** The flow out of a small hole. */
  MILLILITRE_PER_SECOND("mL/s"),
  /** Heat. */
  KILOJOULE("kJ"),
  /** Energy of food, of which a label speaks beside kJ. */
  KILOCALORIE("kcal"),
  /** Money of the United States. */
  US_DOLLAR("USD"),
  /** Money of the United Kingdom. */
  POUND_STERLING("GBP"),
  /** How much acid or alkali a unit of pH takes. */
  BUFFER_CAPACITY("mmol/L per pH"),
  /** Heat per time. */
  WATT("W"),
  /** The size of a nail or a hole, in both systems. */
  MILLIMETRE("mm"),
  /** A small area, in both systems. */
  SQUARE_CENTIMETRE("cm²"),
  /** Area of wood for each litre, in both systems. */
  SQUARE_CENTIMETRE_PER_LITRE("cm²/L"),
  /** A temperature, in °C or °F. */
  TEMPERATURE(Unit.CELSIUS, Unit.FAHRENHEIT, -32 / 1.8),
  /** How much warmer, in K or degrees Fahrenheit. */
  TEMPERATURE_DIFFERENCE(Unit.KELVIN, Unit.FAHRENHEIT_DEGREE, 0),
  /** A volume of liquid, in L or US gal. */
  VOLUME(Unit.LITRE, Unit.GALLON, 0),
  /** A mass, in kg or lb. */
  MASS(Unit.KILOGRAM, Unit.POUND, 0),
  /** A mass in an hour, in kg or lb. */
  MASS_PER_HOUR(Unit.KILOGRAM_PER_HOUR, Unit.POUND_PER_HOUR, 0),
  /** Mass per volume, in kg/L or lb/US gal. */
  DENSITY(Unit.KILOGRAM_PER_LITRE, Unit.POUND_PER_GALLON, 0),
  /** Gravity points that a mass gives to a volume, in points·L/kg or points·gal/lb. */
  GRAVITY_YIELD(Unit.POINTS_LITRE_PER_KILOGRAM, Unit.POINTS_GALLON_PER_POUND, 0),
  /** A length, in cm or in. */
  LENGTH(Unit.CENTIMETRE, Unit.INCH, 0),
  /** An area, in m² or ft². */
  AREA(Unit.SQUARE_METRE, Unit.SQUARE_FOOT, 0),
  /** The volume of a room, in m³ or ft³. */
  ROOM(Unit.CUBIC_METRE, Unit.CUBIC_FOOT, 0),
  /** Gauge pressure. */
  PRESSURE(Unit.KILOPASCAL, Unit.PSI, 0);

  private final String metricUnit;
  private final String usUnit;
  private final Optional<Unit> metric;
  private final Optional<Unit> us;
  private final double scale;
  private final double offset;

  Quantity(String unit) {
    this.metricUnit = unit;
    this.usUnit = unit;
    this.metric = Unit.named(unit);
    this.us = metric;
    this.scale = 1;
    this.offset = 0;
  }

  /** A metric value is {@code scale · US value + offset}. */
  Quantity(Unit metric, Unit us, double offset) {
    this.metricUnit = metric.word();
    this.usUnit = us.word();
    this.metric = Unit.named(metricUnit);
    this.us = Unit.named(usUnit);
    this.scale = us.factor();
    this.offset = offset;
  }

  /** {@return whether the two systems differ for this quantity} */
  public boolean isDimensional() {
    return scale != 1;
  }

  /**
   * {@return the unit as users see it; empty where a number has none}
   *
   * @param system the units of the caller
   */
  public String unit(UnitSystem system) {
    return system == UnitSystem.US ? usUnit : metricUnit;
  }

  /**
   * {@return the unit as one that can be recognised and converted; none where only its word is
   * known}
   *
   * @param system the units of the caller
   */
  public Optional<Unit> unitIn(UnitSystem system) {
    return system == UnitSystem.US ? us : metric;
  }

  /** Under which other languages translate the unit. */
  String key(UnitSystem system) {
    boolean us = system == UnitSystem.US && isDimensional();
    return "CATALOGUE.unit." + name() + (us ? ".us" : "");
  }

  /**
   * {@return what a cellar really measures, in the metric unit; none where anything is possible}
   */
  public Optional<Range> plausible() {
    // a lighter or heavier number is a gravity on another scale (common practice, no source)
    return this == SPECIFIC_GRAVITY ? Optional.of(Range.between(0.98, 1.3)) : Optional.empty();
  }

  /**
   * {@return the value in the metric unit}
   *
   * @param value the value
   * @param system the units of the caller
   */
  public double toMetric(double value, UnitSystem system) {
    return system == UnitSystem.US && isDimensional() ? scale * value + offset : value;
  }

  /**
   * {@return the value in a system's unit}
   *
   * @param value the value
   * @param system the units of the caller
   */
  public double fromMetric(double value, UnitSystem system) {
    return system == UnitSystem.US && isDimensional() ? (value - offset) / scale : value;
  }

  /** {@return how many decimals a cellar usually shows (common practice, no source)} */
  public int decimals() {
    return switch (this) {
      case TEXT, COUNT, DATE, PENNY -> 0;
      case PH, AREA, MASS, MILLIMETRE, MILLILITRE_PER_SECOND, US_DOLLAR, POUND_STERLING -> 2;
      case NUMBER -> 3;
      case SPECIFIC_GRAVITY, GRAVITY_PER_DAY, REFRACTIVE_INDEX, DENSITY, PROBABILITY, NORMALITY ->
          4;
      default -> 1;
    };
  }

  /** The likely slip behind a value out of range, in the caller's unit. */
  Optional<Slip> likelySlip(double value, UnitSystem system) {
    if (value == 0) {
      return Optional.of(Slip.of(Slip.What.ZERO_OR_BLANK));
    }
    return switch (this) {
      case SPECIFIC_GRAVITY ->
          value >= 900 && value <= 1300
              ? Optional.of(new Slip(Slip.What.THOUSANDFOLD, value / 1000))
              : value > 1.3 && value <= 50
                  ? Optional.of(Slip.of(Slip.What.BRIX_FOR_GRAVITY))
                  : Optional.empty();
      case PERCENT, PERCENT_VOL, PERCENT_MASS, BRIX ->
          value > 0 && value < 1
              ? Optional.of(new Slip(Slip.What.PERCENT_FORMAT, value * 100))
              : Optional.empty();
      case TEMPERATURE ->
          system == UnitSystem.METRIC && value > 45 && value <= 120
              ? Optional.of(Slip.of(Slip.What.FAHRENHEIT))
              : Optional.empty();
      default -> Optional.empty();
    };
  }
}
