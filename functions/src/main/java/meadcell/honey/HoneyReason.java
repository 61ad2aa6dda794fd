package meadcell.honey;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.OUT_OF_RANGE;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the honey refuse. */
enum HoneyReason implements Reason {
  MOISTURE_BEYOND_TABLE(
      OUT_OF_RANGE,
      "index is {index}, a moisture of {moisture}; the table behind this function runs from"
          + " {least} to {most}."),
  TOO_THICK(
      INCONSISTENT,
      "mass and volume together make {solids} of honey solids; a must holds at most "
          + "{most} ({thickest}). Are volume and mass swapped?"),
  MORE_THAN_100(
      INCONSISTENT, "moisture, fructoseGlucose and sucrose add up to {sum}, more than 100.");

  private final Refusal.Kind kind;
  private final String english;

  HoneyReason(Refusal.Kind kind, String english) {
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
