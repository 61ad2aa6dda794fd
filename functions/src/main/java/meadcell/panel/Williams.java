package meadcell.panel;

/**
 * Latin squares balanced for neighbours: over the rows of all squares, every mead stands equally
 * often at every place, and equally often right after every other mead.
 *
 * <p>Williams 1949, Australian Journal of Scientific Research A 2:149: the first row is 1, 2, n, 3,
 * n − 1, …, each next one adds 1 modulo n. An even number of meads needs one square; an odd one a
 * second, which is the first read backwards.
 */
final class Williams {
  private Williams() {}

  /** {@return the squares, their rows, and in them meads from 0} */
  static int[][][] squares(int meads) {
    int[][] square = new int[meads][meads];
    for (int row = 0; row < meads; row++) {
      for (int place = 0; place < meads; place++) {
        int first = place % 2 == 1 ? (place + 1) / 2 : meads - place / 2;
        square[row][place] = (first + row) % meads;
      }
    }
    if (meads % 2 == 0) {
      return new int[][][] {square};
    }
    int[][] backwards = new int[meads][meads];
    for (int row = 0; row < meads; row++) {
      for (int place = 0; place < meads; place++) {
        backwards[row][place] = square[row][meads - 1 - place];
      }
    }
    return new int[][][] {square, backwards};
  }
}
