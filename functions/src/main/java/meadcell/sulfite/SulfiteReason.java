package meadcell.sulfite;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NO_SOLUTION;
import static meadcell.catalogue.Refusal.Kind.OUT_OF_RANGE;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the sulfite refuse. */
enum SulfiteReason implements Reason {
  ONE_DAY(INCONSISTENT, "days must hold at least two different days."),
  ONE_DAY_ALONE(
      INCONSISTENT,
      "days hold one day only: give a reading of another day, or the oxygen that comes in."),
  NOT_SURELY_FALLING(
      NO_SOLUTION,
      "The readings do not surely fall for what one may be off: take a later one, or give the oxygen"
          + " that comes in."),
  LIMIT_ABOVE_START(
      INCONSISTENT, "limit is {limit}, above what the fit has on the first day, {start}."),
  HARDLY_FALLS(
      NO_SOLUTION,
      "The readings hardly fall: limit is not reached within {years} years of the last " + "one."),
  NONE_BINDS(
      OUT_OF_RANGE,
      "bound is 0 or a blank cell, but some of the SO₂ added always binds; leave bound out for the"
          + " usual share."),
  OUTSIDE_OIV_TABLE(
      OUT_OF_RANGE, "{argument} is {value}; the OIV table and its extrapolation run over {range}."),
  NEEDED_BY_OIV(INCONSISTENT, "{argument} is missing; the method oiv needs it."),
  ABOVE_LAW(
      OUT_OF_RANGE, "sorbicAcid is {sorbicAcid}; the rule {rule} allows at most {most} ({law}).");

  private final Refusal.Kind kind;
  private final String english;

  SulfiteReason(Refusal.Kind kind, String english) {
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
