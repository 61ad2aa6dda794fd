package meadcell.panel;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** What a test can notice, and how far apart two meads are. */
@Family(name = "PANEL")
public final class Sensitivity {
  private Sensitivity() {}

  /**
   * {@return power, probability}
   *
   * @param tasters answers given
   * @param discriminatorsPercent share of people who truly notice, %
   * @param test kind of test
   * @param alpha risk of seeing a difference that is not there, probability
   */
  @CellarFunction(
      summary = "Chance that a test notices a difference which this share of people notices.",
      gives = Quantity.PROBABILITY,
      formula =
          "P(X ≥ least number right), X binomial with p = d + (1 − d) · guess, d = discriminators;"
              + " guess 1/3 for triangle, threeafc, tetrad, 1/2 for duotrio, paired (one side).",
      source = "Model of ISO 4120 and ISO 10399 (from memory: the standards).",
      example = "PANEL.POWER(30;30)",
      note = Shared.SIX_TASTERS)
  public static double power(
      @Shared.Answers int tasters,
      @Arg(
              name = "discriminators",
              help = "Share of people who truly notice",
              is = Quantity.PERCENT,
              from = 1,
              to = 100)
          double discriminatorsPercent,
      @Shared.Test Panel.Protocol test,
      @Shared.Alpha double alpha) {
    return RightAnswers.power(tasters, discriminatorsPercent / 100, test.model, alpha);
  }

  /** Panels that notice with 80 and 90 %. */
  public record Tasters(
      @Gives(value = "tasters for a chance of 80 %", is = Quantity.COUNT) int for80,
      @Gives(value = "tasters for a chance of 90 %", is = Quantity.COUNT) int for90) {}

  /**
   * {@return panel size, a row}
   *
   * @param discriminatorsPercent share of people who truly notice, %
   * @param test kind of test
   * @param alpha risk of seeing a difference that is not there, probability
   */
  @CellarFunction(
      summary =
          "Smallest panels that notice, with a chance of 80 % and of 90 %, a difference which this"
              + " share of people notices.",
      formula = "Smallest tasters for which PANEL.POWER is at least 0.8, and 0.9.",
      source = "Model of ISO 4120 and ISO 10399 (from memory: the standards).",
      example = "PANEL.TASTERSNEEDED(50)",
      note =
          "Counts are whole, so one taster more can do slightly worse: look with PANEL.POWER. Take a"
              + " multiple of 6 for a triangle, of 4 for a duo-trio, of 2 for a pair, and every order"
              + " of serving comes up equally often.")
  public static Tasters tastersNeeded(
      @Arg(
              name = "discriminators",
              help = "Share of people who truly notice",
              is = Quantity.PERCENT,
              from = 10,
              to = 100)
          double discriminatorsPercent,
      @Shared.Test Panel.Protocol test,
      @Shared.Alpha double alpha) {
    double noticing = discriminatorsPercent / 100;
    return new Tasters(
        RightAnswers.tasters(noticing, test.model, alpha, 0.8),
        RightAnswers.tasters(noticing, test.model, alpha, 0.9));
  }

  /**
   * {@return Thurstone's distance}
   *
   * @param correctPercent right answers in 100, %
   * @param test kind of test
   */
  @CellarFunction(
      summary = "d′: how far apart two meads are, in units of a taster's own scatter.",
      formula =
          "Solves share right = f(d′). paired: Φ(d/√2). threeafc: ∫Φ(z)²φ(z−d)dz. duotrio: 1 −"
              + " Φ(d/√2) − Φ(d/√6) + 2Φ(d/√2)Φ(d/√6). triangle: 2∫₀^∞[Φ(−z√3+d√(2/3)) +"
              + " Φ(−z√3−d√(2/3))]φ(z)dz. tetrad: 1 − 2∫φ(z)[2Φ(z)Φ(z−d) − Φ(z−d)²]dz.",
      source = "Thurstone's models: Ennis 1993, Journal of Sensory Studies 8:353.",
      example = "PANEL.DPRIME(60)",
      note =
          "Makes tests of different kinds comparable. A share below what guessing gives has no d′."
              + " From a few tasters it is very uncertain.")
  public static double dprime(
      @Arg(
              name = "correctPercent",
              help = "Right answers in 100",
              is = Quantity.PERCENT,
              from = 1,
              to = 99.9)
          double correctPercent,
      @Shared.Test Panel.Protocol test) {
    double share = correctPercent / 100;
    if (share < test.model.guess - 1e-12) {
      throw new Refusal(PanelReason.BELOW_GUESSING)
          .with("correct", correctPercent, Quantity.PERCENT)
          .with("guess", 100 * test.model.guess, Quantity.PERCENT);
    }
    return test.model.distance(share);
  }
}
