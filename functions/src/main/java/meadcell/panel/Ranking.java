package meadcell.panel;

import java.util.Arrays;
import meadcell.catalogue.Place;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.special.Gamma;

/** Ranks that tasters (rows) gave to meads (columns); ties share the mean of their places. */
final class Ranking {
  private final int tasters;
  private final int meads;
  private final double[] sums;

  /** Ranks doubled, so that shared places are whole. */
  private final int[][] doubled;

  /** Σ (t³ − t) over all groups of t tied ranks. */
  private final double ties;

  private Ranking(int meads, int[][] doubled, double[] sums, double ties) {
    this.tasters = doubled.length;
    this.meads = meads;
    this.doubled = doubled;
    this.sums = sums;
    this.ties = ties;
  }

  static Ranking of(double[][] ranks) {
    int meads = ranks[0].length;
    if (ranks.length < 2 || meads < 3) {
      throw new Refusal(PanelReason.TOO_FEW_RANKS)
          .with("tasters", ranks.length)
          .with("meads", meads);
    }
    double[] sums = new double[meads];
    int[][] doubled = new int[ranks.length][meads];
    double ties = 0;
    for (int i = 0; i < ranks.length; i++) {
      for (int j = 0; j < meads; j++) {
        double tied = tied(ranks[i], j, meads, i);
        ties += tied * tied - 1; // each of t tied ranks adds t² − 1
        doubled[i][j] = (int) Math.rint(2 * ranks[i][j]);
        sums[j] += ranks[i][j];
      }
    }
    if (ties == ranks.length * (Math.pow(meads, 3) - meads)) {
      throw new Refusal(PanelReason.ALL_RANKED_ALIKE);
    }
    return new Ranking(meads, doubled, sums, ties);
  }

  /** How many ranks of the row equal this one, which must be the mean of their places. */
  private static int tied(double[] row, int at, int meads, int rowIndex) {
    int below = 0;
    int equal = 0;
    for (double rank : row) {
      if (rank < row[at]) {
        below++;
      } else if (rank == row[at]) {
        equal++;
      }
    }
    if (row.length != meads || row[at] != below + (equal + 1) / 2.0) {
      throw new Refusal(PanelReason.NOT_AN_ORDER)
          .about("ranks", Place.row(rowIndex + 1))
          .with("meads", meads);
    }
    return equal;
  }

  /** Friedman's χ², corrected for ties. */
  double friedman() {
    double mean = tasters * (meads + 1) / 2.0;
    double squares = Arrays.stream(sums).map(sum -> (sum - mean) * (sum - mean)).sum();
    return 12 * squares / (tasters * meads * (meads + 1.0) - ties / (meads - 1));
  }

  /** Probability of ranks at least as far apart if no mead were better. */
  double probability() {
    if (RankSums.isExact(tasters, meads)) {
      return RankSums.of(doubled).atLeast(sums);
    }
    return Gamma.regularizedGammaQ((meads - 1) / 2.0, friedman() / 2); // χ² with meads − 1
  }

  /** Page's trend in the order of the columns. */
  Ranked.Page page() {
    double sum = 0;
    for (int j = 0; j < meads; j++) {
      sum += (j + 1) * sums[j];
    }
    return PageTrend.isExact(tasters, meads)
        ? new Ranked.Page(sum, PageTrend.exact(doubled, (int) Math.rint(2 * sum)), "exact")
        : new Ranked.Page(sum, PageTrend.normal(doubled), "normal");
  }

  /** Kendall's W. */
  double agreement() {
    return friedman() / (tasters * (meads - 1.0));
  }

  /** Least significant difference of two rank sums, 5 %. */
  double leastDifference() {
    return 1.960 * Math.sqrt(tasters * meads * (meads + 1) / 6.0);
  }
}
