package meadcell.alcohol;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Balling;
import meadcell.density.EthanolWater;
import meadcell.density.Sucrose;

/** Strength, extract and sugar left. */
@Family(name = "ALCOHOL", about = "Strength, extract and sugar left.", says = AlcoholReason.class)
public final class Alcohol {
  private static final String BALANCE =
      "Balling's mass balance (Nielsen et al., Balling's Formula – scrutiny of a brewing dogma) with"
          + " Tabarié's rule (OIV-MA-AS2-03B). Densities: OIML R 22 (1975), ICUMSA SPS-4.";
  private static final String TABARIE =
      "Tabarié's rule, OIV-MA-AS2-03B (R2012). Densities: OIML R 22 (1975), ICUMSA SPS-4.";
  private static final String R22 =
      "OIML R 22 (1975), general formula, Wagenbreth and Blanke 1971.";
  private static final String PARTS =
      "sugarFree left out: 9 % of the extract that a litre of mead had as must + 6 % of its ethanol, in"
          + " g, + 1 g/L.";
  private static final String PARTS_SOURCE =
      " What cannot ferment: of honey's solids 5.6 % are higher sugars and what is no sugar, 8.8 % are"
          + " disaccharides (White et al. 1962, USDA Technical Bulletin 1261), of which yeast leaves some;"
          + " 9 % in all is our own estimate between. Of the ethanol: 8 g of glycerol with 100 g of it"
          + " (mead 9.7: Gomes et al. 2013; wine 4.3: Prior et al. 2000), which weighs as 0.61 of its mass"
          + " of sucrose, and 1.5 g of acids (from memory). 1 g/L of salts and acid added: common"
          + " practice, no source.";
  private static final String TOO_COARSE =
      "Too coarse to call a mead fit for the bottle: 3 g/L, far less than this can tell, make a still"
          + " bottle sparkle. Have residual sugar measured where pressure matters.";
  private static final String ORIGINAL = "Gravity of the must before fermentation";

  /** EU factor: g/L of sugar for 1 % vol, as OIV-MA-AS2-02 Table II uses it. */
  private static final double SUGAR_PER_PERCENT_VOL = 16.83;

  private static final double LINEAR_FACTOR = 131.25; // common practice, no source

  @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, from = 1, to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Original {}

