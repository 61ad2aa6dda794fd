package meadcell.law;

/**
 * Honey wine in the United States. 27 CFR 24.203 and 24.210 to 24.218 were read in the annual
 * edition of 2015, 26 U.S.C. 5387 in the text of 22 November 2024, the change of 24.203 in T.D.
 * TTB-23 (70 FR 2799, 18 January 2005).
 */
public final class UsHoneyWine {
  private static final String ASK =
      "Not legal advice: check the current text, and ask the authority. ";

  private static final String OTHER =
      " What is beyond is \"other than standard wine\" (27 CFR 24.210, 24.218; our own reading): with a"
          + " formula, kept apart, and its composition on the label.";

  /** Water into a must. */
  public static final String WATER =
      ASK
          + "In the United States water may not bring a must of honey wine below 13 °Brix (27 CFR 24.203,"
          + " edition of 2015).";

  /** Fruit into a mead. */
  public static final String FRUIT =
      ASK
          + "In the United States fruit in mead leaves standard honey wine: wine of different agricultural"
          + " commodities is not blended (26 U.S.C. 5387(c), text of November 2024)."
          + OTHER;

  /** Lots into a blend. */
  public static final String BLEND =
      ASK
          + "In the United States standard honey wine is not blended with wine of another commodity, fruit"
          + " too (26 U.S.C. 5387(c), text of November 2024), and ends at 14 % vol and 35 °Brix of total"
          + " solids (27 CFR 24.203, edition of 2015)."
          + OTHER;

  /** Spirit into a mead. */
  public static final String SPIRIT =
      ASK
          + "In the United States no wine spirits may be added to standard honey wine (26 U.S.C. 5387(b), text"
          + " of November 2024), which ends at 14 % vol (27 CFR 24.203, edition of 2015)."
          + OTHER;

  /** What standard honey wine is. */
  public static final String STANDARD =
      "Standard honey wine (27 CFR 24.203, edition of 2015): 13 °Brix or more after water, hops at most 1"
          + " g for 1 kg of honey, sugar only after fermentation, at most 14 % vol and 35 °Brix of total"
          + " solids; no wine spirits, colour, herbs or other flavour, and no blending with wine of other"
          + " commodities (26 U.S.C. 5387, text of November 2024)."
          + OTHER;

  private UsHoneyWine() {}
}
