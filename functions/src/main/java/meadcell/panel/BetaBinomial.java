package meadcell.panel;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.optim.univariate.UnivariatePointValuePair;
import org.apache.commons.math3.util.CombinatoricsUtils;

/**
 * Right answers of tasters who differ: taster i is right with p = c + (1 − c)·π, π by a beta
 * distribution with the mean μ and the spread γ = 1/(a + b + 1).
 *
 * <p>With c = 0 it is the plain beta-binomial, with c the guessing rate Brockhoff's (2003, Food
 * Quality and Preference 14:405). γ = 0 is the binomial, γ = 1 tasters who are always or never
 * right; the likelihood is a polynomial there as everywhere between, for moments of π are products
 * of {@code μ(1−γ) + rγ} and the like.
 */
final class BetaBinomial {
  private static final int STEPS = 20;

  /** What some tasters answered, told apart by guessing or not: weights of the moments of π. */
  private record Group(int count, int wrong, double[] weights) {}

  /** The most likely μ and γ, and how likely they are. */
  record Fit(double mu, double gamma, double logLikelihood) {}

  private final List<Group> groups;

  BetaBinomial(List<Replicated.Answered> tasters, double guess) {
    groups =
        tasters.stream()
            .collect(Collectors.groupingBy(t -> List.of(t.correct(), t.answers())))
            .values()
            .stream()
            .map(alike -> group(alike.get(0), alike.size(), guess))
            .toList();
  }

  private static Group group(Replicated.Answered taster, int count, double guess) {
    int right = taster.correct();
    int wrong = taster.answers() - right;
    double[] weights = new double[right + 1];
    for (int i = 0; i <= right; i++) {
      weights[i] =
          CombinatoricsUtils.binomialCoefficientDouble(taster.answers(), right)
              * CombinatoricsUtils.binomialCoefficientDouble(right, i)
              * Math.pow(1 - guess, wrong + i)
              * Math.pow(guess, right - i);
    }
    return new Group(count, wrong, weights);
  }

  double logLikelihood(double mu, double gamma) {
    double sum = 0;
    for (Group group : groups) {
      double moment = 1; // of π^i (1 − π)^j
      for (int j = 0; j < group.wrong; j++) {
        moment *= factor(1 - mu, gamma, j, j);
      }
      double likelihood = 0;
      for (int i = 0; i < group.weights.length; i++) {
        likelihood += group.weights[i] * moment;
        moment *= factor(mu, gamma, i, i + group.wrong);
      }
      sum += group.count * Math.log(likelihood);
    }
    return sum;
  }

  private static double factor(double share, double gamma, int same, int all) {
    return all == 0 ? share : (share * (1 - gamma) + same * gamma) / (1 - gamma + all * gamma);
  }

  /** {@return the most likely μ for a γ} */
  Fit at(double gamma) {
    UnivariatePointValuePair best = largest(mu -> logLikelihood(mu, gamma), 0, 1);
    return new Fit(best.getPoint(), gamma, best.getValue());
  }

  /** {@return the most likely μ and γ} */
  Fit fit() {
    Fit best = at(0);
    for (int i = 1; i <= STEPS; i++) {
      Fit next = at((double) i / STEPS);
      best = next.logLikelihood > best.logLikelihood ? next : best;
    }
    double step = 1.0 / STEPS;
    Fit near =
        at(
            largest(
                    gamma -> at(gamma).logLikelihood,
                    Math.max(0, best.gamma - step),
                    Math.min(1, best.gamma + step))
                .getPoint());
    return near.logLikelihood > best.logLikelihood ? near : best;
  }

  /** Where a function is largest; at an end too, where it may be −∞. */
  private static UnivariatePointValuePair largest(DoubleUnaryOperator of, double from, double to) {
    UnivariatePointValuePair best =
        new BrentOptimizer(1e-9, 1e-10)
            .optimize(
                new UnivariateObjectiveFunction(of::applyAsDouble),
                GoalType.MAXIMIZE,
                new SearchInterval(from, to),
                new MaxEval(500));
    for (double end : new double[] {from, to}) {
      double value = of.applyAsDouble(end);
      best = value >= best.getValue() ? new UnivariatePointValuePair(end, value) : best;
    }
    return best;
  }
}