  @Arg(
      name = "present",
      help = "Gravity now, as GRAVITY.CORRECT gives it",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Present {}

  @Arg(
      name = "yield",
      help =
          "Alcohol from 1 g of extract, g, as ALCOHOL.CALIBRATE gives it; left out: Balling's 0.4839",
      from = Yield.LEAST,
      to = Yield.MOST)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface YieldOfCellar {}

  @Arg(
      name = "sugarFree",
      help = "Extract that is not fermentable sugar; left out: from its parts",
      is = Quantity.GRAM_PER_LITRE,
      from = 0,
      to = 150)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface SugarFreeExtract {}

  @Arg(name = "abv", help = "Alcohol", is = Quantity.PERCENT_VOL, from = 1, to = 100)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Abv {}

  private Alcohol() {}

  /** How alcohol follows from two gravities. */
  public enum Method {
    /** Balling's mass balance with Tabarié's rule. */
    BALANCE,
    /** Sugar gone over 16.83 g/L for 1 % vol. */
    SUGAR,
    /** 131.25 times the fall of gravity. */
    LINEAR
  }

  /** Whether the alcohol's lightness counts as extract gone. */
  public enum Attenuation {
    /** The fall of gravity as read. */
    APPARENT,
    /** The extract gone. */
    REAL
  }

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
          BALANCE
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
      @Original double original,
      @Present double present,
      @Arg(name = "method", help = "How it is computed", byDefaultWord = "balance") Method method,
      @YieldOfCellar OptionalDouble yield) {
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
   * {@return extract left, from two gravities, g/L}
   *
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, as GRAVITY.CORRECT gives it, SG
   */
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
  public static double extract(@Original double original, @Present double present) {
    return Fermentation.of(original, Fermentation.present(original, present))
        .extractGramsPerLitre();
  }

  /**
   * {@return extract from gravity and measured alcohol, g/L}
   *
   * @param gravity specific gravity of the mead, 20/20 °C, SG
   * @param abv measured alcohol, % vol
   */
  @CellarFunction(
      summary = "Total dry extract of a mead from its gravity and its measured alcohol.",
      gives = Quantity.GRAM_PER_LITRE,
      formula =
          "Gravity of the residue d = gravity − gravity of water with that alcohol + 1; the g/L of"
              + " sucrose in a solution of gravity d.",
      source = TABARIE,
      example = "ALCOHOL.DRYEXTRACT(0.9968;12)",
      note =
          "The published method first takes the volatile acidity off the gravity, commonly less than"
              + " 0.0001 (from memory); this does not. To divide the gravities instead of subtracting"
              + " them is another convention and gives 2 g/L more at 14 % vol and 1.020.")
  public static double dryExtract(
      @Arg(
              name = "gravity",
              help = "Specific gravity of the mead, 20/20 °C",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.3)
          double gravity,
      @Arg(name = "abv", help = "Measured alcohol", is = Quantity.PERCENT_VOL, from = 1, to = 30)
          double abv) {
    return Fermentation.extract(gravity, abv);
  }

  /**
   * {@return fermentable sugar left, from two gravities, g/L}
   *
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, as GRAVITY.CORRECT gives it, SG
   * @param sugarFree extract that is not fermentable sugar, g/L
   */
  @CellarFunction(
      summary = "Fermentable sugar left in a mead.",
      gives = Quantity.GRAM_PER_LITRE,
      formula = "ALCOHOL.EXTRACT(original; present) − sugarFree, never below 0. " + PARTS,
      source = BALANCE + PARTS_SOURCE,
      example = "ALCOHOL.SUGARLEFT(1.1;1.01)",
      note =
          "The parts are those of plain honey mead and uncertain: by 2.5 % of the must's extract, 1.5 %"
              + " of the ethanol and 1 g/L, so by 7 g/L from 1.100 to 0.995. Fruit brings more that"
              + " cannot ferment, about what its juice has in °Brix beyond its sugars, and so does"
              + " honeydew. Better: the ALCOHOL.DRYEXTRACT of a mead of yours that a laboratory found"
              + " dry, given as sugarFree.\n"
              + "For bottle pressure take the high one of ALCOHOL.SUGARLEFTLIMITS.",
      caution = TOO_COARSE)
  public static double sugarLeft(
      @Original double original,
      @Present double present,
      @SugarFreeExtract OptionalDouble sugarFree) {
    return SugarLeft.of(original, Fermentation.present(original, present), sugarFree).likely();
  }

  /** Limits of the sugar left. */
  public record SugarLimits(
      @Gives(value = "low", is = Quantity.GRAM_PER_LITRE) double low,
      @Gives(value = "high", is = Quantity.GRAM_PER_LITRE) double high) {}

  /**
   * {@return the limits between which the sugar left lies, a row, g/L}
   *
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, as GRAVITY.CORRECT gives it, SG
   * @param sugarFree extract that is no fermentable sugar; left out: by parts, g/L
   * @param uSugarFree its standard uncertainty; left out: that of the parts, g/L
   * @param uGravity standard uncertainty of each gravity, SG
   */
  @CellarFunction(
      summary =
          "Low and high limit of the fermentable sugar left in a mead: it lies between them 95 times in"
              + " 100.",
      formula =
          "ALCOHOL.SUGARLEFT, before it is held at 0, ∓ 1.96 √(Σ (∂/∂gravity · u)² + (∂/∂yield · 3.5 %)²"
              + " + uSugarFree²); not below 0, and not above ALCOHOL.EXTRACT. uSugarFree left out: that"
              + " of the parts, or 2 g/L if sugarFree is given.",
      source =
          BALANCE
              + PARTS_SOURCE
              + " Propagation of uncorrelated uncertainties: GUM, JCGM 100:2008, 5.1. The yield's 3.5 %:"
              + " ALCOHOL.UNCERTAINTY. 0.0005 for each gravity and the 2 g/L: common practice, no source.",
      example = "ALCOHOL.SUGARLEFTLIMITS(1.1;0.995)",
      note =
          "Gives two cells in a row. In 4,000 meads simulated by their chemistry, which is not this"
              + " model, the sugar lay between the limits 94.7 times in 100.\n"
              + "Take the high one for whatever is about safety or sweetness, the low one for"
              + " BOTTLE.DELLE. They come together only when sugar or sugar-free extract is measured.",
      caution = TOO_COARSE)
  public static SugarLimits sugarLeftLimits(
      @Original double original,
      @Present double present,
      @SugarFreeExtract OptionalDouble sugarFree,
      @Arg(
              name = "uSugarFree",
              help = "Standard uncertainty of sugarFree",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 50)
          OptionalDouble uSugarFree,
      @Arg(
              name = "u",
              help = "Standard uncertainty of each gravity",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0,
              to = 0.02,
              byDefault = 0.0005)
          double uGravity) {
    SugarLeft left = SugarLeft.of(original, Fermentation.present(original, present), sugarFree);
    return left.limits(uSugarFree, uGravity);
  }

  /**
   * {@return how far the extract has gone, %}
   *
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, as GRAVITY.CORRECT gives it, SG
   * @param kind which attenuation
   */
  @CellarFunction(
      summary = "Attenuation: the share of the original extract that is gone.",
      gives = Quantity.PERCENT,
      formula =
          "100 (OE − E) / OE, all in % by mass: OE = GRAVITY.TOBRIX(original); E is the same of the"
              + " present gravity for apparent, and the extract really left for real.",
      source = BALANCE,
      example = "ALCOHOL.ATTENUATION(1.1;1.01)",
      note =
          "Alcohol lets the hydrometer sink, so apparent attenuation flatters; below a gravity of 1 it"
              + " passes 100 %.")
  public static double attenuation(
      @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, above = 1, to = 1.3)
          double original,
      @Present double present,
      @Arg(name = "kind", help = "Which attenuation", byDefaultWord = "apparent")
          Attenuation kind) {
    double now = Fermentation.present(original, present);
    Balling.Fermented mead = Fermentation.of(original, now);
    double before = Sucrose.massFractionFromGravity(original);
    double left =
        switch (kind) {
          case APPARENT -> Sucrose.massFractionFromGravity(now);
          case REAL -> mead.extractGramsPerLitre() / (now * Sucrose.WATER_20);
        };
    return 100 * (before - left) / before;
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
      source = BALANCE,
      example = "ALCOHOL.POTENTIAL(1.1)",
      note =
          "0.995 is a dry traditional mead (common practice, no source). Yeast stops at its own limit of"
              + " alcohol, which this does not know.")
  public static double potential(
      @Original double original,
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
      source = BALANCE,
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
      @Present double present) {
    Fermentation.extract(present, abv);
    return Balling.originalGravity(abv / 100, present);
  }

