package meadcell.panel;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.special.Erf;

/**
 * The mean of scores drawn with return from the scores themselves: every draw counted, none
 * simulated. Scores stand on the steps of a scale, so that sums are few.
 */
final class Bootstrap {
  /** Steps in a point. */
  private static final double FINEST = 1000;

  /** More additions take more than about a tenth of a second. */
  private static final double MOST_WORK = 1e8;

  private final double least;
  private final double step;
  private final int scores;

  /** Probability of each sum of steps above n times the least score. */
  private final double[] sums;

  private Bootstrap(double least, double step, int scores, double[] sums) {
    this.least = least;
    this.step = step;
    this.scores = scores;
    this.sums = sums;
  }

  static Bootstrap of(double[] scores) {
    double least = Arrays.stream(scores).min().orElseThrow();
    int gcd = 0;
    int[] above = new int[scores.length];
    for (int i = 0; i < scores.length; i++) {
      double steps = (scores[i] - least) * FINEST;
      if (Math.abs(steps - Math.rint(steps)) > 1e-6 * FINEST) {
        throw new Refusal(PanelReason.TOO_FINE).about("scores");
      }
      above[i] = (int) Math.rint(steps);
      gcd = gcd(gcd, above[i]);
    }
    if (gcd == 0) {
      throw new Refusal(PanelReason.SCORED_ALIKE).about("scores");
    }
    Map<Integer, Double> one = new TreeMap<>();
    for (int steps : above) {
      one.merge(steps / gcd, 1.0 / scores.length, Double::sum);
    }
    int widest = Arrays.stream(above).max().orElseThrow() / gcd;
    if (0.5 * scores.length * scores.length * widest * one.size() > MOST_WORK) {
      throw new Refusal(PanelReason.TOO_FINE).about("scores");
    }
    double[] sums = {1};
    for (int n = 0; n < scores.length; n++) {
      double[] next = new double[sums.length + widest];
      for (Map.Entry<Integer, Double> drawn : one.entrySet()) {
        for (int i = 0; i < sums.length; i++) {
          next[i + drawn.getKey()] += drawn.getValue() * sums[i];
        }
      }
      sums = next;
    }
    return new Bootstrap(least, gcd / FINEST, scores.length, sums);
  }

  private static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }

  /**
   * The tail of each side that makes up for few scores: z(tail)·√((n−1)/n) is Student's t
   * (Hesterberg 2014).
   */
  static double expanded(double tail, int scores) {
    double t = new TDistribution(null, scores - 1).inverseCumulativeProbability(tail);
    return 0.5 * Erf.erfc(-t * Math.sqrt(scores / (scores - 1.0)) / Math.sqrt(2));
  }

  /** {@return the smallest mean that is not among the tail's smallest} */
  double lower(double tail) {
    double below = 0;
    int i = 0;
    while (below + sums[i] <= tail) {
      below += sums[i++];
    }
    return mean(i);
  }

  /** {@return the largest mean that is not among the tail's largest} */
  double upper(double tail) {
    double above = 0;
    int i = sums.length - 1;
    while (above + sums[i] <= tail) {
      above += sums[i--];
    }
    return mean(i);
  }

  private double mean(int steps) {
    return least + steps * step / scores;
  }
}
