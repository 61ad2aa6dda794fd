package meadcell.alcohol;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.density.Balling;
import meadcell.density.Sucrose;

/** What is dissolved in a mead, and how much of it is sugar. */
@Family(name = "ALCOHOL")
public final class Extract {
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

  @Arg(
      name = "sugarFree",
      help = "Extract that is not fermentable sugar; left out: from its parts",
      is = Quantity.GRAM_PER_LITRE,
      from = 0,
      to = 150)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface SugarFreeExtract {}

  /** Whether the alcohol's lightness counts as extract gone. */
  public enum Attenuation {
    /** The fall of gravity as read. */
    APPARENT,
    /** The extract gone. */
    REAL
  }

  private Extract() {}

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
      source = Shared.BALANCE,
      example = "ALCOHOL.EXTRACT(1.1;0.995)",
      note =
          "Extract is not sugar: glycerol, acids and what yeast cannot ferment stay. A mead dry at"
              + " 0.994 from 1.100 still shows 32 g/L. For sweetness and bottle pressure take"
              + " ALCOHOL.SUGARLEFT.")
  public static double extract(@Shared.Original double original, @Shared.Present double present) {
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
      source = Shared.TABARIE,
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
      source = Shared.BALANCE + PARTS_SOURCE,
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
      @Shared.Original double original,
      @Shared.Present double present,
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
          Shared.BALANCE
              + PARTS_SOURCE
              + " Propagation of uncorrelated uncertainties: GUM, JCGM 100:2008, 5.1. The yield's 3.5 %:"
              + " ALCOHOL.UNCERTAINTY. 0.0005 for each gravity and the 2 g/L: common practice, no source.",
      example = "ALCOHOL.SUGARLEFTLIMITS(1.1;0.995)",
      note =
          "Gives two cells in a row. In 4,000 meads simulated by their chemistry, which is not this"
              + " model, the sugar lay between the limits 94.7 times in 100. In 6,497 measured wines, which"
              + " are no meads, it did 97 times in 100, and was above the high one 2 times in 1,000.\n"
              + "Take the high one for whatever is about safety or sweetness, the low one for"
              + " BOTTLE.DELLE. They come together only when sugar or sugar-free extract is measured.",
      caution = TOO_COARSE)
  public static SugarLimits sugarLeftLimits(
      @Shared.Original double original,
      @Shared.Present double present,
      @SugarFreeExtract OptionalDouble sugarFree,
      @Arg(
              name = "uSugarFree",
              help = "Standard uncertainty of sugarFree",
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 50)
          OptionalDouble uSugarFree,
      @Arg(
              name = "u",
              help = "Standard uncertainty of each gravity",
              is = Quantity.SPECIFIC_GRAVITY,
              above = 0,
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
      source = Shared.BALANCE,
      example = "ALCOHOL.ATTENUATION(1.1;1.01)",
      note =
          "Alcohol lets the hydrometer sink, so apparent attenuation flatters; below a gravity of 1 it"
              + " passes 100 %.")
  public static double attenuation(
      @Arg(
              name = "original",
              help = Shared.ORIGINAL,
              is = Quantity.SPECIFIC_GRAVITY,
              above = 1,
              to = 1.3)
          double original,
      @Shared.Present double present,
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
}
