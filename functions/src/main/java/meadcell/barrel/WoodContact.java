package meadcell.barrel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.OptionalDouble;
import meadcell.blend.Blend;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** The wood that mead touches: its area, what it holds, what it gives. */
@Family(name = "BARREL")
public final class WoodContact {
  private static final String GAUGING =
      "Gauging rules of the four varieties of cask, as in nineteenth-century gauging tables"
          + " (The Builder-Mechanic, Rules and Tables for Gauging).";
  private static final String VOLUME = "What the barrel holds now";
  private static final String SOAKED = "What the wood holds, as BARREL.SOAKED gives it";
  private static final String MIXING =
      "Repeated mixing, a mass balance; how much the wood holds and lets go: common practice, no"
          + " source.";
  private static final String SCALE =
      "For scale: a 225 L barrel has 1.93 m² of inside. A quarter of an inch (0.635 cm) soaked into"
          + " one-inch staves, half of it liquid, is 6.1 L; so the last occupant is 2.6 % of the"
          + " next fill, and 0.07 % of the one after.";
  private static final double CM2_PER_M2 = 10000;
  private static final double LITRES_PER_M2_CM = 10;
  private static final String APPROACH =
      "Exponential approach to a limit, less in later fills: Towey and Waterhouse, Am. J. Enol."
          + " Vitic. 47(2):163–172, 1996, abstract.";

