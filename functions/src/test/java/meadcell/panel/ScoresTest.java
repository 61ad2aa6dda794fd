package meadcell.panel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import meadcell.property.Size;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

class ScoresTest {
  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  @Property
  void halfWidthIsStudentsOfAnotherLibrary(
      @Size(min = 2, max = 40) List<@Between(max = 20, decimals = 1) Double> given) {
    double[] scores = array(given);
    Scored.Score score = Scored.score(scores);
    int n = scores.length;
    double mean = Arrays.stream(scores).average().orElseThrow();
    double squares = Arrays.stream(scores).map(s -> (s - mean) * (s - mean)).sum();
    double t = TDistribution.of(n - 1).inverseSurvivalProbability(0.025);
    assertEquals(mean, score.mean(), 1e-9);
    assertEquals(t * Math.sqrt(squares / (n - 1) / n), score.halfWidth(), 1e-6);
  }

  /** G at the limit (n − 1)/√n · √(t²/(n − 2 + t²)), t another library's quantile. */
  @Property
  void grubbsProbabilityAtTheLimitIsAlpha(
      @Between(min = 3, max = 200) int n, @Between(min = 0.0005, max = 0.3) double alpha) {
    double t = TDistribution.of(n - 2).inverseSurvivalProbability(alpha / (2 * n));
    double g2 = (n - 1.0) * (n - 1.0) / n * t * t / (n - 2 + t * t);
    assertEquals(alpha, Scores.grubbs(g2, n), 1e-4 * alpha);
  }

  @Property
  void outlierStaysTheSameInAnyUnit(
      @Size(min = 3, max = 12) List<@Between(max = 20, decimals = 1) Double> given,
      @Between(min = -50, max = 50) int shift) {
    double[] scores = array(given);
    double place = Scored.outlier(scores, 0.05);
    double[] shifted = Arrays.stream(scores).map(s -> 8 * s + shift).toArray();
    double[] turned = Arrays.stream(scores).map(s -> -s).toArray();
    assertEquals(place, Scored.outlier(shifted, 0.05));
    assertEquals(place, Scored.outlier(turned, 0.05));
    assertTrue(place == 0 || Scored.outlier(scores, 0.3) == place, "a looser test keeps it");
  }

  @Test
  void sameScoresHaveNoOutlierAndOneOddOneIs() {
    assertEquals(0, Scored.outlier(new double[] {0.1 + 0.2, 0.3, 0.3, 0.3}, 0.05));
    assertEquals(0, Scored.outlier(new double[] {0, 0, 0}, 0.05));
    assertEquals(2, Scored.outlier(new double[] {14, 13, 14, 14, 14}, 0.05));
  }

  @Property
  void aLineWithoutScatterIsFoundInAnyOrder(
      @Between(min = -3, max = 3, decimals = 2) double perMonth,
      @Between(min = 0, max = 50_000) int start) {
    double[] days = {start + 300, start, start + 75, start + 150};
    double[] scores = Arrays.stream(days).map(d -> 12 + perMonth * d / 30.4375).toArray();
    Scored.Trend trend = Scored.trend(days, scores, 0);
    assertEquals(perMonth, trend.perMonth(), 1e-8);
    assertEquals(perMonth, trend.lower(), 1e-3);
    assertEquals(perMonth, trend.upper(), 1e-3);
  }

  @Test
  void onlyTheLastTastingsCountWhenAskedFor() {
    double[] days = {90, 0, 30, 60, 120, 150};
    double[] scores = {15, 12, 13, 14, 14, 13};
    assertTrue(Scored.trend(days, scores, 0).perMonth() > 0);
    Scored.Trend late = Scored.trend(days, scores, 3);
    assertEquals(-30.4375 / 30, late.perMonth(), 1e-9);
    assertTrue(late.upper() < 0, "past its best");
  }

  @Test
  void tooFewTastingsAreRefused() {
    double[] days = {0, 30, 60};
    double[] scores = {12, 13, 14};
    double[] same = {7, 7, 7};
    double[] two = {1, 2};
    double[] one = {1};
    assertThrows(Refusal.class, () -> Scored.trend(days, scores, 4));
    assertThrows(Refusal.class, () -> Scored.trend(days, scores, 2));
    assertThrows(Refusal.class, () -> Scored.trend(two, two, 0));
    assertThrows(Refusal.class, () -> Scored.trend(same, scores, 0));
    assertThrows(Refusal.class, () -> Scored.score(one));
    assertThrows(Refusal.class, () -> Scored.outlier(two, 0.05));
  }
}
