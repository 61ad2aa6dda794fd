package meadcell.bottle;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.OUT_OF_RANGE;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the bottle refuse. */
enum BottleReason implements Reason {
  MORE_THAN_ONE_DECIMAL(
      OUT_OF_RANGE, "label is {label}; in the EU a label has at most one decimal."),
  TIMES_MUST_RISE(
      INCONSISTENT,
      "{argument} is not after the row before: a log of temperatures goes forward in time."),
  TOO_FEW_TIMES(INCONSISTENT, "A log of temperatures needs two rows at least."),
  GROSS_NOT_ABOVE_EMPTY(
      INCONSISTENT, "gross {gross} is not above empty {empty}: the bottle would hold nothing."),
  NO_HEADSPACE(
      INCONSISTENT,
      "At {temperature} the mead needs {more} more than the headspace leaves: it pushes the cork or"
          + " bursts the bottle. Leave more headspace, or fill warmer."),
  OVERFLOWS(
      INCONSISTENT, "At {temperature} the mead would stand {above} above the brim; fill lower."),
  NO_SUCH_SIZE(OUT_OF_RANGE, "label is {label}; the rule has bottles of {range}."),
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
