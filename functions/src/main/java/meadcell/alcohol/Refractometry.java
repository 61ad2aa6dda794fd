package meadcell.alcohol;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.RefractiveIndex;
import meadcell.density.Sucrose;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.exception.NoBracketingException;

/** Alcohol where refractive index and gravity meet: alcohol raises the one and lowers the other. */
final class Refractometry {

  private static final int MOST_EVALUATIONS = 100;

  /** Far below what a refractometer can tell, of the index and of the alcohol. */
  private static final double ROUNDING = 1e-12;

  private Refractometry() {}

  static double abv(double brix, double gravity) {
    double index = RefractiveIndex.sucrose(brix / 100);
    double without = RefractiveIndex.mead(gravity, 0) - index;
    if (without > ROUNDING) {
      throw new Refusal(AlcoholReason.BRIX_BELOW_GRAVITY)
          .with("brix", brix, Quantity.BRIX)
          .with("least", 100 * Sucrose.massFractionFromGravity(gravity), Quantity.BRIX, 5)
          .with("gravity", gravity, Quantity.SPECIFIC_GRAVITY);
    }
    double abv = without > -ROUNDING ? 0 : solved(index, brix, gravity);
    Fermentation.extract(gravity, 100 * abv);
    return 100 * abv;
  }

  private static double solved(double index, double brix, double gravity) {
    try {
      return new BrentSolver(ROUNDING)
          .solve(
              MOST_EVALUATIONS,
              q -> RefractiveIndex.mead(gravity, q) - index,
              0,
              Fermentation.MOST_ABV);
    } catch (NoBracketingException e) {
      throw new Refusal(AlcoholReason.TOO_MUCH_ALCOHOL)
          .with("brix", brix, Quantity.BRIX)
          .with("gravity", gravity, Quantity.SPECIFIC_GRAVITY)
          .with("most", 100 * Fermentation.MOST_ABV, Quantity.PERCENT_VOL);
    }
  }
}
