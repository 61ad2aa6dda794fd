package meadcell.ferment;

import java.util.OptionalDouble;
import meadcell.alcohol.SugarLeft;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Where a must ends if nothing stops the yeast before its sugar is gone: no further it can fall.
 * Lowest and highest are 95 % limits, as what is no sugar differs from honey to honey.
 */
record DryEnd(double lowest, double likely, double highest) {
  private static final double U_GRAVITY = 0.0005;
  private static final double STEP = 1e-5;

  /** The lowest gravity that any function takes. */
  private static final double LIGHTEST = 0.98;

  static DryEnd of(double original) {
    return new DryEnd(
        gravity(original, SugarLeft::highest),
        gravity(original, SugarLeft::expected),
        gravity(original, SugarLeft::lowest));
  }

  private static double gravity(double original, Limit limit) {
    UnivariateFunction sugar =
        present ->
            limit.of(
                SugarLeft.of(
                    original, present, OptionalDouble.empty(), OptionalDouble.empty(), U_GRAVITY));
    double least = Math.max(LIGHTEST, Course.leastGravity(original) + STEP);
    return sugar.value(least) >= 0
        ? least
        : new BrentSolver(STEP).solve(100, sugar, least, original - STEP);
  }

  private interface Limit {
    double of(SugarLeft sugar);
  }
}
