package meadcell.panel;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;
import org.apache.commons.math3.special.Erf;

/**
 * Tests that ask for one right answer: how often a guess is right, and how often a taster is for
 * whom the two meads lie d′ apart.
 *
 * <p>Thurstone's models as in Ennis 1993, Journal of Sensory Studies 8:353. Differentiated by d′,
 * each of them is made of φ(d′/√2), φ(d′/√6), e = erf(d′/2) and f = erf(d′/√12); integrated again,
 * the share right is {@code guess + a·e + b·e·f + c·(1/6 − 2T)}, T Owen's T of d′/√2 and 1/√3.
 */
final class Discrimination {
  /** Beyond this the share right is 1 to within 1e-9 in every test. */
  private static final double FARTHEST = 15;

  private static final double SQRT_12 = Math.sqrt(12);

  /** Over Owen's T from 0 to 1/√3, where it is as smooth as can be. */
  private static final GaussIntegrator RULE =
      new GaussIntegratorFactory().legendre(20, 0, 1 / Math.sqrt(3));

  /** Share of guesses that are right. */
  final double guess;

  private final double single;
  private final double product;
  private final double integral;

  Discrimination(double guess, double single, double product, double integral) {
    this.guess = guess;
    this.single = single;
    this.product = product;
    this.integral = integral;
  }

  /** Share right when that share of the people truly notices and the others guess. */
  double shareRight(double noticing) {
    return noticing + (1 - noticing) * guess;
  }

  /** Share right at a distance d′. */
  double shareAt(double distance) {
    double e = Erf.erf(distance / 2);
    double share = guess + single * e;
    if (product != 0) {
      share += product * e * Erf.erf(distance / SQRT_12);
    }
    return integral == 0 ? share : share + integral * (1 / 6.0 - 2 * owensT(distance));
  }

  private static double owensT(double distance) {
    double quarter = distance * distance / 4;
    return RULE.integrate(x -> Math.exp(-quarter * (1 + x * x)) / (1 + x * x)) / (2 * Math.PI);
  }

  /** The distance d′ at which that share is right; it is at least the guess. */
  double distance(double shareRight) {
    if (shareRight <= shareAt(0)) {
      return 0;
    }
    return new BracketingNthOrderBrentSolver(1e-12, 1e-12, 5)
        .solve(100, d -> shareAt(d) - shareRight, 0, FARTHEST);
  }
}
