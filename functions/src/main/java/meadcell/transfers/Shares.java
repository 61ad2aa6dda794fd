package meadcell.transfers;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Which liquids every vessel holds, followed forwards. Vessels count as well mixed. */
public final class Shares {
  private final List<Map<Integer, Double>> byVessel = new ArrayList<>();

  Shares(int vessels) {
    for (int i = 0; i < vessels; i++) {
      byVessel.add(new HashMap<>());
    }
  }

  /**
   * {@return the shares at the end of a log}
   *
   * @param log the log
   */
  public static Shares atEndOf(TransferLog log) {
    Shares shares = new Shares(log.size());
    log.moves.forEach(shares::move);
    return shares;
  }

  void move(TransferLog.Move move) {
    Map<Integer, Double> from = move.fresh() ? Map.of(move.from(), 1.0) : of(move.from());
    Map<Integer, Double> to = of(move.to());
    to.replaceAll((source, share) -> (1 - move.share()) * share);
    from.forEach((source, share) -> to.merge(source, move.share() * share, Double::sum));
  }

  /**
   * {@return the share of each liquid in a vessel, by the index of its name}
   *
   * @param vessel index of the vessel
   */
  public Map<Integer, Double> of(int vessel) {
    return byVessel.get(vessel);
  }
}
