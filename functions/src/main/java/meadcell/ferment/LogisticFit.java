package meadcell.ferment;

import java.util.Arrays;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.apache.commons.math3.util.Pair;

/**
 * Least squares fit of y = floor + span / (1 + exp(a − r t)): growth where r is above 0, a fall to
 * the floor where it is below.
 */
final class LogisticFit {
  private static final int MOST_STEPS = 1000;

  /** How far beyond the data, by their range, the search for floor and ceiling begins. */
  private static final double MARGIN = 0.02;

  private final double[] times;
  private final boolean floorIsZero;
  private final double[] parameters;
  private final double[] standardErrors;
  private final double squares;

  private LogisticFit(double[] times, double[] values, boolean floorIsZero) {
    this.times = times;
    this.floorIsZero = floorIsZero;
    Optimum optimum =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(start(values))
                    .model(this::model)
                    .target(values)
                    .maxEvaluations(MOST_STEPS)
                    .maxIterations(MOST_STEPS)
                    .build());
    RealVector residuals = optimum.getResiduals();
    squares = residuals.dotProduct(residuals);
    parameters = optimum.getPoint().toArray();
    double variance = squares / (times.length - parameters.length);
    standardErrors = optimum.getSigma(1e-14).mapMultiply(Math.sqrt(variance)).toArray();
  }

  /** A fall or growth between a floor and a ceiling, both unknown. */
  static LogisticFit of(double[] times, double[] values) {
    return new LogisticFit(times, values, false);
  }

  /** Growth from nothing: the floor is 0. */
  static LogisticFit fromZero(double[] times, double[] values) {
    return new LogisticFit(times, values, true);
  }

  double floor() {
    return floorIsZero ? 0 : parameters[3];
  }

  double floorError() {
    return floorIsZero ? 0 : standardErrors[3];
  }

  double span() {
    return parameters[0];
  }

  double a() {
    return parameters[1];
  }

  double r() {
    return parameters[2];
  }

  /** Standard errors of span, a, r and the floor if it was fitted. */
  double[] standardErrors() {
    return standardErrors.clone();
  }

  double sumOfSquares() {
    return squares;
  }

  double midpoint() {
    return a() / r();
  }

  /** When the curve is this far above its floor. */
  double timeAt(double aboveFloor) {
    return (a() - Math.log(span() / aboveFloor - 1)) / r();
  }

  /** Slope at a time; below 0 in a fall. */
  double slope(double time) {
    double share = share(a(), r(), time);
    return span() * r() * share * (1 - share);
  }

  private static double share(double a, double r, double time) {
    return 1 / (1 + Math.exp(a - r * time));
  }

  /** Just beyond the data's range the curve is a straight line in its logit. */
  private double[] start(double[] values) {
    double least = StatUtils.min(values);
    double most = StatUtils.max(values);
    double floor = floorIsZero ? 0 : least - MARGIN * (most - least);
    double span = most + MARGIN * (most - least) - floor;
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < times.length; i++) {
      line.addData(times[i], Math.log(span / (values[i] - floor) - 1));
    }
    double[] start = {span, line.getIntercept(), -line.getSlope(), floor};
    return floorIsZero ? Arrays.copyOf(start, 3) : start;
  }

  private Pair<RealVector, RealMatrix> model(RealVector point) {
    double[] p = point.toArray();
    double[] values = new double[times.length];
    double[][] jacobian = new double[times.length][p.length];
    for (int i = 0; i < times.length; i++) {
      double share = share(p[1], p[2], times[i]);
      double steepness = p[0] * share * (1 - share);
      values[i] = p[0] * share + (floorIsZero ? 0 : p[3]);
      jacobian[i][0] = share;
      jacobian[i][1] = -steepness;
      jacobian[i][2] = steepness * times[i];
      if (!floorIsZero) {
        jacobian[i][3] = 1;
      }
    }
    return new Pair<>(new ArrayRealVector(values, false), new Array2DRowRealMatrix(jacobian));
  }
}
