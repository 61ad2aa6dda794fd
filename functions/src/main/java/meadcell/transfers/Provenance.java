package meadcell.transfers;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;

/**
 * Where each liquid of a lot has been, and for how long. {@link Ancestry} follows the lot back and
 * says how much of it stood where between any two moves; following the log forwards says what that
 * was made of. Vessels count as well mixed, so both together say how much of which liquid stood
 * where.
 */
public final class Provenance {
  private final Map<Integer, Double> shares;

  /** By source and vessel: share of the lot times days. */
  private final Map<Integer, Map<Integer, Double>> days = new HashMap<>();

  /**
   * Follows a lot back, and its liquids forth again.
   *
   * @param log the log
   * @param lot index of the vessel that holds it
   */
  public Provenance(TransferLog log, int lot) {
    Deque<Ancestry.Stay> stays = new ArrayDeque<>();
    new Ancestry(log, lot, stays::push);
    Shares mixing = new Shares(log.size());
    for (int i = 0; i < log.moves.size(); i++) {
      mixing.move(log.moves.get(i));
      while (!stays.isEmpty() && stays.peek().afterMove() == i) {
        Ancestry.Stay stay = stays.pop();
        mixing.of(stay.vessel()).forEach((source, share) -> add(source, stay, share));
      }
    }
    shares = mixing.of(lot);
    shares.values().removeIf(share -> share == 0);
  }

  private void add(int source, Ancestry.Stay stay, double share) {
    days.computeIfAbsent(source, s -> new HashMap<>())
        .merge(stay.vessel(), share * stay.presentDays(), Double::sum);
  }

  /** {@return part of the lot's liquid that entered the log under each name, by its index} */
  public Map<Integer, Double> shares() {
    return Collections.unmodifiableMap(shares);
  }

  /**
   * {@return days that the liquid of a source spent in each vessel, on average over all of it, by
   * the vessel's index}
   *
   * @param source index of its name
   */
  public Map<Integer, Double> days(int source) {
    Map<Integer, Double> mean = new HashMap<>(days.getOrDefault(source, Map.of()));
    mean.replaceAll((vessel, value) -> value / shares.get(source));
    return mean;
  }
}