  @Arg(name = "soaked", help = SOAKED, is = Quantity.VOLUME, above = 0, to = 2000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Soaked {}

  @Arg(
      name = "exchange",
      help = "Share of it that mixes with the next fill",
      is = Quantity.PERCENT,
      from = 1,
      to = 100,
      byDefault = 100)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Exchange {}

  private WoodContact() {}

  /**
   * {@return inside area, m²}
   *
   * @param cask sizes of the barrel
   */
  @CellarFunction(
      summary = "Area of wood that the mead touches in a full barrel, staves and heads.",
      gives = Quantity.AREA,
      formula = "4π ∫ r √(1 + (dr/dx)²) dx over half the length, plus two heads of π d²/4.",
      source = "Geometry: surface of revolution. " + GAUGING,
      example = "BARREL.AREA(50.5;64;81.5)")
  public static double area(Cask cask) {
    return cask.area() / CM2_PER_M2;
  }

  /**
   * {@return inside area per litre, cm²/L}
   *
   * @param cask sizes of the barrel
   */
  @CellarFunction(
      summary = "Area of wood for each litre of a full barrel.",
      gives = Quantity.SQUARE_CENTIMETRE_PER_LITRE,
      formula = "BARREL.AREA over BARREL.VOLUME.",
      source = "Geometry: surface of revolution. " + GAUGING,
      example = "BARREL.AREAPERLITRE(50.5;64;81.5)",
      note =
          "In cm² per litre in both systems of units. The smaller the barrel, the more wood a"
              + " litre meets.")
  public static double areaPerLitre(Cask cask) {
    return cask.area() / (cask.volume() / Cask.LITRE);
  }

  /**
   * {@return wood per litre against the reference barrel}
   *
   * @param cask sizes of the barrel
   */
  @CellarFunction(
      summary = "How much more wood a litre meets than in a 225 L barrel; 2 is twice as much.",
      formula = "BARREL.AREAPERLITRE over that of the reference barrel, 85.86 cm²/L.",
      source =
          "Reference: Bordeaux barrel, outside 69 × 55.5 × 94.5 cm (common practice, no source), with"
              + " staves of 2.7 cm and a croze of 4 cm, its inside an ellipse.",
      example = "BARREL.OAKRATIO(36;42;50)",
      note = "A first guess for how much sooner a small barrel is ready; taste decides.")
  public static double oakRatio(Cask cask) {
    Cask reference =
        new OutsideCask(55.5, 69, 94.5, OptionalDouble.empty(), 4, Cask.Shape.ELLIPSE).inside();
    return areaPerLitre(cask) * (reference.volume() / Cask.LITRE) / reference.area();
  }

  /**
   * {@return what the wood holds, L}
   *
   * @param areaM2 area of wood that is wet, as BARREL.AREA gives it, m²
   * @param depthCm how deep the liquid has gone in, cm
   * @param share share of the wet wood that is liquid, %
   */
  @CellarFunction(
      summary = "How much liquid the wood of a barrel has soaked up.",
      gives = Quantity.VOLUME,
      formula = "area × depth × share.",
      source =
          "Depth 0.6 cm and share 50 %: common practice, no source. Oak has 56 to 63 % of voids"
              + " (computed from its basic density 0.57 to 0.68 and 1.53 for wood substance, from"
              + " memory).",
      example = "BARREL.SOAKED(1.93;0.635)",
      note = SCALE)
  public static double soaked(
      @Arg(
              name = "area",
              help = "Area of wood that is wet, as BARREL.AREA gives it",
              is = Quantity.AREA,
              above = 0,
              to = 500)
          double areaM2,
      @Arg(
              name = "depth",
              help = "How deep the liquid has gone in",
              is = Quantity.LENGTH,
              above = 0,
              to = 10,
              byDefault = 0.6)
          double depthCm,
      @Arg(
              name = "share",
              help = "Share of the wet wood that is liquid",
              is = Quantity.PERCENT,
              from = 1,
              to = 100,
              byDefault = 50)
          double share) {
    return areaM2 * depthCm * LITRES_PER_M2_CM * share / 100;
  }

  /**
   * {@return what came out of the wood, %}
   *
   * @param volumeL what the barrel holds now, L
   * @param soakedL what the wood holds, as BARREL.SOAKED gives it, L
   * @param exchange share of it that mixes with the next fill, %
   */
  @CellarFunction(
      summary = "Share of the present liquid that came out of the staves: the last occupant.",
      gives = Quantity.PERCENT,
      formula = "m / (volume + m), with m = soaked × exchange.",
      source = MIXING,
      example = "BARREL.CARRYOVER(225;6.1)",
      note = SCALE)
  public static double carryover(
      @Arg(name = "volume", help = VOLUME, is = Quantity.VOLUME, above = 0, to = Shared.LARGEST_L)
          double volumeL,
      @Soaked double soakedL,
      @Exchange double exchange) {
    return 100 * Wood.carried(volumeL, soakedL * exchange / 100);
  }

  /**
   * {@return shares of all fills, a column, %}
   *
   * @param volumesL volume of each fill, the oldest first, the present one last, L
   * @param soakedL what the wood holds, as BARREL.SOAKED gives it, L
   * @param exchange share of it that mixes with the next fill, %
   * @param toppedL poured in to top up since the last fill, L
   */
  @CellarFunction(
      summary = "Share of each past fill in the present liquid, the oldest first; they sum to 100.",
      gives = Quantity.PERCENT,
      formula =
          "Each fill mixes with m = soaked × exchange of what was before: earlier shares × m /"
              + " (fill + m). Topping mixes in the same way, earlier shares × (fill + m) / (fill +"
              + " m + topped), and counts with the last fill.",
      source = MIXING,
      example = "BARREL.HISTORY({200;225;225};6.1)",
      note =
          "Shares are of litres poured in: evaporation takes water and alcohol and leaves behind"
              + " what tastes.\n"
              + SCALE)
  public static double[] history(
      @Arg(
              name = "volumes",
              help = "Volume of each fill, the oldest first, the present one last",
              is = Quantity.VOLUME,
              above = 0,
              to = Shared.LARGEST_L)
          double[] volumesL,
      @Soaked double soakedL,
      @Exchange double exchange,
      @Arg(
              name = "topped",
              help = "Poured in to top up since the last fill",
              is = Quantity.VOLUME,
              from = 0,
              to = Shared.LARGEST_L,
              byDefault = 0)
          double toppedL) {
    double[] shares = Wood.shares(volumesL, soakedL * exchange / 100, toppedL);
    for (int i = 0; i < shares.length; i++) {
      shares[i] *= 100;
    }
    return shares;
  }

  /**
   * {@return strength after a spirit cask has given up its spirit, % vol}
   *
   * @param volumeL what is filled in, L
   * @param abv strength of it, % vol
   * @param soakedL spirit that the wood holds, as BARREL.SOAKED gives it, L
   * @param spiritAbv strength of that spirit, % vol
   * @param drainedL how much of it was drained or rinsed out before filling, L
   */
  @CellarFunction(
      summary = "Strength once the wood of a spirit cask and the mead in it have become one.",
      gives = Quantity.PERCENT_VOL,
      formula =
          "Masses and ethanol of mead and spirit add up; the strength of the mix follows from its"
              + " density, so contraction is in it.",
      source = "Mass balance with the ethanol–water densities of OIML R 22 (1975) at 20 °C.",
      example = "BARREL.SPIRITGAIN(220;12;5;60)",
      note =
          "5 L of 60 % vol in the wood lift 220 L of 12 % vol by about one point.\n"
              + "Sugar in the mead is left out; it hardly changes the strength.",
      caution =
          "The alcohol gained counts for label and tax class; follow the law that applies to you.")
  public static double spiritGain(
      @Arg(
              name = "volume",
              help = "What is filled in",
              is = Quantity.VOLUME,
              above = 0,
              to = Shared.LARGEST_L)
          double volumeL,
      @Arg(name = "abv", help = "Strength of it", is = Quantity.PERCENT_VOL, from = 1, to = 25)
          double abv,
      @Arg(
              name = "soaked",
              help = "Spirit that the wood holds, as BARREL.SOAKED gives it",
              is = Quantity.VOLUME,
              above = 0,
              to = 2000)
          double soakedL,
      @Arg(
              name = "spiritAbv",
              help = "Strength of that spirit",
              is = Quantity.PERCENT_VOL,
              from = 10,
              to = 96)
          double spiritAbv,
      @Arg(
              name = "drained",
              help = "How much of it was drained or rinsed out before filling",
              is = Quantity.VOLUME,
              from = 0,
              to = 2000,
              byDefault = 0)
          double drainedL) {
    if (drainedL > soakedL) {
      throw new Refusal(BarrelReason.DRAINED_ABOVE_SOAKED)
          .with("drained", drainedL, Quantity.VOLUME)
          .with("soaked", soakedL, Quantity.VOLUME);
    }
    return Blend.abv(new double[] {volumeL, soakedL - drainedL}, new double[] {abv, spiritAbv});
  }

  /**
   * {@return extraction against time, %}
   *
   * @param days days in the barrel, days
   * @param halfTime days in which half of the limit goes into the mead, days
   * @param fill which fill of the barrel this is, 1 when new
   * @param depletion what each fill takes away from the limit, %
   */
  @CellarFunction(
      summary = "Extraction so far, in per cent of what a new barrel would give in the end.",
      gives = Quantity.PERCENT,
      formula = "(1 − depletion/100)^(fill − 1) × (1 − 2^(−days/halfTime)).",
      source = APPROACH + " Depletion of half a fill, from memory: 50, 25, 12 %.",
      example = "BARREL.EXTRACTION(120;90;2)",
      note =
          "Count every fill, also those before the barrel was yours. Depletion is uncertain: 30 to 70"
              + " % a fill would not surprise (common practice, no source).\n"
              + "Substances differ: those of the toast go with the first fill, some lactones come later."
              + " Take the half time from your own notes with BARREL.EXTRACTIONFIT.")
  public static double extraction(
      @Shared.DaysInBarrel double days,
      @Arg(
              name = "halfTime",
              help = "Days in which half of the limit goes into the mead",
              is = Quantity.DAYS,
              above = 0,
              to = 5000)
          double halfTime,
      @Arg(
              name = "fill",
              help = "Which fill of the barrel this is, 1 when new",
              is = Quantity.COUNT,
              from = 1,
              to = 30)
          int fill,
      @Arg(
              name = "depletion",
              help = "What each fill takes away from the limit",
              is = Quantity.PERCENT,
              from = 1,
              to = 99,
              byDefault = 50)
          double depletion) {
    return 100 * Math.pow(1 - depletion / 100, fill - 1) * Extraction.share(days, halfTime);
  }

  /** Limit and half time of an extraction. */
  public record ExtractionFit(
      @Gives("limit") double limit,
      @Gives(value = "half time", is = Quantity.DAYS) double halfTime,
      @Gives("standard error of the limit") double limitError,
      @Gives(value = "standard error of the half time", is = Quantity.DAYS) double halfTimeError) {}

  /**
   * {@return extraction fitted to notes, a row}
   *
   * @param days days since filling of each note, days
   * @param intensities intensity noted, in any unit
   */
  @CellarFunction(
      summary =
          "Limit and half time of what the wood gives, from one's own notes of its intensity.",
      formula =
          "Least squares of limit × (1 − 2^(−days/halfTime)), standard errors from the scatter of"
              + " the notes.",
      source = APPROACH + " Levenberg–Marquardt (Commons Math).",
      example = "BARREL.EXTRACTIONFIT({14;30;60;90;150};{1;2.1;3.6;4.4;5.6})",
      note =
          "Score on one scale, 0 meaning no wood at all. Refused before the notes level off: then"
              + " the limit could be anything.")
  public static ExtractionFit extractionFit(
      @Arg(
              name = "days",
              help = "Days since filling of each note",
              is = Quantity.DAYS,
              from = 0,
              to = 20000)
          double[] days,
      @Arg(
              name = "intensities",
              help = "Intensity noted, in any unit",
              is = Quantity.NUMBER,
              from = 0,
              to = 1000000)
          double[] intensities) {
    return Extraction.fit(days, intensities);
  }
}
