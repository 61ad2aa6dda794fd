package meadcell.vessel;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NO_SOLUTION;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the vessel refuse. */
enum VesselReason implements Reason {
  NEVER_FILLED(
      INCONSISTENT,
      "\"{vessel}\" was never filled by the end of that day: to the log it is a liquid, not a"
          + " vessel."),
  ALL_EMPTY(NO_SOLUTION, "No vessel holds anything at the end of that day."),
  FROM_AFTER_TO(INCONSISTENT, "from is {from}, after to, {to}."),
  NOTHING_HAPPENED(NO_SOLUTION, "No vessel held or moved anything between these days."),
  NOT_MEASURED(
      NO_SOLUTION,
      "What \"{vessel}\" lost between these days is not known: a filling of the empty vessel or a"
          + " gauge row must come first, and a gauge row after it.");

  private final Refusal.Kind kind;
  private final String english;

  VesselReason(Refusal.Kind kind, String english) {
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
