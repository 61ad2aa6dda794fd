package meadcell.bottle;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.density.EthanolWater;
import meadcell.density.Sucrose;
import meadcell.law.UsHoneyWine;

/** Bottling: counts, label, tax, sweetness, pressure. */
@Family(
    name = "BOTTLE",
    about = "Bottling: counts, label, tax, sweetness, pressure.",
    says = BottleReason.class)
public final class Bottle {
  private static final String CHECK_LAW =
      "Not legal advice. Laws change: check the current text, and ask the authority.";

  static final String BURST =
      "Glass under pressure can burst and blind. Only bottles, closures and vessels whose maker"
          + " rates them for the pressure; goggles and gloves; chill before opening.";

  private static final String CO2_SOURCE =
      "At 20 °C: Regulation (EEC) 2676/90, annex, carbon dioxide from the pressure (OIV method)."
          + " Other temperatures: ratio of solubilities in water, Weiss 1974, Marine Chemistry 2:203"
          + " (from memory: its coefficients; within 1 % of Murray and Riley 1971 from 1 to 35 °C).";

  private static final String CO2_FORMULA =
      "g/L = 1.951·10⁻⁵ · P · (0.86 − 0.01 abv) · (1 − 0.00144 sugar) · K(t) / K(20), P absolute in"
          + " Pa (gauge + 101 325), ln K = −58.0931 + 90.5069 (100/T) + 22.2940 ln(T/100), T in K.";

  private static final String FERMENTABLE =
      "Fermentable sugar left, the high one of ALCOHOL.SUGARLEFTLIMITS";

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

  @Arg(name = "label", help = "Strength on the label", is = Quantity.PERCENT_VOL, from = 1, to = 24)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface LabelStated {}

  @Arg(name = "rule", help = "Whose law", byDefaultWord = "usa")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface LabelRule {}

  @Arg(name = "abv", help = "Strength", is = Quantity.PERCENT_VOL, from = 1, to = 96)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface AnyStrength {}

  @Arg(
      name = "temperature",
      help = "Temperature of the mead",
      is = Quantity.TEMPERATURE,
      from = 0,
      to = 40,
      zeroIsBlank = true)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Temperature {}

  @Arg(name = "abv", help = "Strength", is = Quantity.PERCENT_VOL, from = 1, to = 25)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Strength {}

  @Arg(name = "sugar", help = "Sugar", is = Quantity.GRAM_PER_LITRE, from = 0, to = 300)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Sugar {}

  private Bottle() {}

