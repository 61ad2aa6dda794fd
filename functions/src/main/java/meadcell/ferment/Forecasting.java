package meadcell.ferment;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Where a falling gravity ends, and when the readings cannot say.
 *
 * <p>The curve is the one of several skews that has the least AICc. The limits hold every end with
 * which any of the curves still fits (profile of the sum of squares, Student's t), widened by a
 * tenth of what is left to fall, since no ferment is a curve, and bounded by what the sugar balance
 * allows. They are tested on ferments that these curves have not made.
 */
final class Forecasting {
  private static final double POINTS = 1000;
  private static final int LEAST_READINGS = 5;
  private static final double LEAST_FALL = 0.02;

  /** From an abrupt end to a long tail; 1 is the plain log-logistic curve. */
  private static final double[] SKEWS = {0.1, 0.5, 1, 2, 5};

  private static final double PLAIN = 1;
  private static final int PARAMETERS = 4;

  /** Standard uncertainty of a reading, in points: no log scatters less, whatever it looks like. */
  private static final double U = 0.5;

  private static final double NORMAL = 1.959964;

  // Rules of our own, from simulation.
  private static final double OF_WHAT_IS_LEFT = 0.1;
  private static final double WIDEST = 30;
  private static final double MOST_SCATTER = 8 * U; // as far as it was tried
  private static final double RUNNING = -2.326348; // 1 % of the normal distribution

  private final double[] times;
  private final double[] points;
  private final List<FallingCurve> curves;
  private final double variance;
  private final double mostSquares;

  private Forecasting(double[] days, double[] gravities) {
    times = DoubleStream.of(days).map(day -> day - days[0]).toArray();
    points = DoubleStream.of(gravities).map(gravity -> POINTS * gravity).toArray();
    curves =
        DoubleStream.of(SKEWS)
            .mapToObj(skew -> FallingCurve.fit(skew, times, points))
            .flatMap(Optional::stream)
            .toList();
    int freedom = Math.max(1, times.length - PARAMETERS - 1);
    double scatter = leastSquares() / freedom;
    variance = Math.max(scatter, U * U);
    double quantile =
        scatter > U * U
            ? new TDistribution(null, freedom).inverseCumulativeProbability(0.975)
            : NORMAL;
    mostSquares = leastSquares() + quantile * quantile * variance;
  }

  static Prospect.Forecast of(double[] days, double[] gravities, double tolerance) {
    if (days.length < LEAST_READINGS) {
      throw new Refusal(FermentReason.TOO_FEW_READINGS)
          .with("count", days.length)
          .with("least", LEAST_READINGS);
    }
    double fall = gravities[0] - gravities[days.length - 1];
    if (fall < LEAST_FALL) {
      throw new Refusal(FermentReason.FALLS_TOO_LITTLE)
          .with("fall", fall, Quantity.NUMBER, 3)
          .with("least", LEAST_FALL, Quantity.NUMBER);
    }
    return new Forecasting(days, gravities).forecast(days[0], tolerance);
  }

  private Prospect.Forecast forecast(double firstDay, double tolerance) {
    FallingCurve curve =
        fitting()
            .min(Comparator.comparingDouble(this::aicc))
            .filter(best -> variance <= MOST_SCATTER * MOST_SCATTER && !runs(best.residuals()))
            .orElseThrow(() -> new Refusal(FermentReason.NO_CURVE));
    double last = points[points.length - 1];
    if (curve.end() > last + 2 * U) {
      throw new Refusal(FermentReason.ENDS_ABOVE)
          .with("end", curve.end() / POINTS, Quantity.NUMBER, 4)
          .with("last", last / POINTS, Quantity.NUMBER, 4);
    }
    DryEnd dry = DryEnd.of(points[0] / POINTS);
    double terminal = Math.min(last, Math.max(curve.end(), POINTS * dry.likely()));
    double spare = OF_WHAT_IS_LEFT * (last - terminal);
    double upper = Math.min(last + 2 * U, Math.max(highestEnd() + spare, POINTS * dry.highest()));
    double lower = Math.min(terminal, Math.max(lowestEnd() - spare, POINTS * dry.lowest()));
    if (upper - lower > WIDEST) {
      throw new Refusal(FermentReason.END_OPEN)
          .with("lower", lower / POINTS, Quantity.NUMBER, 4)
          .with("upper", upper / POINTS, Quantity.NUMBER, 4);
    }
    return new Prospect.Forecast(
        terminal / POINTS,
        (upper - lower) / (2 * NORMAL * POINTS),
        firstDay + curve.timeAt(Math.max(0, terminal - curve.end()) + POINTS * tolerance),
        curve.steepestFall() / POINTS,
        lower / POINTS,
        upper / POINTS);
  }

  private double leastSquares() {
    return curves.stream().mapToDouble(FallingCurve::squares).min().orElse(0);
  }

  private Stream<FallingCurve> fitting() {
    return curves.stream().filter(curve -> curve.squares() <= mostSquares);
  }

  /** The skew counts as a parameter where it is chosen. */
  private double aicc(FallingCurve curve) {
    int parameters = curve.skew() == PLAIN ? PARAMETERS : PARAMETERS + 1;
    int spare = Math.max(1, times.length - parameters - 1);
    return curve.squares() / variance
        + 2 * parameters
        + 2.0 * parameters * (parameters + 1) / spare;
  }

  private double lowestEnd() {
    return fitting().mapToDouble(curve -> curve.end() - reach(curve)).min().orElseThrow();
  }

  private double highestEnd() {
    return fitting().mapToDouble(curve -> curve.end() + reach(curve)).max().orElseThrow();
  }

  /** How far the end can move before the curve no longer fits; anywhere, if nothing holds it. */
  private double reach(FallingCurve curve) {
    double reach = curve.endPerNoise() * Math.sqrt(mostSquares - curve.squares());
    return Double.isNaN(reach) ? Double.POSITIVE_INFINITY : reach;
  }

  /** Wald and Wolfowitz: too few changes of sign for chance. */
  private static boolean runs(double[] residuals) {
    double above = DoubleStream.of(residuals).filter(residual -> residual > 0).count();
    double below = residuals.length - above;
    int runs = 1;
    for (int i = 1; i < residuals.length; i++) {
      runs += residuals[i] > 0 == residuals[i - 1] > 0 ? 0 : 1;
    }
    double mean = 1 + 2 * above * below / residuals.length;
    double variance = (mean - 1) * (mean - 2) / (residuals.length - 1);
    return runs - mean < RUNNING * Math.sqrt(variance);
  }
}
