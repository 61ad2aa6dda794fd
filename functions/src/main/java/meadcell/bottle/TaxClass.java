package meadcell.bottle;

/** Classes of 26 U.S.C. 5041, for wine of at least ½ % vol. */
final class TaxClass {
  /** 0.392 g in 100 mL. */
  private static final double STILL_CO2 = 3.92;

  /** 0.64 g in 100 mL. */
  private static final double MEAD_CO2 = 6.4;

  private static final double MEAD_ABV = 8.5;

  private TaxClass() {}

  static String of(
      double abv, double co2, Labelling.Carbonation carbonation, boolean onlyHoneyAndWater) {
    if (abv > 24) {
      return "distilled spirits, over 24 % vol";
    }
    if (co2 > STILL_CO2) {
      if (onlyHoneyAndWater && co2 <= MEAD_CO2 && abv < MEAD_ABV) {
        return "mead below 8.5 % vol, taxed as still to 16 % vol";
      }
      return carbonation == Labelling.Carbonation.NATURAL ? "sparkling" : "artificially carbonated";
    }
    if (abv > 21) {
      return "still over 21 to 24 % vol";
    }
    return abv > 16 ? "still over 16 to 21 % vol" : "still to 16 % vol";
  }
}
