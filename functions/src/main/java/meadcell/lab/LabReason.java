package meadcell.lab;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NO_SOLUTION;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the laboratory refuse. */
enum LabReason implements Reason {
  TOO_FEW_READINGS(INCONSISTENT, "trial has {given} readings; at least {least} are needed."),
  SAME_ADDITION(
      INCONSISTENT, "{argument}: another row has the same addition. Keep one reading of each."),
  TURNS_BACK(
      INCONSISTENT,
      "{argument}: the reading does not go on in the direction of the others. Measure it again, or"
          + " leave the row out."),
  OUTSIDE_TRIAL(
      NO_SOLUTION,
      "{argument} is {target}; the trial goes from {start} to {end}. Carry the trial on beyond it:"
          + " nothing is guessed there."),
  NEAR_THE_END(
      NO_SOLUTION,
      "{argument} is {target}, too near to where the trial ends, at {end}, for readings that scatter by"
          + " {u}. Carry the trial on."),
  SPAN_TOO_SMALL(
      INCONSISTENT,
      "from is {start} and to is {end}; they must lie at least {least} apart, or the scatter of the"
          + " readings hides the difference.");

  private final Refusal.Kind kind;
  private final String english;

  LabReason(Refusal.Kind kind, String english) {
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
