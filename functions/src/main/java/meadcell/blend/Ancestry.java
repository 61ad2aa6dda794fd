package meadcell.blend;

import meadcell.catalogue.Refusal;

/**
 * Where the present liquid of a lot came from, and how long it was where. The log is followed
 * backwards: at each move, the part of the liquid that the move brought goes back to where it came
 * from, until all of it is outside. Vessels count as well mixed.
 */
final class Ancestry {
  private final double[] presentShare;
  private final double[] presentUntil;

  /** By name: part of the lot's liquid that entered the log under it. */
  final double[] sourceShare;

  /** By vessel: days that the lot's liquid spent there, on average over all of it. */
  final double[] days;

  Ancestry(TransferLog log, int lot) {
    if (log.volumeL(lot) == 0) {
      throw new Refusal(BlendReason.NOTHING_LEFT).with("lot", log.name(lot));
    }
    presentShare = new double[log.size()];
    presentUntil = new double[log.size()];
    sourceShare = new double[log.size()];
    days = new double[log.size()];
    presentShare[lot] = 1;
    presentUntil[lot] = log.day;
    for (int i = log.moves.size() - 1; i >= 0; i--) {
      goBack(log.moves.get(i));
    }
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