  /**
   * {@return whole bottles from a volume}
   *
   * @param volumeL volume to bottle, L
   * @param bottleMl content of a bottle, mL
   * @param lossPercent left in hoses, filter and tank, %
   */
  @CellarFunction(
      summary = "Whole bottles that a volume fills.",
      gives = Quantity.COUNT,
      formula = "Whole part of volume · (1 − loss/100) / bottle.",
      source = "Arithmetic; the loss of 2 % is common practice, no source.",
      example = "BOTTLE.COUNT(225;750)",
      note =
          "US sizes, 27 CFR 4.72 as amended by T.D. TTB-200 (90 FR 1868, 10 January 2025): 3, 2.25,"
              + " 1.8, 1.5, 1 L; 750, 720, 700, 620, 600, 568, 550, 500, 473, 375, 360, 355, 330,"
              + " 300, 250, 200, 187, 180, 100, 50 mL; whole litres from 4 L (355, 250, 200 mL and"
              + " the litres from memory).\n"
              + "US fill, 27 CFR 24.255, read in 2026: a bottle may be off by 1.5 % from 1 to 14.9 L,"
              + " 2 % at 750 mL, 3 % at 375 mL, 4.5 % at 187 and 100 mL, 9 % at 50 mL.",
      caution = CHECK_LAW)
  public static double count(
      @Arg(
              name = "volume",
              help = "Volume to bottle",
              is = Quantity.VOLUME,
              above = 0,
              to = 1_000_000)
          double volumeL,
      @Arg(
              name = "bottle",
              help = "Content of a bottle",
              is = Quantity.MILLILITRE,
              from = 10,
              to = 30_000)
          double bottleMl,
      @Arg(
              name = "loss",
              help = "Left in hoses, filter and tank",
              is = Quantity.PERCENT,
              from = 0,
              to = 50,
              byDefault = 2)
          double lossPercent) {
    double bottles = volumeL * 1000 * (1 - lossPercent / 100) / bottleMl;
    return Math.floor(bottles + 1e-9); // 735 L in 750 mL bottles is 980, whatever the rounding
  }

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
      caution = CHECK_LAW)
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
      caution = CHECK_LAW)
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
   * @param co2 carbon dioxide, g/L
   * @param carbonation where the gas came from
   * @param honeyAndWaterOnly 1 if made from nothing but honey and water, else 0
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
      caution = CHECK_LAW + " " + UsHoneyWine.STANDARD)
  public static String taxClass(
      @Arg(name = "abv", help = "True strength", is = Quantity.PERCENT_VOL, from = 1, to = 60)
          double abv,
      @Arg(
              name = "co2",
              help = "Carbon dioxide",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 20,
              byDefault = 0)
          double co2,
      @Arg(name = "carbonation", help = "Where the gas came from", byDefaultWord = "natural")
          Carbonation carbonation,
      @Arg(
              name = "honeyAndWaterOnly",
              help = "1 if made from nothing but honey and water, else 0",
              byDefault = 0)
          boolean honeyAndWaterOnly) {
    return TaxClass.of(abv, co2, carbonation, honeyAndWaterOnly);
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
      caution = CHECK_LAW)
  public static String sweetness(
      @Arg(name = "sugar", help = FERMENTABLE, is = Quantity.GRAM_PER_LITRE, from = 0, to = 400)
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
          "Ethanol at 20 °C: OIML R 22 (1975). USA (National Institutes of Health), UK and Australia:"
              + " encyclopaedia article \"Standard drink\", read 2026. EU: no common law; 10 g as in the"
              + " World Health Organization's AUDIT questionnaire.",
      example = "BOTTLE.DRINKS(750;12)",
      caution = CHECK_LAW)
  public static double drinks(
      @Arg(
              name = "bottle",
              help = "Content of the bottle",
              is = Quantity.MILLILITRE,
              above = 0,
              to = 30_000)
          double bottleMl,
      @AnyStrength double abv,
      @Arg(name = "rule", help = "Whose drink", byDefaultWord = "usa") Drink rule) {
    return bottleMl * ethanolGramsPerMl(abv) / rule.ethanolG;
  }

  private static double ethanolGramsPerMl(double abv) {
    return abv / 100 * EthanolWater.PURE_ETHANOL_DENSITY_20 / 1000;
  }

  /**
   * {@return energy, kJ}
   *
   * @param amountMl amount of mead, 100 for a label, mL
   * @param abv strength, % vol
   * @param sugar sugar, g/L
   * @param glycerol glycerol, g/L
   * @param acid organic acids, g/L
   */
  @CellarFunction(
      summary = "Energy of an amount of mead, by the EU's factors.",
      gives = Quantity.KILOJOULE,
      formula =
          "29 kJ/g ethanol + 17 kJ/g sugar + 10 kJ/g glycerol (a polyol) + 13 kJ/g organic acid;"
              + " ethanol 0.789239 g/mL.",
      source =
          "Regulation (EU) 1169/2011 of 25 October 2011, Annex XIV, read in the identical Austrian"
              + " regulation NWKV § 6; ethanol at 20 °C: OIML R 22 (1975).",
      example = "BOTTLE.ENERGY(100;14.5;90;7;6)",
      note =
          "A label's kcal come from factors of their own, 7, 4, 2.4 and 3 kcal/g, not from the kJ.",
      caution = CHECK_LAW)
  public static double energy(
      @Arg(
              name = "amount",
              help = "Amount of mead, 100 for a label",
              is = Quantity.MILLILITRE,
              above = 0,
              to = 1_000_000)
          double amountMl,
      @AnyStrength double abv,
      @Arg(name = "sugar", help = "Sugar", is = Quantity.GRAM_PER_LITRE, from = 0, to = 900)
          double sugar,
      @Arg(
              name = "glycerol",
              help = "Glycerol",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 50,
              byDefault = 0)
          double glycerol,
      @Arg(
              name = "acid",
              help = "Organic acids",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 50,
              byDefault = 0)
          double acid) {
    double perMl = 17 * sugar + 10 * glycerol + 13 * acid;
    return amountMl * (29 * ethanolGramsPerMl(abv) + perMl / 1000);
  }

  /**
   * {@return dissolved gas from pressure, g/L}
   *
   * @param gaugeKPa gauge pressure; 0 is an open vessel full of CO₂, kPa
   * @param temperatureC temperature of the mead, °C
   * @param abv strength, % vol
   * @param sugar sugar, g/L
   */
  @CellarFunction(
      summary = "Carbon dioxide dissolved in mead that stands under this pressure.",
      gives = Quantity.GRAM_PER_LITRE,
      formula = CO2_FORMULA,
      source = CO2_SOURCE,
      example = "BOTTLE.CO2(300;20;12;10)",
      note =
          "For mead shaken to equilibrium. Counted as if all gas above it were CO₂: air locked in"
              + " when the bottle was closed adds pressure, not CO₂.\n"
              + "Sparkling wine of 6, 12 and 20 °C follows the same ratio within 2 % (Liger-Belair et"
              + " al. 2017, Scientific Reports 7:10938, table 1); allow 10 % in all.",
      caution = BURST)
  public static double co2(
      @Arg(
              name = "pressure",
              help = "Gauge pressure; 0 is an open vessel full of CO₂",
              is = Quantity.PRESSURE,
              from = -100,
              to = 1500)
          double gaugeKPa,
      @Temperature double temperatureC,
      @Strength double abv,
      @Sugar double sugar) {
    return CarbonDioxide.dissolved(gaugeKPa, temperatureC, abv, sugar);
  }

  /**
   * {@return pressure from dissolved gas, kPa}
   *
   * @param co2 carbon dioxide dissolved, g/L
   * @param temperatureC temperature of the mead, °C
   * @param abv strength, % vol
   * @param sugar sugar, g/L
   */
  @CellarFunction(
      summary = "Pressure in a closed bottle of mead that holds this much carbon dioxide.",
      gives = Quantity.PRESSURE,
      formula = CO2_FORMULA + " Solved for the gauge pressure.",
      source = CO2_SOURCE,
      example = "BOTTLE.PRESSURE(4;20;12;0)",
      note =
          "Below 0: the mead holds less than it would in an open vessel full of CO₂, and stays"
              + " still.\n"
              + "The same bottle in a warm store has more pressure: ask for the warmest day.",
      caution = BURST)
  public static double pressure(
      @Arg(
              name = "co2",
              help = "Carbon dioxide dissolved",
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 20)
          double co2,
      @Temperature double temperatureC,
      @Strength double abv,
      @Sugar double sugar) {
    return CarbonDioxide.gaugeKPa(co2, temperatureC, abv, sugar);
  }

  /**
   * {@return priming sugar, g}
   *
   * @param volumeL volume of mead, L
   * @param rise carbon dioxide to add, g/L
   * @param sugarPercent fermentable part of the sugar, counted as sucrose, %
   */
  @CellarFunction(
      summary = "Sugar to add so that fermenting in the bottle raises the carbon dioxide by this.",
      gives = Quantity.GRAM,
      formula = "volume · rise / 0.51428 / (sugarPercent/100): 1 g sucrose gives 0.51428 g CO₂.",
      source =
          "Stoichiometry C₁₂H₂₂O₁₁ + H₂O → 4 C₂H₅OH + 4 CO₂, standard atomic weights; no sugar is"
              + " taken off for the yeast's growth.",
      example = "BOTTLE.PRIMING(100;5)",
      note =
          "sugarPercent counts as sucrose: table sugar 100, dry glucose 95, glucose monohydrate 86,"
              + " honey of 17 % water about 74.\n"
              + "Sugar still in the mead ferments too: see BOTTLE.REFERMENT. 4 g/L of sucrose is the"
              + " old rule for 1 bar; it holds in a cellar at 10 °C and is 1.4 bar at 20 °C.",
      caution = BURST)
  public static double priming(
      @Arg(
              name = "volume",
              help = "Volume of mead",
              is = Quantity.VOLUME,
              above = 0,
              to = 1_000_000)
          double volumeL,
      @Arg(
              name = "rise",
              help = "Carbon dioxide to add",
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 12)
          double rise,
      @Arg(
              name = "sugarPercent",
              help = "Fermentable part of the sugar, counted as sucrose",
              is = Quantity.PERCENT,
              from = 10,
              to = 100,
              byDefault = 100)
          double sugarPercent) {
    return volumeL * rise / CarbonDioxide.FROM_SUCROSE / (sugarPercent / 100);
  }

  /**
   * {@return pressure of an accident, kPa}
   *
   * @param sugar fermentable sugar left, not extract: ALCOHOL.SUGARLEFT, g/L
   * @param abv strength, % vol
   * @param co2 carbon dioxide already dissolved, g/L
   * @param temperatureC warmest store, °C
   */
  @CellarFunction(
      summary = "Pressure in the bottle if its sugar ferments again in a warm store.",
      gives = Quantity.PRESSURE,
      formula =
          "CO₂ = co2 + 0.48857 · sugar (glucose → 2 CO₂); strength = abv + sugar/16.83; no sugar"
              + " left; then as BOTTLE.PRESSURE.",
      source =
          CO2_SOURCE
              + " Alcohol from sugar: 16.83 g/L per % vol (EU convention). The 1.2 g/L before"
              + " bottling and the 35 °C are common practice, no source.",
      example = "BOTTLE.REFERMENT(12;13)",
      note =
          "The worst case: all sugar ferments, all gas stays in the mead; the model can be 10 % off."
              + " Take the most that may be sugar, the high one of ALCOHOL.SUGARLEFTLIMITS.\n"
              + "Bottles for still wine are not made for pressure at all. Above 1000 kPa the number"
              + " only says: it bursts.",
      caution =
          BURST
              + " A sweet mead with live yeast is a hazard: stabilise, filter or pasteurise by a"
              + " method you have checked, and keep a test bottle warm.")
  public static double referment(
      @Arg(name = "sugar", help = FERMENTABLE, is = Quantity.GRAM_PER_LITRE, from = 0, to = 150)
          double sugar,
      @Strength double abv,
      @Arg(
              name = "co2",
              help = "Carbon dioxide already dissolved",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 15,
              byDefault = 1.2)
          double co2,
      @Arg(
              name = "temperature",
              help = "Warmest store",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 40,
              zeroIsBlank = true,
              byDefault = 35)
          double temperatureC) {
    double dissolved = co2 + CarbonDioxide.FROM_HEXOSE * sugar;
    return CarbonDioxide.gaugeKPa(dissolved, temperatureC, abv + sugar / 16.83, 0);
  }

  /**
   * {@return delle units, Delle units}
   *
   * @param sugar fermentable sugar left, not extract: ALCOHOL.SUGARLEFT, g/L
   * @param abv strength, % vol
   */
  @CellarFunction(
      summary = "Delle units of a sweet mead: how far sugar and alcohol hold the yeast down.",
      gives = Quantity.DELLE,
      formula = "sugar in g/100 mL + 4.5 · abv.",
      source =
          "Delle 1911 (from memory: the year); Kunkee and Amerine 1968, Applied Microbiology 16:1067,"
              + " as cited with the formula and the limit of 78 in a wine laboratory's note, 2017.",
      example = "BOTTLE.DELLE(120;15)",
      note =
          "From about 78 units wine yeast has been counted on to rest; studies found 75 to 85,"
              + " depending on sugar.",
      caution =
          "No guarantee: tolerant yeasts and bacteria live beyond it, and barrel and fruit bring them."
              + " Stabilise as for any sweet mead, and see BOTTLE.REFERMENT for what is at stake.")
  public static double delle(
      @Arg(
              name = "sugar",
              help = "Fermentable sugar left, the low one of ALCOHOL.SUGARLEFTLIMITS",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 800)
          double sugar,
      @Strength double abv) {
    return sugar / 10 + 4.5 * abv;
  }

  /**
   * {@return volume at another temperature, L}
   *
   * @param volumeL volume at the first temperature, L
   * @param fromC first temperature, °C
   * @param toC second temperature, °C
   * @param abv strength, % vol
   * @param sugar sugar of the mead, g/L
   */
  @CellarFunction(
      summary = "Volume of a mead after it has warmed or cooled.",
      gives = Quantity.VOLUME,
      formula =
          "volume · ρ(from) / ρ(to), ρ of water with that ethanol + ρ of the sugar's solution in water − ρ of"
              + " water.",
      source =
          "OIML R 22 (1975), general formula. Sucrose: ICUMSA SPS-4. Mixture: Tabarié, OIV-MA-AS2-03B.",
      example = "BOTTLE.VOLUMEAT(225;12;22;14;100)",
      note =
          "A sweet mead expands more: with 140 g/L of sugar at 14 % vol a fifth more than without.\n"
              + "750 mL of 12 % vol grow by 1.6 mL from 10 to 20 °C and by 2.4 mL from 20 to 30 °C: a"
              + " bottle filled cold to the cork pushes it.")
  public static double volumeAt(
      @Arg(
              name = "volume",
              help = "Volume at the first temperature",
              is = Quantity.VOLUME,
              above = 0,
              to = 1_000_000)
          double volumeL,
      @Arg(
              name = "from",
              help = "First temperature",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 40,
              zeroIsBlank = true)
          double fromC,
      @Arg(
              name = "to",
              help = "Second temperature",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 40,
              zeroIsBlank = true)
          double toC,
      @AnyStrength double abv,
      @Arg(
              name = "sugar",
              help = "Sugar, or better the whole extract",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 600,
              byDefault = 0)
          double sugar) {
    double ethanol = EthanolWater.massFraction(abv / 100);
    double dissolved = Sucrose.massFractionFromGravity(Sucrose.gravityFromGramsPerLitre(sugar));
    return volumeL * density(ethanol, dissolved, fromC) / density(ethanol, dissolved, toC);
  }

  /** Tabarié: to water with ethanol comes what the sugar alone would add to water. */
  private static double density(double ethanol, double sugar, double temperatureC) {
    return EthanolWater.density(ethanol, temperatureC)
        + Sucrose.density(sugar, temperatureC)
        - Sucrose.density(0, temperatureC);
  }
}
