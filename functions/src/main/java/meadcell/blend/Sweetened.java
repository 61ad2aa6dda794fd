package meadcell.blend;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.EthanolWater;
import meadcell.density.Mixture;
import meadcell.density.Sucrose;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * A mead with honey dissolved in it until it has a target gravity. Mass, ethanol and extract are
 * conserved; honey solids count as sucrose; gravity, alcohol and extract obey Tabarié's rule.
 */
record Sweetened(double honeyKg, double volumeL, double abv) {
  /** kg/L: a gravity times this is a density. */
  private static final double WATER = Sucrose.density(0, 20) / 1000;

  /** A reading so little below that of water and alcohol is noise (common practice, no source). */
  private static final double READING_NOISE = 0.002;

  private static final double ROUNDING = 1e-13;
  private static final int MOST_EVALUATIONS = 100;

  static Sweetened to(double target, double volumeL, double gravity, double abv, double moisture) {
    refuse(target, gravity, abv);
    double solids = 1 - moisture / 100;
    double lacking = solids * gravity * WATER - kilogramsPerLitre(gravity, abv);
    // litres from a litre, if the alcohol were already as dilute as that growth makes it; falls as
    // the growth supposed rises, so the growth that is its own result lies between two trials
    UnivariateFunction growth =
        supposed -> lacking / (solids * target * WATER - kilogramsPerLitre(target, abv / supposed));
    double most = growth.value(1);
    double least = growth.value(most);
    double grown =
        most - least < ROUNDING
            ? most
            : new BrentSolver(ROUNDING)
                .solve(MOST_EVALUATIONS, g -> growth.value(g) - g, least, most);
    return new Sweetened(
        volumeL * WATER * (grown * target - gravity), volumeL * grown, abv / grown);
  }

  private static double kilogramsPerLitre(double gravity, double abv) {
    return Mixture.extract(gravity, abv / 100) / 1000;
  }

  private static void refuse(double target, double gravity, double abv) {
    if (target < gravity) {
      throw new Refusal(BlendReason.HONEY_CANNOT_LOWER)
          .with("target", target, Quantity.SPECIFIC_GRAVITY)
          .with("gravity", gravity, Quantity.SPECIFIC_GRAVITY);
    }
    double dry = EthanolWater.gravity20(abv / 100);
    if (abv > 0 && gravity < dry - READING_NOISE) {
      throw new Refusal(BlendReason.LIGHTER_THAN_DRY)
          .with("gravity", gravity, Quantity.SPECIFIC_GRAVITY)
          .with("abv", abv, Quantity.PERCENT_VOL)
          .with("dry", dry, Quantity.SPECIFIC_GRAVITY, 4);
    }
  }
}