  /**
   * {@return alcohol from refractometer and hydrometer together, % vol}
   *
   * @param brix degrees Brix that the refractometer shows, at 20 °C, °Bx
   * @param gravity specific gravity that the hydrometer shows, 20/20 °C, SG
   */
  @CellarFunction(
      summary =
          "Estimate of a mead's alcohol from refractometer and hydrometer, without the original"
              + " gravity.",
      gives = Quantity.PERCENT_VOL,
      formula =
          "The one alcohol and extract with which both instruments agree: to gravity (Tabarié) and to"
              + " refractive index, sucrose and ethanol each add what they add alone at the same g/L.",
      source =
          "Index of sucrose and of ethanol solutions: ICUMSA 1974 table in OIV-MA-AS2-02 and CRC"
              + " Handbook of Chemistry and Physics, 102nd ed. That the two add up: our own assumption. "
              + TABARIE,
      example = "ALCOHOL.FROMREFRACTOMETER(8.15;0.9942)",
      note =
          "An estimate: acids and glycerol count as sugar, and no published measurement of sugar,"
              + " alcohol and water together stands behind it. Compare it once with a mead that a"
              + " laboratory has measured.\n"
              + "A refractometer 0.2 °Bx off moves it by 0.3 % vol, a hydrometer 0.0005 off by 0.2 % vol.\n"
              + "Correct both readings for temperature first: GRAVITY.BRIXCORRECT, GRAVITY.CORRECT.")
  public static double fromRefractometer(
      @Arg(
              name = "brix",
              help = "Degrees Brix that the refractometer shows, at 20 °C",
              is = Quantity.BRIX,
              from = 1,
              to = 50)
          double brix,
      @Arg(
              name = "gravity",
              help = "Specific gravity that the hydrometer shows, 20/20 °C",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.3)
          double gravity) {
    return Refractometry.abv(brix, gravity);
  }

  /**
   * {@return alcohol from the gravity of a distillate, % vol}
   *
   * @param sg specific gravity of the distillate, 20/20 °C, SG
   */
  @CellarFunction(
      summary =
          "Alcohol of a mead from the gravity of its distillate, made up to the mead's volume.",
      gives = Quantity.PERCENT_VOL,
      formula = "The water–ethanol mixture that has this gravity.",
      source = R22,
      example = "ALCOHOL.FROMDISTILLATE(0.9822)",
      note =
          "All of the alcohol has to come over, and both volumes are measured at 20 °C. 0.0001 in"
              + " gravity is 0.09 % vol.",
      caution =
          "Alcohol vapour burns. Distilling, even of a sample, needs a licence in many countries: ask"
              + " first.")
  public static double fromDistillate(
      @Arg(
              name = "sg",
              help = "Specific gravity of the distillate, 20/20 °C",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.791,
              to = 1)
          double sg) {
    return 100 * EthanolWater.volumeFractionFromGravity(sg);
  }

