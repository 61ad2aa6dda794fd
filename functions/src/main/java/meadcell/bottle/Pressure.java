package meadcell.bottle;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;

/** Gas in the bottle, and the yeast that may make more of it. */
@Family(name = "BOTTLE")
public final class Pressure {
  private static final String CO2_SOURCE =
      "At 20 °C: Regulation (EEC) 2676/90, annex, carbon dioxide from the pressure (OIV method)."
          + " Other temperatures: ratio of solubilities in water, Weiss 1974, Marine Chemistry 2:203"
          + " (its coefficients quoted at second hand; within 1 % of Murray and Riley 1971 from 1 to 35 °C).";

  private static final String CO2_FORMULA =
      "g/L = 1.951·10⁻⁵ · P · (0.86 − 0.01 abv) · (1 − 0.00144 sugar) · K(t) / K(20), P absolute in"
          + " Pa (gauge + 101 325), ln K = −58.0931 + 90.5069 (100/T) + 22.2940 ln(T/100), T in K.";

  @Arg(
      name = "temperature",
      help = "Temperature of the mead",
      is = Quantity.TEMPERATURE,
      from = 0,
      to = 40,
      zeroIsBlank = true)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Temperature {}

  @Arg(name = "sugar", help = "Sugar", is = Quantity.GRAM_PER_LITRE, from = 0, to = 300)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Sugar {}

  private Pressure() {}

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
      caution = Shared.BURST)
  public static double co2(
      @Arg(
              name = "pressure",
              help = "Gauge pressure; 0 is an open vessel full of CO₂",
              is = Quantity.PRESSURE,
              from = -100,
              to = 1500)
          double gaugeKPa,
      @Temperature double temperatureC,
      @Shared.Strength double abv,
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
      caution = Shared.BURST)
  public static double pressure(
      @Arg(
              name = "co2",
              help = "Carbon dioxide dissolved",
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 20)
          double co2,
      @Temperature double temperatureC,
      @Shared.Strength double abv,
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
      caution = Shared.BURST)
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
              + " Take the most that may be sugar, the high one of ALCOHOL.SUGARLEFTLIMITS; 0 is refused, for a blank cell looks like it.\n"
              + "Bottles for still wine are not made for pressure at all. Above 1000 kPa the number"
              + " only says: it bursts.",
      caution =
          Shared.BURST
              + " A sweet mead with live yeast is a hazard: stabilise, filter or pasteurise by a"
              + " method you have checked, and keep a test bottle warm.")
  public static double referment(
      @Arg(
              name = "sugar",
              help = Shared.FERMENTABLE,
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 150)
          double sugar,
      @Shared.Strength double abv,
      @Shared.GasBefore double co2,
      @Shared.WarmestStore double temperatureC) {
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
      @Shared.Strength double abv) {
    return sugar / 10 + 4.5 * abv;
  }
}
