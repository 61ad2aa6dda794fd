package meadcell.alcohol;

import meadcell.catalogue.Numbers;
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

  private Fermentation() {}

  static Balling.Fermented of(double original, double present) {
    if (present > original) {
      throw Refusal.inconsistent(
          "The present gravity "
              + Numbers.text(present)
              + " is above the original gravity "
              + Numbers.text(original)
              + ".");
    }
    Balling.Fermented mead = Balling.fermented(original, present);
    if (mead.extractGramsPerLitre() < -ROUNDING) {
      throw Refusal.inconsistent(
          "No must of the original gravity "
              + Numbers.text(original)
              + " can ferment to "
              + Numbers.text(present)
              + ": less than no extract would be left.");
    }
    return mead;
  }

  /** The slopes of the implicit function that {@link Balling#originalGravity} inverts. */
  static Slopes slopes(double original, double present) {
    double abv = of(original, present).abvFraction();
    double at = Balling.originalGravity(abv, present);
    double byAbv = (Balling.originalGravity(abv + STEP, present) - at) / STEP;
    double byPresent = (Balling.originalGravity(abv, present + STEP) - at) / STEP;
    return new Slopes(1 / byAbv, -byPresent / byAbv);
  }

  static double extract(double gravity, double abvPercent) {
    double extract = Mixture.extract(gravity, abvPercent / 100);
    if (extract < -ROUNDING) {
      throw Refusal.inconsistent(
          "A gravity of "
              + Numbers.text(gravity)
              + " with "
              + Numbers.text(abvPercent)
              + " % vol leaves less than no extract; water with that alcohol has "
              + Numbers.text(EthanolWater.gravity20(abvPercent / 100), 5)
              + ".");
    }
    return extract;
  }

  static double boiledOff(double before, double after) {
    double alcoholOnly = before - after + 1;
    if (after < before) {
      throw Refusal.inconsistent(
          "The gravity after boiling, "
              + Numbers.text(after)
              + ", is below the one before, "
              + Numbers.text(before)
              + "; without its alcohol a mead is denser.");
    }
    if (alcoholOnly < EthanolWater.gravity20(MOST_ABV)) {
      throw Refusal.inconsistent(
          "The gravity rises from "
              + Numbers.text(before)
              + " to "
              + Numbers.text(after)
              + ", which is more than 30 % vol; was the sample made up to its volume?");
    }
    return 100 * EthanolWater.volumeFractionFromGravity(alcoholOnly);
  }
}
