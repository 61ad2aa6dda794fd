package meadcell.alcohol;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
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
  private static final String ORIGINAL = "Gravity of the must before fermentation";

  /** EU factor: g/L of sugar for 1 % vol, as OIV-MA-AS2-02 Table II uses it. */
  private static final double SUGAR_PER_PERCENT_VOL = 16.83;

  private static final double LINEAR_FACTOR = 131.25; // common practice, no source

  @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, from = 1, to = 1.2)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Original {}

  @Arg(
      name = "present",
      help = "Gravity now, as GRAVITY.CORRECT gives it",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.2)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Present {}

  @Arg(name = "abv", help = "Alcohol", is = Quantity.PERCENT_VOL, from = 1, to = 100)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Abv {}

  private Alcohol() {}

  /** How alcohol follows from two gravities. */
  public enum Method {
    BALANCE,
    SUGAR,
    LINEAR
  }

  /** Whether the alcohol's lightness counts as extract gone. */
  public enum Attenuation {
    APPARENT,
    REAL
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
      @Original double original,
      @Present double present,
      @Arg(name = "method", help = "How it is computed", byDefaultWord = "balance") Method method) {
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
  public static double extract(@Original double original, @Present double present) {
    return Fermentation.of(original, present).extractGramsPerLitre();
  }

  /** Extract from gravity and measured alcohol. */
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
              to = 1.2)
          double gravity,
      @Arg(name = "abv", help = "Measured alcohol", is = Quantity.PERCENT_VOL, from = 1, to = 30)
          double abv) {
    return Fermentation.extract(gravity, abv);
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
      @Original double original,
      @Present double present,
      @Arg(
              name = "sugarFree",
              help = "Extract that is not fermentable sugar",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 80,
              byDefault = 25)
          double sugarFree) {
    return Math.max(0, extract(original, present) - sugarFree);
  }

  /** How far the extract has gone. */
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
      @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, above = 1, to = 1.2)
          double original,
      @Present double present,
      @Arg(name = "kind", help = "Which attenuation", byDefaultWord = "apparent")
          Attenuation kind) {
    Balling.Fermented mead = Fermentation.of(original, present);
    double before = Sucrose.massFractionFromGravity(original);
    double left =
        switch (kind) {
          case APPARENT -> Sucrose.massFractionFromGravity(present);
          case REAL -> mead.extractGramsPerLitre() / (present * Sucrose.WATER_20);
        };
    return 100 * (before - left) / before;
  }

  /** Alcohol to be expected. */
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
              to = 1.2,
              byDefault = 0.995)
          double finalGravity) {
    return abv(original, finalGravity, Method.BALANCE);
  }

  /** The original gravity that a log forgot. */
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

  /** Alcohol from refractometer and hydrometer together. */
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
              to = 1.2)
          double gravity) {
    return Refractometry.abv(brix, gravity);
  }

  /** Alcohol from the gravity of a distillate. */
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

  /** Alcohol from the gravity before and after boiling it off. */
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
              to = 1.2)
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

  /** Percent by mass from percent by volume. */
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

  /** Percent by volume from percent by mass. */
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

  /** Density of a water–ethanol mixture. */
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

  /** Standard uncertainty of alcohol from two gravities. */
  @CellarFunction(
      summary = "Standard uncertainty of ALCOHOL.ABV by balance.",
      gives = Quantity.PERCENT_VOL,
      formula = "√((∂ABV/∂original · uOriginal)² + (∂ABV/∂present · uPresent)² + uModel²)",
      source =
          "Propagation of uncorrelated uncertainties: GUM, JCGM 100:2008, 5.1. 0.0005 for a gravity and"
              + " 0.3 % vol for uModel: common practice, no source.",
      example = "ALCOHOL.UNCERTAINTY(1.1;0.995)",
      note =
          "The true value lies within twice this about 95 times in 100. uModel is what yeasts differ in"
              + " what they make of sugar. What both readings share, as the error of one hydrometer,"
              + " partly cancels and is then counted too high.")
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
              help = "Standard uncertainty of the balance itself",
              is = Quantity.PERCENT_VOL,
              from = 0,
              to = 5,
              byDefault = 0.3)
          double uModel) {
    Fermentation.Slopes slopes = Fermentation.slopes(original, present);
    double fromOriginal = 100 * slopes.byOriginal() * uOriginal;
    double fromPresent = 100 * slopes.byPresent() * uPresent;
    return Math.sqrt(fromOriginal * fromOriginal + fromPresent * fromPresent + uModel * uModel);
  }
}
