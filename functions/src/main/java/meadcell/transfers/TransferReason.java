package meadcell.transfers;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NO_SOLUTION;
import static meadcell.catalogue.Refusal.Kind.UNKNOWN_NAME;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why a log of transfers cannot be replayed, or has no answer. */
public enum TransferReason implements Reason {
  /** The lot that is asked for is not in the log. */
  UNKNOWN_LOT(UNKNOWN_NAME, "The lot \"{given}\" is not known."),
  /** The vessel that is asked for is not in the log. */
  UNKNOWN_VESSEL(UNKNOWN_NAME, "The vessel \"{given}\" is not known."),
  /** A row's two names do not go together. */
  CANNOT_MOVE(INCONSISTENT, "Row {row} of transfers cannot move \"{from}\" to \"{to}\"."),
  /** A name was drawn from as a source before it was filled. */
  FILLS_A_SOURCE(
      INCONSISTENT,
      "Row {row} of transfers fills \"{vessel}\", which row {drawnRow} drew from; put a gauge row"
          + " before it that says how much was left, 0 if nothing."),
  /** Nothing is left to draw. */
  DRAWN_FROM_EMPTY(
      INCONSISTENT,
      "Row {row} of transfers draws from \"{vessel}\", which is empty by then. Is a filling before"
          + " it missing?"),
  /** More was drawn than the tolerance allows. */
  DRAWN_BEYOND(
      INCONSISTENT,
      "Row {row} of transfers draws from \"{vessel}\" {excess} of its fill more than it holds by"
          + " then; tolerance is {tolerance}. Is a filling before it missing?"),
  /** Something was measured where nothing is left. */
  GAUGED_EMPTY(
      INCONSISTENT,
      "Row {row} of transfers gauges in \"{vessel}\", which is empty by then. Is a filling before it"
          + " missing?"),
  /** More was measured than the tolerance allows. */
  GAUGED_BEYOND(
      INCONSISTENT,
      "Row {row} of transfers gauges in \"{vessel}\" {excess} of its fill more than it holds by then;"
          + " tolerance is {tolerance}. Is a filling before it missing?"),
  /** More was drawn than the uncertainties explain. */
  DRAWN_UNEXPLAINED(
      INCONSISTENT,
      "Row {row} of transfers draws from \"{vessel}\" {excess} more than it holds by then; the"
          + " uncertainty of the account explains {explained}. Is a filling before it missing?"),
  /** More was measured than the uncertainties explain. */
  GAUGED_UNEXPLAINED(
      INCONSISTENT,
      "Row {row} of transfers gauges in \"{vessel}\" {excess} more than it holds by then; the"
          + " uncertainty of the account explains {explained}. Is a filling before it missing?"),
  /** The lot is empty on the day that is asked for. */
  NOTHING_LEFT(
      NO_SOLUTION, "\"{lot}\" holds nothing at the end of that day, as far as transfers say.");

  private final Refusal.Kind kind;
  private final String english;

  TransferReason(Refusal.Kind kind, String english) {
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
