package meadcell.panel;

import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.special.Erf;

/** How many right answers chance alone gives: the exact binomial. */
final class RightAnswers {
  /** Rounding that must not decide where a probability equals the limit exactly. */
  private static final double SLACK = 1 + 1e-12;

  private RightAnswers() {}

  /** {@return probability of at least so many right answers} */
  static double atLeast(int right, int tasters, double chance) {
    return right <= 0 ? 1 : right > tasters ? 0 : upperTail(right, tasters, chance);
  }

  private static double upperTail(int right, int tasters, double chance) {
    return Beta.regularizedBeta(chance, right, tasters - right + 1.0);
  }

  /** {@return probability of at most so many right answers} */
  static double atMost(int right, int tasters, double chance) {
    return atLeast(tasters - right, tasters, 1 - chance);
  }

  /**
   * {@return fewest right answers that are no likelier than alpha; one more than the tasters if
   * none is}
   */
  static int least(int tasters, double chance, double alpha) {
    double normal = Math.sqrt(2 * tasters * chance * (1 - chance)) * Erf.erfInv(1 - 2 * alpha);
    int least = Math.min(tasters, (int) Math.rint(tasters * chance + normal)); // near it
    while (atLeast(least, tasters, chance) > alpha * SLACK) {
      least++;
    }
    while (atLeast(least - 1, tasters, chance) <= alpha * SLACK) {
      least--;
    }
    return least;
  }

  /** {@return chance that the test comes out when that share of the people truly notices} */
  static double power(int tasters, double noticing, Discrimination test, double alpha) {
    int least = least(tasters, test.guess, alpha);
    return atLeast(least, tasters, test.shareRight(noticing));
  }

  /** {@return smallest panel whose chance reaches {@code wanted}} */
  static int tasters(double noticing, Discrimination test, double alpha, double wanted) {
    int tasters = 1;
    while (power(tasters, noticing, test, alpha) < wanted) {
      tasters++;
    }
    return tasters;
  }
}
