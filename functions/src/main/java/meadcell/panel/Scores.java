package meadcell.panel;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.apache.commons.math3.util.ArithmeticUtils;

/** Scores of a panel, taken as normal. */
final class Scores {
  /** 365.25 days by 12. */
  private static final double DAYS_PER_MONTH = 30.4375;

  /** 1.96 · √2, rounded as the standard does. */
  private static final double REPEATABILITY_LIMIT = 2.8;

  /** Steps in a point. */
  private static final int FINEST = 1000;

  private Scores() {}

  static Scored.Score mean(double[] scores) {
    atLeast("scores", scores.length, 2);
    double deviation = Math.max(Math.sqrt(StatUtils.variance(scores)), rounding(scores));
    double t = student(scores.length - 1).inverseCumulativeProbability(0.975);
    return new Scored.Score(StatUtils.mean(scores), t * deviation / Math.sqrt(scores.length));
  }

  /** {@return place of the outlier, from 1, or 0} */
  static int outlier(double[] scores, double alpha) {
    int n = scores.length;
    atLeast("scores", n, 3);
    double mean = StatUtils.mean(scores);
    int farthest = 0;
    for (int i = 1; i < n; i++) {
      if (Math.abs(scores[i] - mean) > Math.abs(scores[farthest] - mean)) {
        farthest = i;
      }
    }
    double distance = Math.abs(scores[farthest] - mean);
    if (distance <= 1e-12 * Math.abs(mean)) {
      return 0; // all the same but for rounding
    }
    double g2 = distance * distance / StatUtils.variance(scores);
    return grubbs(g2, n) <= alpha ? farthest + 1 : 0;
  }

  /** {@return two-sided probability of at least this G², which is at most (n − 1)²/n} */
  static double grubbs(double g2, int n) {
    double most = (n - 1.0) * (n - 1.0);
    double left = most - n * g2;
    if (left <= 1e-12 * most) {
      return 0; // the other scores are all the same
    }
    double t = Math.sqrt(n * (n - 2) * g2 / left);
    return Math.min(1, 2 * n * student(n - 2).cumulativeProbability(-t));
  }

  static Scored.Trend trend(double[] days, double[] scores, int last) {
    int[] byDay =
        IntStream.range(0, days.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> days[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    int used = last == 0 ? byDay.length : last;
    atLeast(last == 0 ? "days" : "last", used, 3);
    atLeast("days", byDay.length, used);
    int[] latest = Arrays.copyOfRange(byDay, byDay.length - used, byDay.length);
    SimpleRegression line = new SimpleRegression();
    for (int i : latest) {
      line.addData(days[i], scores[i]);
    }
    if (line.getXSumSquares() == 0) {
      throw new Refusal(PanelReason.ONE_DAY);
    }
    double slope = line.getSlope() * DAYS_PER_MONTH;
    double t = student(used - 2).inverseCumulativeProbability(0.975);
    double rounding = rounding(Arrays.stream(latest).mapToDouble(i -> scores[i]).toArray());
    double deviation = Math.max(Math.sqrt(line.getMeanSquareError()), rounding);
    double half = t * deviation / Math.sqrt(line.getXSumSquares()) * DAYS_PER_MONTH;
    return new Scored.Trend(slope, slope - half, slope + half);
  }

  static Scored.Resampled resampled(double[] scores, double confidencePercent) {
    int n = scores.length;
    atLeast("scores", n, 3);
    Bootstrap means = Bootstrap.of(scores);
    double tail = Bootstrap.expanded((1 - confidencePercent / 100) / 2, n);
    return new Scored.Resampled(
        StatUtils.mean(scores),
        Math.sqrt(StatUtils.populationVariance(scores) / n),
        means.lower(tail),
        means.upper(tail));
  }

  static Scored.Repeatability repeatability(double[] first, double[] second) {
    int pairs = first.length;
    atLeast("first", pairs, 2);
    double squares = 0;
    for (int i = 0; i < pairs; i++) {
      squares += (first[i] - second[i]) * (first[i] - second[i]);
    }
    if (squares == 0) {
      throw new Refusal(PanelReason.REPEATED_ALIKE);
    }
    ChiSquaredDistribution chi = new ChiSquaredDistribution(null, pairs);
    return new Scored.Repeatability(
        Math.sqrt(squares / (2 * pairs)),
        Math.sqrt(squares / 2 / chi.inverseCumulativeProbability(0.975)),
        Math.sqrt(squares / 2 / chi.inverseCumulativeProbability(0.025)),
        REPEATABILITY_LIMIT * Math.sqrt(squares / (2 * pairs)));
  }

  /**
   * {@return the standard deviation that rounding to the scale's steps hides} What is the same to a
   * step is not the same: JCGM 100:2008, F.2.2.1. Steps are 1 or parts of it, down to 0.001.
   */
  private static double rounding(double[] scores) {
    int step = FINEST;
    for (double score : scores) {
      double steps = Math.abs(score) * FINEST;
      if (Math.abs(steps - Math.rint(steps)) > 1e-6) {
        return 0; // no scale: a mean
      }
      step = ArithmeticUtils.gcd(step, (int) Math.rint(steps));
    }
    return step / (FINEST * Math.sqrt(12));
  }

  private static void atLeast(String what, int given, int least) {
    if (given < least) {
      throw new Refusal(PanelReason.TOO_FEW_SCORES)
          .about(what)
          .with("given", given)
          .with("least", least);
    }
  }

  /** Without the random generator that the one-argument constructor would seed. */
  private static TDistribution student(int freedom) {
    return new TDistribution(null, freedom);
  }
}
