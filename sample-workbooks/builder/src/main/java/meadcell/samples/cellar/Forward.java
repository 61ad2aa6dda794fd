package meadcell.samples.cellar;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import meadcell.gravity.Gravity;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Invented readings, worked forward from the models so that they are physically plausible. */
final class Forward {
  private Forward() {}

  /** A logistic fall of gravity, half done on the given day. */
  static DoubleUnaryOperator fall(double from, double to, double halfDay, double perDay) {
    return day -> to + (from - to) / (1 + Math.exp(perDay * (day - halfDay)));
  }

  /** What a 20 °C hydrometer reads, to its thousandth, in a ferment of this true gravity. */
  static double hydrometer(double gravity, double temperatureC, double original) {
    double reading =
        new BrentSolver(1e-9)
            .solve(
                100,
                r ->
                    Gravity.correct(r, temperatureC, 20, OptionalDouble.of(original), 0, 0)
                        - gravity,
                gravity - 0.002,
                gravity + 0.002);
    return rounded(reading, 3);
  }

  static double rounded(double value, int decimals) {
    double scale = Math.pow(10, decimals);
    return Math.round(value * scale) / scale;
  }
}
