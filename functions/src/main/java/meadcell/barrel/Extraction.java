package meadcell.barrel;

import java.util.Arrays;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.apache.commons.math3.util.Pair;

/** Wood going into mead: an exponential approach to a limit. */
final class Extraction {
  /** Beyond this many times the last day the notes tell no limit from a straight line. */
  private static final double LONGEST = 3;

  /** Before this share of the first day after filling the rise is over before it was noted. */
  private static final double SHORTEST = 0.2;

  private Extraction() {}

  static double share(double days, double halfTime) {
    return -Math.expm1(-Math.log(2) * days / halfTime);
  }

  static WoodContact.ExtractionFit fit(double[] days, double[] intensities) {
    double[] later = Arrays.stream(days).filter(day -> day > 0).sorted().distinct().toArray();
    if (later.length < 3 || days.length < 4) {
      throw new Refusal(BarrelReason.TOO_FEW_NOTES).with("count", days.length);
    }
    double first = later[0];
    double last = later[later.length - 1];
    try {
      Optimum best =
          new LevenbergMarquardtOptimizer()
              .optimize(
                  new LeastSquaresBuilder()
                      .model(point -> model(days, point))
                      .target(intensities)
                      .start(start(days, intensities, first, last))
                      .maxEvaluations(1000)
                      .maxIterations(1000)
                      .build());
      double halfTime = best.getPoint().getEntry(1);
      if (halfTime < SHORTEST * first) {
        throw new Refusal(BarrelReason.NO_RISE).with("day", first, Quantity.NUMBER);
      }
      if (!(halfTime < LONGEST * last)) {
        throw new Refusal(BarrelReason.NO_LEVEL).with("day", last, Quantity.NUMBER);
      }
      double noise = best.getCost() / Math.sqrt(days.length - 2);
      RealVector errors = best.getSigma(1e-14).mapMultiply(noise);
      return new WoodContact.ExtractionFit(
          best.getPoint().getEntry(0), halfTime, errors.getEntry(0), errors.getEntry(1));
    } catch (MathIllegalStateException | SingularMatrixException e) {
      throw new Refusal(BarrelReason.NO_FIT);
    }
  }

  /** The best of a row of half times, each with the limit that suits it. */
  private static double[] start(double[] days, double[] intensities, double first, double last) {
    double[] best = null;
    double least = Double.POSITIVE_INFINITY;
    for (double halfTime = SHORTEST * first; halfTime < LONGEST * last; halfTime *= 1.2) {
      double xy = 0;
      double xx = 0;
      double yy = 0;
      for (int i = 0; i < days.length; i++) {
        double x = share(days[i], halfTime);
        xy += x * intensities[i];
        xx += x * x;
        yy += intensities[i] * intensities[i];
      }
      double squares = yy - xy * xy / xx;
      if (squares < least) {
        least = squares;
        best = new double[] {xy / xx, halfTime};
      }
    }
    return best;
  }

  private static Pair<RealVector, RealMatrix> model(double[] days, RealVector point) {
    double limit = point.getEntry(0);
    double halfTime = point.getEntry(1);
    double[] values = new double[days.length];
    double[][] slopes = new double[days.length][];
    for (int i = 0; i < days.length; i++) {
      double x = share(days[i], halfTime);
      values[i] = limit * x;
      slopes[i] =
          new double[] {x, -limit * (1 - x) * Math.log(2) * days[i] / (halfTime * halfTime)};
    }
    return new Pair<>(new ArrayRealVector(values, false), new Array2DRowRealMatrix(slopes, false));
  }
}
