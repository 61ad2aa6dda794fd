package meadcell.blend;

import java.util.Locale;

/** How air gets into mead, and the limits of each as parts of its value. */
enum Way {
  /** 2 to 5 mg/L around 3.5. */
  RACKING(2 / 3.5, 5 / 3.5),
  /** 0.2 to 0.5 mg/L around 0.35. */
  TOPPING(0.2 / 0.35, 0.5 / 0.35),
  OPENING(0, 1),
  /** 0.2 to 2 mg/L around 0.8. */
  FILLING(0.25, 2.5),
  WOOD(0.5, 2);

  final double lower;
  final double upper;

  Way(double lower, double upper) {
    this.lower = lower;
    this.upper = upper;
  }

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
