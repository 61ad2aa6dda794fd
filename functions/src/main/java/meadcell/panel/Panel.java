package meadcell.panel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** Tasting panels: tests, ranks, scores. */
@Family(name = "PANEL", about = "Tasting panels: tests, ranks, scores.", says = PanelReason.class)
public final class Panel {
  private static final String SIX_TASTERS =
      "Six tasters see little: a triangle test of six needs five right, and notices a difference"
          + " that half of all people notice only 35 times in 100. Not significant does not mean"
          + " alike; see PANEL.SIMILAR and PANEL.TASTERSNEEDED.";

  private static final String BINOMIAL =
      "Exact binomial distribution, the rule behind the tables of ";

  private static final String TRIANGLE_SOURCE =
      BINOMIAL + "FAO document V7180E, appendix A, and ISO 4120 (from memory: the standard).";

  private static final String DUO_TRIO_SOURCE = BINOMIAL + "ISO 10399, table A.1.";

  private static final String PAIRED_SOURCE = BINOMIAL + "ISO 5495 (from memory: the standard).";

  private static final String UPPER_TAIL =
      "Σ C(n,i) pⁱ (1−p)ⁿ⁻ⁱ for i from correct to n tasters, p = ";

  private static final String LEAST = "Smallest k with P(X ≥ k) ≤ alpha, X binomial with p = ";

  private static final String RANK_NOTE =
      "Each row holds 1 to the number of meads; ties share the mean of their places, as RANK.AVG"
          + " gives. For two meads use PANEL.PAIRED.";

  private static final String FRIEDMAN_SOURCE =
      "Friedman 1937; formulas and correction for ties as in NF ISO 8587, quoted at second hand.";

  /** Kinds of test that ask for one right answer. */
  public enum Protocol {
    /** Which of three is the odd one. */
    TRIANGLE(1 / 3.0, 0, 1, -2),
    /** Which of two is like the reference. */
    DUO_TRIO(0.5, 0, 0.5, 0),
    /** Which of two has more of a named property. */
    PAIRED(0.5, 0.5, 0, 0),
    /** Which of three has most of a named property. */
    THREE_AFC(1 / 3.0, 0.5, 0, 1),
    /** Four glasses to be put in two groups. */
    TETRAD(1 / 3.0, 0, 0, 4);

    final Discrimination model;

    Protocol(double guess, double single, double product, double integral) {
      model = new Discrimination(guess, single, product, integral);
    }
  }

