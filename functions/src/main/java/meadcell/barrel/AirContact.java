package meadcell.barrel;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;

/** Oxygen and inert gas in a barrel. */
@Family(name = "BARREL")
public final class AirContact {
  private static final String VOLUME = "What the barrel holds now";
  private static final String VAPOUR =
      " Water vapour and pressure terms, from memory: Standard Methods 4500-O.";

  private AirContact() {}

  /** Oxygen through the wood. */
  @CellarFunction(
      summary = "Oxygen that has come in through wood, joints and bung of a barrel.",
      gives = Quantity.MILLIGRAM_PER_LITRE,
      formula = "rate × days/365.25.",
      source =
          "Default 10 for used wood, 20 for new: common practice, no source. Published: 11.4 mg/L"
              + " a year in new oak (Junqua, Zeng, Pons, OENO One 55(3), 2021), 20 to 27 by many"
              + " authors (IVES Technical Reviews 5449).",
      example = "BARREL.OXYGEN(180)",
      note =
          "The spread of the rate, 8 to 45 mg/L a year, is far larger than anything else here."
              + " Each topping and racking adds more.")
  public static double oxygen(
      @Shared.DaysInBarrel double days,
      @Arg(
              name = "rate",
              help = "Oxygen that comes in",
              is = Quantity.MILLIGRAM_PER_LITRE_YEAR,
              above = 0,
              to = 100,
              byDefault = 10)
          double rate) {
    return rate * Topping.years(days);
  }

  /** Oxygen in the headspace. */
  @CellarFunction(
      summary = "Oxygen in a headspace that has just been open to the air: an upper bound.",
      gives = Quantity.MILLIGRAM,
      formula =
          "headspace × 0.20946 (p − pw) 31.998 g/mol / (R T) at 101.325 kPa, pw that of water"
              + " vapour.",
      source = "Ideal gas, R = 8.314463 J/(mol K)." + VAPOUR,
      example = "BARREL.HEADSPACEOXYGEN(3;15)",
      note = "A closed barrel soon holds less: mead takes the oxygen up.")
  public static double headspaceOxygen(
      @Shared.Headspace double headspaceL,
      @Arg(
              name = "temperature",
              help = "Temperature of the headspace",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 40,
              zeroIsBlank = true)
          double temperatureC) {
    return headspaceL * Air.oxygen(temperatureC);
  }

  /** Oxygen at saturation. */
  @CellarFunction(
      summary = "Oxygen that water holds when it has stood under air.",
      gives = Quantity.MILLIGRAM_PER_LITRE,
      formula = "C p (1 − pw/p)(1 − θp) / ((1 − pw)(1 − θ)), p and pw in atmospheres, C as below.",
      source =
          "Benson and Krause, as in Standard Methods (APHA) 4500-O: ln C = −139.34411 + 1.575701·10⁵/T"
              + " − 6.642308·10⁷/T² + 1.243800·10¹⁰/T³ − 8.621949·10¹¹/T⁴."
              + VAPOUR,
      example = "BARREL.SATURATION(15)",
      note =
          "For water. At 20 °C mead of 12 % vol holds a little less, about 8.5 mg/L (from memory).")
  public static double saturation(
      @Arg(
              name = "temperature",
              help = "Temperature of the liquid",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 40,
              zeroIsBlank = true)
          double temperatureC,
      @Arg(
              name = "pressure",
              help = "Absolute pressure of the air",
              is = Quantity.PRESSURE,
              from = 60,
              to = 110,
              byDefault = 101.325)
          double pressureKPa) {
    return Air.saturation(temperatureC, pressureKPa);
  }

  /** Gas to purge a headspace. */
  @CellarFunction(
      summary = "Inert gas that brings the oxygen of a headspace full of air down to a share.",
      gives = Quantity.VOLUME,
      formula =
          "headspace × ln(20.946 / oxygen): gas flows through and mixes, at the pressure of the"
              + " cellar.",
      source = "Perfect mixing. Oxygen in dry air 20.946 %: standard atmosphere, from memory.",
      example = "BARREL.PURGE(10;1)",
      note = "Slow gas heavier than air takes less, a jet into an open bung more.",
      caution =
          "Carbon dioxide, nitrogen and argon kill without warning in cellars and pits: ventilate,"
              + " carry a meter, never lean into a vessel. Never blow gas into a closed barrel."
              + " Follow local codes.")
  public static double purge(
      @Shared.Headspace double headspaceL,
      @Arg(
              name = "oxygen",
              help = "Oxygen to be left in the headspace",
              is = Quantity.PERCENT,
              from = 0.1,
              to = 20)
          double oxygen) {
    return headspaceL * Math.log(100 * Air.OXYGEN_SHARE / oxygen);
  }
}
