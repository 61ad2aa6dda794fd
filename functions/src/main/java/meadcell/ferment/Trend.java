package meadcell.ferment;

import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * Whether a ferment still falls, from its latest readings.
 *
 * <p>Normal theory with the readings' uncertainty known: the fall per day is the slope of a
 * straight line, and its one-sided 95 % limits are 1.645 u / √Σ(t − mean t)² from it. The readings
 * are the latest ones, as few as make that half-width at most 0.6 of {@code minFall}, but at least
 * three. Where even all readings do not suffice, only a fall can be told.
 */
record Trend(
    int readings, double fall, double halfWidth, double level, boolean longEnough, double minFall) {
  /** 95 % point of the normal distribution, one side. */
  static final double Z = 1.6448536269514722;

  private static final int LEAST_READINGS = 3;
  private static final double NARROW = 0.6;

  /** Nobody expects an end more exactly than this: our own estimate. */
  static final double EXPECTATION = 0.002;

  private static final double ROUNDING = 1e-9;

  static Trend of(double[] days, double[] gravities, double u, double minFall) {
    SimpleRegression line = new SimpleRegression();
    int i = days.length;
    while (i > 0 && !longEnough(line, u, minFall)) {
      i--;
      line.addData(days[i], gravities[i]);
    }
    return new Trend(
        days.length - i,
        -line.getSlope(),
        halfWidth(line, u),
        line.predict(days[days.length - 1]),
        longEnough(line, u, minFall),
        minFall);
  }

  private static boolean longEnough(SimpleRegression line, double u, double minFall) {
    return line.getN() >= LEAST_READINGS && halfWidth(line, u) <= NARROW * minFall;
  }

  static double halfWidth(SimpleRegression line, double u) {
    return Z * u / Math.sqrt(line.getXSumSquares());
  }

  String state(double expected) {
    if (fall - halfWidth > 0) {
      return "falling";
    }
    if (!longEnough || fall + halfWidth >= minFall) {
      return "cannot tell";
    }
    return level <= expected + EXPECTATION + ROUNDING ? "finished" : "stalled";
  }
}
