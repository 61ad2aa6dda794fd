package meadcell.sulfite;

import java.util.Arrays;
import meadcell.catalogue.Numbers;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/** Readings that fall by the same share every day: a straight line through their logarithms. */
final class Decline {
  /** A forecast further ahead is worth nothing (common practice, no source). */
  private static final double FURTHEST_DAYS = 3650;

  private final SimpleRegression line = new SimpleRegression();
  private final double first;
  private final double last;

  Decline(double[] days, double[] values) {
    first = Arrays.stream(days).min().orElseThrow();
    last = Arrays.stream(days).max().orElseThrow();
    if (first == last) {
      throw Refusal.inconsistent("days must hold at least two different days.");
    }
    for (int i = 0; i < days.length; i++) {
      line.addData(days[i] - first, Math.log(values[i]));
    }
  }

  double dayWhen(double limit) {
    double start = Math.exp(line.getIntercept());
    if (limit > start) {
      throw Refusal.inconsistent(
          "limit is "
              + Numbers.text(limit)
              + " mg/L, above what the fit has on the first day, "
              + Numbers.text(start, 3)
              + " mg/L.");
    }
    double day = first + (Math.log(limit) - line.getIntercept()) / line.getSlope();
    if (line.getSlope() >= 0 || day > last + FURTHEST_DAYS) {
      throw Refusal.noSolution(
          "The readings hardly fall: limit is not reached within 10 years of the last one.");
    }
    return day;
  }
}
