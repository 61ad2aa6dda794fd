package meadcell.ferment;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import meadcell.alcohol.Extract;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Where a must ends if nothing stops the yeast before its sugar is gone: no further it can fall.
 * Lowest and highest are 95 % limits, as what is no sugar differs from honey to honey.
 */
record DryEnd(double lowest, double likely, double highest) {
  private static final double U_GRAVITY = 0.0005;
  private static final double STEP = 1e-5;

  /** g/L: so little sugar is none. */
  private static final double NONE = 1e-3;

  /** The lowest gravity that any function takes. */
  private static final double LIGHTEST = 0.98;

  static DryEnd of(double original) {
    return new DryEnd(
        gravity(original, present -> limits(original, present).high()),
        gravity(original, present -> Extract.sugarLeft(original, present, OptionalDouble.empty())),
        gravity(original, present -> limits(original, present).low()));
  }

  private static Extract.SugarLimits limits(double original, double present) {
    return Extract.sugarLeftLimits(
        original, present, OptionalDouble.empty(), OptionalDouble.empty(), U_GRAVITY);
  }

  /** Where the sugar comes to an end. */
  private static double gravity(double original, DoubleUnaryOperator sugar) {
    double least = Math.max(LIGHTEST, Course.leastGravity(original) + STEP);
    return sugar.applyAsDouble(least) > NONE
        ? least
        : new BrentSolver(STEP)
            .solve(100, g -> sugar.applyAsDouble(g) - NONE, least, original - STEP);
  }
}
