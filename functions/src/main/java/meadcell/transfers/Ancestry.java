package meadcell.transfers;

import java.util.function.Consumer;
import meadcell.catalogue.Refusal;

/**
 * Where the present liquid of a lot came from, and how long it was where. The log is followed
 * backwards: at each move, the part of the liquid that the move brought goes back to where it came
 * from, until all of it is outside. Vessels count as well mixed.
 */
public final class Ancestry {
  private final double[] presentShare;
  private final double[] presentUntil;
  private final Consumer<Stay> stays;

  private final double[] sourceShare;
  private final double[] days;

  /**
   * Follows a lot back.
   *
   * @param log the log
   * @param lot index of the vessel that holds it
   */
  public Ancestry(TransferLog log, int lot) {
    this(log, lot, stay -> {});
  }

  /** What of the lot's liquid stood in a vessel from after a move to the next, times days. */
  record Stay(int afterMove, int vessel, double presentDays) {}

  Ancestry(TransferLog log, int lot, Consumer<Stay> stays) {
    this.stays = stays;
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
      goBack(i, log.moves.get(i));
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

  private void goBack(int index, TransferLog.Move move) {
    double moved = presentShare[move.to()] * move.share();
    stay(index, move.to(), move.day());
    presentShare[move.to()] -= moved;
    if (move.fresh()) {
      sourceShare[move.from()] += moved;
    } else {
      stay(index, move.from(), move.day());
      presentShare[move.from()] += moved;
    }
  }

  private void stay(int afterMove, int vessel, double day) {
    double presentDays = presentShare[vessel] * (presentUntil[vessel] - day);
    if (presentDays > 0) {
      days[vessel] += presentDays;
      stays.accept(new Stay(afterMove, vessel, presentDays));
    }
    presentUntil[vessel] = day;
  }
}
