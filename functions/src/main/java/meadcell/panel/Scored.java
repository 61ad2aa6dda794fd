package meadcell.panel;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;

/** Points given by tasters. */
@Family(name = "PANEL")
public final class Scored {
  private Scored() {}

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
      formula = "x̄ and t(0.975, n−1) · s/√n, s at least that of rounding: the scale's step/√12.",
      source = "Student's t; JCGM 100:2008 (GUM), 4.2, F.2.2.1 and annex G.",
      example = "PANEL.SCORE({14;15;13.5;16;14.5;15})",
      note =
          "Two meads whose intervals overlap much are not told apart. The step is the largest on which all"
              + " scores stand: 1, 0.5, and so on; scores that are all the same are no more certain than it"
              + " lets them be. It says how this panel's mean"
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
          "Straight line by least squares; slope ± t(0.975, n−2) · its standard error, the scatter at"
              + " least that of rounding: the scale's step/√12; a month is 30.4375 days.",
      source = "Ordinary linear regression, normal errors. Rounding: JCGM 100:2008 (GUM), F.2.2.1.",
      example = "PANEL.TREND({45000;45060;45120;45180};{13;13.5;14.5;15})",
      note =
          "Both limits above 0: still improving. Both below 0: past its best. Otherwise level, or the"
              + " tastings cannot tell. The step is the largest on which all scores stand: 1, 0.5, and so on."
              + " Three tastings tell little: take four.\n"
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

  /** Mean of scores with limits that take no shape for granted. */
  public record Resampled(
      @Gives(value = "mean", is = Quantity.SCORE) double mean,
      @Gives(value = "its standard error", is = Quantity.SCORE) double standardError,
      @Gives(value = "lower limit", is = Quantity.SCORE) double lower,
      @Gives(value = "upper limit", is = Quantity.SCORE) double upper) {}

  /**
   * {@return mean of scores on a scale with its limits, a row}
   *
   * @param scores scores of one mead, points
   * @param confidencePercent confidence of the limits, %
   */
  @CellarFunction(
      summary =
          "Mean of scores on a scale of steps, with limits that stay on the scale: an exact bootstrap.",
      formula =
          "Distribution of the mean of n scores drawn with return from the n scores, every draw counted;"
              + " standard error √(Σ(x − x̄)²)/n. Limits at the tails Φ(t·√(n/(n−1))), t of Student with n −"
              + " 1 degrees of freedom.",
      source =
          "Efron 1979, Annals of Statistics 7:1 (from memory: the reference). Expanded percentiles:"
              + " Hesterberg 2014, arXiv 1411.5279, as the R package resample, function ExpandProbs,"
              + " describes them.",
      example = "PANEL.BOOTSTRAP({14;15;13.5;16;14.5;15})",
      note =
          "For points from a scale, which crowd at an end and are not normal; no seed is needed, for"
              + " nothing is simulated. Plain percentiles are too narrow for few scores; these are widened"
              + " for it, and at 95 % with fewer than five scores are the scores' own range. At least three"
              + " scores, with at most 3 decimals. Like PANEL.SCORE it says how this panel's mean"
              + " scatters, not whether other people would agree.")
  public static Resampled bootstrap(
      @Arg(
              name = "scores",
              help = "Scores of one mead",
              is = Quantity.SCORE,
              from = -1000,
              to = 1000)
          double[] scores,
      @Arg(
              name = "confidence",
              help = "Confidence of the limits",
              is = Quantity.PERCENT,
              from = 50,
              to = 99.9,
              byDefault = 95)
          double confidencePercent) {
    return Scores.resampled(scores, confidencePercent);
  }

  /** How well a taster repeats. */
  public record Repeatability(
      @Gives(value = "standard deviation of one score", is = Quantity.SCORE) double deviation,
      @Gives(value = "its lower 95 % limit", is = Quantity.SCORE) double lower,
      @Gives(value = "its upper 95 % limit", is = Quantity.SCORE) double upper,
      @Gives(value = "difference of two that is exceeded 1 time in 20", is = Quantity.SCORE)
          double limit) {}

  /**
   * {@return a taster's repeatability, a row}
   *
   * @param first score of each mead when tasted first, points
   * @param second score of the same mead tasted again, points
   */
  @CellarFunction(
      summary = "How well a taster repeats their own scores, from meads tasted twice blind.",
      formula =
          "s = √(Σd²/(2m)), d differences of m pairs; limits s·√(m/χ²), m degrees of freedom; 2.8 s.",
      source = "ISO 5725-2 and 5725-6 (from memory: the standards).",
      example = "PANEL.REPEATABILITY({14;15;13;16;12;15};{13.5;15.5;13;14;12.5;15})",
      note =
          "Both glasses of a pair carry codes of their own and stand in different places (PANEL.SERVING,"
              + " PANEL.CODES). Two scores of this taster that differ by less than the last number say"
              + " nothing. At least two pairs; six or more, or the limits are wide.")
  public static Repeatability repeatability(
      @Arg(
              name = "first",
              help = "Score of each mead when tasted first",
              is = Quantity.SCORE,
              from = -1000,
              to = 1000)
          double[] first,
      @Arg(
              name = "second",
              help = "Score of the same mead tasted again",
              is = Quantity.SCORE,
              from = -1000,
              to = 1000)
          double[] second) {
    return Scores.repeatability(first, second);
  }
}
