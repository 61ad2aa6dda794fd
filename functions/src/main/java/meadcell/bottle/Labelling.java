package meadcell.bottle;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Statement;
import meadcell.catalogue.Verdict;
import meadcell.density.EthanolWater;
import meadcell.law.UsHoneyWine;

/** What a label says, and what law and tax make of it. */
@Family(name = "BOTTLE", says = Declaration.class)
public final class Labelling {
  /** Whose law a label follows. */
  public enum Rule {
    /** Wine of honey: 27 CFR 4.36. */
    USA,
    /** Mead. */
    EU,
    /** Drinks with macerated fruit or parts of plants. */
    EU_MACERATED
  }

  /** Whose standard drink is counted. */
  public enum Drink {
    /** 14 g = 0.6 US fl oz. */
    USA(14),
    /** No law of the Union; the commonest figure in its countries. */
    EU(10),
    /** The unit: 10 mL of pure alcohol. */
    UK(EthanolWater.PURE_ETHANOL_DENSITY_20 / 100),
    /** The standard drink: 10 g. */
    AUSTRALIA(10);

    private final double ethanolG;

    Drink(double ethanolG) {
      this.ethanolG = ethanolG;
    }
  }

  /** Where the gas in a sparkling mead came from. */
  public enum Carbonation {
    /** Fermented in the closed vessel. */
    NATURAL,
    /** Put in from a cylinder. */
    ARTIFICIAL
  }

  private static final String ENERGY_SOURCE =
      "Regulation (EU) 1169/2011 of 25 October 2011, Annex XIV, read in the identical Austrian"
          + " regulation NWKV § 6; ethanol at 20 °C: OIML R 22 (1975).";

  private static final String ENERGY_NOTE =
      "Protein and fibre of a mead are small and not counted; sugars that yeast leaves, as trehalose,"
          + " belong to sugar.";

  private static final double SULFITE_LIMIT = 10;

  private static final double ONE_SIDED_95 = 1.645;

  @Arg(name = "label", help = "Strength on the label", is = Quantity.PERCENT_VOL, from = 1, to = 24)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface LabelStated {}

  @Arg(name = "rule", help = "Whose law", byDefaultWord = "usa")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface LabelRule {}

  private Labelling() {}

  /** Lowest and highest true strength that a label allows. */
  public record LabelRange(
      @Gives(value = "lowest", is = Quantity.PERCENT_VOL) double lowest,
      @Gives(value = "highest", is = Quantity.PERCENT_VOL) double highest) {}

  /**
   * {@return true strengths that a label allows, a row}
   *
   * @param label strength on the label, % vol
   * @param rule whose law
   */
  @CellarFunction(
      summary = "Lowest and highest true strength of a mead with this strength on the label.",
      formula =
          "usa: ±1.5 to 14 % vol, ±1.0 above, ±0.75 below 7, and never across 7, 14, 16, 21 or 24."
              + " eu: ±1.0; eumacerated, for drinks with macerated fruit or parts of plants: ±1.5.",
      source =
          "27 CFR 4.36(b)(1) and (c), 24.257(a)(3) and 4.7, read in 2026; classes of 26 U.S.C."
              + " 5041(b), text of November 2024. Regulation (EU) 1169/2011 of 25 October 2011, Annex"
              + " XII: mead ±1.0 % vol, drinks with macerated fruit or parts of plants ±1.5.",
      example = "BOTTLE.LABELRANGE(13.5)",
      note =
          "Of a class both ends count as the law writes them: 14.0 is \"14 or less\", and a label of"
              + " 14.5 wants a true strength above 14, though lowest shows 14. Below 7 % vol wants a"
              + " true strength below 7.\n"
              + "The label's boundary is 14 % vol, the tax's is 16 % vol: between them the label says"
              + " more than 14 and the tax class is still the lowest.\n"
              + "How likely your own mead is outside, its uncertainty counted: BOTTLE.LABELRISK.\n"
              + "EU: strength at 20 °C, at most one decimal, more is refused; the tolerance stands on top of the"
              + " method's own uncertainty.",
      caution = Shared.CHECK_LAW)
  public static LabelRange labelRange(@LabelStated double label, @LabelRule Rule rule) {
    return LabelStrength.allowed(label, rule);
  }

