package meadcell.alcohol;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Balling;
import meadcell.density.EthanolWater;
import meadcell.density.Mixture;

/** Balling and Tabarié with the refusals of readings that cannot all be true. */
final class Fermentation {

  /** An extract, in g/L, so little below 0 that it is rounding. */
  private static final double ROUNDING = 1e-6;

  /** Step of a slope, as volume fraction and as gravity. */
  private static final double STEP = 1e-6;

  /** Far more, as volume fraction, than any yeast makes. */
  static final double MOST_ABV = 0.3;

  /** Change of the alcohol, as volume fraction, with each gravity. */
  record Slopes(double byOriginal, double byPresent) {}

  /**
   * How far a present gravity may lie above the original and still be the same: two readings, each
   * uncertain by 0.0006 as in FERMENT.REMAINING, differ by up to 0.0017 in 95 of 100; rounded up.
   */
  static final double SAME_READING = 0.002;

  private Fermentation() {}

  /** The present gravity; the original where it lies above that within the instrument's reach. */
  static double present(double original, double read) {
    boolean isSame = read > original && read - original < SAME_READING + ROUNDING;
    return isSame ? original : read;
  }

  static Balling.Fermented of(double original, double present) {
    if (present > original) {
      throw new Refusal(AlcoholReason.PRESENT_ABOVE_ORIGINAL)
          .with("present", present, Quantity.SPECIFIC_GRAVITY)
          .with("original", original, Quantity.SPECIFIC_GRAVITY);
    }
    Balling.Fermented mead = Balling.fermented(original, present);
    if (mead.extractGramsPerLitre() < -ROUNDING) {
      throw new Refusal(AlcoholReason.NO_EXTRACT_LEFT)
          .with("original", original, Quantity.SPECIFIC_GRAVITY)
          .with("present", present, Quantity.SPECIFIC_GRAVITY);
    }
    return mead;
  }

  /** {@return the slopes of the implicit function that {@link Balling#originalGravity} inverts} */
  static Slopes slopes(double original, double present, double extractPerEthanol) {
    of(original, present);
    double x = extractPerEthanol;
    double abv = Balling.fermented(original, present, x).abvFraction();
    double at = Balling.originalGravity(abv, present, x);
    double byAbv = (Balling.originalGravity(abv + STEP, present, x) - at) / STEP;
    double byPresent = (Balling.originalGravity(abv, present + STEP, x) - at) / STEP;
    return new Slopes(1 / byAbv, -byPresent / byAbv);
  }

  static double extract(double gravity, double abvPercent) {
    double extract = Mixture.extract(gravity, abvPercent / 100);
    if (extract < -ROUNDING) {
      throw new Refusal(AlcoholReason.LIGHTER_THAN_DRY)
          .with("gravity", gravity, Quantity.SPECIFIC_GRAVITY)
          .with("abv", abvPercent, Quantity.PERCENT_VOL)
          .with("dry", EthanolWater.gravity20(abvPercent / 100), Quantity.SPECIFIC_GRAVITY, 5);
    }
    return extract;
  }

  static double boiledOff(double before, double after) {
    double alcoholOnly = before - after + 1;
    if (after < before) {
      throw new Refusal(AlcoholReason.LIGHTER_AFTER_BOILING)
          .with("after", after, Quantity.SPECIFIC_GRAVITY)
          .with("before", before, Quantity.SPECIFIC_GRAVITY);
    }
    if (alcoholOnly < EthanolWater.gravity20(MOST_ABV)) {
      throw new Refusal(AlcoholReason.BOILED_TOO_FAR)
          .with("before", before, Quantity.SPECIFIC_GRAVITY)
          .with("after", after, Quantity.SPECIFIC_GRAVITY)
          .with("most", 100 * MOST_ABV, Quantity.PERCENT_VOL);
    }
    return 100 * EthanolWater.volumeFractionFromGravity(alcoholOnly);
  }
}
