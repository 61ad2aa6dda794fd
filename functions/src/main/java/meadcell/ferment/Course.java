package meadcell.ferment;

import java.util.OptionalDouble;
import meadcell.alcohol.Alcohol;
import meadcell.density.Balling;
import meadcell.density.EthanolWater;
import meadcell.density.Mixture;
import meadcell.density.Sucrose;
import meadcell.density.Water;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** How far a ferment has gone, by Balling's balance: g/L of the mead, or shares of the must. */
final class Course {
  private static final double WATER_20 = Water.bettinSpieweck(20);
  private static final double LOST_PER_ETHANOL =
      Balling.CO2_PER_ETHANOL + Balling.YEAST_PER_ETHANOL;

  /** How far rounding may put an end of the course beyond itself. */
  private static final double ROUNDING = 1e-9;

  /** Lighter than any fermented must. */
  private static final double LIGHTEST = 0.9;

  private Course() {}

  /** g/L of ethanol in the mead. */
  static double ethanol(double original, double present) {
    return Alcohol.abv(original, present, Alcohol.Method.BALANCE, OptionalDouble.empty())
        / 100
        * EthanolWater.PURE_ETHANOL_DENSITY_20;
  }

  /** g of must that became one litre of mead. */
  static double mustPerLitre(double original, double present) {
    return present * WATER_20 + LOST_PER_ETHANOL * ethanol(original, present);
  }

  /** Litres of mead of this gravity that a must became when so much ethanol was made. */
  static double litres(double mustKg, double ethanolKg, double gravity) {
    return 1000 * (mustKg - LOST_PER_ETHANOL * ethanolKg) / (gravity * WATER_20);
  }

  /** g of ethanol made per g of must: in proportion to the sugar gone. */
  static double ethanolPerMust(double original, double present) {
    double ethanol = ethanol(original, present);
    return ethanol / (present * WATER_20 + LOST_PER_ETHANOL * ethanol);
  }

  /** Gravity of the mead when this share of the sugar that goes in all is gone. */
  static double gravity(double original, double finalGravity, double share) {
    return gravity(
        original,
        share * ethanolPerMust(original, finalGravity),
        finalGravity - ROUNDING,
        original - share * (original - finalGravity));
  }

  /** Gravity of the mead if all extract of the must had fermented: none can be lighter. */
  static double leastGravity(double original) {
    double ethanolPerMust = Sucrose.massFractionFromGravity(original) / Balling.EXTRACT_PER_ETHANOL;
    return gravity(original, ethanolPerMust);
  }

  /** Gravity of the mead in which so much ethanol was made per g of must. */
  static double gravity(double original, double ethanolPerMust) {
    return gravity(original, ethanolPerMust, LIGHTEST, Math.min(1, original));
  }

  private static double gravity(
      double original, double ethanolPerMust, double lowest, double guess) {
    double extractPerMust =
        Sucrose.massFractionFromGravity(original) - Balling.EXTRACT_PER_ETHANOL * ethanolPerMust;
    double meadPerMust = 1 - LOST_PER_ETHANOL * ethanolPerMust;
    return new BrentSolver(1e-13, 1e-13, 1e-13)
        .solve(
            100,
            gravity -> {
              double mustPerLitre = gravity * WATER_20 / meadPerMust;
              return Mixture.gravity(
                      extractPerMust * mustPerLitre,
                      ethanolPerMust * mustPerLitre / EthanolWater.PURE_ETHANOL_DENSITY_20)
                  - gravity;
            },
            lowest,
            original + ROUNDING,
            guess);
  }
}
