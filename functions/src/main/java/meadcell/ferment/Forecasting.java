package meadcell.ferment;

import meadcell.catalogue.Numbers;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.linear.SingularMatrixException;

/** Where a falling gravity ends, from a logistic fit, and when the readings cannot say. */
final class Forecasting {
  private static final int LEAST_READINGS = 5;

  // Rules of our own: with them no simulated ferment is forecast to end more than 0.01 from where
  // it does; asking only for a midpoint before the last reading, 3 % were, with small errors
  // stated.
  private static final double LEAST_FALL = 0.02;
  private static final int READINGS_AFTER_TURN = 3;
  private static final double SLOWED = 0.5;

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
    boolean falls = fit.r() < 0 && fit.span() > 0;
    boolean turned =
        fit.midpoint() <= times[last + 1 - READINGS_AFTER_TURN]
            && fit.slope(times[last]) >= SLOWED * fit.slope(fit.midpoint());
    if (!falls || !turned || end < LOWEST_END) {
      throw Refusal.noSolution(
          "The readings do not show an end yet: at least "
              + READINGS_AFTER_TURN
              + " must lie behind the fastest fall, and the fall must be down to half of it.");
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
