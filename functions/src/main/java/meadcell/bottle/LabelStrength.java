package meadcell.bottle;

/** How far the true strength may lie from the one on the label, in % vol. */
final class LabelStrength {
  /** Below this a wine is not under 27 CFR part 4. */
  private static final double WINE = 7;

  /** 27 CFR 4.36(b): the tolerance changes at 14, and the true strength stays on its side. */
  private static final double TABLE_WINE = 14;

  /** Ends of the classes that a statement must not cross: 27 CFR 4.36(c), 26 U.S.C. 5041(b). */
  private static final double[] CLASS_ENDS = {WINE, TABLE_WINE, 16, 21, 24};

  private LabelStrength() {}

  static Bottle.LabelRange allowed(double label, Bottle.Rule rule) {
    return switch (rule) {
      case EU -> new Bottle.LabelRange(label - 1, label + 1);
      case USA -> label < WINE ? inside(label, 0.75, 0.5, WINE) : wine(label);
    };
  }

  private static Bottle.LabelRange wine(double label) {
    int upper = 1;
    while (label > CLASS_ENDS[upper]) {
      upper++;
    }
    double tolerance = label > TABLE_WINE ? 1 : 1.5;
    return inside(label, tolerance, CLASS_ENDS[upper - 1], CLASS_ENDS[upper]);
  }

  private static Bottle.LabelRange inside(double label, double tolerance, double from, double to) {
    return new Bottle.LabelRange(
        Math.max(from, label - tolerance), Math.min(to, label + tolerance));
  }
}
