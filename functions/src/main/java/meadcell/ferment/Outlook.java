package meadcell.ferment;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * What a ferment that goes on as it does may still fall.
 *
 * <p>The straight line through as many of the latest readings as agree with one: three at least,
 * and on as long as the scatter about it passes the χ² test at 95 % with the readings' uncertainty
 * known. In a ferment that slows down, older readings make it steeper, so that the limit errs to
 * the careful side; a long rest makes it narrow.
 */
final class Outlook {
  private static final int LEAST_READINGS = 3;
  private static final double AGREEING = 0.95;

  /** No mead ends below it. */
  private static final double LIGHTEST = 0.98;

  /**
   * g/L of sugar for a fall of 1: Balling's balance has 2130 in a weak must to 2310 in one of
   * 1.200; the largest, as it serves a limit.
   */
  static final double SUGAR_PER_GRAVITY = 2310;

  private Outlook() {}

  static Prospect.Remaining of(double[] days, double[] gravities, double horizonDays, double u) {
    if (days.length < LEAST_READINGS) {
      throw new Refusal(FermentReason.TOO_FEW_READINGS)
          .with("count", days.length)
          .with("least", LEAST_READINGS);
    }
    SimpleRegression line = latest(days, gravities, u);
    double most = Math.max(0, line.predict(days[days.length - 1]) - LIGHTEST);
    if (Rise.shows(line, days, gravities, u)) {
      throw new Refusal(FermentReason.RISES)
          .with("readings", line.getN())
          .with("last", gravities[gravities.length - 1], Quantity.SPECIFIC_GRAVITY);
    }
    double fall = Math.max(0, -line.getSlope()); // a rise within the scatter is none
    double expected = within(most, fall * horizonDays);
    double upper = within(most, (fall + Trend.halfWidth(line, u)) * horizonDays);
    return new Prospect.Remaining(expected, upper, SUGAR_PER_GRAVITY * upper);
  }

  private static SimpleRegression latest(double[] days, double[] gravities, double u) {
    SimpleRegression line = new SimpleRegression();
    for (int i = days.length - 1; i >= 0; i--) {
      line.addData(days[i], gravities[i]);
      if (line.getN() > LEAST_READINGS && !agrees(line, u)) {
        line.removeData(days[i], gravities[i]);
        break;
      }
    }
    return line;
  }

  private static boolean agrees(SimpleRegression line, double u) {
    return line.getSumSquaredErrors()
        <= u
            * u
            * new ChiSquaredDistribution(null, line.getN() - 2)
                .inverseCumulativeProbability(AGREEING);
  }

  private static double within(double most, double fall) {
    return Math.min(most, fall);
  }
}