  /**
   * {@return alcohol from the gravity before and after boiling it off, % vol}
   *
   * @param before specific gravity of the mead, 20/20 °C, SG
   * @param after specific gravity boiled and made up with water, 20/20 °C, SG
   */
  @CellarFunction(
      summary = "Alcohol of a mead from its gravity before and after the alcohol was boiled off.",
      gives = Quantity.PERCENT_VOL,
      formula = "The water–ethanol mixture that has the gravity before − after + 1.",
      source = TABARIE,
      example = "ALCOHOL.FROMBOIL(0.9957;1.0116)",
      note =
          "Boil a measured volume down to half, cool it, make it up with water to that volume again, all"
              + " at 20 °C. 0.0005 in either gravity is 0.4 % vol.",
      caution = "Alcohol vapour burns: no open flame, and fresh air.")
  public static double fromBoil(
      @Arg(
              name = "before",
              help = "Specific gravity of the mead, 20/20 °C",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.3)
          double before,
      @Arg(
              name = "after",
              help = "Specific gravity boiled and made up with water, 20/20 °C",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1,
              to = 1.24)
          double after) {
    return Fermentation.boiledOff(before, after);
  }

  /**
   * {@return percent by mass from percent by volume, % mass}
   *
   * @param abv alcohol, % vol
   */
  @CellarFunction(
      summary = "Percent by mass of a water–ethanol mixture from its percent by volume.",
      gives = Quantity.PERCENT_MASS,
      formula = "The p for which p ρ(p) / ρ(pure ethanol) is the volume fraction at 20 °C.",
      source = R22,
      example = "ALCOHOL.BYMASS(14)",
      note = "In a mead the extract adds mass: there it is 0.7907 × % vol / gravity.")
  public static double byMass(@Abv double abv) {
    return 100 * EthanolWater.massFraction(abv / 100);
  }

  /**
   * {@return percent by volume from percent by mass, % vol}
   *
   * @param abw alcohol, % mass
   */
  @CellarFunction(
      summary = "Percent by volume of a water–ethanol mixture from its percent by mass.",
      gives = Quantity.PERCENT_VOL,
      formula = "p ρ(p) / ρ(pure ethanol) at 20 °C.",
      source = R22,
      example = "ALCOHOL.BYVOLUME(40)")
  public static double byVolume(
      @Arg(name = "abw", help = "Alcohol", is = Quantity.PERCENT_MASS, from = 1, to = 100)
          double abw) {
    return 100 * EthanolWater.volumeFraction(abw / 100);
  }

  /**
   * {@return density of a water–ethanol mixture, kg/L}
   *
   * @param abv alcohol, % vol
   * @param temperatureC temperature, °C
   */
  @CellarFunction(
      summary = "Density of a water–ethanol mixture, such as a spirit, at a temperature.",
      gives = Quantity.DENSITY,
      formula = "General formula of OIML R 22; the alcohol by volume is at 20 °C.",
      source = R22,
      example = "ALCOHOL.DENSITY(40;15)",
      note = "In vacuo; weights in air are 0.1 % less. For mead: GRAVITY.DENSITY.")
  public static double density(
      @Abv double abv,
      @Arg(
              name = "temperature",
              help = "Temperature",
              is = Quantity.TEMPERATURE,
              from = -20,
              to = 40,
              zeroIsBlank = true)
          double temperatureC) {
    return EthanolWater.density(EthanolWater.massFraction(abv / 100), temperatureC) / 1000;
  }

