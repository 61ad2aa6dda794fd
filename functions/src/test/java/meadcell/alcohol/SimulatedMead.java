package meadcell.alcohol;

import java.util.Random;
import meadcell.density.EthanolWater;
import meadcell.density.Mixture;
import meadcell.density.Sucrose;

/**
 * A mead by its chemistry, of which our balance knows nothing: sugar becomes ethanol, glycerol,
 * acids, yeast and carbon dioxide in shares drawn from published ranges; what honey has beside
 * sugar stays. Only the densities of sucrose and ethanol solutions are shared with what is tested.
 */
record SimulatedMead(double original, double present, double abv, double sugarLeft) {

  /** Densities of 10 % solutions of glycerol and sucrose, 1.0221 and 1.0381 kg/L (CRC Handbook). */
  private static final double GLYCEROL_AS_SUCROSE = 0.61;

  static SimulatedMead of(Random random, double solids, double share, double ethanolPerSugar) {
    double unfermentable =
        between(random, 0.056, 0.144); // White et al. 1962: none or all disaccharides
    double sugar = solids * (1 - unfermentable);
    double used = sugar * share;
    double ethanol = used * ethanolPerSugar;
    double glycerol = ethanol * between(random, 0.04, 0.10);
    double acid = ethanol * between(random, 0.005, 0.025);
    double mead = 1 - (used - ethanol - glycerol - acid); // the rest is gas or settles as yeast
    double extract =
        solids - used + GLYCEROL_AS_SUCROSE * glycerol + acid + mead * between(random, 0, 0.002);
    double density = 1000;
    double gravity = 1;
    double abv = 0;
    for (int i = 0; i < 100; i++) {
      abv = density * ethanol / mead / EthanolWater.PURE_ETHANOL_DENSITY_20;
      gravity = Mixture.gravity(density * extract / mead, abv);
      density = gravity * Sucrose.WATER_20;
    }
    return new SimulatedMead(
        Sucrose.specificGravity(solids), gravity, 100 * abv, density * (sugar - used) / mead);
  }

  static double between(Random random, double from, double to) {
    return from + (to - from) * random.nextDouble();
  }
}
