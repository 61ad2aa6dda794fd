package meadcell.alcohol;

import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Balling;
import meadcell.density.Sucrose;

/** Strength from gravities, and the gravity from strength. */
@Family(name = "ALCOHOL", about = "Strength, extract and sugar left.", says = AlcoholReason.class)
public final class Alcohol {
  /** EU factor: g/L of sugar for 1 % vol, as OIV-MA-AS2-02 Table II uses it. */
  private static final double SUGAR_PER_PERCENT_VOL = 16.83;

  private static final double LINEAR_FACTOR = 131.25; // common practice, no source

  /** How alcohol follows from two gravities. */
  public enum Method {
    /** Balling's mass balance with Tabarié's rule. */
    BALANCE,
    /** Sugar gone over 16.83 g/L for 1 % vol. */
    SUGAR,
    /** 131.25 times the fall of gravity. */
    LINEAR
  }

  private Alcohol() {}

  /**
   * {@return alcohol by volume from two gravities, % vol}
   *
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, as GRAVITY.CORRECT gives it, SG
   * @param method how it is computed
   * @param yield g of alcohol from 1 g of extract, as ALCOHOL.CALIBRATE finds it; left out:
   *     Balling's
   */
  @CellarFunction(
      summary = "Alcohol of a mead from its original and present gravity.",
      gives = Quantity.PERCENT_VOL,
      formula =
          "balance: 2.0665 g of extract give 1 g of ethanol, 0.9565 g of carbon dioxide and 0.11 g of"
              + " yeast (Balling), and the present gravity is that of water plus what extract and"
              + " ethanol each add to it (Tabarié); the one alcohol that satisfies both. With yield,"
              + " 1 g of ethanol takes 1/yield g of extract, and carbon dioxide and yeast share what is"
              + " left as they share Balling's.\n"
              + "sugar: (GRAVITY.SUGAR(original) − ALCOHOL.EXTRACT(original; present)) / 16.83.\n"
              + "linear: 131.25 (original − present).",
      source =
          Shared.BALANCE
              + " 16.83 g/L per % vol: OIV-MA-AS2-02 Table II. 131.25, and the 0.0006 of a reading:"
              + " common practice, no source.",
      example = "ALCOHOL.ABV(1.1;0.995)",
      note =
          "The methods differ: 1.100 to 0.995 gives 14.11 % vol by balance, 13.48 by sugar, 13.78 by"
              + " linear; 1.170 to 1.050 gives 16.56, 15.60, 15.75. linear is there to compare with old"
              + " logs. sugar counts glycerol as sugar left and knows no contraction: it is low.\n"
              + "The balance rests on beer's yield, 0.4839 g of alcohol from 1 g of extract, which is"
              + " 16.8 g/L of sugar for 1 % vol once glycerol and acids are counted. Yeasts make 1 % vol"
              + " of 16.5 to 18 g/L: the middle of that is 2.5 % of the strength lower, 13.8 for 14.11."
              + " Dry wines it puts up to 7 % too high by the OIV's table. Have some meads measured and"
              + " take the yield that ALCOHOL.CALIBRATE finds.\n"
              + "Balling's figures were found with worts to some 30 °Bx, SG 1.13 (from memory); beyond,"
              + " to 1.3, it is mass that must balance anyway. Honey or sugar added on the way needs an"
              + " effective original gravity: FERMENT.ORIGINALAFTER.\n"
              + "present up to 0.002 above original counts as original, so 0 % vol: two readings, each"
              + " uncertain by 0.0006, differ by 0.0017 in 95 of 100. The same holds wherever the two are"
              + " compared: sugar left, extract, attenuation, progress.",
      caution = "An estimate; labels and tax need a measurement that your authority accepts.")
  public static double abv(
      @Shared.Original double original,
      @Shared.Present double present,
      @Arg(name = "method", help = "How it is computed", byDefaultWord = "balance") Method method,
      @Shared.YieldOfCellar OptionalDouble yield) {
    if (yield.isPresent() && method != Method.BALANCE) {
      throw new Refusal(AlcoholReason.YIELD_NOT_USED).with("method", method);
    }
    double now = Fermentation.present(original, present);
    Balling.Fermented mead = Fermentation.of(original, now);
    return switch (method) {
      case BALANCE ->
          100 * Balling.fermented(original, now, Yield.extractPerEthanol(yield)).abvFraction();
      case SUGAR ->
          (Sucrose.gramsPerLitre(original) - mead.extractGramsPerLitre()) / SUGAR_PER_PERCENT_VOL;
      case LINEAR -> LINEAR_FACTOR * (original - now);
    };
  }

  /**
   * {@return alcohol to be expected, % vol}
   *
   * @param original gravity of the must before fermentation, SG
   * @param finalGravity gravity it will end at, SG
   */
  @CellarFunction(
      summary = "Alcohol of a must once it has fermented to its final gravity.",
      gives = Quantity.PERCENT_VOL,
      formula = "ALCOHOL.ABV(original; final) by balance.",
      source = Shared.BALANCE,
      example = "ALCOHOL.POTENTIAL(1.1)",
      note =
          "0.995 is a dry traditional mead (common practice, no source). Yeast stops at its own limit of"
              + " alcohol, which this does not know.")
  public static double potential(
      @Shared.Original double original,
      @Arg(
              name = "final",
              help = "Gravity it will end at",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.3,
              byDefault = 0.995)
          double finalGravity) {
    return abv(original, finalGravity, Method.BALANCE, OptionalDouble.empty());
  }

  /**
   * {@return the original gravity that a log forgot, SG}
   *
   * @param abv alcohol that fermentation made, % vol
   * @param present gravity now, as GRAVITY.CORRECT gives it, SG
   */
  @CellarFunction(
      summary = "Original gravity of a mead from its alcohol and present gravity.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula = "Inverse of ALCOHOL.ABV by balance.",
      source = Shared.BALANCE,
      example = "ALCOHOL.ORIGINAL(14.1;0.995)",
      note = "For alcohol from a laboratory; 0.1 % vol is 0.0007 in gravity.")
  public static double original(
      @Arg(
              name = "abv",
              help = "Alcohol that fermentation made",
              is = Quantity.PERCENT_VOL,
              from = 1,
              to = 31)
          double abv,
      @Shared.Present double present) {
    Fermentation.extract(present, abv);
    return Balling.originalGravity(abv / 100, present);
  }
}
