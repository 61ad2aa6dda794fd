package meadcell.panel;

import java.util.List;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Place;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.RowNumber;
import meadcell.catalogue.Rows;
import org.apache.commons.math3.special.Gamma;

/** Difference tests that the same few tasters took several times. */
@Family(name = "PANEL")
public final class Replicated {
  /** What lies below this is rounding of the search. */
  private static final double ROUNDING = 1e-7;

  /** Which probability varies between tasters. */
  public enum Model {
    /** That of noticing; who does not notice guesses. */
    CORRECTED,
    /** That of a right answer. */
    PLAIN
  }

  /**
   * What one taster answered.
   *
   * @param row in the table
   * @param correct right answers
   * @param answers answers given
   */
  public record Answered(
      @RowNumber int row,
      @Arg(name = "correct", help = "Right answers", is = Quantity.COUNT, from = 0, to = 100)
          int correct,
      @Arg(name = "answers", help = "Answers given", is = Quantity.COUNT, from = 1, to = 100)
          int answers) {}

  /** How often tasters notice, how far they differ, and what that proves. */
  public record Replicates(
      @Gives(value = "μ, mean share", is = Quantity.PERCENT) double muPercent,
      @Gives("γ, spread between tasters, 0 to 1") double gamma,
      @Gives("log-likelihood") double logLikelihood,
      @Gives("G² of the spread") double spread,
      @Gives(value = "p if all were alike", is = Quantity.PROBABILITY) double spreadP,
      @Gives("G² of the difference") double difference,
      @Gives(value = "p if all were guessing", is = Quantity.PROBABILITY) double differenceP) {}

  private Replicated() {}

  /**
   * {@return what repeated difference tests show, a row}
   *
   * @param tasters a row for each taster: right answers, answers given
   * @param test kind of test
   * @param model which probability varies between tasters
   */
  @CellarFunction(
      summary =
          "Difference test taken several times by the same tasters: how often they notice, whether they"
              + " differ among themselves, and whether there is a difference at all.",
      formula =
          "Beta-binomial by maximum likelihood. corrected: a taster is right with p = c + (1 − c)·π, c"
              + " the guessing rate, π beta-distributed with mean μ and spread γ = 1/(a + b + 1); plain:"
              + " p itself is beta-distributed. G² = 2(ℓ − ℓ₀), ℓ₀ of the binomial (χ² with 1 degree of"
              + " freedom) and of guessing (2).",
      source =
          "Brockhoff 2003, Food Quality and Preference 14:405 (from memory: the reference); model and"
              + " tests as the R package sensR, function betabin, computes them.",
      example = "PANEL.REPLICATED({2,12;5,12;6,12;7,12;9,12;11,12})",
      note =
          "μ of corrected is the share of times that tasters truly notice, of plain the share of right"
              + " answers. A small first p: tasters differ, so ask each of them, not the panel. A small"
              + " second p: there is a difference; with plain see that μ is above guessing.\n"
              + "γ cannot be below 0, so the first p is up to twice too large: cautious. All answers"
              + " taken together, as PANEL.TRIANGLE does, tell whether there is a difference but not"
              + " for how many tasters. Needs two tasters, and one with two answers.")
  public static Replicates replicated(
      @Arg(name = "tasters", help = "A row for each taster") Rows<Answered> tasters,
      @Shared.Test Panel.Protocol test,
      @Arg(
              name = "model",
              help = "Which probability varies between tasters",
              byDefaultWord = "corrected")
          Model model) {
    List<Answered> answered = tasters.list();
    for (Answered taster : answered) {
      if (taster.correct > taster.answers) {
        throw new Refusal(PanelReason.MORE_RIGHT_THAN_ANSWERS)
            .about("tasters", Place.row(taster.row))
            .with("correct", taster.correct)
            .with("answers", taster.answers);
      }
    }
    if (answered.size() < 2 || answered.stream().allMatch(taster -> taster.answers == 1)) {
      throw new Refusal(PanelReason.NOT_REPLICATED).with("given", answered.size());
    }
    double guess = test.model.guess;
    double floor = model == Model.CORRECTED ? guess : 0;
    BetaBinomial binomials = new BetaBinomial(answered, floor);
    BetaBinomial.Fit fit = binomials.fit();
    double least = fit.logLikelihood() - ROUNDING;
    if (binomials.logLikelihood(0, 0) >= least || binomials.logLikelihood(1, 0) >= least) {
      throw new Refusal(PanelReason.NOTHING_VARIES);
    }
    double alike = gSquared(fit, binomials.at(0).logLikelihood());
    double guessing = gSquared(fit, new BetaBinomial(answered, 0).logLikelihood(guess, 0));
    return new Replicates(
        100 * fit.mu(),
        fit.gamma(),
        fit.logLikelihood(),
        alike,
        Gamma.regularizedGammaQ(0.5, alike / 2),
        guessing,
        Math.exp(-guessing / 2));
  }

  private static double gSquared(BetaBinomial.Fit fit, double of) {
    return Math.max(0, 2 * (fit.logLikelihood() - of));
  }
}
