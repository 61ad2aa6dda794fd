package meadcell.alcohol;

import java.util.OptionalDouble;
import meadcell.density.Balling;

/** Fermentable sugar left in a mead and the limits between which it lies 95 times in 100. */
public record SugarLeft(double extract, double expected, double uncertainty) {

  /** Both sides of a normal distribution together leave 5 %. */
  private static final double COVERAGE = 1.959964;

  /** Standard uncertainty of a sugar-free extract that was measured: common practice, no source. */
  static final double U_MEASURED = 2;

  /** Step of a slope, in gravity and in g of extract for 1 g of ethanol. */
  private static final double STEP = 1e-6;

  public static SugarLeft of(
      double original,
      double present,
      OptionalDouble sugarFree,
      OptionalDouble uSugarFree,
      double uGravity) {
    double x = Balling.EXTRACT_PER_ETHANOL;
    Balling.Fermented mead = Fermentation.of(original, present);
    double expected = expected(mead, sugarFree, x);
    // one step inwards, where the must can still ferment to the gravity
    double byOriginal = slope(expected, original + STEP, present, sugarFree, x, STEP);
    double byPresent = slope(expected, original + STEP, present + STEP, sugarFree, x, STEP);
    byPresent -= byOriginal;
    double byYield = slope(expected, original, present, sugarFree, x + STEP, STEP);
    double ofSugarFree =
        uSugarFree.orElseGet(
            () -> sugarFree.isPresent() ? U_MEASURED : SugarFree.of(mead, x).uncertainty());
    double uncertainty =
        Math.hypot(
            Math.hypot(byOriginal * uGravity, byPresent * uGravity),
            Math.hypot(byYield * Yield.RELATIVE_UNCERTAINTY * x, ofSugarFree));
    return new SugarLeft(mead.extractGramsPerLitre(), expected, uncertainty);
  }

  private static double expected(Balling.Fermented mead, OptionalDouble sugarFree, double x) {
    return mead.extractGramsPerLitre()
        - sugarFree.orElseGet(() -> SugarFree.of(mead, x).gramsPerLitre());
  }

  private static double slope(
      double at, double original, double present, OptionalDouble sugarFree, double x, double step) {
    return (expected(Balling.fermented(original, present, x), sugarFree, x) - at) / step;
  }

  /** Below 0 in a mead that is dry for certain. */
  public double lowest() {
    return expected - COVERAGE * uncertainty;
  }

  /** Below 0 in a mead that is lighter than a dry one can be. */
  public double highest() {
    return expected + COVERAGE * uncertainty;
  }

  double low() {
    return Math.max(0, lowest());
  }

  double likely() {
    return Math.max(0, expected);
  }

  /** All extract is the most that can be sugar. */
  double high() {
    return Math.min(Math.max(0, extract), Math.max(0, highest()));
  }
}
