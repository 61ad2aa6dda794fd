package meadcell.bottle;

import java.util.OptionalDouble;
import meadcell.alcohol.Extract;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** What a bottle must bear if all that may be sugar in it ferments. */
@Family(name = "BOTTLE")
public final class WorstCase {

  /** Standard uncertainty of both gravities, as in ALCOHOL.SUGARLEFTLIMITS. */
  private static final double U_GRAVITY = 0.0005;

  /** g/L: all that BOTTLE.REFERMENT takes; no bottle bears its gas. */
  private static final double MOST_SUGAR = 150;

  private WorstCase() {}

  /**
   * {@return gauge pressure of the worst case, kPa}
   *
   * @param original gravity of the must before fermentation, SG
   * @param present gravity at bottling, sweetening counted, SG
   * @param abv strength, % vol
   * @param sugarFree extract that is not fermentable sugar, g/L; empty: from its parts
   * @param co2 carbon dioxide already dissolved, g/L
   * @param temperatureC warmest store, °C
   */
  @CellarFunction(
      summary = "Pressure in the bottle if all that may be sugar in a mead ferments in it.",
      gives = Quantity.PRESSURE,
      formula =
          "BOTTLE.REFERMENT of the high one of ALCOHOL.SUGARLEFTLIMITS(original; present; sugarFree),"
              + " and of what ALCOHOL.DRYEXTRACT(present; abv) is more than ALCOHOL.EXTRACT(original;"
              + " present), as after sweetening.",
      source = "As BOTTLE.REFERMENT, ALCOHOL.SUGARLEFTLIMITS and ALCOHOL.DRYEXTRACT.",
      example = "BOTTLE.WORSTPRESSURE(1.1;0.995;14.1)",
      note =
          "An upper limit, for a mead that was not stabilised: what a hydrometer cannot tell from sugar"
              + " counts as sugar. A measured sugar-free extract, or sugar from a laboratory into"
              + " BOTTLE.REFERMENT, brings it down. FERMENT.REMAINING says how much of it the present"
              + " pace would bring.\n"
              + "Above 150 g/L it is refused: any bottle bursts. From 1000 kPa on the number only says"
              + " that.",
      caution =
          Shared.BURST
              + " A mead with live yeast and sugar is a hazard: stabilise, filter or pasteurise by a method you"
              + " have checked, and keep a test bottle warm.")
  public static double worstPressure(
      @Arg(
              name = "original",
              help = "Gravity of the must before fermentation",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1,
              to = 1.3)
          double original,
      @Arg(
              name = "present",
              help = "Gravity at bottling, sweetening counted",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.3)
          double present,
      @Shared.Strength double abv,
      @Arg(
              name = "sugarFree",
              help = "Extract that is not fermentable sugar; left out: from its parts",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 150)
          OptionalDouble sugarFree,
      @Shared.GasBefore double co2,
      @Shared.WarmestStore double temperatureC) {
    double byGravities =
        Extract.sugarLeftLimits(original, present, sugarFree, OptionalDouble.empty(), U_GRAVITY)
            .high();
    double beyondBalance = Extract.dryExtract(present, abv) - Extract.extract(original, present);
    double sugar = byGravities + Math.max(0, beyondBalance);
    if (sugar > MOST_SUGAR) {
      throw new Refusal(BottleReason.BURSTS)
          .with("sugar", sugar, Quantity.GRAM_PER_LITRE, 3)
          .with("most", MOST_SUGAR, Quantity.GRAM_PER_LITRE);
    }
    return Pressure.referment(sugar, abv, co2, temperatureC);
  }
}
