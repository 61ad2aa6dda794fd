package meadcell.bottle;

/** Carbon dioxide: what mead holds under pressure, and what sugar gives. Pressures are gauge. */
final class CarbonDioxide {
  /** g from 1 g of hexose: 2 × 44.009 / 180.156. */
  static final double FROM_HEXOSE = 2 * 44.009 / 180.156;

  /** g from 1 g of sucrose: 4 × 44.009 / 342.297. */
  static final double FROM_SUCROSE = 4 * 44.009 / 342.297;

  private static final double ATMOSPHERE_KPA = 101.325;

  private CarbonDioxide() {}

  /** {@return g/L in equilibrium with CO₂ of that pressure} */
  static double dissolved(double gaugeKPa, double temperatureC, double abv, double sugar) {
    return (gaugeKPa + ATMOSPHERE_KPA) * solubility(temperatureC, abv, sugar);
  }

  /** {@return inverse of {@link #dissolved}} */
  static double gaugeKPa(double dissolved, double temperatureC, double abv, double sugar) {
    return dissolved / solubility(temperatureC, abv, sugar) - ATMOSPHERE_KPA;
  }

  /** g/L per kPa: Regulation (EEC) 2676/90 at 20 °C, carried over by the solubility in water. */
  static double solubility(double temperatureC, double abv, double sugar) {
    double at20 = 1.951e-2 * (0.86 - 0.01 * abv) * (1 - 0.00144 * sugar);
    return at20 * Math.exp(logInWater(temperatureC) - logInWater(20));
  }

  /** Weiss 1974 for fresh water, ln of mol/(L·atm); the coefficients quoted at second hand. */
  private static double logInWater(double temperatureC) {
    double hundredKelvin = (temperatureC + 273.15) / 100;
    return -58.0931 + 90.5069 / hundredKelvin + 22.2940 * Math.log(hundredKelvin);
  }
}
