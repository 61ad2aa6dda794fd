package meadcell.panel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RankingTest {
  /** A printed table "Critical values for the Friedman test": meads, tasters, 5 %, 1 %. */
  @ParameterizedTest
  @CsvSource({
    "3, 3, 6.000,", "3, 4, 6.500, 8.000", "3, 5, 6.400, 8.400", "3, 6, 7.000, 9.000",
    "3, 7, 7.143, 8.857", "3, 8, 6.250, 9.000", "3, 9, 6.222, 9.556", "3, 10, 6.200, 9.600",
    "3, 11, 6.545, 9.455", "3, 12, 6.500, 9.500", "3, 13, 6.615, 9.385", "3, 14, 6.143, 9.143",
    "3, 15, 6.400, 8.933", "3, 16, 6.500, 9.375", "3, 17, 6.118, 9.294", "3, 18, 6.333, 9.000",
    "3, 19, 6.421, 9.579", "3, 20, 6.300, 9.300", "4, 2, 6.000,", "4, 3, 7.400, 9.000",
    "4, 4, 7.800, 9.600", "4, 5, 7.800, 9.960", "4, 6, 7.600, 10.200", "4, 7, 7.800, 10.540",
    "4, 8, 7.650, 10.500", "4, 9, 7.667, 10.730", "4, 10, 7.680, 10.680", "4, 11, 7.691, 10.750",
    "4, 12, 7.700, 10.800", "5, 2, 7.600, 8.000", "5, 3, 8.533, 10.130", "5, 4, 8.800, 11.200",
    "5, 5, 8.960, 11.680", "5, 6, 9.067, 11.870", "6, 2, 9.143, 9.714", "6, 3, 9.857, 11.760",
  })
  void exactLimitsAreThePrintedOnes(int meads, int tasters, double five, Double one) {
    int[][] doubled = new int[tasters][meads];
    for (int[] row : doubled) {
      Arrays.setAll(row, j -> 2 * (j + 1));
    }
    assertTrue(RankSums.isExact(tasters, meads));
    assertEquals(five, critical(doubled, 0.05), 0.0051);
    assertEquals(one == null ? Double.NaN : one, critical(doubled, 0.01), 0.0051);
  }

  /** Smallest χ² that is no likelier than alpha. */
  private static double critical(int[][] doubled, double alpha) {
    int tasters = doubled.length;
    int meads = doubled[0].length;
    return RankSums.of(doubled).tail().entrySet().stream()
        .filter(entry -> entry.getValue() <= alpha)
        .findFirst()
        .map(entry -> 3.0 * entry.getKey() / (tasters * meads * (meads + 1)))
        .map(first -> first - 3 * tasters * (meads + 1))
        .orElse(Double.NaN);
  }

  @Property(tries = 100)
  void countingIsThatOfEveryOrderOneByOne(
      Random random, @Between(min = 2, max = 4) int tasters, @Between(min = 3, max = 4) int meads) {
    double[][] ranks = random(random, tasters, meads);
    double observed = squares(ranks, new double[meads], 0);
    List<double[]> all = new ArrayList<>();
    everyOrder(ranks, 0, new double[meads], all);
    double share =
        all.stream().filter(sums -> square(sums) >= observed - 1e-9).count() / (double) all.size();
    assertEquals(share, Ranking.of(ranks).probability(), 1e-12);
  }

  private static void everyOrder(double[][] ranks, int row, double[] sums, List<double[]> all) {
    if (row == ranks.length) {
      all.add(sums);
      return;
    }
    permute(ranks[row].clone(), 0, order -> everyOrder(ranks, row + 1, plus(sums, order), all));
  }

  private static void permute(
      double[] order, int from, java.util.function.Consumer<double[]> visitor) {
    if (from == order.length) {
      visitor.accept(order);
      return;
    }
    for (int i = from; i < order.length; i++) {
      swap(order, from, i);
      permute(order, from + 1, visitor);
      swap(order, from, i);
    }
  }

  private static void swap(double[] values, int i, int j) {
    double kept = values[i];
    values[i] = values[j];
    values[j] = kept;
  }

  private static double[] plus(double[] a, double[] b) {
    double[] sum = a.clone();
    Arrays.setAll(sum, i -> a[i] + b[i]);
    return sum;
  }

  private static double squares(double[][] ranks, double[] sums, int row) {
    return row == ranks.length ? square(sums) : squares(ranks, plus(sums, ranks[row]), row + 1);
  }

  private static double square(double[] values) {
    return Arrays.stream(values).map(v -> v * v).sum();
  }

  /** Rankings with ties, at least one of them not all tied. */
  private static double[][] random(Random random, int tasters, int meads) {
    double[][] ranks = new double[tasters][meads];
    for (int i = 0; i < tasters; i++) {
      int[] scores = random.ints(meads, 0, i == 0 ? 100 : meads).toArray();
      if (i == 0) {
        Arrays.setAll(scores, j -> j);
      }
      for (int j = 0; j < meads; j++) {
        int score = scores[j];
        long below = Arrays.stream(scores).filter(s -> s < score).count();
        long equal = Arrays.stream(scores).filter(s -> s == score).count();
        ranks[i][j] = below + (equal + 1) / 2.0;
      }
    }
    return ranks;
  }

  @Property
  void namesAndSeatsOfMeadsAndTastersDoNotMatter(
      Random random,
      @Between(min = 2, max = 30) int tasters,
      @Between(min = 3, max = 5) int meads) {
    double[][] ranks = random(random, tasters, meads);
    double[][] other = new double[tasters][meads];
    List<Integer> columns = new ArrayList<>();
    for (int j = 0; j < meads; j++) {
      columns.add(j);
    }
    Collections.shuffle(columns, random);
    for (int i = 0; i < tasters; i++) {
      for (int j = 0; j < meads; j++) {
        other[tasters - 1 - i][j] = ranks[i][columns.get(j)];
      }
    }
    assertEquals(Ranked.rankTest(ranks), Ranked.rankTest(other), 1e-12);
    assertEquals(Ranked.agreement(ranks), Ranked.agreement(other), 1e-12);
    assertTrue(Ranked.agreement(ranks) > -1e-12 && Ranked.agreement(ranks) < 1 + 1e-12);
  }

  @Property
  void largePanelsFollowChiSquareOfAnotherLibrary(
      Random random,
      @Between(min = 21, max = 60) int tasters,
      @Between(min = 3, max = 8) int meads) {
    double[][] ranks = random(random, tasters, meads);
    double chi2 = Ranked.agreement(ranks) * tasters * (meads - 1);
    double referee = ChiSquaredDistribution.of(meads - 1).survivalProbability(chi2);
    assertEquals(referee, Ranked.rankTest(ranks), 1e-10);
  }

  @Test
  void whatIsNoRankingIsRefused() {
    for (double[][] wrong :
        new double[][][] {
          {{1, 2, 3}, {1, 2, 2}},
          {{1, 2, 3}, {1, 2, 4}},
          {{1, 2, 3}, {1.5, 2, 2.5}},
          {{1, 2, 3}},
          {{1, 2}, {2, 1}},
          {{1, 2, 3}, {1, 2}},
          {{2, 2, 2}, {2, 2, 2}},
        }) {
      Refusal refusal = assertThrows(Refusal.class, () -> Ranked.rankTest(wrong));
      assertEquals(Refusal.Kind.INCONSISTENT, refusal.kind(), Arrays.deepToString(wrong));
    }
    assertTrue(
        assertThrows(Refusal.class, () -> Ranked.agreement(new double[][] {{1, 2, 3}, {1, 2, 2}}))
            .getMessage()
            .startsWith("ranks in row 2 do not order 3 meads"));
  }
}