  @Arg(name = "tasters", help = "Answers given", is = Quantity.COUNT, from = 2, to = 1000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Answers {}

  @Arg(name = "correct", help = "Right answers", is = Quantity.COUNT, from = 0, to = 1000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Correct {}

  @Arg(
      name = "alpha",
      help = "Risk of seeing a difference that is not there",
      is = Quantity.PROBABILITY,
      from = 0.0001,
      to = 0.5,
      byDefault = 0.05)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Alpha {}

  @Arg(name = "sides", help = "1 or 2", is = Quantity.COUNT, from = 1, to = 2, byDefault = 1)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Sides {}

  @Arg(name = "test", help = "Kind of test", byDefaultWord = "triangle")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Test {}

  @Arg(name = "ranks", help = "A row for each taster, a column for each mead", from = 1, to = 12)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Ranks {}

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
      note = SIX_TASTERS)
  public static double triangle(@Answers int tasters, @Correct int correct) {
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
      note = SIX_TASTERS)
  public static int triangleNeeded(@Answers int tasters, @Alpha double alpha) {
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
      note = "Easier to taste than a triangle, and sees less with the same panel.\n" + SIX_TASTERS)
  public static double duotrio(@Answers int tasters, @Correct int correct) {
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
      note = SIX_TASTERS)
  public static int duotrioNeeded(@Answers int tasters, @Alpha double alpha) {
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
              + SIX_TASTERS)
  public static double paired(
      @Answers int tasters,
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
      note = SIX_TASTERS)
  public static int pairedNeeded(@Answers int tasters, @Alpha double alpha, @Sides int sides) {
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
              + SIX_TASTERS)
  public static boolean similar(
      @Answers int tasters,
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
      note = SIX_TASTERS)
  public static double power(
      @Answers int tasters,
      @Arg(
              name = "discriminators",
              help = "Share of people who truly notice",
              is = Quantity.PERCENT,
              from = 1,
              to = 100)
          double discriminatorsPercent,
      @Test Protocol test,
      @Alpha double alpha) {
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
      @Test Protocol test,
      @Alpha double alpha) {
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
      @Test Protocol test) {
    double share = correctPercent / 100;
    if (share < test.model.guess - 1e-12) {
      throw new Refusal(PanelReason.BELOW_GUESSING)
          .with("correct", correctPercent, Quantity.PERCENT)
          .with("guess", 100 * test.model.guess, Quantity.PERCENT);
    }
    return test.model.distance(share);
  }

  /**
   * {@return Friedman's test, probability}
   *
   * @param ranks A row for each taster, a column for each mead
   */
  @CellarFunction(
      summary = "Friedman's test: probability of ranks so far apart if no mead were better.",
      gives = Quantity.PROBABILITY,
      formula =
          "F = 12 Σ(R − mean)² / (J·P·(P+1) − T/(P−1)), R rank sums, J tasters, P meads, T = Σ(t³ −"
              + " t) over ties. Every order of every taster counted for up to 20 tasters of 3 meads,"
              + " 12 of 4, 6 of 5, 3 of 6; else χ² with P − 1 degrees of freedom.",
      source = FRIEDMAN_SOURCE,
      example = "PANEL.RANKTEST({1,2,3,4;2,1,4,3;1,3,2,4;1,2,4,3})",
      note = RANK_NOTE)
  public static double rankTest(@Ranks double[][] ranks) {
    return Ranking.of(ranks).probability();
  }

  /**
   * {@return least significant difference of rank sums}
   *
   * @param ranks A row for each taster, a column for each mead
   */
  @CellarFunction(
      summary = "Least difference of two meads' rank sums that is significant at 5 %.",
      formula = "1.960 · √(J·P·(P+1)/6), J tasters, P meads.",
      source = "NF ISO 8587, quoted at second hand.",
      example = "PANEL.RANKDIFFERENCE({1,2,3,4;2,1,4,3;1,3,2,4;1,2,4,3})",
      note =
          "Only when PANEL.RANKTEST is significant, and for pairs chosen before tasting. "
              + RANK_NOTE)
  public static double rankDifference(@Ranks double[][] ranks) {
    return Ranking.of(ranks).leastDifference();
  }

  /**
   * {@return Kendall's W}
   *
   * @param ranks A row for each taster, a column for each mead
   */
  @CellarFunction(
      summary = "Kendall's W: how far the tasters agree, from 0 (not at all) to 1 (fully).",
      formula = "F / (J·(P−1)), F as in PANEL.RANKTEST, J tasters, P meads.",
      source = "Kendall and Babington Smith 1939 (from memory: the reference). " + FRIEDMAN_SOURCE,
      example = "PANEL.AGREEMENT({1,2,3,4;2,1,4,3;1,3,2,4;1,2,4,3})",
      note = RANK_NOTE)
  public static double agreement(@Ranks double[][] ranks) {
    return Ranking.of(ranks).agreement();
  }

  /** Mean of scores with its uncertainty. */
  public record Score(
      @Gives(value = "mean", is = Quantity.SCORE) double mean,
      @Gives(value = "half-width of its 95 % interval", is = Quantity.SCORE) double halfWidth) {}

  /**
   * {@return mean score, a row}
   *
   * @param scores scores of one mead, points
   */
  @CellarFunction(
      summary = "Mean of the panel's scores, and how far it is uncertain (95 %).",
      formula = "x̄ and t(0.975, n−1) · s/√n.",
      source = "Student's t; JCGM 100:2008 (GUM), 4.2 and annex G.",
      example = "PANEL.SCORE({14;15;13.5;16;14.5;15})",
      note =
          "Two meads whose intervals overlap much are not told apart. It says how this panel's mean"
              + " scatters, not whether other people would agree.")
  public static Score score(
      @Arg(
              name = "scores",
              help = "Scores of one mead",
              is = Quantity.SCORE,
              from = -1000,
              to = 1000)
          double[] scores) {
    return Scores.mean(scores);
  }

  /**
   * {@return Grubbs' test}
   *
   * @param scores scores of one mead, points
   * @param alpha risk of accusing a sound score, probability
   */
  @CellarFunction(
      summary = "Which score is an outlier by Grubbs' two-sided test: its place in the list, or 0.",
      gives = Quantity.COUNT,
      formula =
          "G = max|x − x̄|/s; outlier if 2n·P(T > t) ≤ alpha, t² = n(n−2)G²/((n−1)² − nG²), T Student's"
              + " with n − 2 degrees of freedom.",
      source =
          "Grubbs 1950, Annals of Mathematical Statistics 21:27; Pearson and Chandra Sekar 1936.",
      example = "PANEL.OUTLIER({14;15;14.5;15;14;7})",
      note =
          "Places are counted without blank cells, from 1. At least three scores.\n"
              + "An outlier is a question, not an error: ask the taster before leaving a score out."
              + " If all other scores are the same, any odd one is an outlier.")
  public static int outlier(
      @Arg(
              name = "scores",
              help = "Scores of one mead",
              is = Quantity.SCORE,
              from = -1_000_000,
              to = 1_000_000)
          double[] scores,
      @Arg(
              name = "alpha",
              help = "Risk of accusing a sound score",
              is = Quantity.PROBABILITY,
              from = 0.0001,
              to = 0.5,
              byDefault = 0.05)
          double alpha) {
    return Scores.outlier(scores, alpha);
  }

  /** Slope of scores over time, with limits. */
  public record Trend(
      @Gives(value = "change per month", is = Quantity.SCORE) double perMonth,
      @Gives(value = "lower 95 % limit", is = Quantity.SCORE) double lower,
      @Gives(value = "upper 95 % limit", is = Quantity.SCORE) double upper) {}

  /**
   * {@return trend of scores, a row}
   *
   * @param days days of the tastings, day number
   * @param scores score of each tasting, best the panel's mean, points
   * @param last how many of the latest tastings to use; 0: all
   */
  @CellarFunction(
      summary = "Whether a barrel still improves: change of its score per month, with 95 % limits.",
      formula =
          "Straight line by least squares; slope ± t(0.975, n−2) · its standard error; a month is"
              + " 30.4375 days.",
      source = "Ordinary linear regression, normal errors.",
      example = "PANEL.TREND({45000;45060;45120;45180};{13;13.5;14.5;15})",
      note =
          "Both limits above 0: still improving. Both below 0: past its best. Otherwise level, or the"
              + " tastings cannot tell.\n"
              + "With last, only that many of the latest tastings count: a barrel that turned does not"
              + " show in a line over its whole life.")
  public static Trend trend(
      @Arg(
              name = "days",
              help = "Days of the tastings",
              is = Quantity.DATE,
              from = 0,
              to = 3_000_000)
          double[] days,
      @Arg(
              name = "scores",
              help = "Score of each tasting, best the panel's mean",
              is = Quantity.SCORE,
              from = -1000,
              to = 1000)
          double[] scores,
      @Arg(
              name = "last",
              help = "How many of the latest tastings to use; 0: all",
              is = Quantity.COUNT,
              from = 0,
              to = 10_000,
              byDefault = 0)
          int last) {
    return Scores.trend(days, scores, last);
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