  /**
   * {@return standard uncertainty of alcohol from two gravities, % vol}
   *
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, as GRAVITY.CORRECT gives it, SG
   * @param uOriginal standard uncertainty of original, SG
   * @param uPresent standard uncertainty of present, SG
   * @param uModel standard uncertainty of the balance itself, % vol
   * @param yield g of alcohol from 1 g of extract, as ALCOHOL.CALIBRATE finds it; left out:
   *     Balling's
   */
  @CellarFunction(
      summary = "Standard uncertainty of ALCOHOL.ABV by balance.",
      gives = Quantity.PERCENT_VOL,
      formula =
          "√((∂ABV/∂original · uOriginal)² + (∂ABV/∂present · uPresent)² + uModel²); uModel left out:"
              + " 3.5 % of the strength.",
      source =
          "Propagation of uncorrelated uncertainties: GUM, JCGM 100:2008, 5.1. 0.0005 for a gravity:"
              + " common practice, no source. 3.5 %: 16.5 to 18 g/L of sugar for 1 % vol, rectangular,"
              + " is 2.5 % about a middle that lies 2.5 % below the balance. In that band are what yeast"
              + " strains differ in (Winetech Technical Yearbook 2020: 16.5 to 17.2), a wine laboratory's"
              + " table (Predicting alcohol levels: 16.5 to 18) and the 18 of Regulation (EC) 729/2008"
              + " for mead.",
      example = "ALCOHOL.UNCERTAINTY(1.1;0.995)",
      note =
          "The true value lies within twice this about 95 times in 100. It shrinks with what your"
              + " laboratory has measured: give the yield of ALCOHOL.CALIBRATE, and its residual as"
              + " uModel. What both readings share, as the error of one hydrometer, partly cancels and is"
              + " then counted too high.")
  public static double uncertainty(
      @Original double original,
      @Present double present,
      @Arg(
              name = "uOriginal",
              help = "Standard uncertainty of original",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0,
              to = 0.02,
              byDefault = 0.0005)
          double uOriginal,
      @Arg(
              name = "uPresent",
              help = "Standard uncertainty of present",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0,
              to = 0.02,
              byDefault = 0.0005)
          double uPresent,
      @Arg(
              name = "uModel",
              help =
                  "Standard uncertainty of the balance itself, as the residual of ALCOHOL.CALIBRATE;"
                      + " left out: 3.5 % of the strength",
              is = Quantity.PERCENT_VOL,
              from = 0,
              to = 5)
          OptionalDouble uModel,
      @YieldOfCellar OptionalDouble yield) {
    double extractPerEthanol = Yield.extractPerEthanol(yield);
    Fermentation.Slopes slopes = Fermentation.slopes(original, present, extractPerEthanol);
    double ofModel =
        uModel.orElseGet(
            () -> Yield.RELATIVE_UNCERTAINTY * abv(original, present, Method.BALANCE, yield));
    double fromOriginal = 100 * slopes.byOriginal() * uOriginal;
    double fromPresent = 100 * slopes.byPresent() * uPresent;
    return Math.sqrt(fromOriginal * fromOriginal + fromPresent * fromPresent + ofModel * ofModel);
  }

  /** What laboratory results tell about the cellar's own yield. */
  public record Calibration(
      @Gives("yield") double yield,
      @Gives("standard error of the yield") double standardError,
      @Gives(value = "residual", is = Quantity.PERCENT_VOL) double residual) {}

  /**
   * {@return the cellar's own yield, its standard error, and the residual in % vol, a row}
   *
   * @param originals original gravity of each mead, three at least, SG
   * @param presents its gravity when it was sampled, SG
   * @param measured its alcohol as the laboratory found it, % vol
   */
  @CellarFunction(
      summary =
          "The cellar's own yield of alcohol from gravities and laboratory results, its standard error,"
              + " and what it leaves unexplained.",
      formula =
          "The yield for which Σ (measured − ALCOHOL.ABV by balance with it)² is least; residual ="
              + " √(Σ (…)² / (n − 1)); standard error = residual / √(Σ (∂ABV/∂yield)²).",
      source =
          "Least squares, Brent's method (Commons Math). Balance: as in ALCOHOL.ABV. Asked for are 3"
              + " pairs at least: common practice, no source.",
      example = "ALCOHOL.CALIBRATE({1.1;1.09;1.12};{0.995;0.998;1.01};{13.6;11.7;14.4})",
      note =
          "Gives three cells in a row. Give the yield to ALCOHOL.ABV and ALCOHOL.UNCERTAINTY and the"
              + " residual to the latter as uModel. The residual also holds the error of the hydrometer"
              + " and of the laboratory; below six pairs it is a guess itself.\n"
              + "Only meads to which no honey, sugar, fruit, spirit or water came after the original"
              + " gravity was read.")
  public static Calibration calibrate(
      @Arg(
              name = "originals",
              help = "Original gravity of each mead",
              is = Quantity.SPECIFIC_GRAVITY,
              above = 1,
              to = 1.3)
          double[] originals,
      @Arg(
              name = "presents",
              help = "Its gravity when it was sampled",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.3)
          double[] presents,
      @Arg(
              name = "measured",
              help = "Its alcohol as the laboratory found it",
              is = Quantity.PERCENT_VOL,
              from = 1,
              to = 30)
          double[] measured) {
    return Yield.fit(originals, presents, measured);
  }
}
