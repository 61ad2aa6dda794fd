package meadcell.transfers;

import meadcell.catalogue.Refusal;

/**
 * Where the present liquid of a lot came from, and how long it was where. The log is followed
 * backwards: at each move, the part of the liquid that the move brought goes back to where it came
 * from, until all of it is outside. Vessels count as well mixed.
 */
public final class Ancestry {
  private final double[] presentShare;
  private final double[] presentUntil;

  private final double[] sourceShare;
  private final double[] days;

  /**
   * Follows a lot back.
   *
   * @param log the log
   * @param lot index of the vessel that holds it
   */
  public Ancestry(TransferLog log, int lot) {
    if (log.volumeL(lot) == 0) {
      throw new Refusal(TransferReason.NOTHING_LEFT).with("lot", log.name(lot));
    }
    presentShare = new double[log.size()];
    presentUntil = new double[log.size()];
    sourceShare = new double[log.size()];
    days = new double[log.size()];
    presentShare[lot] = 1;
    presentUntil[lot] = log.day();
    for (int i = log.moves.size() - 1; i >= 0; i--) {
      goBack(log.moves.get(i));
    }
  }

  /** {@return by name: part of the lot's liquid that entered the log under it} */
  public double[] sourceShare() {
    return sourceShare;
  }

  /** {@return by vessel: days that the lot's liquid spent there, on average over all of it} */
  public double[] days() {
    return days;
  }

  private void goBack(TransferLog.Move move) {
    double moved = presentShare[move.to()] * move.share();
    stay(move.to(), move.day());
    presentShare[move.to()] -= moved;
    if (move.fresh()) {
      sourceShare[move.from()] += moved;
    } else {
      stay(move.from(), move.day());
      presentShare[move.from()] += moved;
    }
  }

  private void stay(int vessel, double day) {
    days[vessel] += presentShare[vessel] * (presentUntil[vessel] - day);
    presentUntil[vessel] = day;
  }
}
