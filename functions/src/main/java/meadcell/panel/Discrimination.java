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
 * every one of them is made of φ(d′/√2), φ(d′/√6) and erf of d′/2 and d′/√12; so the share right is
 * {@code guess + a·e + b·e·f + c·G} with e = erf(d′/2), f = erf(d′/√12), G = ∫₀^d′ φ(t/√2)/√2 ·
 * erf(t/√12) dt.
 */
final class Discrimination {
  /** Beyond this the share right is 1 to within 1e-9 in every test. */
  private static final double FARTHEST = 15;

  private static final double SQRT_12 = Math.sqrt(12);
  private static final double HALF_BY_SQRT_PI = 0.5 / Math.sqrt(Math.PI);

  /** From −1 to 1. */
  private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(40);

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
    return integral == 0 ? share : share + integral * overlap(distance);
  }

  private static double overlap(double distance) {
    double half = distance / 2;
    return half
        * HALF_BY_SQRT_PI
        * RULE.integrate(
            x -> {
              double t = half * (1 + x);
              return Math.exp(-t * t / 4) * Erf.erf(t / SQRT_12);
            });
  }

  /** The distance d′ at which that share is right; it is at least the guess. */
  double distance(double shareRight) {
    if (shareRight <= guess) {
      return 0;
    }
    return new BracketingNthOrderBrentSolver(1e-12, 1e-12, 5)
        .solve(100, d -> shareAt(d) - shareRight, 0, FARTHEST);
  }
}
