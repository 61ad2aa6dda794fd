package meadcell.tank;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the tank refuse. */
enum TankReason implements Reason {
  DIP_ABOVE_TOP(
      Refusal.Kind.INCONSISTENT,
      "dip is {dip}, more than the height of tank and cone together, {top}.");

  private final Refusal.Kind kind;
  private final String english;

  TankReason(Refusal.Kind kind, String english) {
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
