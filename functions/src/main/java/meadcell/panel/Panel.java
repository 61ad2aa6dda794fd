package meadcell.panel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.List;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** Difference tests: right answers and what they show. */
@Family(name = "PANEL", about = "Tasting panels: tests, ranks, scores.", says = PanelReason.class)
public final class Panel {
  private static final String BINOMIAL =
      "Exact binomial distribution, the rule behind the tables of ";

  private static final String TRIANGLE_SOURCE =
      BINOMIAL + "FAO document V7180E, appendix A, and ISO 4120 (from memory: the standard).";

  private static final String DUO_TRIO_SOURCE = BINOMIAL + "ISO 10399, table A.1.";

  private static final String PAIRED_SOURCE = BINOMIAL + "ISO 5495 (from memory: the standard).";

  private static final String UPPER_TAIL =
      "Σ C(n,i) pⁱ (1−p)ⁿ⁻ⁱ for i from correct to n tasters, p = ";

  private static final String LEAST = "Smallest k with P(X ≥ k) ≤ alpha, X binomial with p = ";

  @Arg(name = "correct", help = "Right answers", is = Quantity.COUNT, from = 0, to = 1000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Correct {}

  @Arg(name = "sides", help = "1 or 2", is = Quantity.COUNT, from = 1, to = 2, byDefault = 1)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Sides {}

  /** Kinds of test that ask for one right answer. */
  public enum Protocol {
    /** Which of three is the odd one. */
    TRIANGLE(1 / 3.0, 0, 1, -2, "AAB", "ABA", "BAA", "BBA", "BAB", "ABB"),
    /** Which of two is like the reference. */
    DUO_TRIO(0.5, 0, 0.5, 0, "AAB", "ABA", "BAB", "BBA"),
    /** Which of two has more of a named property. */
    PAIRED(0.5, 0.5, 0, 0, "AB", "BA"),
    /** Which of three has most of a named property. */
    THREE_AFC(1 / 3.0, 0.5, 0, 1, "AAB", "ABA", "BAA"),
    /** Four glasses to be put in two groups. */
    TETRAD(1 / 3.0, 0, 0, 4, "AABB", "ABAB", "ABBA", "BAAB", "BABA", "BBAA");

    final Discrimination model;

    /** Every order in which its glasses may be served. */
    final List<String> orders;

    Protocol(double guess, double single, double product, double integral, String... orders) {
      model = new Discrimination(guess, single, product, integral);
      this.orders = List.of(orders);
    }
  }

  private Panel() {}

  /**
   * {@return triangle test, probability}
   *
   * @param tasters answers given
   * @param correct right answers
   */
  @CellarFunction(
      summary = "Triangle test: probability of this many right answers if all were guessing.",
      gives = Quantity.PROBABILITY,
      formula = UPPER_TAIL + "1/3.",
      source = TRIANGLE_SOURCE,
      example = "PANEL.TRIANGLE(24;13)",
      note = Shared.SIX_TASTERS)
  public static double triangle(@Shared.Answers int tasters, @Correct int correct) {
    return probability(tasters, correct, Protocol.TRIANGLE);
  }

  /**
   * {@return right answers needed in a triangle test}
   *
   * @param tasters answers given
   * @param alpha risk of seeing a difference that is not there, probability
   */
  @CellarFunction(
      summary = "Triangle test: fewest right answers that show a difference.",
      gives = Quantity.COUNT,
      formula = LEAST + "1/3.",
      source = TRIANGLE_SOURCE,
      example = "PANEL.TRIANGLENEEDED(24)",
      note = Shared.SIX_TASTERS)
  public static int triangleNeeded(@Shared.Answers int tasters, @Shared.Alpha double alpha) {
    return needed(tasters, alpha, alpha, Protocol.TRIANGLE);
  }

  /**
   * {@return duo-trio test, probability}
   *
   * @param tasters answers given
   * @param correct right answers
   */
  @CellarFunction(
      summary = "Duo-trio test: probability of this many right answers if all were guessing.",
      gives = Quantity.PROBABILITY,
      formula = UPPER_TAIL + "1/2.",
      source = DUO_TRIO_SOURCE,
      example = "PANEL.DUOTRIO(30;20)",
      note =
          "Easier to taste than a triangle, and sees less with the same panel.\n"
              + Shared.SIX_TASTERS)
  public static double duotrio(@Shared.Answers int tasters, @Correct int correct) {
    return probability(tasters, correct, Protocol.DUO_TRIO);
  }

  /**
   * {@return right answers needed in a duo-trio test}
   *
   * @param tasters answers given
   * @param alpha risk of seeing a difference that is not there, probability
   */
  @CellarFunction(
      summary = "Duo-trio test: fewest right answers that show a difference.",
      gives = Quantity.COUNT,
      formula = LEAST + "1/2.",
      source = DUO_TRIO_SOURCE,
      example = "PANEL.DUOTRIONEEDED(30)",
      note = Shared.SIX_TASTERS)
  public static int duotrioNeeded(@Shared.Answers int tasters, @Shared.Alpha double alpha) {
    return needed(tasters, alpha, alpha, Protocol.DUO_TRIO);
  }

  /**
   * {@return paired comparison, probability}
   *
   * @param tasters answers given
   * @param correct answers for the one mead
   * @param sides 1 or 2
   */
  @CellarFunction(
      summary = "Paired comparison: probability of such a majority if nobody could tell.",
      gives = Quantity.PROBABILITY,
      formula =
          UPPER_TAIL
              + "1/2; for two sides twice that of the larger of correct and tasters − correct.",
      source = PAIRED_SOURCE,
      example = "PANEL.PAIRED(20;15;2)",
      note =
          "One side: you knew beforehand which mead must win (the sweeter one); correct counts it."
              + " Two sides: either may win (which do you like).\n"
              + Shared.SIX_TASTERS)
  public static double paired(
      @Shared.Answers int tasters,
      @Arg(
              name = "correct",
              help = "Answers for the one mead",
              is = Quantity.COUNT,
              from = 0,
              to = 1000)
          int correct,
      @Sides int sides) {
    int majority = sides == 2 ? Math.max(correct, tasters - correct) : correct;
    return Math.min(1, sides * probability(tasters, majority, Protocol.PAIRED));
  }

  /**
   * {@return majority needed in a paired comparison}
   *
   * @param tasters answers given
   * @param alpha risk of seeing a difference that is not there, probability
   * @param sides 1 or 2
   */
  @CellarFunction(
      summary = "Paired comparison: smallest majority that shows a difference.",
      gives = Quantity.COUNT,
      formula = LEAST + "1/2; for two sides alpha/2 in place of alpha.",
      source = PAIRED_SOURCE,
      example = "PANEL.PAIREDNEEDED(20;0.05;2)",
      note = Shared.SIX_TASTERS)
  public static int pairedNeeded(
      @Shared.Answers int tasters, @Shared.Alpha double alpha, @Sides int sides) {
    double tail = sides == 2 ? alpha / 2 : alpha;
    return needed(tasters, alpha, tail, Protocol.PAIRED);
  }

  /**
   * {@return similarity, 1 or 0}
   *
   * @param tasters answers given
   * @param correct right answers
   * @param sharePercent share of people who may notice, %
   * @param beta risk of calling them alike when more people notice, probability
   */
  @CellarFunction(
      summary =
          "1 if a triangle test shows that at most this share of people can tell two meads"
              + " apart, so that they may be pooled; else 0.",
      formula = "P(X ≤ correct) ≤ beta, X binomial with p = share + (1 − share)/3.",
      source = TRIANGLE_SOURCE + " The 30 % is common practice, no source.",
      example = "PANEL.SIMILAR(60;24)",
      note =
          "Likeness needs more tasters than a difference: with the defaults 30 tasters may give at"
              + " most 11 right answers, as many as guessing gives on average and one more. 0 means"
              + " not shown, not unlike. One answer from each taster.\n"
              + Shared.SIX_TASTERS)
  public static boolean similar(
      @Shared.Answers int tasters,
      @Correct int correct,
      @Arg(
              name = "share",
              help = "Share of people who may notice",
              is = Quantity.PERCENT,
              from = 1,
              to = 99,
              byDefault = 30)
          double sharePercent,
      @Arg(
              name = "beta",
              help = "Risk of calling them alike when more people notice",
              is = Quantity.PROBABILITY,
              from = 0.0001,
              to = 0.5,
              byDefault = 0.05)
          double beta) {
    double chance = Protocol.TRIANGLE.model.shareRight(sharePercent / 100);
    return RightAnswers.atMost(possible(correct, tasters), tasters, chance) <= beta;
  }

  private static double probability(int tasters, int correct, Protocol test) {
    return RightAnswers.atLeast(possible(correct, tasters), tasters, test.model.guess);
  }

  private static int needed(int tasters, double alpha, double tail, Protocol test) {
    int least = RightAnswers.least(tasters, test.model.guess, tail);
    if (least > tasters) {
      throw new Refusal(PanelReason.TOO_FEW_TASTERS)
          .with("tasters", tasters)
          .with("alpha", alpha, Quantity.NUMBER);
    }
    return least;
  }

  private static int possible(int correct, int tasters) {
    if (correct > tasters) {
      throw new Refusal(PanelReason.MORE_RIGHT_THAN_TASTERS)
          .with("correct", correct)
          .with("tasters", tasters);
    }
    return correct;
  }
}
