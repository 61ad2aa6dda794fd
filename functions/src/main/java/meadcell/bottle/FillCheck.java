package meadcell.bottle;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Statement;
import meadcell.catalogue.Verdict;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.inference.AlternativeHypothesis;
import org.apache.commons.math3.stat.inference.BinomialTest;

/** Whether bottles hold what their label says. */
final class FillCheck {
  /** Fewer bottles say nothing about a lot: the smallest sample of the directive's plans. */
  private static final int FEWEST = 20;

  private static final double HALF = 0.5;
  private static final double CONFIDENCE = 0.95;

  /** How many short ones each sample may have: 76/211/EEC, Annex II (from memory but for 20). */
  private static final int[][] PLANS = {{125, 7}, {80, 5}, {50, 3}, {20, 1}};

  private static final double MEAN_TEST = 0.995;

  private final double[] contents;
  private final double label;
  private final double tolerance;
  private final double mean;
  private final double deviation;

  FillCheck(double[] contentsMl, double labelMl, double toleranceMl) {
    contents = contentsMl;
    label = labelMl;
    tolerance = toleranceMl;
    mean = StatUtils.mean(contentsMl);
    deviation = contentsMl.length > 1 ? Math.sqrt(StatUtils.variance(contentsMl)) : 0;
  }

  private int below(double limit) {
    int count = 0;
    for (double content : contents) {
      count += content < limit ? 1 : 0;
    }
    return count;
  }

  private int above(double limit) {
    int count = 0;
    for (double content : contents) {
      count += content > limit ? 1 : 0;
    }
    return count;
  }

  Verdict european() {
    int tooShort = below(label - 2 * tolerance);
    int shorter = below(label - tolerance);
    if (tooShort > 0) {
      return verdict("fails", FillWords.FAR_SHORT, tooShort);
    }
    int allowed = allowed();
    if (contents.length >= FEWEST && shorter > allowed) {
      return verdict("fails", FillWords.MANY_SHORT, shorter);
    }
    if (contents.length < FEWEST) {
      return verdict("cannot tell", FillWords.FEW, FEWEST);
    }
    double t = new TDistribution(null, contents.length - 1).inverseCumulativeProbability(MEAN_TEST);
    if (mean < label - t * deviation / Math.sqrt(contents.length)) {
      return verdict("fails", FillWords.MEAN_SHORT, shorter);
    }
    return mean < label
        ? verdict("cannot tell", FillWords.MEAN_BELOW, shorter)
        : verdict("passes", FillWords.MEAN_FULL, shorter);
  }

  private int allowed() {
    for (int[] plan : PLANS) {
      if (contents.length >= plan[0]) {
        return plan[1];
      }
    }
    return 0;
  }

  Verdict american() {
    int outside = below(label - tolerance) + above(label + tolerance);
    if (outside > 0) {
      return verdict("fails", FillWords.OUTSIDE, outside);
    }
    if (contents.length < FEWEST) {
      return verdict("cannot tell", FillWords.FEW, FEWEST);
    }
    int under = below(label);
    int off = under + above(label);
    boolean oneSided =
        off > 0
            && new BinomialTest()
                .binomialTest(off, under, HALF, AlternativeHypothesis.TWO_SIDED, 1 - CONFIDENCE);
    if (oneSided) {
      return verdict("fails", FillWords.ONE_SIDED, under);
    }
    return 2 * under > off
        ? verdict("cannot tell", FillWords.MORE_UNDER, under)
        : verdict("passes", FillWords.BALANCED, under);
  }

  private Verdict verdict(String word, FillWords why, int count) {
    return new Verdict(
        word,
        Statement.of(why)
            .with("count", count)
            .with("bottles", contents.length)
            .with("mean", mean, Quantity.MILLILITRE, 5)
            .with("deviation", deviation, Quantity.MILLILITRE, 2)
            .with("label", label, Quantity.MILLILITRE)
            .with("tolerance", tolerance, Quantity.MILLILITRE, 3));
  }
}
