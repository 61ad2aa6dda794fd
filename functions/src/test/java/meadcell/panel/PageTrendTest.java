package meadcell.panel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class PageTrendTest {
  private static final double[] ALPHA = {0.05, 0.01, 0.001};

  /**
   * Least L significant at 5, 1 and 0.1 %, for 2 to 12 tasters of 3, 4 and 5 meads: the table of
   * Siegel and Castellan in the manual of the R package crank; 0 where none is.
   */
  private static final int[][][] TABLE = {
    {
      {28, 0, 0},
      {41, 42, 0},
      {54, 55, 56},
      {66, 68, 70},
      {79, 81, 83},
      {91, 93, 96},
      {104, 106, 109},
      {116, 119, 121},
      {128, 131, 134},
      {141, 144, 147},
      {153, 156, 160}
    },
    {
      {58, 60, 0}, {84, 87, 89}, {111, 114, 117}, {137, 141, 145}, {163, 167, 172},
      {189, 193, 198}, {214, 220, 225}, {240, 246, 252}, {266, 272, 278}, {292, 298, 305},
      {317, 324, 331}
    },
    {
      {103, 106, 109}, {150, 155, 160}, {197, 204, 210}, {244, 251, 259}, {291, 299, 307},
      {338, 346, 355}, {384, 393, 403}, {431, 441, 451}, {477, 487, 499}, {523, 534, 546},
      {570, 581, 593}
    }
  };

  private static int[][] untied(int tasters, int meads) {
    int[][] doubled = new int[tasters][meads];
    for (int[] row : doubled) {
      for (int j = 0; j < meads; j++) {
        row[j] = 2 * (j + 1);
      }
    }
    return doubled;
  }

  @Test
  void thePrintedTableIsFoundAgain() {
    for (int meads = 3; meads <= 5; meads++) {
      for (int tasters = 2; tasters <= 12; tasters++) {
        int[][] ranks = untied(tasters, meads);
        int most = tasters * PageTrend.sum(ranks[0]);
        for (int a = 0; a < ALPHA.length; a++) {
          int least = TABLE[meads - 3][tasters - 2][a];
          String cell = meads + " meads, " + tasters + " tasters, " + ALPHA[a];
          if (least == 0) {
            assertTrue(PageTrend.exact(ranks, most) > ALPHA[a], cell);
          } else {
            assertTrue(PageTrend.exact(ranks, 2 * least) <= ALPHA[a], cell);
            assertTrue(PageTrend.exact(ranks, 2 * least - 2) > ALPHA[a], cell);
          }
        }
      }
    }
  }

  @Property(tries = 100)
  void normalComesNearTheExactForManyTasters(
      @Between(min = 20, max = 30) int tasters,
      @Between(min = 3, max = 7) int meads,
      @Between(max = 1, decimals = 3) double share) {
    int[][] ranks = untied(tasters, meads);
    // some rows rise and some fall, so that L lies anywhere in between
    for (int i = 0; i < tasters * (0.35 + 0.3 * share); i++) {
      for (int j = 0; j < meads; j++) {
        ranks[i][j] = 2 * (meads - j);
      }
    }
    int sum = 0;
    for (int[] row : ranks) {
      sum += PageTrend.sum(row);
    }
    double between = PageTrend.exact(ranks, sum) + PageTrend.exact(ranks, sum + 2);
    assertEquals(between / 2, PageTrend.normal(ranks), 0.01);
  }

  @Test
  void bothTailsAndTheWays() {
    int[][] ranks = untied(7, 5);
    int least = 7 * 70; // Σ j·2(6 − j)
    assertEquals(1, PageTrend.exact(ranks, least), 1e-12);
    assertEquals(Math.pow(1 / 120.0, 7), PageTrend.exact(ranks, 7 * 110), 1e-20);
    assertTrue(PageTrend.isExact(30, 10));
    assertTrue(!PageTrend.isExact(31, 10) && !PageTrend.isExact(30, 11));
  }
}
