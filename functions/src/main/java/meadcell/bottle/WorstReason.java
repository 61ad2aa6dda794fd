package meadcell.bottle;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why the worst case has no pressure. */
enum WorstReason implements Reason {
  BURSTS(
      Refusal.Kind.OUT_OF_RANGE,
      "Up to {sugar} of what is dissolved may be sugar, more than {most}: if it ferments, the bottle"
          + " bursts, whatever its make.");

  private final Refusal.Kind kind;
  private final String english;

  WorstReason(Refusal.Kind kind, String english) {
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
