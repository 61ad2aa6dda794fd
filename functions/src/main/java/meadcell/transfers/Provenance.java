package meadcell.transfers;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meadcell.catalogue.Refusal;

/**
 * What a vessel's liquid is made of, and where each part of it has been for how long: the log is
 * followed forwards, and every vessel carries the shares of its content along. Vessels count as
 * well mixed.
 */
public final class Provenance {
  private final TransferLog log;
  private final List<Content> contents = new ArrayList<>();
  private final Content lot;

  /** What a litre of a vessel's content is made of. */
  private static final class Content {
    final Map<Integer, Double> share = new HashMap<>();

    /** By source and vessel: share times days. */
    final Map<Integer, Map<Integer, Double>> days = new HashMap<>();

    double until;

    void stay(int vessel, double day) {
      double passed = day - until;
      until = day;
      if (passed > 0) {
        share.forEach((source, part) -> of(source).merge(vessel, part * passed, Double::sum));
      }
    }

    Map<Integer, Double> of(int source) {
      return days.computeIfAbsent(source, s -> new HashMap<>());
    }

    void keep(double part) {
      share.replaceAll((source, value) -> part * value);
      days.values().forEach(by -> by.replaceAll((vessel, value) -> part * value));
    }

    void take(Content other, double part) {
      other.share.forEach((source, value) -> share.merge(source, part * value, Double::sum));
      other.days.forEach(
          (source, by) ->
              by.forEach((vessel, value) -> of(source).merge(vessel, part * value, Double::sum)));
    }
  }

  /**
   * Follows all liquids to a lot.
   *
   * @param log the log
   * @param lot index of the vessel that holds it
   */
  public Provenance(TransferLog log, int lot) {
    if (log.volumeL(lot) == 0) {
      throw new Refusal(TransferReason.NOTHING_LEFT).with("lot", log.name(lot));
    }
    this.log = log;
    for (int i = 0; i < log.size(); i++) {
      contents.add(new Content());
    }
    log.moves.forEach(this::move);
    this.lot = contents.get(lot);
    this.lot.stay(lot, log.day());
  }

  private void move(TransferLog.Move move) {
    Content to = contents.get(move.to());
    to.stay(move.to(), move.day());
    to.keep(1 - move.share());
    if (move.fresh()) {
      to.share.merge(move.from(), move.share(), Double::sum);
    } else {
      Content from = contents.get(move.from());
      from.stay(move.from(), move.day());
      to.take(from, move.share());
    }
  }

  /** {@return by name: part of the lot's liquid that entered the log under it} */
  public double[] sourceShare() {
    double[] shares = new double[log.size()];
    lot.share.forEach((source, share) -> shares[source] = share);
    return shares;
  }

  /**
   * {@return by vessel: days that the liquid of a source spent there, on average over all of it}
   *
   * @param source index of its name
   */
  public double[] days(int source) {
    double[] days = new double[log.size()];
    lot.of(source).forEach((vessel, value) -> days[vessel] = value / lot.share.get(source));
    return days;
  }
}
