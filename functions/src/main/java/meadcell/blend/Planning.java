package meadcell.blend;

import meadcell.catalogue.Arg;
import meadcell.catalogue.Cell;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Rows;
import meadcell.law.UsHoneyWine;

/** How much of each for the cellar: by a plan, or by a bench trial. */
@Family(name = "BLEND")
public final class Planning {
  private Planning() {}

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
              to = Shared.MOST_VOLUME_L)
          double volumeL,
      @Arg(name = "goal", help = "What to make least", byDefaultWord = "cost") Goal goal) {
    return Plan.volumes(new Stock(stock, targets, goal == Goal.COST), volumeL, goal);
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
              to = Shared.MOST_VOLUME_L)
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
}
