package meadcell.bottle;

import java.util.OptionalDouble;

/** Words for still wine: Delegated Regulation (EU) 2019/33, Annex III, part B. All in g/L. */
final class SweetnessWord {
  private SweetnessWord() {}

  static String of(double sugar, OptionalDouble acidity) {
    if (sugar <= 4 || sugar <= 9 && isBalanced(sugar, acidity, 2)) {
      return "dry";
    }
    if (sugar <= 12 || sugar <= 18 && isBalanced(sugar, acidity, 10)) {
      return "medium dry";
    }
    return sugar <= 45 ? "medium" : "sweet";
  }

  private static boolean isBalanced(double sugar, OptionalDouble acidity, double most) {
    return acidity.isPresent() && sugar - acidity.getAsDouble() <= most;
  }
}
