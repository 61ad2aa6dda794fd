package meadcell.panel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import meadcell.property.Size;
import org.apache.commons.statistics.distribution.NormalDistribution;
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
    double step = Arrays.stream(scores).allMatch(s -> s % 1 == 0) ? 1 : 0.5;
    while (!onSteps(scores, step)) {
      step = step == 0.5 ? 0.2 : 0.1;
    }
    double least = (n - 1) * step * step / 12;
    double t = TDistribution.of(n - 1).inverseSurvivalProbability(0.025);
    assertEquals(mean, score.mean(), 1e-9);
    assertEquals(t * Math.sqrt(Math.max(squares, least) / (n - 1) / n), score.halfWidth(), 1e-6);
  }

  private static boolean onSteps(double[] scores, double step) {
    return step == 0.1
        || Arrays.stream(scores).allMatch(s -> Math.abs(s / step - Math.rint(s / step)) < 1e-9);
  }

  /** Three to five tastings on half points of a barrel that stands still. */
  @Test
  void whatStandsStillIsSeldomSaidToChange() {
    Random chance = new Random(7);
    int said = 0;
    int tries = 20_000;
    for (int i = 0; i < tries; i++) {
      int n = 3 + i % 3;
      double spread = 0.2 + 0.1 * (i % 4);
      double level = 12 + chance.nextDouble();
      double[] days = new double[n];
      double[] scores = new double[n];
      for (int k = 0; k < n; k++) {
        days[k] = 30 * k;
        scores[k] = Math.rint(2 * (level + spread * chance.nextGaussian())) / 2;
      }
      Scored.Trend trend = Scored.trend(days, scores, 0);
      said += trend.lower() > 0 || trend.upper() < 0 ? 1 : 0;
    }
    assertTrue(said <= 0.05 * tries, "said of " + said);
  }

  @Test
  void scoresThatAreAllTheSameAreNotCertain() {
    double[] whole = {14, 14, 14};
    double[] quarters = {14.25, 14.25, 14.25};
    assertEquals(4 * Scored.score(quarters).halfWidth(), Scored.score(whole).halfWidth(), 1e-12);
    double third = 14 + 1 / 3.0; // of means, which stand on no steps, it is not known
    assertEquals(0, Scored.score(new double[] {third, third}).halfWidth());
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
    double[] scores = Arrays.stream(days).map(d -> 12.00007 + perMonth * d / 30.4375).toArray();
    Scored.Trend trend = Scored.trend(days, scores, 0);
    assertEquals(perMonth, trend.perMonth(), 1e-8);
    assertEquals(perMonth, trend.lower(), 1e-3);
    assertEquals(perMonth, trend.upper(), 1e-3);
  }

  @Test
  void onlyTheLastTastingsCountWhenAskedFor() {
    double[] days = {90, 0, 30, 60, 120, 150, 180};
    double[] scores = {15, 12, 13, 14, 14, 13, 12};
    assertEquals(0, Scored.trend(days, scores, 0).perMonth(), 1e-9);
    Scored.Trend late = Scored.trend(days, scores, 4);
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

  /** All draws of up to five scores, one by one. */
  @Property(tries = 200)
  void theBootstrapCountsEveryDraw(
      @Size(min = 3, max = 5) List<@Between(max = 20, decimals = 1) Double> given) {
    double[] scores = array(given);
    if (Arrays.stream(scores).distinct().count() == 1) {
      return;
    }
    int n = scores.length;
    int draws = (int) Math.pow(n, n);
    double[] means = new double[draws];
    for (int draw = 0; draw < draws; draw++) {
      for (int i = 0, rest = draw; i < n; i++, rest /= n) {
        means[draw] += scores[rest % n] / n;
      }
    }
    Arrays.sort(means);
    Bootstrap bootstrap = Bootstrap.of(scores);
    for (double tail : new double[] {0.0001, 0.0249, 0.1001, 0.3001}) {
      int cut = (int) Math.floor(tail * draws);
      assertEquals(means[cut], bootstrap.lower(tail), 1e-9);
      assertEquals(means[draws - 1 - cut], bootstrap.upper(tail), 1e-9);
    }
  }

  /** Resample's help page of ExpandProbs: z at the tail times √((n−1)/n) is Student's t. */
  @Test
  void tailsAreExpandedAsPublished() {
    for (int n : new int[] {3, 5, 10, 40, 200}) {
      double t = TDistribution.of(n - 1).inverseSurvivalProbability(0.025);
      double z =
          NormalDistribution.of(0, 1).inverseSurvivalProbability(Bootstrap.expanded(0.025, n));
      assertEquals(t, z * Math.sqrt((n - 1.0) / n), 1e-6);
    }
  }

  /**
   * Six to twelve scores on half points, crowded at the upper end: limits of 95 % hold the true
   * mean nearly as often as they say, and oftener than plain percentiles.
   */
  @Test
  void simulatedScoresLieWithinTheirLimits() {
    double[] points = {6, 7, 8, 8.5, 9, 9.5, 10};
    double[] share = {0.05, 0.1, 0.15, 0.2, 0.2, 0.2, 0.1};
    double truth = 0;
    for (int i = 0; i < points.length; i++) {
      truth += points[i] * share[i];
    }
    Random chance = new Random(3);
    int panels = 4000;
    int within = 0;
    int plain = 0;
    for (int panel = 0; panel < panels; panel++) {
      double[] scores = new double[6 + panel % 7];
      for (int i = 0; i < scores.length; i++) {
        double u = chance.nextDouble();
        int k = 0;
        while (u > share[k]) {
          u -= share[k++];
        }
        scores[i] = points[k];
      }
      if (Arrays.stream(scores).distinct().count() == 1) {
        continue; // refused
      }
      Scored.Resampled found = Scored.bootstrap(scores, 95);
      within += found.lower() <= truth && truth <= found.upper() ? 1 : 0;
      Bootstrap bootstrap = Bootstrap.of(scores);
      plain += bootstrap.lower(0.025) <= truth && truth <= bootstrap.upper(0.025) ? 1 : 0;
    }
    double covered = (double) within / panels;
    assertTrue(covered > 0.93 && covered < 0.98, "covered " + covered);
    assertTrue(plain < within, "plain percentiles " + (double) plain / panels);
  }

  @Property
  void repeatabilityIsTheSameWhicheverGlassCameFirst(@Between(min = 1, max = 1_000_000) int seed) {
    Random chance = new Random(seed);
    double[] first = new double[6];
    double[] second = new double[6];
    for (int i = 0; i < 6; i++) {
      first[i] = 12 + chance.nextGaussian();
      second[i] = 12 + chance.nextGaussian();
    }
    Scored.Repeatability found = Scored.repeatability(first, second);
    Scored.Repeatability swapped = Scored.repeatability(second, first);
    assertEquals(found, swapped);
    assertTrue(found.lower() < found.deviation() && found.deviation() < found.upper());
    assertEquals(2.8 * found.deviation(), found.limit(), 1e-12);
  }

  @Test
  void repeatabilityOfSimulatedTastersIsWithinItsLimits() {
    Random chance = new Random(5);
    int within = 0;
    int exceeded = 0;
    for (int taster = 0; taster < 4000; taster++) {
      double[] first = chance.doubles(8).map(u -> chance.nextGaussian()).toArray();
      double[] second = chance.doubles(8).map(u -> chance.nextGaussian()).toArray();
      Scored.Repeatability found = Scored.repeatability(first, second);
      within += found.lower() <= 1 && 1 <= found.upper() ? 1 : 0;
      exceeded += Math.abs(Math.sqrt(2) * chance.nextGaussian()) > 2.8 ? 1 : 0;
    }
    assertEquals(0.95, within / 4000.0, 0.012);
    assertEquals(0.05, exceeded / 4000.0, 0.012);
  }

  @Test
  void whatDoesNotShowScatterIsRefused() {
    double[] same = {7, 7, 7};
    double[] two = {7, 8};
    double[] thirds = {7, 7 + 1 / 3.0, 8};
    double[] fine = {7, 7.333, 8};
    double[] one = {7};
    assertEquals(
        "scores are all the same: how far their mean is uncertain does not show.",
        assertThrows(Refusal.class, () -> Scored.bootstrap(same, 95)).getMessage());
    assertEquals(
        "scores are too many or too finely divided to count every draw; at most 3 decimals. PANEL.SCORE"
            + " takes them.",
        assertThrows(Refusal.class, () -> Scored.bootstrap(thirds, 95)).getMessage());
    assertEquals(7, Scored.bootstrap(fine, 95).lower(), 1e-12);
    assertThrows(Refusal.class, () -> Scored.bootstrap(two, 95));
    assertThrows(Refusal.class, () -> Scored.bootstrap(new double[2000], 95));
    assertThrows(Refusal.class, () -> Scored.repeatability(one, one));
    assertEquals(
        "first and second are the same in every row: the scale is too coarse to show how well the taster"
            + " repeats.",
        assertThrows(Refusal.class, () -> Scored.repeatability(same, same)).getMessage());
  }
}