  /**
   * {@return probability that the true strength lies outside the label's limits, %}
   *
   * @param label strength on the label, % vol
   * @param abv strength as measured or computed, % vol
   * @param u its standard uncertainty, % vol
   * @param rule whose law the label follows
   */
  @CellarFunction(
      summary = "Probability that the true strength lies outside what the label allows.",
      gives = Quantity.PERCENT,
      formula =
          "100 (Φ((lowest − abv) / u) + 1 − Φ((highest − abv) / u)), Φ the normal distribution, lowest and"
              + " highest as BOTTLE.LABELRANGE gives them.",
      source =
          "JCGM 106:2012, 7.4 (from memory: the section), conformance probability, nothing known before"
              + " the measurement. Limits: BOTTLE.LABELRANGE.",
      example = "BOTTLE.LABELRISK(13.5;13.2;0.5)",
      note =
          "abv and u may come from ALCOHOL.ABV and ALCOHOL.UNCERTAINTY or, better, from a laboratory with"
              + " the uncertainty it states. An error that all your measurements share, as a wrong yield,"
              + " must be in u.\n"
              + "US: the ends of the classes, 7, 14, 16, 21 and 24, count as limits.",
      caution = Shared.CHECK_LAW)
  public static double labelRisk(
      @LabelStated double label,
      @Arg(
              name = "abv",
              help = "Strength as measured or computed",
              is = Quantity.PERCENT_VOL,
              from = 1,
              to = 60)
          double abv,
      @Arg(
              name = "u",
              help = "Its standard uncertainty",
              is = Quantity.PERCENT_VOL,
              above = 0,
              to = 5)
          double u,
      @LabelRule Rule rule) {
    return LabelRisk.percent(LabelStrength.allowed(label, rule), abv, u);
  }

  /**
   * {@return US tax class, a text}
   *
   * @param abv true strength, % vol
   * @param gas what decides beside the strength
   */
  @CellarFunction(
      summary = "US federal tax class of a mead, in words.",
      formula =
          "Still holds at most 3.92 g/L CO₂; classes end at 16, 21 and 24 % vol. More CO₂: sparkling"
              + " or artificially carbonated. Made only from honey and water, below 8.5 % vol and at"
              + " most 6.4 g/L: taxed as still to 16 % vol.",
      source =
          "26 U.S.C. 5041(a), (b) and (h), text of November 2024; tolerance: 27 CFR 27.42a and"
              + " 26.222, read in 2026.",
      example = "BOTTLE.TAXCLASS(14.5)",
      note =
          "Rates per wine gallon (231 in³) before credits, same text: still to 16 % vol $1.07, over"
              + " 16 to 21 $1.57, over 21 to 24 $3.15, sparkling $3.40, artificially carbonated"
              + " $3.30.\n"
              + "The mead rule allows no fruit and no fruit flavour. It lifts the limit from 0.392 to"
              + " 0.64 g in 100 mL only below 8.5 % vol: at exactly 8.5 it is gone.\n"
              + "The law's tolerance of 0.09 g/L CO₂ for what cannot be controlled is not applied"
              + " here. The label's boundary is 14 % vol, not 16.",
      caution = Shared.CHECK_LAW + " " + UsHoneyWine.STANDARD)
  public static String taxClass(
      @Arg(name = "abv", help = "True strength", is = Quantity.PERCENT_VOL, from = 1, to = 60)
          double abv,
      Gas gas) {
    return gas.taxClass(abv).words();
  }

  /**
   * {@return sweetness word, a text}
   *
   * @param sugar fermentable sugar left, not extract: ALCOHOL.SUGARLEFT, g/L
   * @param acidity total acidity as tartaric acid; left out: not used, g/L
   */
  @CellarFunction(
      summary =
          "Sweetness word of the EU's scale for still wine: dry, medium dry, medium or sweet.",
      formula =
          "dry to 4 g/L, or to 9 if sugar is at most 2 above acidity; medium dry to 12, or to 18 if"
              + " sugar is at most 10 above acidity; medium to 45; sweet above.",
      source =
          "Delegated Regulation (EU) 2019/33 of 17 October 2018, Annex III, part B; the same limits"
              + " in the OIV International Standard for the Labelling of Wines, 3.1.6.",
      example = "BOTTLE.SWEETNESS(8;6.5)",
      note =
          "The law is for grape wine; for mead the words are a convention.\n"
              + "At exactly 45 g/L the law allows both medium and sweet.",
      caution = Shared.CHECK_LAW)
  public static String sweetness(
      @Arg(
              name = "sugar",
              help = Shared.FERMENTABLE,
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 400)
          double sugar,
      @Arg(
              name = "acidity",
              help = "Total acidity as tartaric acid; left out: not used",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 20)
          OptionalDouble acidity) {
    return SweetnessWord.of(sugar, acidity);
  }

  /**
   * {@return standard drinks}
   *
   * @param bottleMl content of the bottle, mL
   * @param abv strength, % vol
   * @param rule whose drink
   */
  @CellarFunction(
      summary = "Standard drinks in a bottle.",
      formula =
          "bottle · abv · 0.789239 g/mL, divided by usa 14 g, uk 10 mL of pure alcohol (7.89 g),"
              + " australia 10 g, eu 10 g.",
      source =
          "Ethanol at 20 °C: OIML R 22 (1975). USA: National Institute on Alcohol Abuse and Alcoholism,"
              + " A Pocket Guide for Alcohol Screening and Brief Intervention. UK and Australia:"
              + " encyclopaedia article \"Standard drink\", read 2026. EU: no common law; 10 g as in the"
              + " World Health Organization's AUDIT questionnaire.",
      example = "BOTTLE.DRINKS(750;12)",
      caution = Shared.CHECK_LAW)
  public static double drinks(
      @Arg(
              name = "bottle",
              help = "Content of the bottle",
              is = Quantity.MILLILITRE,
              above = 0,
              to = 30_000)
          double bottleMl,
      @Shared.AnyStrength double abv,
      @Arg(name = "rule", help = "Whose drink", byDefaultWord = "usa") Drink rule) {
    return bottleMl * ethanolGramsPerMl(abv) / rule.ethanolG;
  }

