package meadcell.alcohol;

import java.util.OptionalDouble;
import meadcell.density.Balling;

/** Fermentable sugar left in a mead and the limits between which it lies 95 times in 100. */
record SugarLeft(
    double original, double present, OptionalDouble sugarFree, Balling.Fermented mead) {

  /** Both sides of a normal distribution together leave 5 %. */
  private static final double COVERAGE = 1.959964;

  /** Standard uncertainty of a sugar-free extract that was measured: common practice, no source. */
  private static final double U_MEASURED = 2;

  /** Step of a slope, in gravity and in g of extract for 1 g of ethanol. */
  private static final double STEP = 1e-6;

  private static final double X = Balling.EXTRACT_PER_ETHANOL;

  static SugarLeft of(double original, double present, OptionalDouble sugarFree) {
    return new SugarLeft(original, present, sugarFree, Fermentation.of(original, present));
  }

  double likely() {
    return Math.max(0, expected(mead, X));
  }

  /** All extract is the most that can be sugar. */
  Extract.SugarLimits limits(OptionalDouble uSugarFree, double uGravity) {
    double expected = expected(mead, X);
    double reach = COVERAGE * uncertainty(uSugarFree, uGravity);
    double most = Math.max(0, mead.extractGramsPerLitre());
    return new Extract.SugarLimits(
        Math.max(0, expected - reach), Math.min(most, Math.max(0, expected + reach)));
  }

  private double uncertainty(OptionalDouble uSugarFree, double uGravity) {
    // a step up of the original leaves the must able to ferment to the present gravity
    double at = expected(mead, X);
    double byOriginal = (expected(original + STEP, present, X) - at) / STEP;
    double byPresent = (expected(original + STEP, present + STEP, X) - at) / STEP - byOriginal;
    double byYield = (expected(original, present, X + STEP) - at) / STEP;
    double ofSugarFree =
        uSugarFree.orElseGet(
            () -> sugarFree.isPresent() ? U_MEASURED : SugarFree.of(mead, X).uncertainty());
    return Math.hypot(
        uGravity * Math.hypot(byOriginal, byPresent),
        Math.hypot(byYield * Yield.RELATIVE_UNCERTAINTY * X, ofSugarFree));
  }

  private double expected(double original, double present, double extractPerEthanol) {
    return expected(Balling.fermented(original, present, extractPerEthanol), extractPerEthanol);
  }

  private double expected(Balling.Fermented mead, double extractPerEthanol) {
    return mead.extractGramsPerLitre()
        - sugarFree.orElseGet(() -> SugarFree.of(mead, extractPerEthanol).gramsPerLitre());
  }
}
