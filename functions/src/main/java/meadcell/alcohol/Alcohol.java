package meadcell.alcohol;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.density.Balling;
import meadcell.density.Sucrose;

/** Strength, extract and sugar left. */
@Family(name = "ALCOHOL", about = "Strength, extract and sugar left.")
public final class Alcohol {
  private static final String BALANCE =
      "Balling's mass balance (Nielsen et al., Balling's Formula – scrutiny of a brewing dogma) with"
          + " Tabarié's rule (OIV-MA-AS2-03B). Densities: OIML R 22 (1975), ICUMSA SPS-4.";
  private static final String ORIGINAL = "Gravity of the must before fermentation";
  private static final String PRESENT = "Gravity now, as GRAVITY.CORRECT gives it";

  /** EU factor: g/L of sugar for 1 % vol, as OIV-MA-AS2-02 Table II uses it. */
  private static final double SUGAR_PER_PERCENT_VOL = 16.83;

  private static final double LINEAR_FACTOR = 131.25; // common practice, no source

  private Alcohol() {}

  /** How alcohol follows from two gravities. */
  public enum Method {
    BALANCE,
    SUGAR,
    LINEAR
  }

  /** Alcohol by volume from two gravities. */
  @CellarFunction(
      summary = "Alcohol of a mead from its original and present gravity.",
      gives = Quantity.PERCENT_VOL,
      formula =
          "balance: 2.0665 g of extract give 1 g of ethanol, 0.9565 g of carbon dioxide and 0.11 g of"
              + " yeast (Balling), and the present gravity is that of water plus what extract and"
              + " ethanol each add to it (Tabarié); the one alcohol that satisfies both.\n"
              + "sugar: (GRAVITY.SUGAR(original) − ALCOHOL.EXTRACT(original; present)) / 16.83.\n"
              + "linear: 131.25 (original − present).",
      source =
          BALANCE
              + " 16.83 g/L per % vol: OIV-MA-AS2-02 Table II. 131.25: common practice, no source.",
      example = "ALCOHOL.ABV(1.1;0.995)",
      note =
          "The methods differ: 1.100 to 0.995 gives 14.11 % vol by balance, 13.48 by sugar, 13.78 by"
              + " linear; 1.170 to 1.050 gives 16.56, 15.60, 15.75. linear is there to compare with old"
              + " logs.\n"
              + "Yeasts differ in what they make of sugar by some 0.3 % vol: see ALCOHOL.UNCERTAINTY."
              + " Honey or sugar added on the way needs an effective original gravity:"
              + " FERMENT.ORIGINALAFTER.",
      caution = "An estimate; labels and tax need a measurement that your authority accepts.")
  public static double abv(
      @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, from = 1, to = 1.2)
          double original,
      @Arg(name = "present", help = PRESENT, is = Quantity.SPECIFIC_GRAVITY, from = 0.98, to = 1.2)
          double present,
      @Arg(name = "method", help = "How it is computed", byDefault = "balance") Method method) {
    Balling.Fermented mead = Fermentation.of(original, present);
    return switch (method) {
      case BALANCE -> 100 * mead.abvFraction();
      case SUGAR ->
          (Sucrose.gramsPerLitre(original) - mead.extractGramsPerLitre()) / SUGAR_PER_PERCENT_VOL;
      case LINEAR -> LINEAR_FACTOR * (original - present);
    };
  }

  /** Extract left, from two gravities. */
  @CellarFunction(
      summary = "Extract of a mead: all that is dissolved in it but alcohol, not only sugar.",
      gives = Quantity.GRAM_PER_LITRE,
      formula = "Balling's balance and Tabarié's rule solved together, as in ALCOHOL.ABV.",
      source = BALANCE,
      example = "ALCOHOL.EXTRACT(1.1;0.995)",
      note =
          "Extract is not sugar: glycerol, acids and what yeast cannot ferment stay. A mead dry at"
              + " 0.994 from 1.100 still shows 32 g/L. For sweetness and bottle pressure take"
              + " ALCOHOL.SUGARLEFT.")
  public static double extract(
      @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, from = 1, to = 1.2)
          double original,
      @Arg(name = "present", help = PRESENT, is = Quantity.SPECIFIC_GRAVITY, from = 0.98, to = 1.2)
          double present) {
    return Fermentation.of(original, present).extractGramsPerLitre();
  }

  /** Fermentable sugar left, from two gravities. */
  @CellarFunction(
      summary = "Fermentable sugar left in a mead.",
      gives = Quantity.GRAM_PER_LITRE,
      formula = "ALCOHOL.EXTRACT(original; present) − sugarFree, never below 0.",
      source = BALANCE + " 25 g/L of sugar-free extract: common practice, no source.",
      example = "ALCOHOL.SUGARLEFT(1.1;1.01)",
      note =
          "Sugar-free extract is glycerol, acids and the unfermentable sugars of honey, commonly 20 to"
              + " 30 g/L, less in a weak mead, more with much fruit: find your own from the extract of"
              + " a mead that a laboratory found dry.",
      caution =
          "Too coarse to call a mead safe to bottle: 3 g/L, far less than this can tell, make a still"
              + " bottle sparkle. Have residual sugar measured where pressure matters.")
  public static double sugarLeft(
      @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, from = 1, to = 1.2)
          double original,
      @Arg(name = "present", help = PRESENT, is = Quantity.SPECIFIC_GRAVITY, from = 0.98, to = 1.2)
          double present,
      @Arg(
              name = "sugarFree",
              help = "Extract that is not fermentable sugar",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 80,
              byDefault = "25")
          double sugarFree) {
    return Math.max(0, extract(original, present) - sugarFree);
  }
}
