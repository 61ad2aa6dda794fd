package meadcell.blend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import meadcell.catalogue.General;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.exception.TooManyIterationsException;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NoFeasibleSolutionException;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;

/** A linear programme in unknowns that are not negative and of the order of 1. */
final class Programme {
  /** What a constraint may be missed by. */
  static final double TOLERANCE = 1e-9;

  private static final double CUT_OFF = 1e-12;
  private static final int MOST_ULPS = 10;
  private static final int MOST_STEPS = 10_000;

  /** What each unknown adds to what is made smallest. */
  final double[] cost;

  private final List<LinearConstraint> constraints = new ArrayList<>();

  Programme(int unknowns) {
    cost = new double[unknowns];
  }

  /** Coefficients of the first unknowns; the others have none. */
  void require(double[] coefficients, Relationship relationship, double value) {
    constraints.add(
        new LinearConstraint(Arrays.copyOf(coefficients, cost.length), relationship, value));
  }

  /** The same with one further unknown in it. */
  void require(
      double[] coefficients,
      int further,
      double coefficient,
      Relationship relationship,
      double value) {
    double[] all = Arrays.copyOf(coefficients, cost.length);
    all[further] = coefficient;
    require(all, relationship, value);
  }

  double[] solve() throws NoFeasibleSolutionException {
    try {
      return new SimplexSolver(TOLERANCE, MOST_ULPS, CUT_OFF)
          .optimize(
              new MaxIter(MOST_STEPS),
              new LinearObjectiveFunction(cost, 0),
              new LinearConstraintSet(constraints),
              new NonNegativeConstraint(true))
          .getPoint();
    } catch (TooManyIterationsException e) {
      throw new Refusal(General.NOT_SETTLED).with("steps", MOST_STEPS);
    }
  }
}
