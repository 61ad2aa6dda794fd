package meadcell.barrel;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;

/** Oxygen and inert gas in a barrel. */
@Family(name = "BARREL")
public final class AirContact {
  private static final String VAPOUR =
      " Water vapour and pressure terms: USGS 2011, as the R package rMR prints them.";

  private AirContact() {}

  /**
   * {@return oxygen through the wood, mg/L}
   *
   * @param days days in the barrel, days
   * @param rate oxygen that comes in, mg/L per year
   * @param oakRatio wood that a litre meets against a 225 L barrel, as BARREL.OAKRATIO gives it
   */
  @CellarFunction(
      summary = "Oxygen that has come in through wood, joints and bung of a barrel.",
      gives = Quantity.MILLIGRAM_PER_LITRE,
      formula = "rate × oakRatio × days/365.25.",
      source =
          "Default 10 for used wood, 20 for new: common practice, no source. Published: 11.4 mg/L"
              + " a year in new oak (Junqua, Zeng, Pons, OENO One 55(3), 2021), 20 to 27 by many"
              + " authors (IVES Technical Reviews 5449), all for barrels of some 225 L. That oxygen"
              + " goes with the wood that a litre meets: from memory.",
      example = "BARREL.OXYGEN(180;10;1.6)",
      note =
          "Without oakRatio the answer is that of a 225 L barrel: a cask of 30 L lets in about twice"
              + " as much. BARREL.OAKRATIO gives it from the inside sizes; where only the capacity is"
              + " known, (225 L / capacity)^(1/3).\n"
              + "The rate is uncertain by a factor of two (8 to 45 mg/L a year), more than anything else"
              + " here. Each topping and racking adds more.")
  public static double oxygen(
      @Shared.DaysInBarrel double days,
      @Arg(
              name = "rate",
              help = "Oxygen that comes in",
              is = Quantity.MILLIGRAM_PER_LITRE_YEAR,
              above = 0,
              to = 100,
              byDefault = 10)
          double rate,
      @Arg(
              name = "oakRatio",
              help = "Wood that a litre meets against a 225 L barrel, as BARREL.OAKRATIO gives it",
              from = 0.2,
              to = 5,
              byDefault = 1)
          double oakRatio) {
    return rate * oakRatio * Topping.years(days);
  }

  /**
   * {@return oxygen in the headspace, mg}
   *
   * @param headspaceL volume of the headspace, L
   * @param temperatureC temperature of the headspace, °C
   */
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

  /**
   * {@return oxygen at saturation, mg/L}
   *
   * @param temperatureC temperature of the liquid, °C
   * @param pressureKPa absolute pressure of the air, kPa
   */
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

  /**
   * {@return gas to purge a headspace, L}
   *
   * @param headspaceL volume of the headspace, L
   * @param oxygen oxygen to be left in the headspace, %
   */
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
