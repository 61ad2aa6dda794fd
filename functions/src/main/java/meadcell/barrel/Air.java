package meadcell.barrel;

/** Oxygen in moist air and in water that stands under it. */
final class Air {
  /** Standard atmosphere, kPa. */
  static final double STANDARD_PRESSURE = 101.325;

  /** Share of oxygen in dry air, by volume. */
  static final double OXYGEN_SHARE = 0.20946;

  private static final double OXYGEN_GRAM_PER_MOLE = 31.998;
  private static final double GAS_CONSTANT = 8.314463;

  private Air() {}

  /** Pressure of water vapour over water, in atmospheres. */
  private static double vapour(double kelvin) {
    return Math.exp(11.8571 - 3840.70 / kelvin - 216961 / (kelvin * kelvin));
  }

  /** {@return oxygen in a litre of air saturated with water, at the standard pressure, mg} */
  static double oxygen(double temperatureC) {
    double kelvin = kelvin(temperatureC);
    double dryPressure = STANDARD_PRESSURE * (1 - vapour(kelvin));
    return 1000 * OXYGEN_SHARE * dryPressure * OXYGEN_GRAM_PER_MOLE / (GAS_CONSTANT * kelvin);
  }

  /** {@return oxygen dissolved in fresh water in equilibrium with moist air, mg/L} */
  static double saturation(double temperatureC, double pressureKPa) {
    double kelvin = kelvin(temperatureC);
    double x = 1 / kelvin;
    double atOneAtmosphere =
        Math.exp(
            -139.34411
                + x * (1.575701e5 + x * (-6.642308e7 + x * (1.243800e10 - x * 8.621949e11))));
    double p = pressureKPa / STANDARD_PRESSURE;
    double water = vapour(kelvin);
    double theta = 0.000975 + temperatureC * (-1.426e-5 + temperatureC * 6.436e-8);
    return atOneAtmosphere * p * ((1 - water / p) * (1 - theta * p)) / ((1 - water) * (1 - theta));
  }

  private static double kelvin(double temperatureC) {
    return temperatureC + 273.15;
  }
}
