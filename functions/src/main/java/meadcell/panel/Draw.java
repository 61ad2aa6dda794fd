package meadcell.panel;

import org.apache.commons.math3.random.MersenneTwister;

/**
 * Random draws that the same seed repeats anywhere: the Mersenne Twister MT19937 of Matsumoto and
 * Nishimura 1998, begun with the array of the one seed, and the shuffle of Fisher and Yates from
 * the end.
 */
final class Draw {
  private final MersenneTwister twister;

  Draw(int seed) {
    twister = new MersenneTwister(new int[] {seed});
  }

  /** {@return the whole numbers below n in a random order} */
  int[] order(int n) {
    int[] order = new int[n];
    for (int i = 0; i < n; i++) {
      order[i] = i;
    }
    for (int i = n - 1; i > 0; i--) {
      int j = twister.nextInt(i + 1);
      int swapped = order[i];
      order[i] = order[j];
      order[j] = swapped;
    }
    return order;
  }
}
