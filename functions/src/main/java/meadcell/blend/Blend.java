package meadcell.blend;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.Comparator;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Cell;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.density.Sucrose;
import meadcell.law.UsHoneyWine;

/** Blending: shares, strength, plans, and what is in a lot. */
@Family(
    name = "BLEND",
    about = "Blending: shares, strength, plans, and what is in a lot.",
    says = {BlendReason.class, Change.class})
public final class Blend {
  private static final double MOST_VOLUME_L = 1e6;

  private static final String R22 =
      "Mass balance at 20 °C with the densities of OIML R 22 (1975), general formula.";
  private static final String MASS_BALANCE =
      "Masses and ethanol masses add up: m = V ρ(q), p = Σ ethanol ÷ Σ m; % vol = 100 p ρ(p) ÷"
          + " ρ(1), V = Σ m ÷ ρ(p), ρ of water and ethanol at 20 °C.";
  private static final String SUGAR_IGNORED =
      "Volumes are at 20 °C. The sugar of a mead is left out of account; it changes contraction"
          + " little.";
  private static final String SWEETENING =
      "Mass, ethanol and extract before and after are the same, honey solids counted as sucrose. The"
          + " mead's SG is that of its extract plus that of its alcohol less 1 (Tabarié).";
  private static final String SWEETENING_SOURCE =
      "Mass balance. Sucrose: ICUMSA SPS-4. Ethanol–water: OIML R 22 (1975). Mixture: Tabarié,"
          + " OIV-MA-AS2-03B. That honey solids count as sucrose is from memory: the usual"
          + " approximation for musts. Default moisture: White et al. 1962, USDA Technical Bulletin"
          + " 1261, mean of 490 honeys.";
  private static final String SWEETENING_NOTE =
      "Without abv the answer is up to 1 % low: 100 L from 0.998 to 1.012 take 4.49 kg then, 4.53 kg"
          + " counted with 13.5 % vol.";
  private static final String REFERMENT_CAUTION =
      "Live yeast ferments the honey: bottles may burst and casks blow their bungs. Stabilise first"
          + " or keep it where gas can leave; carbon dioxide gathers in closed rooms and kills.";
  private static final String LOG_NOTE =
      "A name that was never filled is a source: a liquid of that name, as much as is drawn. A barrel"
          + " that was full before the log began needs a gauge row first. Names are alike in any"
          + " case; a misspelt one shows up as a source.\n"
          + "day left out is the last day of the log; give TODAY() to count up to now.\n"
          + "Write loss in to for what was lost. Write gauge in from or to for a measured content:"
          + " what the log has beyond it is counted as loss, a little more than the log has scales"
          + " the content.\n"
          + "Logs overdraw a little: up to tolerance, in % of the most the vessel held since it was"
          + " last empty, the vessel counts as having held that much more; beyond it the row is"
          + " refused.";

  @Arg(
      name = "volumes",
      help = "Volume of each lot",
      is = Quantity.VOLUME,
      from = 0,
      to = MOST_VOLUME_L)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Volumes {}

  @Arg(
      name = "abvs",
      help = "Alcohol of each lot, 0 for water",
      is = Quantity.PERCENT_VOL,
      from = 0,
      to = 100)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Abvs {}

  @Arg(name = "target", help = "Alcohol wanted", is = Quantity.PERCENT_VOL, from = 1, to = 100)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface StrengthWanted {}

  @Arg(
      name = "volume",
      help = "Mead to sweeten",
      is = Quantity.VOLUME,
      above = 0,
      to = MOST_VOLUME_L)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MeadVolume {}

