package meadcell.ferment;

import java.util.Comparator;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.apache.commons.math3.util.FastMath;
import org.apache.commons.math3.util.Pair;

/**
 * Least squares fit of y = end + drop (1 + ν (t/τ)^p)^(−1/ν), for t from 0 on, with the skew ν
 * given: Burr's distribution of type XII. With ν = 1 it is the log-logistic curve; a small ν ends
 * abruptly (Weibull's curve at 0), a large one in a long tail.
 */
final class FallingCurve {
  private static final int MOST_STEPS = 100;

  /** Beyond it the curve has arrived, and powers of e overflow. */
  private static final double FAR = 600;

  /** How far below the lowest reading, by the fall, the search for the end begins. */
  private static final double[] BELOW = {0.02, 0.3};

  private static final double ABOVE = 0.02;

  private final double skew;
  private final double[] times;
  private final double end;
  private final double drop;
  private final double power;
  private final double logScale;
  private final double[] residuals;
  private final double squares;
  private final double endPerNoise;

  private FallingCurve(double skew, double[] times, double[] values, double[] start) {
    this.skew = skew;
    this.times = times;
    Optimum optimum =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(start)
                    .model(this::model)
                    .target(values)
                    .maxEvaluations(MOST_STEPS)
                    .maxIterations(MOST_STEPS)
                    .build());
    end = optimum.getPoint().getEntry(0);
    drop = optimum.getPoint().getEntry(1);
    power = Math.exp(optimum.getPoint().getEntry(2));
    logScale = optimum.getPoint().getEntry(3);
    residuals = optimum.getResiduals().toArray();
    squares = optimum.getResiduals().dotProduct(optimum.getResiduals());
    endPerNoise = optimum.getSigma(1e-14).getEntry(0);
  }

  /** The best falling curve of that skew, if there is one. */
  static Optional<FallingCurve> fit(double skew, double[] times, double[] values) {
    return DoubleStream.of(BELOW)
        .mapToObj(below -> fit(skew, times, values, below))
        .filter(Objects::nonNull)
        .filter(curve -> curve.drop > 0)
        .min(Comparator.comparingDouble(FallingCurve::squares));
  }

  /** With end and top guessed, ln((share^−ν − 1) / ν) is a straight line in ln t. */
  private static FallingCurve fit(double skew, double[] times, double[] values, double below) {
    double lowest = DoubleStream.of(values).min().orElseThrow();
    double highest = DoubleStream.of(values).max().orElseThrow();
    double end = lowest - below * (highest - lowest);
    double drop = highest + ABOVE * (highest - lowest) - end;
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < times.length; i++) {
      if (times[i] > 0) {
        double share = (values[i] - end) / drop;
        line.addData(Math.log(times[i]), Math.log((Math.pow(share, -skew) - 1) / skew));
      }
    }
    double power = line.getSlope();
    if (!(power > 0)) {
      return null;
    }
    try {
      return new FallingCurve(
          skew,
          times,
          values,
          new double[] {end, drop, Math.log(power), -line.getIntercept() / power});
    } catch (MathIllegalStateException | SingularMatrixException e) {
      return null; // this start leads nowhere
    }
  }

  double skew() {
    return skew;
  }

  double end() {
    return end;
  }

  double drop() {
    return drop;
  }

  /** Standard error of the end if the readings' is 1. */
  double endPerNoise() {
    return endPerNoise;
  }

  double[] residuals() {
    return residuals.clone();
  }

  /** Sum of squared residuals. */
  double squares() {
    return squares;
  }

  double value(double time) {
    return end + drop * share(skew, logReach(power, logScale, time));
  }

  /** When the curve is this far above its end. */
  double timeAt(double aboveEnd) {
    double reach = (Math.pow(aboveEnd / drop, -skew) - 1) / skew;
    return Math.exp(logScale + Math.log(reach) / power);
  }

  /**
   * Steepest fall since time 0; where the curve begins infinitely steep, the mean of its first
   * stretch.
   */
  double steepestFall() {
    if (power <= 1) {
      return (value(times[0]) - value(times[1])) / (times[1] - times[0]);
    }
    double logReach = Math.log((1 - 1 / power) / (1 + skew / power));
    return -drop * power * sharePerLogReach(skew, logReach) / Math.exp(logScale + logReach / power);
  }

  private static double logReach(double power, double logScale, double time) {
    double logReach = power * (Math.log(time) - logScale); // −∞ at time 0
    return Math.max(-FAR, Math.min(FAR, logReach));
  }

  private static double share(double skew, double logReach) {
    return FastMath.exp(-Math.log1p(skew * Math.exp(logReach)) / skew);
  }

  private static double sharePerLogReach(double skew, double logReach) {
    double reach = Math.exp(logReach);
    return -share(skew, logReach) * reach / (1 + skew * reach);
  }

  private Pair<RealVector, RealMatrix> model(RealVector point) {
    double[] p = point.toArray();
    double[] values = new double[times.length];
    double[][] jacobian = new double[times.length][];
    for (int i = 0; i < times.length; i++) {
      double power = Math.exp(p[2]);
      double logReach = logReach(power, p[3], times[i]);
      double share = share(skew, logReach);
      double slope = p[1] * sharePerLogReach(skew, logReach);
      values[i] = p[0] + p[1] * share;
      jacobian[i] = new double[] {1, share, slope * logReach, -slope * power};
    }
    return new Pair<>(new ArrayRealVector(values, false), new Array2DRowRealMatrix(jacobian));
  }
}
