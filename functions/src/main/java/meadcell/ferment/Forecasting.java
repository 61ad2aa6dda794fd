package meadcell.ferment;

import meadcell.catalogue.Numbers;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.linear.SingularMatrixException;

/** Where a falling gravity ends, from a logistic fit, and when the readings cannot say. */
final class Forecasting {
  private static final int LEAST_READINGS = 5;

  /** A smaller fall is reading noise (common practice, no source). */
  private static final double LEAST_FALL = 0.005;

  /** No mead ends below this (common practice, no source). */
  private static final double LOWEST_END = 0.97;

  private static final double POINTS = 1000;

  private Forecasting() {}

  static Ferment.Forecast of(double[] days, double[] gravities, double tolerance) {
    int last = days.length - 1;
    if (days.length < LEAST_READINGS) {
      throw Refusal.inconsistent(
          "days has " + days.length + " readings; at least " + LEAST_READINGS + " are due.");
    }
    double fall = gravities[0] - gravities[last];
    if (fall < LEAST_FALL) {
      throw Refusal.inconsistent(
          "gravities fall by "
              + Numbers.text(fall, 3)
              + " from first to last; at least "
              + LEAST_FALL
              + " is due.");
    }
    double[] times = new double[days.length];
    double[] points = new double[days.length];
    for (int i = 0; i <= last; i++) {
      times[i] = days[i] - days[0];
      points[i] = POINTS * gravities[i];
    }
    LogisticFit fit = fit(times, points);
    double end = fit.floor() / POINTS;
    if (fit.r() >= 0 || fit.span() <= 0 || fit.midpoint() > times[last] || end < LOWEST_END) {
      throw Refusal.noSolution(
          "The readings have not turned towards an end yet: the fall has not slowed down enough."
              + " Take more readings.");
    }
    if (fit.span() <= POINTS * tolerance) {
      throw Refusal.inconsistent(
          "tolerance is " + Numbers.text(tolerance) + ", as much as the whole fall.");
    }
    return new Ferment.Forecast(
        end,
        fit.floorError() / POINTS,
        days[0] + fit.timeAt(POINTS * tolerance),
        -fit.slope(Math.max(0, fit.midpoint())) / POINTS);
  }

  private static LogisticFit fit(double[] times, double[] points) {
    try {
      return LogisticFit.of(times, points);
    } catch (MathIllegalStateException | SingularMatrixException e) {
      throw Refusal.notConverged(
          "No falling curve fits these readings. Give them from the start of the ferment on, as"
              + " GRAVITY.CORRECT gives them.");
    }
  }
}
