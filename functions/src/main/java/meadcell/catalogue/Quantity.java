package meadcell.catalogue;

import java.util.Optional;

/**
 * What a number measures, with its metric and its US unit.
 *
 * <p>Factors are those of {@link Unit}.
 */
public enum Quantity {
  NUMBER(""),
  TEXT(""),
  COUNT(""),
  DAYS("days"),
  DATE("day number"),
  SECONDS("s"),
  SPECIFIC_GRAVITY("SG"),
  GRAVITY_PER_DAY("SG per day"),
  BRIX("°Bx"),
  BAUME("°Bé"),
  OECHSLE("°Oe"),
  REFRACTIVE_INDEX("n"),
  PH("pH"),
  PERCENT("%"),
  PERCENT_PER_YEAR("% per year"),
  PERCENT_VOL("% vol"),
  PERCENT_MASS("% mass"),
  PROBABILITY("probability"),
  SCORE("points"),
  DELLE("Delle units"),
  PENNY("penny"),
  NORMALITY("mol/L"),
  GRAM_PER_LITRE("g/L"),
  MILLIGRAM_PER_LITRE("mg/L"),
  MILLIGRAM_PER_LITRE_YEAR("mg/L per year"),
  PARTS_PER_MILLION("ppm"),
  GRAM("g"),
  MILLIGRAM("mg"),
  MILLILITRE("mL"),
  GRAM_OR_MILLILITRE("g or mL"),
  MILLILITRE_PER_SECOND("mL/s"),
  KILOJOULE("kJ"),
  WATT("W"),
  MILLIMETRE("mm"),
  SQUARE_CENTIMETRE("cm²"),
  SQUARE_CENTIMETRE_PER_LITRE("cm²/L"),
  TEMPERATURE(Unit.CELSIUS, Unit.FAHRENHEIT, -32 / 1.8),
  VOLUME(Unit.LITRE, Unit.GALLON, 0),
  MASS(Unit.KILOGRAM, Unit.POUND, 0),
  MASS_PER_HOUR(Unit.KILOGRAM_PER_HOUR, Unit.POUND_PER_HOUR, 0),
  DENSITY(Unit.KILOGRAM_PER_LITRE, Unit.POUND_PER_GALLON, 0),
  GRAVITY_YIELD(Unit.POINTS_LITRE_PER_KILOGRAM, Unit.POINTS_GALLON_PER_POUND, 0),
  LENGTH(Unit.CENTIMETRE, Unit.INCH, 0),
  AREA(Unit.SQUARE_METRE, Unit.SQUARE_FOOT, 0),
  ROOM(Unit.CUBIC_METRE, Unit.CUBIC_FOOT, 0),
  /** Gauge pressure. */
  PRESSURE(Unit.KILOPASCAL, Unit.PSI, 0);

  private final String metricUnit;
  private final String usUnit;
  private final double scale;
  private final double offset;

  Quantity(String unit) {
    this.metricUnit = unit;
    this.usUnit = unit;
    this.scale = 1;
    this.offset = 0;
  }

  /** A metric value is {@code scale · US value + offset}. */
  Quantity(Unit metric, Unit us, double offset) {
    this.metricUnit = metric.word();
    this.usUnit = us.word();
    this.scale = us.factor();
    this.offset = offset;
  }

  /** {@return whether the two systems differ for this quantity} */
  public boolean isDimensional() {
    return scale != 1;
  }

  public String unit(UnitSystem system) {
    return system == UnitSystem.US ? usUnit : metricUnit;
  }

  /**
   * {@return the unit as one that can be recognised and converted; none where only its word is
   * known}
   */
  public Optional<Unit> unitIn(UnitSystem system) {
    return Unit.named(unit(system));
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

  /** {@return the value in the metric unit} */
  public double toMetric(double value, UnitSystem system) {
    return system == UnitSystem.US && isDimensional() ? scale * value + offset : value;
  }

  /** {@return the value in a system's unit} */
  public double fromMetric(double value, UnitSystem system) {
    return system == UnitSystem.US && isDimensional() ? (value - offset) / scale : value;
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
