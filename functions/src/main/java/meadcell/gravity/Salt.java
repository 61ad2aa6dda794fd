package meadcell.gravity;

/**
 * Solutions of sodium chloride. Density at 20 °C, and what it loses with each K between 15 and 25
 * °C: Poradnik fizykochemiczny, Warsaw 1974, as a university's laboratory prints it. Two slips
 * there are mended: the density of 2 % is 1012.5, as its g/L say, not 1012.2; the column headed 15
 * °C holds the values of 10 °C and is not used. Refractive index at 20 °C and 589 nm: CRC Handbook
 * of Chemistry and Physics, concentrative properties of aqueous solutions (from memory).
 */
final class Salt {
  static final double MOST = 26;
  static final double COLDEST = 15;
  static final double WARMEST = 25;

  private static final double[] PERCENT = {0, 1, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26};

  /** kg/m³ at 20 °C; water as it stands in the tables of the time. */
  private static final double[] DENSITY = {
    998.2, 1005.3, 1012.5, 1026.8, 1041.3, 1055.9, 1070.7, 1085.7, 1100.9, 1116.2, 1131.9, 1147.8,
    1164.0, 1180.4, 1197.2
  };

  /** kg/m³ for each K; of water from its own formula. */
  private static final double[] PER_KELVIN = {
    0.21, 0.22, 0.24, 0.28, 0.31, 0.34, 0.37, 0.39, 0.42, 0.44, 0.47, 0.49, 0.51, 0.53, 0.55
  };

  private static final double[] INDEX = {
    1.3330, 1.3347, 1.3365, 1.3400, 1.3435, 1.3470, 1.3505, 1.3541, 1.3576, 1.3612, 1.3648, 1.3684,
    1.3721, 1.3757, 1.3795
  };

  private Salt() {}

  /** {@return kg/m³} */
  static double density(double percent, double temperatureC) {
    return between(DENSITY, percent) - between(PER_KELVIN, percent) * (temperatureC - 20);
  }

  /** {@return refractive index at 20 °C and 589 nm} */
  static double index(double percent) {
    return between(INDEX, percent);
  }

  private static double between(double[] table, double percent) {
    int i = 0;
    while (percent > PERCENT[i + 1]) {
      i++;
    }
    double share = (percent - PERCENT[i]) / (PERCENT[i + 1] - PERCENT[i]);
    return table[i] + share * (table[i + 1] - table[i]);
  }
}
