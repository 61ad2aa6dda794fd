package meadcell.barrel;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NOT_CONVERGED;
import static meadcell.catalogue.Refusal.Kind.NO_SOLUTION;
import static meadcell.catalogue.Refusal.Kind.OUT_OF_RANGE;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the barrel refuse. */
enum BarrelReason implements Reason {
  HEAD_WIDER(INCONSISTENT, "head is {head}, wider than bilge, {bilge}."),
  HEAD_TOO_SMALL(INCONSISTENT, "head is {head}; it must be at least half of bilge, {half}."),
  NOT_A_CYLINDER(
      INCONSISTENT, "head is {head} and bilge is {bilge}; in a cylinder they are equal."),
  INSIDE_TOO_SMALL(INCONSISTENT, "stave and croze leave an inside of less than {least}."),
  STAVE_UNKNOWN(
      INCONSISTENT,
      "stave is missing: {stave} is that of barrels of some {usual}, and this one would hold {volume}."
          + " Measure it at the bung hole."),
  DIP_ABOVE_BILGE(INCONSISTENT, "dip is {depth}, more than bilge, {bilge}."),
  DROP_ABOVE_BILGE(INCONSISTENT, "drop less stave is {depth}, more than bilge, {bilge}."),
  DEPTH_ABOVE_LENGTH(INCONSISTENT, "depth is {depth}, more than length, {length}."),
  SURFACE_IN_BUNG(
      INCONSISTENT,
      "drop is not more than stave: the surface would stand in the bung hole, the barrel be full."),
  CONTENTS_ABOVE_FULL(INCONSISTENT, "contents is {contents}; this barrel holds {full}."),
  GROSS_NOT_ABOVE_EMPTY(
      INCONSISTENT, "gross is {gross}; it must be more than wetEmpty, {wetEmpty}."),

  DRAINED_ABOVE_SOAKED(INCONSISTENT, "drained is {drained}, more than soaked, {soaked}."),
  TOO_FEW_NOTES(
      INCONSISTENT, "days has {count} notes; at least 4 are needed, on 3 days after day 0."),
  NO_RISE(NO_SOLUTION, "intensities do not rise after day {day}: no half time can be told."),
  NO_LEVEL(NO_SOLUTION, "intensities do not level off by day {day}: no limit can be told yet."),
  NO_FIT(NOT_CONVERGED, "No limit and half time fit these intensities."),

  TOO_FEW_TOPPINGS(
      INCONSISTENT,
      "days has {count} toppings; at least 3 are needed, the first of which only starts the count."),
  DAY_NOT_LATER(INCONSISTENT, "{argument} is {day}, not after the day before it."),
  HEADSPACE_ABOVE_CAPACITY(
      INCONSISTENT, "The headspace would be {headspace}, more than capacity, {capacity}."),
  MORE_THAN_CAPACITY(INCONSISTENT, "{argument} is {value}, more than capacity, {capacity}."),

  HELD_BACK(
      NO_SOLUTION,
      "vacuum is {vacuum}, the mead above the hole presses with {head}: nothing runs, the hole draws"
          + " air."),
  FLOW_STOPS(
      NO_SOLUTION,
      "amount is {amount}; a tight barrel's own vacuum stops the flow after {most}, then the hole"
          + " draws air."),
  PUSH_TOO_HIGH(
      OUT_OF_RANGE,
      "The pressure needed is {needed}; above {most} a cask is not pushed. Let air in at the bung"
          + " instead."),
  NO_DEPTH(NOT_CONVERGED, "No depth was found for this content."),
  NO_SUCH_NAIL(OUT_OF_RANGE, "penny is {penny}; the sizes are {sizes}.");

  private final Refusal.Kind kind;
  private final String english;

  BarrelReason(Refusal.Kind kind, String english) {
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
