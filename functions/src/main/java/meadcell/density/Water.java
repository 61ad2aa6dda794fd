package meadcell.density;

/** Air-free water at 101 325 Pa, 0 to 40 °C. */
public final class Water {

  // Bettin and Spieweck 1990 (ITS-90), as printed in IP Standard Methods 1998, App. G
  private static final double[] NUMERATOR = {
    999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9, -281.03006e-12
  };
  private static final double DENOMINATOR_SLOPE = 16.887236e-3;

  private Water() {}

  /**
   * Tanaka et al. 2001, recommended by the CIPM: the one to use where water itself is meant.
   *
   * @param temperatureC temperature, 0 to 40 °C
   * @return density in kg/m³
   */
  public static double density(double temperatureC) {
    double fromMaximum = temperatureC - 3.983035;
    return 999.974950
        * (1
            - fromMaximum
                * fromMaximum
                * (temperatureC + 301.797)
                / (522528.9 * (temperatureC + 69.34881)));
  }

  /**
   * Bettin and Spieweck 1990, 0.003 to 0.004 kg/m³ lower: the water term of {@link Sucrose} and
   * {@link Mixture}. The one to use where a gravity becomes a density or back.
   *
   * @param temperatureC temperature, 0 to 40 °C
   * @return density in kg/m³
   */
  public static double bettinSpieweck(double temperatureC) {
    return Polynomial.value(NUMERATOR, temperatureC) / (1 + DENOMINATOR_SLOPE * temperatureC);
  }
}