  @Arg(
      name = "gravity",
      help = "Its specific gravity",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MeadGravity {}

  @Arg(
      name = "target",
      help = "Specific gravity wanted",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface GravityWanted {}

  @Arg(
      name = "abv",
      help = "Alcohol of the mead; left out for a must",
      is = Quantity.PERCENT_VOL,
      from = 0,
      to = 30,
      byDefault = 0)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MeadStrength {}

  @Arg(
      name = "moisture",
      help = "Water in the honey",
      is = Quantity.PERCENT,
      from = 10,
      to = 30,
      byDefault = 17.2)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Moisture {}

  @Arg(name = "transfers", help = "A row for each transfer")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Transfers {}

  @Arg(name = "lot", help = "Vessel or lot to explain, as transfers name it")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Lot {}

  @Arg(
      name = "day",
      help = "State at the end of this day; left out: after the last transfer",
      is = Quantity.DATE,
      above = 0,
      to = 300000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Day {}

  @Arg(
      name = "tolerance",
      help = "How much of a vessel's fill may be drawn beyond what the log has left in it",
      is = Quantity.PERCENT,
      from = 0,
      to = 20,
      byDefault = 3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Tolerance {}

  private Blend() {}

  /** Shares of two lots in a blend. */
  public record Parts(
      @Gives(value = "share of first", is = Quantity.PERCENT) double first,
      @Gives(value = "share of second", is = Quantity.PERCENT) double second) {}

  /**
   * {@return pearson's square, a row}
   *
   * @param first value of the first lot
   * @param second value of the second lot
   * @param target value wanted
   */
  @CellarFunction(
      summary = "Shares of two lots that together have the target value.",
      formula = "first : second = |second − target| : |target − first|, stated in % of the blend.",
      source =
          "Pearson's square, general teaching; 12 and 65 °Brix to 24 as 41 : 12 on a food science"
              + " teaching page (foodrecap.net).",
      example = "BLEND.PARTS(12;40;20)",
      note =
          "Exact for what mixes by volume: sugar in g/L, acid, SO₂. Alcohol is a little off (use"
              + " BLEND.FORTIFY), °Brix is exact by mass, pH does not mix this way at all.")
  public static Parts parts(
      @Arg(name = "first", help = "Value of the first lot", from = 0, to = 1e6) double first,
      @Arg(name = "second", help = "Value of the second lot", from = 0, to = 1e6) double second,
      @Arg(name = "target", help = "Value wanted", from = 0, to = 1e6) double target) {
    if (first == second) {
      throw new Refusal(BlendReason.BOTH_ALIKE).with("first", first, Quantity.NUMBER);
    }
    if (target < Math.min(first, second) || target > Math.max(first, second)) {
      throw new Refusal(BlendReason.TARGET_NOT_BETWEEN)
          .with("target", target, Quantity.NUMBER)
          .with("first", first, Quantity.NUMBER)
          .with("second", second, Quantity.NUMBER);
    }
    double share = 100 * (second - target) / (second - first);
    return new Parts(share, 100 - share);
  }

  /**
   * {@return volume-weighted mean}
   *
   * @param volumesL volume of each lot, L
   * @param values value of each lot
   */
  @CellarFunction(
      summary = "Value of a blend: sugar, acid, SO₂ and whatever else mixes by volume.",
      formula = "Σ volume · value ÷ Σ volume.",
      source = "Mass balance of what is dissolved.",
      example = "BLEND.MEAN({100;50};{12;18})",
      note =
          "Never for pH, which does not mix by volume: blend a sample and measure. Alcohol:"
              + " BLEND.ABV. Gravity: BLEND.GRAVITY.")
  public static double mean(
      @Volumes double[] volumesL,
      @Arg(name = "values", help = "Value of each lot", from = -1e6, to = 1e6) double[] values) {
    refuseEmpty(volumesL);
    double sum = 0;
    double volumeL = 0;
    for (int i = 0; i < volumesL.length; i++) {
      sum += volumesL[i] * values[i];
      volumeL += volumesL[i];
    }
    return sum / volumeL;
  }

  /**
   * {@return strength of a blend, % vol}
   *
   * @param volumesL volume of each lot, L
   * @param abvs alcohol of each lot, 0 for water, % vol
   */
  @CellarFunction(
      summary = "Alcohol of a blend, contraction counted.",
      gives = Quantity.PERCENT_VOL,
      formula = MASS_BALANCE,
      source = R22,
      example = "BLEND.ABV({100;10};{12;96})",
      note = SUGAR_IGNORED)
  public static double abv(@Volumes double[] volumesL, @Abvs double[] abvs) {
    refuseEmpty(volumesL);
    return WaterAndEthanol.blend(volumesL, abvs).abv();
  }

  /**
   * {@return volume of a blend, L}
   *
   * @param volumesL volume of each lot, L
   * @param abvs alcohol of each lot, 0 for water, % vol
   */
  @CellarFunction(
      summary = "Volume of a blend, contraction counted.",
      gives = Quantity.VOLUME,
      formula = MASS_BALANCE,
      source = R22,
      example = "BLEND.VOLUME({100;10};{12;96})",
      note = SUGAR_IGNORED + "\nA little water into mead makes it expand: that is no mistake.")
  public static double volume(@Volumes double[] volumesL, @Abvs double[] abvs) {
    refuseEmpty(volumesL);
    return WaterAndEthanol.blend(volumesL, abvs).volumeL();
  }

  /**
   * {@return gravity of a blend, SG}
   *
   * @param volumesL volume of each lot, L
   * @param gravities specific gravity of each lot, SG
   */
  @CellarFunction(
      summary = "Specific gravity of a blend.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "Masses V · SG and sugar masses V · SG · w(SG) add up; the gravity of the sucrose solution"
              + " with the sugar content they have together.",
      source = "Mass balance with ICUMSA SPS-4 densities of sucrose solutions.",
      example = "BLEND.GRAVITY({100;20};{1;1.3})",
      note =
          "Exact for musts. Gravities of meads (below 1 too) are treated as if their extract were"
              + " all there is: fair as long as the lots are of like strength.")
  public static double gravity(
      @Volumes double[] volumesL,
      @Arg(
              name = "gravities",
              help = "Specific gravity of each lot",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.48)
          double[] gravities) {
    refuseEmpty(volumesL);
    double mass = 0;
    double sugar = 0;
    for (int i = 0; i < volumesL.length; i++) {
      mass += volumesL[i] * gravities[i];
      sugar += volumesL[i] * gravities[i] * Sucrose.massFractionFromGravity(gravities[i]);
    }
    return Sucrose.specificGravity(sugar / mass);
  }

  /** What a plan makes smallest. */
  public enum Goal {
    /** What the parts cost. */
    COST,
    /** How far the blend is from its target. */
    CLOSEST
  }

  /**
   * {@return volumes of a blend within targets, a column, L}
   *
   * @param stock A row for each lot
   * @param targets two rows, minimum and maximum of each property; blank where free
   * @param volumeL blend to make, L
   * @param goal what to make least
   */
  @CellarFunction(
      summary = "How much of each lot for a blend within its targets, the cheapest or the closest.",
      gives = Quantity.VOLUME,
      formula =
          "Linear programme: volumes between 0 and what is available, together volume; Σ volume ·"
              + " property between minimum and maximum times volume. cost: Σ volume · cost least."
              + " closest: least sum over the properties with both limits of |value − middle| ÷ half"
              + " the range.",
      source =
          "Simplex method; properties mix by volume (mass balance). No solution: elastic programme,"
              + " least sum of relaxations, each counted in the span of that property in the lots.",
      example = "BLEND.PLAN({500,2,12;300,3,16};{13;14};400)",
      note =
          "% vol may be a property: between meads (6 and 20 % vol) contraction moves it by less than"
              + " 0.01. Give pH no target, for it does not mix by volume: blend a sample and"
              + " measure.\n"
              + "A blank row of stock is no lot and gets 0. Properties are counted from the third"
              + " column of stock. Cost is per unit of volume and only looked at for the goal"
              + " cost.\n"
              + "When nothing fits, CELLAR.WHY says which targets must give way, and by how much.",
      caution = UsHoneyWine.BLEND)
  public static double[] plan(
      @Arg(name = "stock", help = "A row for each lot") Rows<LotRow> stock,
      @Arg(
              name = "targets",
              help = "Two rows, minimum and maximum of each property; blank where free")
          Cell[][] targets,
      @Arg(
              name = "volume",
              help = "Blend to make",
              is = Quantity.VOLUME,
              above = 0,
              to = MOST_VOLUME_L)
          double volumeL,
      @Arg(name = "goal", help = "What to make least", byDefaultWord = "cost") Goal goal) {
    return Plan.volumes(new Stock(stock, targets, goal == Goal.COST), volumeL, goal);
  }

  /**
   * {@return spirit to add, L}
   *
   * @param volumeL mead to fortify, L
   * @param abv alcohol of the mead, % vol
   * @param spirit alcohol of the spirit, % vol
   * @param target alcohol wanted, % vol
   */
  @CellarFunction(
      summary = "Spirit to add for a target strength, contraction counted.",
      gives = Quantity.VOLUME,
      formula = MASS_BALANCE + " The spirit for which % vol is target.",
      source = R22,
      example = "BLEND.FORTIFY(100;12;96;18)",
      note = SUGAR_IGNORED,
      caution =
          "Spirit burns: no flame or spark near it. Adding spirit may need a licence and may change the"
              + " tax class. "
              + UsHoneyWine.SPIRIT)
  public static double fortify(
      @Arg(
              name = "volume",
              help = "Mead to fortify",
              is = Quantity.VOLUME,
              above = 0,
              to = MOST_VOLUME_L)
          double volumeL,
      @Arg(
              name = "abv",
              help = "Alcohol of the mead",
              is = Quantity.PERCENT_VOL,
              from = 1,
              to = 100)
          double abv,
      @Arg(
              name = "spirit",
              help = "Alcohol of the spirit",
              is = Quantity.PERCENT_VOL,
              from = 1,
              to = 100)
          double spirit,
      @StrengthWanted double target) {
    if (target < abv || target >= spirit) {
      throw new Refusal(BlendReason.SPIRIT_CANNOT_REACH)
          .with("target", target, Quantity.PERCENT_VOL)
          .with("abv", abv, Quantity.PERCENT_VOL)
          .with("spirit", spirit, Quantity.PERCENT_VOL);
    }
    return WaterAndEthanol.of(volumeL, abv).partsToReach(WaterAndEthanol.of(1, spirit), target);
  }

  /**
   * {@return water to add, L}
   *
   * @param volumeL liquid to reduce, L
   * @param abv its alcohol, % vol
   * @param target alcohol wanted, % vol
   */
  @CellarFunction(
      summary = "Water to add for a lower strength, contraction counted.",
      gives = Quantity.VOLUME,
      formula = MASS_BALANCE + " The water for which % vol is target.",
      source = R22,
      example = "BLEND.REDUCE(100;40;20)",
      note = SUGAR_IGNORED,
      caution = "Water added to a finished mead may be limited by law: check the current text.")
  public static double reduce(
      @Arg(
              name = "volume",
              help = "Liquid to reduce",
              is = Quantity.VOLUME,
              above = 0,
              to = MOST_VOLUME_L)
          double volumeL,
      @Arg(name = "abv", help = "Its alcohol", is = Quantity.PERCENT_VOL, from = 1, to = 100)
          double abv,
      @StrengthWanted double target) {
    if (target > abv) {
      throw new Refusal(BlendReason.WATER_CANNOT_RAISE)
          .with("target", target, Quantity.PERCENT_VOL)
          .with("abv", abv, Quantity.PERCENT_VOL);
    }
    return WaterAndEthanol.of(volumeL, abv).partsToReach(WaterAndEthanol.of(1, 0), target);
  }

  /**
   * {@return honey for a target gravity, kg}
   *
   * @param volumeL mead to sweeten, L
   * @param gravity its specific gravity, SG
   * @param target specific gravity wanted, SG
   * @param abv alcohol of the mead; left out for a must, % vol
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Honey to add to a mead for a target gravity.",
      gives = Quantity.MASS,
      formula = SWEETENING,
      source = SWEETENING_SOURCE,
      example = "BLEND.SWEETEN(225;0.998;1.012;13.5)",
      note = SWEETENING_NOTE,
      caution = REFERMENT_CAUTION)
  public static double sweeten(
      @MeadVolume double volumeL,
      @MeadGravity double gravity,
      @GravityWanted double target,
      @MeadStrength double abv,
      @Moisture double moisturePercent) {
    return Sweetened.to(target, volumeL, gravity, abv, moisturePercent).honeyKg();
  }

  /**
   * {@return strength after sweetening, % vol}
   *
   * @param volumeL mead to sweeten, L
   * @param gravity its specific gravity, SG
   * @param target specific gravity wanted, SG
   * @param abv alcohol of the mead, % vol
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Alcohol of a mead after sweetening it with honey.",
      gives = Quantity.PERCENT_VOL,
      formula = SWEETENING,
      source = SWEETENING_SOURCE,
      example = "BLEND.SWEETENEDABV(225;0.998;1.012;13.5)",
      note = SWEETENING_NOTE,
      caution = REFERMENT_CAUTION)
  public static double sweetenedAbv(
      @MeadVolume double volumeL,
      @MeadGravity double gravity,
      @GravityWanted double target,
      @Arg(name = "abv", help = "Alcohol of the mead", is = Quantity.PERCENT_VOL, from = 1, to = 30)
          double abv,
      @Moisture double moisturePercent) {
    return Sweetened.to(target, volumeL, gravity, abv, moisturePercent).abv();
  }

  /**
   * {@return volume after sweetening, L}
   *
   * @param volumeL mead to sweeten, L
   * @param gravity its specific gravity, SG
   * @param target specific gravity wanted, SG
   * @param abv alcohol of the mead; left out for a must, % vol
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Volume of a mead after sweetening it with honey.",
      gives = Quantity.VOLUME,
      formula = SWEETENING,
      source = SWEETENING_SOURCE,
      example = "BLEND.SWEETENEDVOLUME(225;0.998;1.012;13.5)",
      note = SWEETENING_NOTE,
      caution = REFERMENT_CAUTION)
  public static double sweetenedVolume(
      @MeadVolume double volumeL,
      @MeadGravity double gravity,
      @GravityWanted double target,
      @MeadStrength double abv,
      @Moisture double moisturePercent) {
    return Sweetened.to(target, volumeL, gravity, abv, moisturePercent).volumeL();
  }

  /**
   * {@return a bench trial scaled up, g or mL}
   *
   * @param trialMl mead in the trial glass, mL
   * @param addedMl solution added to it, mL
   * @param volumeL mead in the cellar, L
   * @param strength g or mL of the addition in 100 mL of the trial's solution
   */
  @CellarFunction(
      summary = "Addition for the cellar from a bench trial that tasted right.",
      gives = Quantity.GRAM_OR_MILLILITRE,
      formula = "volume · added ÷ trial · strength ÷ 100.",
      source = "Proportion; no source needed.",
      example = "BLEND.TRIAL(100;2.5;225;10)",
      note =
          "strength is what 100 mL of the trial's solution hold: 10 for a 10 % solution gives g (or"
              + " mL) of the concentrate; 100 for the addition itself, measured in mL.")
  public static double trial(
      @Arg(
              name = "trial",
              help = "Mead in the trial glass",
              is = Quantity.MILLILITRE,
              above = 0,
              to = 1e5)
          double trialMl,
      @Arg(
              name = "added",
              help = "Solution added to it",
              is = Quantity.MILLILITRE,
              above = 0,
              to = 1e5)
          double addedMl,
      @Arg(
              name = "volume",
              help = "Mead in the cellar",
              is = Quantity.VOLUME,
              above = 0,
              to = MOST_VOLUME_L)
          double volumeL,
      @Arg(
              name = "strength",
              help = "g or mL of the addition in 100 mL of the trial's solution",
              above = 0,
              to = 100,
              byDefault = 100)
          double strength) {
    return volumeL * 1000 * addedMl / trialMl * strength / 100;
  }

  /**
   * {@return what a lot is made of, a row}
   *
   * @param transfers A row for each transfer
   * @param lot vessel or lot to explain, as transfers name it
   * @param day state at the end of this day; left out: after the last transfer, day number
   * @param tolerancePercent how much of a vessel's fill may be drawn beyond what the log has left
   *     in it, %
   */
  @CellarFunction(
      summary = "Every liquid that ended in a lot and its share in %, largest first, then by name.",
      formula =
          "The log is replayed by day, rows of one day as written; each vessel counts as well mixed,"
              + " and a transfer takes its mixture along. Shares are by volume and add up to 100.",
      source = "Conservation of volume; no source needed.",
      example =
          "BLEND.LINEAGE({\"Heather must\",\"Tank\",300,1;\"Cherry must\",\"Tank\",100,1;\"Tank\","
              + "\"Cask\",225,9};\"Cask\")",
      note = LOG_NOTE)
  public static Object[][] lineage(
      @Transfers Rows<TransferRow> transfers,
      @Lot String lot,
      @Day OptionalDouble day,
      @Tolerance double tolerancePercent) {
    TransferLog log = new TransferLog(transfers, day, tolerancePercent);
    double[] shares = new Ancestry(log, log.find(BlendReason.UNKNOWN_LOT, lot)).sourceShare;
    return IntStream.range(0, shares.length)
        .filter(source -> shares[source] > 0)
        .boxed()
        .sorted(
            Comparator.<Integer>comparingDouble(source -> -shares[source]).thenComparing(log::name))
        .map(source -> new Object[] {log.name(source), 100 * shares[source]})
        .toArray(Object[][]::new);
  }

  /**
   * {@return how long a lot was in a vessel, days}
   *
   * @param transfers A row for each transfer
   * @param lot vessel or lot to explain, as transfers name it
   * @param vessel vessel it was in, as transfers name it
   * @param day state at the end of this day; left out: after the last transfer, day number
   * @param tolerancePercent how much of a vessel's fill may be drawn beyond what the log has left
   *     in it, %
   */
  @CellarFunction(
      summary =
          "Days that the liquid now in a lot has spent in a vessel, on average over all of it.",
      gives = Quantity.DAYS,
      formula =
          "Volume-weighted mean: each part of the liquid counts its own days in the vessel, and none"
              + " if it never was there. Over all vessels they add up to the mean age since the liquid"
              + " entered the log.",
      source = "Conservation of volume; no source needed.",
      example =
          "BLEND.AGE({\"Heather must\",\"Cask\",225,1;\"Cask\",\"Tank\",150,181;\"Cherry must\","
              + "\"Tank\",50,181};\"Tank\";\"Cask\")",
      note = LOG_NOTE)
  public static double age(
      @Transfers Rows<TransferRow> transfers,
      @Lot String lot,
      @Arg(name = "vessel", help = "Vessel it was in, as transfers name it") String vessel,
      @Day OptionalDouble day,
      @Tolerance double tolerancePercent) {
    TransferLog log = new TransferLog(transfers, day, tolerancePercent);
    return new Ancestry(log, log.find(BlendReason.UNKNOWN_LOT, lot))
        .days[log.find(BlendReason.UNKNOWN_VESSEL, vessel)];
  }

  private static void refuseEmpty(double[] volumesL) {
    for (double volumeL : volumesL) {
      if (volumeL > 0) {
        return;
      }
    }
    throw new Refusal(BlendReason.ALL_0);
  }
}
