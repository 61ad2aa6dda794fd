package meadcell.bottle;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.density.EthanolWater;
import meadcell.density.Sucrose;

/** Bottling: counts and volumes. */
@Family(
    name = "BOTTLE",
    about = "Bottling: counts, label, tax, sweetness, pressure.",
    says = {BottleReason.class, FillWords.class})
public final class Bottle {
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
      caution = Shared.CHECK_LAW)
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
              + " bottle filled cold to the cork pushes it: BOTTLE.CORKPRESSURE, BOTTLE.FILLHEIGHT.")
  public static double volumeAt(
      @Arg(
              name = "volume",
              help = "Volume at the first temperature",
              is = Quantity.VOLUME,
              above = 0,
              to = 1_000_000)
          double volumeL,
      @Shared.FirstWarmth double fromC,
      @Shared.SecondWarmth double toC,
      @Shared.AnyStrength double abv,
      @Arg(
              name = "sugar",
              help = "Sugar, or better the whole extract",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 600,
              byDefault = 0)
          double sugar) {
    return volumeL * growth(fromC, toC, abv, sugar);
  }

  /** {@return volume at the second temperature by that at the first} */
  static double growth(double fromC, double toC, double abv, double sugar) {
    double ethanol = EthanolWater.massFraction(abv / 100);
    double dissolved = Sucrose.massFractionFromGravity(Sucrose.gravityFromGramsPerLitre(sugar));
    return density(ethanol, dissolved, fromC) / density(ethanol, dissolved, toC);
  }

  /** Tabarié: to water with ethanol comes what the sugar alone would add to water. */
  private static double density(double ethanol, double sugar, double temperatureC) {
    return EthanolWater.density(ethanol, temperatureC)
        + Sucrose.density(sugar, temperatureC)
        - Sucrose.density(0, temperatureC);
  }
}
