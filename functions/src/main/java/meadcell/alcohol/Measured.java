package meadcell.alcohol;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.density.EthanolWater;

/** Strength from a measurement of the finished mead. */
@Family(name = "ALCOHOL")
public final class Measured {
  private Measured() {}

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
              + Shared.TABARIE,
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
      source = Shared.R22,
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
      source = Shared.TABARIE,
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
}