  /**
   * {@return energy, kJ}
   *
   * @param portion amount of mead and what is in it
   */
  @CellarFunction(
      summary = "Energy of an amount of mead in kJ, by the EU's factors.",
      gives = Quantity.KILOJOULE,
      formula =
          "29 kJ/g ethanol + 17 kJ/g sugar + 10 kJ/g glycerol (a polyol) + 13 kJ/g organic acid;"
              + " ethanol 0.789239 g/mL.",
      source = ENERGY_SOURCE,
      example = "BOTTLE.ENERGY(100;14.5;90;7;6)",
      note =
          "A label's kcal come from factors of their own, not from the kJ: BOTTLE.KILOCALORIES.\n"
              + ENERGY_NOTE,
      caution = Shared.CHECK_LAW)
  public static double energy(Portion portion) {
    return portion.energy(29, 17, 10, 13);
  }

  /**
   * {@return energy, kcal}
   *
   * @param portion amount of mead and what is in it
   */
  @CellarFunction(
      summary = "Energy of an amount of mead in kcal, by the EU's factors.",
      gives = Quantity.KILOCALORIE,
      formula =
          "7 kcal/g ethanol + 4 kcal/g sugar + 2.4 kcal/g glycerol (a polyol) + 3 kcal/g organic acid;"
              + " ethanol 0.789239 g/mL.",
      source = ENERGY_SOURCE,
      example = "BOTTLE.KILOCALORIES(100;14.5;90;7;6)",
      note =
          "A label states kJ first, BOTTLE.ENERGY, then kcal, per 100 mL; neither is the other converted."
              + " In the United States kcal are called calories, and a statement of them follows other"
              + " rules.\n"
              + ENERGY_NOTE,
      caution = Shared.CHECK_LAW)
  public static double kilocalories(Portion portion) {
    return portion.energy(7, 4, 2.4, 3);
  }

  /**
   * {@return whether a label must name sulfites, a text}
   *
   * @param so2 total sulfur dioxide as measured, mg/L
   * @param u its standard uncertainty, mg/L
   */
  @CellarFunction(
      summary =
          "Whether a label must say that the mead contains sulfites: declare, or not required.",
      gives = Quantity.TEXT,
      formula =
          "not required if so2 + 1.645 u is below 10 mg/L (95 % sure), else declare; the law's limit is"
              + " 10 mg/L of total sulfur dioxide.",
      source =
          "27 CFR 4.32(e), as the TTB's page on sulfite waivers states it, read in 2026: 10 or more parts"
              + " per million. Regulation (EU) 1169/2011, Annex II, 12: more than 10 mg/kg or 10 mg/L, read"
              + " in 2026 at second hand.",
      example = "BOTTLE.SULFITES(45;3)",
      note =
          "Total, not free, and in the mead as sold; yeast makes some of its own, so measure even where"
              + " none was added: 0 is refused, for a blank cell looks like it. Where a laboratory found none, give"
              + " its limit of detection. In the United States a label without the statement needs an analysis"
              + " by the authority's own laboratory.",
      caution =
          "Sulfites can bring on asthma: when in doubt, declare. Other allergens have no limit: in the EU"
              + " egg and milk (fining), fish (isinglass for wine is exempt), nuts, cereals with gluten,"
              + " soya, mustard and others of Annex II, as far as they are in the bottle. "
              + Shared.CHECK_LAW)
  public static Verdict sulfites(
      @Arg(
              name = "so2",
              help = "Total sulfur dioxide as measured",
              is = Quantity.MILLIGRAM_PER_LITRE,
              above = 0,
              to = 1000)
          double so2,
      @Arg(
              name = "u",
              help = "Its standard uncertainty",
              is = Quantity.MILLIGRAM_PER_LITRE,
              above = 0,
              to = 100)
          double u) {
    double highest = so2 + ONE_SIDED_95 * u;
    boolean below = highest < SULFITE_LIMIT;
    return new Verdict(
        below ? "not required" : "declare",
        Statement.of(below ? Declaration.SULFITES_BELOW : Declaration.SULFITES_DECLARED)
            .with("highest", highest, Quantity.MILLIGRAM_PER_LITRE, 3)
            .with("limit", SULFITE_LIMIT, Quantity.MILLIGRAM_PER_LITRE));
  }

  private static double ethanolGramsPerMl(double abv) {
    return abv / 100 * EthanolWater.PURE_ETHANOL_DENSITY_20 / 1000;
  }
}
