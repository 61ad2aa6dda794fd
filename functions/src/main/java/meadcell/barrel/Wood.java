package meadcell.barrel;

/** What the staves keep of one fill and give to the next. */
final class Wood {
  private Wood() {}

  /**
   * Share of each fill in the present liquid, oldest first, sum 1.
   *
   * @param heldL litres of the fill before that the wood keeps and lets mix again
   * @param toppedL litres poured in since the last fill; they count with it
   */
  static double[] shares(double[] volumesL, double heldL, double toppedL) {
    double[] shares = new double[volumesL.length];
    shares[0] = 1;
    for (int fill = 1; fill < shares.length; fill++) {
      pour(shares, fill, carried(volumesL[fill], heldL));
    }
    int last = shares.length - 1;
    double mixed = volumesL[last] + heldL;
    pour(shares, last, mixed / (mixed + toppedL));
    return shares;
  }

  /** {@return share of the mixed liquid that came out of the wood} */
  static double carried(double volumeL, double heldL) {
    return heldL / (volumeL + heldL);
  }

  private static void pour(double[] shares, int fill, double kept) {
    for (int i = 0; i <= fill; i++) {
      shares[i] *= kept;
    }
    shares[fill] += 1 - kept;
  }
}
