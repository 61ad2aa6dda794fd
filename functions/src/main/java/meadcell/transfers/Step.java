package meadcell.transfers;

/**
 * What a row of the log did.
 *
 * @param row the row
 * @param kind what happened
 * @param from index of what was drawn from; for a gauge, of the vessel
 * @param to index of the vessel that was filled; for a gauge, of the vessel
 * @param leftL what was left in {@code from}, L; for a gauge, what it held by the account
 * @param heldL what {@code to} held before, L
 */
public record Step(TransferRow row, Kind kind, int from, int to, double leftL, double heldL) {
  /** What can happen. */
  public enum Kind {
    /** Liquid came from outside the log. */
    CAME,
    /** Liquid went from a vessel to another, or was lost by a row. */
    MOVED,
    /** A vessel's content was measured. */
    GAUGED
  }

  /** {@return the day} */
  public double day() {
    return row.day();
  }
}
