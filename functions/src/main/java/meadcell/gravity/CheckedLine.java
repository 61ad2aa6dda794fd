package meadcell.gravity;

import java.util.Arrays;
import java.util.OptionalDouble;
import meadcell.catalogue.Refusal;

/**
 * The straight line through what an instrument lacked at its checks: least squares, with the
 * standard uncertainty of a point of it (JCGM 100:2008, H.3). One check, or several at one place,
 * make a level line.
 */
final class CheckedLine {
  /** Less scatter, as a part of the largest offset, is rounding: the scale shows none. */
  private static final double ROUNDING = 1e-9;

  private final int checks;
  private final double meanX;
  private final double meanY;
  private final double spread;
  private final double slope;
  private final double uOfOne;

  /**
   * @param u standard uncertainty of one check; left out: from the scatter about the line
   */
  CheckedLine(double[] x, double[] y, OptionalDouble u) {
    checks = x.length;
    meanX = Arrays.stream(x).average().orElseThrow();
    meanY = Arrays.stream(y).average().orElseThrow();
    double squares = 0;
    double products = 0;
    for (int i = 0; i < checks; i++) {
      squares += (x[i] - meanX) * (x[i] - meanX);
      products += (x[i] - meanX) * (y[i] - meanY);
    }
    spread = squares;
    slope = squares > 0 ? products / squares : 0;
    int free = checks - (squares > 0 ? 2 : 1);
    if (u.isEmpty() && free < 1) {
      throw new Refusal(GravityReason.UNCERTAINTY_DUE).with("checks", checks);
    }
    double rest = 0;
    for (int i = 0; i < checks; i++) {
      double off = y[i] - at(x[i]);
      rest += off * off;
    }
    double scatter = free > 0 ? Math.sqrt(rest / free) : 0;
    double largest = Arrays.stream(y).map(Math::abs).max().orElseThrow();
    if (u.isEmpty() && scatter <= ROUNDING * largest) {
      throw new Refusal(GravityReason.CHECKS_EXACT);
    }
    uOfOne = Math.max(scatter, u.orElse(0));
  }

  double at(double x) {
    return meanY + slope * (x - meanX);
  }

  double uAt(double x) {
    double off = x - meanX;
    return uOfOne * Math.sqrt(1.0 / checks + (spread > 0 ? off * off / spread : 0));
  }

  double slope() {
    return slope;
  }

  double uOfSlope() {
    return uOfOne / Math.sqrt(spread);
  }
}
