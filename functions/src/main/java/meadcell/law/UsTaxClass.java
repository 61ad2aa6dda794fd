package meadcell.law;

/** Classes of 26 U.S.C. 5041, for wine of at least ½ % vol; text of November 2024. */
public enum UsTaxClass {
  /** (b)(1). */
  STILL_TO_16("still to 16 % vol"),
  /** (b)(2). */
  STILL_TO_21("still over 16 to 21 % vol"),
  /** (b)(3). */
  STILL_TO_24("still over 21 to 24 % vol"),
  /** (h): taxed as (b)(1). */
  LOW_MEAD("mead below 8.5 % vol, taxed as still to 16 % vol"),
  /** (b)(4). */
  SPARKLING("sparkling"),
  /** (b)(5). */
  CARBONATED("artificially carbonated"),
  /** (a): no wine. */
  SPIRITS("distilled spirits, over 24 % vol");

  /** 0.392 g in 100 mL. */
  private static final double STILL_CO2 = 3.92;

  /** 0.64 g in 100 mL. */
  private static final double MEAD_CO2 = 6.4;

  private static final double MEAD_ABV = 8.5;

  private final String words;

  UsTaxClass(String words) {
    this.words = words;
  }

  /** {@return the class in words} */
  public String words() {
    return words;
  }

  /**
   * {@return the class of a mead}
   *
   * @param abv true strength, % vol
   * @param co2 carbon dioxide, g/L
   * @param fermented whether fermentation made the gas
   * @param onlyHoneyAndWater whether it is made from nothing else
   */
  public static UsTaxClass of(
      double abv, double co2, boolean fermented, boolean onlyHoneyAndWater) {
    if (abv > 24) {
      return SPIRITS;
    }
    if (co2 > STILL_CO2) {
      if (onlyHoneyAndWater && co2 <= MEAD_CO2 && abv < MEAD_ABV) {
        return LOW_MEAD;
      }
      return fermented ? SPARKLING : CARBONATED;
    }
    if (abv > 21) {
      return STILL_TO_24;
    }
    return abv > 16 ? STILL_TO_21 : STILL_TO_16;
  }
}
