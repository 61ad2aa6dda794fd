package meadcell.bottle;

import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Probability that the true strength lies outside the limits: JCGM 106:2012, 7.4, the measured
 * strength a normal distribution with its standard uncertainty, nothing known before.
 */
final class LabelRisk {
  private LabelRisk() {}

  static double percent(Labelling.LabelRange allowed, double abv, double u) {
    NormalDistribution strength = new NormalDistribution(null, abv, u);
    // two tails, not 1 less the middle: small risks keep their digits
    double above = new NormalDistribution(null, -abv, u).cumulativeProbability(-allowed.highest());
    return 100 * (strength.cumulativeProbability(allowed.lowest()) + above);
  }
}
