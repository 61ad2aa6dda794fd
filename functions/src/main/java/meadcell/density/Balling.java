package meadcell.density;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Balling's mass balance of fermentation (after Nielsen et al.), solved together with {@link
 * Mixture}, so that one must and one present gravity have exactly one alcohol and extract.
 *
 * <p>Per litre of mead, with a g of ethanol, e g of extract and a density ρ, the must weighed ρ +
 * 1.0665 a g, of which e + 2.0665 a g were extract: 1 g of ethanol comes with 0.9565 g of carbon
 * dioxide and 0.11 g of dry yeast. With another extract x for 1 g of ethanol, carbon dioxide and
 * yeast share x − 1 g as they share those 1.0665 g, so that the masses still add up.
 */
public final class Balling {

  /** g per g of ethanol, as are the next two. */
  public static final double CO2_PER_ETHANOL = 0.9565;

  /** g of dry yeast per g of ethanol. */
  public static final double YEAST_PER_ETHANOL = 0.11;

  /** g of extract per g of ethanol. */
  public static final double EXTRACT_PER_ETHANOL = 1 + CO2_PER_ETHANOL + YEAST_PER_ETHANOL;

  /** Far more alcohol, as mass fraction beside water, than any must of extract below 0.6 gives. */
  private static final double MOST_ETHANOL = 0.5;

  /**
   * About how the imbalance, in g/L, rises with the ethanol. It is nearly a straight line, so
   * secants find its root in few steps; Brent's method settles the rest.
   */
  private static final double STEEPNESS = 2000;

  private static final int MOST_SECANTS = 12;

  /** After a step this small the next one would be lost in rounding. */
  private static final double LAST_STEP = 1e-9;

  private static final int MOST_EVALUATIONS = 100;

  /** An imbalance, in g/L, that is only rounding. */
  private static final double ROUNDING = 1e-9;

  /** A fermented must: its present gravity, alcohol by volume and extract left, all at 20 °C. */
  public record Fermented(double gravity, double abvFraction, double extractGramsPerLitre) {}

  private Balling() {}

  /**
   * {@return what a must has become that fermented to a gravity}
   *
   * @param originalGravity gravity 20/20 of the must
   * @param presentGravity gravity 20/20 now
   */
  public static Fermented fermented(double originalGravity, double presentGravity) {
    return fermented(originalGravity, presentGravity, EXTRACT_PER_ETHANOL);
  }

  /**
   * {@return what a must has become that fermented to a gravity, with another extract for the
   * ethanol}
   *
   * @param originalGravity gravity 20/20 of the must
   * @param presentGravity gravity 20/20 now
   * @param extractPerEthanol g of extract that 1 g of ethanol takes
   */
  public static Fermented fermented(
      double originalGravity, double presentGravity, double extractPerEthanol) {
    return fermented(originalGravity, presentGravity * Sucrose.WATER_20, 20, extractPerEthanol);
  }

  /**
   * {@return the same from a density at any temperature, as an instrument finds it in the cellar}
   *
   * @param originalGravity gravity 20/20 of the must
   * @param density density of the fermented must in kg/m³, at that temperature
   * @param temperatureC temperature in °C
   * @throws org.apache.commons.math3.exception.NoBracketingException if the density is above that
   *     of the unfermented must
   */
  public static Fermented fermentedFromDensity(
      double originalGravity, double density, double temperatureC) {
    return fermented(originalGravity, density, temperatureC, EXTRACT_PER_ETHANOL);
  }

  private static Fermented fermented(
      double originalGravity, double density, double temperatureC, double extractPerEthanol) {
    double originalExtract = Sucrose.massFractionFromGravity(originalGravity);
    double[] alcohol = EthanolWater.polynomial(temperatureC);
    double[] sugar = Sucrose.polynomial(temperatureC);

    class Mead {
      final double ethanol;
      final double extract;
      final double density20;

      Mead(double ethanolMassFraction) {
        double alcoholOnly = EthanolWater.density20(ethanolMassFraction);
        double residue =
            Sucrose.massFraction(
                density - Mixture.alcoholShift(ethanolMassFraction, alcohol, sugar[0]), sugar);
        double residueOnly = Sucrose.density20(residue);
        ethanol = ethanolMassFraction * alcoholOnly;
        extract = residue * residueOnly;
        density20 = residueOnly + Sucrose.WATER_20 * (alcoholOnly / EthanolWater.WATER_20 - 1);
      }

      double imbalance() {
        return extract
            + extractPerEthanol * ethanol
            - originalExtract * (density20 + (extractPerEthanol - 1) * ethanol);
      }

      Fermented result() {
        return new Fermented(
            density20 / Sucrose.WATER_20, ethanol / EthanolWater.PURE_ETHANOL_DENSITY_20, extract);
      }
    }

    Mead unfermented = new Mead(0);
    if (Math.abs(unfermented.imbalance()) < ROUNDING) {
      return unfermented.result();
    }
    double last = 0;
    double lastImbalance = unfermented.imbalance();
    double next = -lastImbalance / STEEPNESS;
    for (int i = 0; i < MOST_SECANTS && next >= 0 && next <= MOST_ETHANOL; i++) {
      Mead mead = new Mead(next);
      double imbalance = mead.imbalance();
      double step = imbalance * (next - last) / (lastImbalance - imbalance);
      if (Math.abs(step) < LAST_STEP) {
        return new Mead(next + step).result();
      }
      last = next;
      lastImbalance = imbalance;
      next += step;
    }
    double ethanolMassFraction =
        new BrentSolver(1e-15, 1e-15, ROUNDING / 1e4)
            .solve(MOST_EVALUATIONS, p -> new Mead(p).imbalance(), 0, MOST_ETHANOL);
    return new Mead(ethanolMassFraction).result();
  }

  /**
   * {@return the gravity of the must that fermented to this alcohol and gravity}
   *
   * @param abvFraction volume fraction of ethanol at 20 °C
   * @param presentGravity gravity 20/20 now
   */
  public static double originalGravity(double abvFraction, double presentGravity) {
    return originalGravity(abvFraction, presentGravity, EXTRACT_PER_ETHANOL);
  }

  /**
   * {@return the gravity of the must that fermented to this alcohol and gravity, with another
   * extract for the ethanol}
   *
   * @param abvFraction volume fraction of ethanol at 20 °C
   * @param presentGravity gravity 20/20 now
   * @param extractPerEthanol g of extract that 1 g of ethanol takes
   */
  public static double originalGravity(
      double abvFraction, double presentGravity, double extractPerEthanol) {
    double ethanol = abvFraction * EthanolWater.PURE_ETHANOL_DENSITY_20;
    double extract = Mixture.extract(presentGravity, abvFraction);
    double must = presentGravity * Sucrose.WATER_20 + (extractPerEthanol - 1) * ethanol;
    return Sucrose.specificGravity((extract + extractPerEthanol * ethanol) / must);
  }
}
