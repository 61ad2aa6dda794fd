package meadcell.bottle;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Verdict;
import meadcell.density.Sucrose;

/** What is in the bottle: net content, tolerances, headspace. */
@Family(name = "BOTTLE")
public final class Filling {
  /** kg/m³ of air and of the weights that scales are adjusted with: conventional values. */
  private static final double AIR = 1.2;

  private static final double WEIGHTS = 8000;

  private static final String TOLERANCES =
      "27 CFR 24.255(b), read in 2026. Directive 76/211/EEC of 20 January 1976, Annex I, 2.4 and 2.5,"
          + " and Annex II, read in 2026 in part; 1 to 10 L as the same table in Saint Lucia's Metrology"
          + " Act, Schedule 5; from memory: the sampling plans other than that of 20.";

  /** Whose law the fill follows. */
  public enum Rule {
    /** Wine: 27 CFR 24.255. */
    USA,
    /** Prepackages with the e-mark: 76/211/EEC. */
    EU
  }

  @Arg(
      name = "label",
      help = "Content on the label",
      is = Quantity.MILLILITRE,
      from = 5,
      to = 30_000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface OnLabel {}

  @Arg(name = "rule", help = "Whose law", byDefaultWord = "usa")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Whose {}

  @Arg(
      name = "content",
      help = "Mead in the bottle",
      is = Quantity.MILLILITRE,
      from = 10,
      to = 30_000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Content {}

  @Arg(
      name = "sugar",
      help = "Sugar, or better the whole extract",
      is = Quantity.GRAM_PER_LITRE,
      from = 0,
      to = 300,
      byDefault = 0)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Extract {}

  private Filling() {}

  /**
   * {@return net content at 20 °C, mL}
   *
   * @param grossG weight of the filled bottle, g
   * @param emptyG weight of the same bottle empty, with its closure, g
   * @param sg specific gravity 20/20 °C, SG
   */
  @CellarFunction(
      summary = "Net content of a bottle at 20 °C from its weight full and empty.",
      gives = Quantity.MILLILITRE,
      formula =
          "(gross − empty) · (1 − 1.2/8000) / (ρ − 1.2) · 1000, ρ = 998.2 · sg in kg/m³: the buoyancy of"
              + " air counted.",
      source =
          "Weighing in air by conventional values, 1.2 and 8000 kg/m³: OIML R 111 and D 28 (from memory)."
              + " Water at 20 °C: Bettin and Spieweck 1990.",
      example = "BOTTLE.NETCONTENT(1247.5;500;0.996)",
      note =
          "Weight does not change with warmth: the content is that at 20 °C, at which law counts it,"
              + " whatever temperature the bottle has. sg as GRAVITY.CORRECT gives it, at 20/20 °C.\n"
              + "Empty bottles of one mould differ by some g: weigh each before filling, with its closure, or"
              + " put the spread into CELLAR.UNCERTAINTY.")
  public static double netContent(
      @Arg(
              name = "gross",
              help = "Weight of the filled bottle",
              is = Quantity.GRAM,
              above = 0,
              to = 100_000)
          double grossG,
      @Arg(
              name = "empty",
              help = "Weight of the same bottle empty, with its closure",
              is = Quantity.GRAM,
              above = 0,
              to = 100_000)
          double emptyG,
      @Arg(
              name = "sg",
              help = "Specific gravity of the mead, 20/20 °C",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.96,
              to = 1.3)
          double sg) {
    if (grossG <= emptyG) {
      throw new Refusal(BottleReason.GROSS_NOT_ABOVE_EMPTY)
          .with("gross", grossG, Quantity.GRAM)
          .with("empty", emptyG, Quantity.GRAM);
    }
    return 1000 * (grossG - emptyG) * (1 - AIR / WEIGHTS) / (sg * Sucrose.WATER_20 - AIR);
  }

  /** What one bottle may lack. */
  public record FillTolerance(
      @Gives(value = "tolerated error of one bottle", is = Quantity.MILLILITRE) double error,
      @Gives(value = "least that any bottle may hold", is = Quantity.MILLILITRE) double least) {}

  /**
   * {@return tolerated error of one bottle and the least that any may hold, mL, a row}
   *
   * @param labelMl content on the label, mL
   * @param rule whose law
   */
  @CellarFunction(
      summary =
          "How much a bottle may lack of what its label says, and the least that any may hold.",
      formula =
          "usa: 1 % from 15 L, 1.5 % from 1 L, 2 % at 750 mL, 3 % at 375, 4.5 % at 187 and 100, 9 % at 50;"
              + " sizes between take the smaller percentage. eu: 9 % to 50 mL, 4.5 mL to 100, 4.5 % to 200,"
              + " 9 mL to 300, 3 % to 500, 15 mL to 1000, 1.5 % to 10 L; none may lack twice that.",
      source = TOLERANCES,
      example = "BOTTLE.FILLTOLERANCE(750)",
      note =
          "usa: as much over as under, with as many bottles over as under, and 0.5 % at most over six"
              + " return periods in a tax class (24.255(c)). Weights and measures of a state follow NIST"
              + " Handbook 133, which was not read.\n"
              + "eu: with the e-mark; the mean of a lot must not be below the label. BOTTLE.FILLCHECK"
              + " tests bottles.",
      caution = Shared.CHECK_LAW)
  public static FillTolerance fillTolerance(@OnLabel double labelMl, @Whose Rule rule) {
    double error = FillRule.tolerance(labelMl, rule);
    return new FillTolerance(error, labelMl - (rule == Rule.EU ? 2 : 1) * error);
  }

  /**
   * {@return whether bottles hold what their label says, a word}
   *
   * @param contentsMl net contents at 20 °C, mL
   * @param labelMl content on the label, mL
   * @param rule whose law
   */
  @CellarFunction(
      summary = "Whether weighed bottles hold what their label says: passes, fails or cannot tell.",
      formula =
          "eu: fails if one lacks more than twice the tolerated error, if more lack it than the sampling"
              + " plan accepts (1 of 20, 3 of 50, 5 of 80, 7 of 125), or if mean < label − t · s/√n,"
              + " t at 99.5 %; passes if the mean is not below the label; between, cannot tell. usa: fails if"
              + " one is off by more than the tolerance, or if more are on one side of the label than"
              + " chance explains (two-sided sign test, 95 %); passes if no more hold less than hold more;"
              + " between, cannot tell. Fewer than 20 bottles that break no limit: cannot tell.",
      source = TOLERANCES + " The sign test for \"as many over as under\" is our own reading.",
      example =
          "BOTTLE.FILLCHECK({751;749;752;750;748;753;751;750;749;752;750;751;748;750;752;749;751;750;753;749};750)",
      note =
          "Draw the bottles by chance over the whole run. CELLAR.WHY with the same arguments gives mean,"
              + " deviation and what decided.\n"
              + "usa: a line that fills 7 of 10 bottles short passes at most 1 time in 20.\n"
              + "eu: the test of the authority takes the benefit of the doubt; what passes here has a mean"
              + " at the label or above. Of fewer than 100 bottles the law has all tested.",
      caution = Shared.CHECK_LAW)
  public static Verdict fillCheck(
      @Arg(
              name = "contents",
              help = "Net contents at 20 °C: BOTTLE.NETCONTENT",
              is = Quantity.MILLILITRE,
              above = 0,
              to = 40_000)
          double[] contentsMl,
      @OnLabel double labelMl,
      @Whose Rule rule) {
    FillCheck check = new FillCheck(contentsMl, labelMl, FillRule.tolerance(labelMl, rule));
    return rule == Rule.EU ? check.european() : check.american();
  }

  /**
   * {@return gauge pressure under a cork, kPa}
   *
   * @param contentMl mead in the bottle, mL
   * @param headspaceMl gas between mead and cork when it was closed, mL
   * @param filledC temperature of the mead then, °C
   * @param temperatureC temperature now, or of the warmest store, °C
   * @param abv strength, % vol
   * @param sugar sugar, g/L
   * @param co2 carbon dioxide already dissolved, g/L
   * @param corkedKPa gauge pressure of the headspace right after corking, kPa
   */
  @CellarFunction(
      summary = "Pressure under the cork of a still mead when the bottle has warmed.",
      gives = Quantity.PRESSURE,
      formula =
          "Air: (101.325 + corked) · V₁/V₂ · T₂/T₁, V₂ what the growing mead leaves (BOTTLE.VOLUMEAT, less"
              + " 27·10⁻⁶ per K for the glass). Carbon dioxide: co2 shared between mead and headspace at"
              + " the solubility of BOTTLE.PRESSURE. Both together, less 101.325 kPa.",
      source =
          "Gas laws; densities as BOTTLE.VOLUMEAT; solubility as BOTTLE.PRESSURE; expansion of bottle"
              + " glass from memory. Vapour of water and alcohol, 2 to 5 kPa, is left out.",
      example = "BOTTLE.CORKPRESSURE(750;10;15;30;13;20)",
      note =
          "Nothing ferments in it: for that see BOTTLE.REFERMENT. Gas takes days to share itself.\n"
              + "corked: 0 with a vacuum corker or a screw cap; without vacuum a cork of 24 by 45 mm"
              + " presses its 15 mL or more of air into the headspace, up to 100 kPa and more.\n"
              + "From 50 to 100 kPa on corks creep (common practice, no source).",
      caution = Shared.BURST)
  public static double corkPressure(
      @Content double contentMl,
      @Arg(
              name = "headspace",
              help = "Gas between mead and cork when it was closed",
              is = Quantity.MILLILITRE,
              above = 0,
              to = 5_000)
          double headspaceMl,
      @Arg(
              name = "filled",
              help = "Temperature of the mead then",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 40,
              zeroIsBlank = true)
          double filledC,
      @Arg(
              name = "temperature",
              help = "Temperature now, or of the warmest store",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 40,
              zeroIsBlank = true)
          double temperatureC,
      @Shared.Strength double abv,
      @Extract double sugar,
      @Shared.GasBefore double co2,
      @Arg(
              name = "corked",
              help = "Gauge pressure of the headspace right after corking",
              is = Quantity.PRESSURE,
              from = -95,
              to = 300,
              byDefault = 0)
          double corkedKPa) {
    return Headspace.gaugeKPa(
        contentMl, headspaceMl, filledC, temperatureC, abv, sugar, co2, corkedKPa);
  }

  /**
   * {@return how far below the brim the mead stands at the second temperature, mm}
   *
   * @param contentMl mead in the bottle, mL
   * @param levelMm how far below the brim it stands at the first temperature, mm
   * @param neckMm inner diameter of the neck, mm
   * @param fromC first temperature, °C
   * @param toC second temperature, °C
   * @param abv strength, % vol
   * @param sugar sugar, g/L
   */
  @CellarFunction(
      summary = "How far below the brim mead stands when it has warmed or cooled in the bottle.",
      gives = Quantity.MILLIMETRE,
      formula =
          "level − 1000 ΔV / (π/4 · neck²), ΔV = what the mead grows (BOTTLE.VOLUMEAT) less 27·10⁻⁶ per K"
              + " for the glass.",
      source = "Geometry of a cylinder; densities as BOTTLE.VOLUMEAT; glass from memory.",
      example = "BOTTLE.FILLHEIGHT(750;55;18.5;20;12;13;20)",
      note =
          "The level that belongs to the labelled content holds at 20 °C: ask with from = 20 and to = the"
              + " temperature at which you fill, and fill to the result.\n"
              + "The neck counts as a cylinder of one width as far as the level moves; a bottle's drawing gives"
              + " level and width.",
      caution = Shared.BURST)
  public static double fillHeight(
      @Content double contentMl,
      @Arg(
              name = "level",
              help = "How far below the brim it stands at the first temperature",
              is = Quantity.MILLIMETRE,
              from = 0,
              to = 300)
          double levelMm,
      @Arg(
              name = "neck",
              help = "Inner diameter of the neck",
              is = Quantity.MILLIMETRE,
              from = 5,
              to = 100)
          double neckMm,
      @Shared.FirstWarmth double fromC,
      @Shared.SecondWarmth double toC,
      @Shared.AnyStrength double abv,
      @Extract double sugar) {
    double rise =
        1000 * Headspace.lost(contentMl, fromC, toC, abv, sugar) / (Math.PI / 4 * neckMm * neckMm);
    if (rise > levelMm) {
      throw new Refusal(BottleReason.OVERFLOWS)
          .with("temperature", toC, Quantity.TEMPERATURE)
          .with("above", rise - levelMm, Quantity.MILLIMETRE, 2);
    }
    return levelMm - rise;
  }
}
