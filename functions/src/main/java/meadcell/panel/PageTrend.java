package meadcell.panel;

import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.special.Erf;

/**
 * Page's L over tasters when every order of each taster's ranks is equally likely.
 *
 * <p>A taster adds Σ j·r(j). How often each sum comes is counted over the sets of ranks that stand
 * at the first places; tasters are independent, so their sums are convolved. Ranks are doubled, so
 * that shared places are whole.
 */
final class PageTrend {
  /** Most tasters and meads counted exactly; beyond, the counting takes too long. */
  static final int MOST_TASTERS = 30;

  static final int MOST_MEADS = 10;

  /** Probabilities of one taster's sums, from the smallest one on. */
  private static final Map<String, double[]> KNOWN = new ConcurrentHashMap<>();

  private static final int REMEMBERED = 64;

  private PageTrend() {}

  static boolean isExact(int tasters, int meads) {
    return tasters <= MOST_TASTERS && meads <= MOST_MEADS;
  }

  /** {@return Σ j·r(j) of doubled ranks} */
  static int sum(int[] doubled) {
    int sum = 0;
    for (int j = 0; j < doubled.length; j++) {
      sum += (j + 1) * doubled[j];
    }
    return sum;
  }

  /** {@return probability of a sum over all tasters that is at least this one} */
  static double exact(int[][] doubled, int sum) {
    double[] together = {1};
    int above = sum;
    for (int[] row : doubled) {
      int[] ascending = Arrays.stream(row).sorted().toArray();
      above -= least(ascending);
      together = convolve(together, sums(ascending));
    }
    double tail = 0;
    for (int i = together.length - 1; i >= above; i--) { // the small ones first
      tail += together[i];
    }
    return Math.min(1, tail);
  }

  /** {@return the same by a normal distribution of the same mean and variance} */
  static double normal(int[][] doubled) {
    int meads = doubled[0].length;
    double mean = (meads + 1) / 2.0;
    double above = 0;
    double variance = 0;
    for (int[] row : doubled) {
      double squares =
          Arrays.stream(row).mapToDouble(r -> (r / 2.0 - mean) * (r / 2.0 - mean)).sum();
      above += sum(row) / 2.0 - meads * mean * mean;
      variance += squares * meads * (meads + 1.0) / 12; // times Σ(j − mean)² over meads − 1
    }
    return 0.5 * Erf.erfc(above / Math.sqrt(2 * variance));
  }

  private static int least(int[] ascending) {
    int sum = 0;
    for (int j = 0; j < ascending.length; j++) {
      sum += (ascending.length - j) * ascending[j];
    }
    return sum;
  }

  private static double[] sums(int[] ascending) {
    String key = Arrays.toString(ascending);
    double[] known = KNOWN.get(key);
    if (known == null) {
      known = count(ascending);
      if (KNOWN.size() < REMEMBERED) {
        KNOWN.put(key, known);
      }
    }
    return known;
  }

  private static double[] count(int[] ascending) {
    int meads = ascending.length;
    int most = sum(ascending);
    double[][] reached = new double[1 << meads][];
    reached[0] = new double[most + 1];
    reached[0][0] = 1;
    for (int used = 0; used < reached.length - 1; used++) {
      int place = Integer.bitCount(used) + 1;
      double share = 1.0 / (meads - place + 1);
      for (int r = 0; r < meads; r++) {
        int next = used | 1 << r;
        if (next != used) {
          int adds = place * ascending[r];
          if (reached[next] == null) {
            reached[next] = new double[most + 1];
          }
          for (int s = 0; s + adds <= most; s++) {
            reached[next][s + adds] += share * reached[used][s];
          }
        }
      }
      reached[used] = null;
    }
    return Arrays.copyOfRange(reached[reached.length - 1], least(ascending), most + 1);
  }

  private static double[] convolve(double[] some, double[] more) {
    double[] sums = new double[some.length + more.length - 1];
    for (int i = 0; i < some.length; i++) {
      for (int j = 0; j < more.length; j++) {
        sums[i + j] += some[i] * more[j];
      }
    }
    return sums;
  }
}
