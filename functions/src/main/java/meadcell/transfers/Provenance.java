package meadcell.transfers;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Where each liquid of a lot has been, and for how long. {@link Ancestry} follows the lot back and
 * says how much of it stood where between any two moves; following the log forwards says what that
 * was made of. Vessels count as well mixed, so both together say how much of which liquid stood
 * where.
 */
public final class Provenance {
  private final Ancestry ancestry;
  private final double[][] days;

  /**
   * Follows a lot back, and its liquids forth again.
   *
   * @param log the log
   * @param lot index of the vessel that holds it
   */
  public Provenance(TransferLog log, int lot) {
    Deque<Ancestry.Stay> stays = new ArrayDeque<>();
    ancestry = new Ancestry(log, lot, stays::push);
    days = new double[log.size()][log.size()];
    Shares shares = new Shares(log.size());
    for (int i = 0; i < log.moves.size(); i++) {
      shares.move(log.moves.get(i));
      while (!stays.isEmpty() && stays.peek().afterMove() == i) {
        Ancestry.Stay stay = stays.pop();
        shares
            .of(stay.vessel())
            .forEach((source, share) -> days[source][stay.vessel()] += share * stay.presentDays());
      }
    }
  }

  /** {@return by name: part of the lot's liquid that entered the log under it} */
  public double[] sourceShare() {
    return ancestry.sourceShare();
  }

  /**
   * {@return by vessel: days that the liquid of a source spent there, on average over all of it}
   *
   * @param source index of its name
   */
  public double[] days(int source) {
    double[] mean = new double[days.length];
    for (int vessel = 0; vessel < mean.length; vessel++) {
      mean[vessel] = days[source][vessel] / sourceShare()[source];
    }
    return mean;
  }
}
