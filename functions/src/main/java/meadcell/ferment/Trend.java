package meadcell.ferment;

import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * Whether a ferment still falls, from its latest readings.
 *
 * <p>Normal theory with the readings' uncertainty known: the fall per day is the slope b of a
 * straight line, and its 95 % limits are b ± 1.645 u / √Σ(t − mean t)². The readings are the latest
 * ones, as few as make that half-width at most half of {@code minFall}, but at least three: with
 * those every fall is told apart from none. Where even all readings do not suffice, only a fall can
 * be told.
 */
final class Trend {
  /** 95 % point of the normal distribution, one side. */
  private static final double Z = 1.6448536269514722;

  private static final int LEAST_READINGS = 3;

  private final double fall;
  private final double halfWidth;
  private final double lowestLevel;
  private final boolean longEnough;

  Trend(double[] days, double[] gravities, double u, double minFall) {
    SimpleRegression line = new SimpleRegression();
    double sum = 0;
    int i = days.length;
    while (i > 0 && !(line.getN() >= LEAST_READINGS && halfWidth(line, u) <= minFall / 2)) {
      i--;
      line.addData(days[i], gravities[i]);
      sum += gravities[i];
    }
    fall = -line.getSlope();
    halfWidth = halfWidth(line, u);
    lowestLevel = sum / line.getN() - Z * u / Math.sqrt(line.getN());
    longEnough = line.getN() >= LEAST_READINGS && halfWidth <= minFall / 2;
  }

  private static double halfWidth(SimpleRegression line, double u) {
    return Z * u / Math.sqrt(line.getXSumSquares());
  }

  String state(double expected, double minFall) {
    if (longEnough && fall + halfWidth < minFall) {
      return lowestLevel > expected ? "stalled" : "finished";
    }
    return fall - halfWidth > 0 ? "falling" : "cannot tell";
  }
}
