package meadcell.catalogue;

import java.util.function.UnaryOperator;

/**
 * What a number measures, with its metric and its US unit.
 *
 * <p>US factors are exact by definition (international yard and pound 1959; US gallon 231 in³): 1
 * in = 2.54 cm, 1 lb = 0.45359237 kg, 1 US gal = 3.785411784 L.
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
  TEMPERATURE("°C", "°F", 1 / 1.8, -32 / 1.8),
  VOLUME("L", "US gal", Quantity.LITRE_PER_GALLON),
  MASS("kg", "lb", Quantity.KILOGRAM_PER_POUND),
  MASS_PER_HOUR("kg/h", "lb/h", Quantity.KILOGRAM_PER_POUND),
  DENSITY("kg/L", "lb/US gal", Quantity.KILOGRAM_PER_POUND / Quantity.LITRE_PER_GALLON),
  GRAVITY_YIELD(
      "points·L/kg", "points·gal/lb", Quantity.LITRE_PER_GALLON / Quantity.KILOGRAM_PER_POUND),
  LENGTH("cm", "in", 2.54),
  AREA("m²", "ft²", 0.09290304),
  ROOM("m³", "ft³", 0.028316846592),
  /** Gauge pressure: 1 psi = 1 lb × 9.80665 m/s² on 1 in². */
  PRESSURE("kPa", "psi", Quantity.KILOGRAM_PER_POUND * 9.80665 / 0.64516);

  private static final double LITRE_PER_GALLON = 3.785411784;
  private static final double KILOGRAM_PER_POUND = 0.45359237;

  private final String metricUnit;
  private final String usUnit;
  private final double scale;
  private final double offset;

  Quantity(String unit) {
    this(unit, unit, 1, 0);
  }

  Quantity(String metricUnit, String usUnit, double scale) {
    this(metricUnit, usUnit, scale, 0);
  }

  /** A metric value is {@code scale · US value + offset}. */
  Quantity(String metricUnit, String usUnit, double scale, double offset) {
    this.metricUnit = metricUnit;
    this.usUnit = usUnit;
    this.scale = scale;
    this.offset = offset;
  }

  /** Whether the two systems differ for this quantity. */
  public boolean isDimensional() {
    return scale != 1;
  }

  public String unit(UnitSystem system) {
    return system == UnitSystem.US ? usUnit : metricUnit;
  }

  /** The metric unit, and the US one where it differs: {@code L (US gal)}; empty without unit. */
  String units(UnaryOperator<String> words) {
    String metric = words.apply(metricUnit);
    return isDimensional() ? metric + " (" + words.apply(usUnit) + ")" : metric;
  }

  /** The value in the metric unit. */
  public double toMetric(double value, UnitSystem system) {
    return system == UnitSystem.US && isDimensional() ? scale * value + offset : value;
  }

  double fromMetric(double value, UnitSystem system) {
    return system == UnitSystem.US && isDimensional() ? (value - offset) / scale : value;
  }

  /** The likely slip behind a value out of range, as a question, or nothing. */
  String likelySlip(double value, UnitSystem system) {
    if (value == 0) {
      return " It is 0 or a blank cell.";
    }
    return switch (this) {
      case SPECIFIC_GRAVITY ->
          value >= 900 && value <= 1300
              ? " Did you mean " + Numbers.text(value / 1000) + "?"
              : value > 1.3 && value <= 50 ? " Is it °Brix? Use GRAVITY.FROMBRIX." : "";
      case PERCENT, PERCENT_VOL, PERCENT_MASS, BRIX ->
          value > 0 && value < 1
              ? " A cell formatted as percent holds a hundredth: give "
                  + Numbers.text(value * 100)
                  + "."
              : "";
      case TEMPERATURE ->
          system == UnitSystem.METRIC && value > 45 && value <= 120
              ? " Is it °F? Then end the call with \"US\"."
              : "";
      default -> "";
    };
  }
}
