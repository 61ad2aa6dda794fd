package meadcell.ferment;

import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * A rise of gravity that no ferment makes and no scatter explains: something sweet came in, or a
 * reading is wrong or was not corrected. What ferments meanwhile does not show in it.
 */
final class Rise {
  /** So many standard uncertainties are none by chance, but once in 700 times. */
  private static final double COVERAGE = 3;

  /**
   * SG per day that evaporation from a cask explains: 9 % a year, the most of a Swiss glossary of
   * wine, from a mead that holds 300 g/L (common practice, no source), whose extract then weighs 27
   * g/L more, about 0.011 a year.
   */
  private static final double EVAPORATION = 0.00003;

  private static final int LATEST = 3;

  private Rise() {}

  /**
   * {@return whether the line rises, or one of the latest readings stands above the one before it}
   */
  static boolean shows(SimpleRegression line, double[] days, double[] gravities, double u) {
    double doubt = COVERAGE * u / Math.sqrt(line.getXSumSquares());
    boolean rises = line.getSlope() - doubt > EVAPORATION;
    for (int i = Math.max(1, days.length - LATEST + 1); i < days.length; i++) {
      double chance = COVERAGE * Math.sqrt(2) * u + EVAPORATION * (days[i] - days[i - 1]);
      rises |= gravities[i] - gravities[i - 1] > chance;
    }
    return rises;
  }
}
