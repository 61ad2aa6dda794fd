package meadcell.bottle;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** How far the true strength may lie from the one on the label, in % vol. */
final class LabelStrength {
  /** Below this a wine is not under 27 CFR part 4. */
  private static final double WINE = 7;

  /** 27 CFR 4.36(b): the tolerance changes at 14, and the true strength stays on its side. */
  private static final double TABLE_WINE = 14;

  /** Ends of the classes that a statement must not cross: 27 CFR 4.36(c), 26 U.S.C. 5041(b). */
  private static final double[] CLASS_ENDS = {WINE, TABLE_WINE, 16, 21, 24};

  /** A tenth that binary numbers only nearly have. */
  private static final double ROUNDING = 1e-9;

  private LabelStrength() {}

  static Labelling.LabelRange allowed(double label, Labelling.Rule rule) {
    return switch (rule) {
      case EU -> european(label, 1);
      case EU_MACERATED -> european(label, 1.5);
      case USA -> label < WINE ? inside(label, 0.75, 0.5, WINE) : wine(label);
    };
  }

  private static Labelling.LabelRange european(double label, double tolerance) {
    if (Math.abs(10 * label - Math.rint(10 * label)) > ROUNDING) {
      throw new Refusal(BottleReason.MORE_THAN_ONE_DECIMAL)
          .with("label", label, Quantity.PERCENT_VOL);
    }
    return new Labelling.LabelRange(label - tolerance, label + tolerance);
  }

  private static Labelling.LabelRange wine(double label) {
    int upper = 1;
    while (label > CLASS_ENDS[upper]) {
      upper++;
    }
    double tolerance = label > TABLE_WINE ? 1 : 1.5;
    return inside(label, tolerance, CLASS_ENDS[upper - 1], CLASS_ENDS[upper]);
  }

  private static Labelling.LabelRange inside(
      double label, double tolerance, double from, double to) {
    return new Labelling.LabelRange(
        Math.max(from, label - tolerance), Math.min(to, label + tolerance));
  }
}
