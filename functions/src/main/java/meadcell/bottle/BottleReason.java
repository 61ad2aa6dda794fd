package meadcell.bottle;

import static meadcell.catalogue.Refusal.Kind.OUT_OF_RANGE;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the bottle refuse. */
enum BottleReason implements Reason {
  MORE_THAN_ONE_DECIMAL(
      OUT_OF_RANGE, "label is {label}; in the EU a label has at most one decimal."),
  BURSTS(
      OUT_OF_RANGE,
      "Up to {sugar} of what is dissolved may be sugar, more than {most}: if it ferments, the bottle"
          + " bursts, whatever its make.");

  private final Refusal.Kind kind;
  private final String english;

  BottleReason(Refusal.Kind kind, String english) {
    this.kind = kind;
    this.english = english;
  }

  @Override
  public Refusal.Kind kind() {
    return kind;
  }

  @Override
  public String english() {
    return english;
  }
}
