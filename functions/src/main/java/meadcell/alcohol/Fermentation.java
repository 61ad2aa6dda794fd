package meadcell.alcohol;

import meadcell.catalogue.Numbers;
import meadcell.catalogue.Refusal;
import meadcell.density.Balling;

/** Balling's balance, and its refusals of gravities that cannot both be true. */
final class Fermentation {

  private static final double ROUNDING = 1e-6;

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
}
