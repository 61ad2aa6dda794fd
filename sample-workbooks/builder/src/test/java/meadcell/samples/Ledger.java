package meadcell.samples;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A sum of our own over what was typed: each vessel is a pot of well-mixed liquids, each liquid a
 * number of litres that carries its litre-days in every vessel it was in.
 */
final class Ledger {
  /** Of one source in one vessel. */
  private static final class Liquid {
    double litres;
    final Map<String, Double> litreDays = new HashMap<>();

    Liquid part(double share) {
      Liquid part = new Liquid();
      part.litres = litres * share;
      litreDays.forEach((vessel, value) -> part.litreDays.put(vessel, value * share));
      return part;
    }

    void add(Liquid other) {
      litres += other.litres;
      other.litreDays.forEach((vessel, value) -> litreDays.merge(vessel, value, Double::sum));
    }

    void stay(String vessel, long days) {
      litreDays.merge(vessel, litres * days, Double::sum);
    }
  }

  private static final class Pot {
    final Map<String, Liquid> liquids = new TreeMap<>();
    LocalDate since;
    LocalDate aged;
    int fills;
    double lost;

    double litres() {
      return liquids.values().stream().mapToDouble(liquid -> liquid.litres).sum();
    }
  }

  private final Map<String, Pot> pots = new HashMap<>();
  private final Facts facts;

  /** The cellar at the end of a day. */
  Ledger(Facts facts, LocalDate today) {
    this.facts = facts;
    List<Facts.Move> moves =
        facts.moves.stream()
            .filter(move -> !move.day().isAfter(today))
            .sorted(Comparator.comparing(Facts.Move::day))
            .toList();
    for (Facts.Move move : moves) {
      if (move.from().equals("gauge")) {
        found(move);
      } else {
        moved(move);
      }
    }
    pots.keySet().forEach(vessel -> at(vessel, today));
  }

  private void found(Facts.Move move) {
    Pot pot = at(move.to(), move.day());
    double found =
        move.dipCm() == null
            ? move.litres()
            : facts.vessel(move.to()).size().contents(move.dipCm());
    double before = pot.litres();
    pot.lost += before - found;
    pot.liquids.replaceAll((source, liquid) -> liquid.part(found / before));
    if (found == 0) {
      pot.liquids.clear();
    }
  }

  private void moved(Facts.Move move) {
    Pot to = at(move.to(), move.day());
    boolean begins = to.liquids.isEmpty();
    if (pots.containsKey(move.from())) {
      Pot from = at(move.from(), move.day());
      double share = Math.min(1, move.litres() / from.litres());
      from.liquids.forEach(
          (source, liquid) ->
              to.liquids.computeIfAbsent(source, s -> new Liquid()).add(liquid.part(share)));
      from.liquids.replaceAll((source, liquid) -> liquid.part(1 - share));
      if (share == 1) {
        from.liquids.clear();
      }
    } else {
      Liquid liquid = new Liquid();
      liquid.litres = move.litres();
      to.liquids.computeIfAbsent(move.from(), s -> new Liquid()).add(liquid);
    }
    if (begins) {
      to.since = move.day();
      to.fills++;
    }
  }

  private Pot at(String vessel, LocalDate day) {
    Pot pot = pots.computeIfAbsent(vessel, v -> new Pot());
    if (pot.aged != null) {
      long days = ChronoUnit.DAYS.between(pot.aged, day);
      pot.liquids.values().forEach(liquid -> liquid.stay(vessel, days));
    }
    pot.aged = day;
    return pot;
  }

  boolean holdsAnything(String vessel) {
    return pots.containsKey(vessel) && !pots.get(vessel).liquids.isEmpty();
  }

  double litres(String vessel) {
    return pots.get(vessel).litres();
  }

  LocalDate since(String vessel) {
    return pots.get(vessel).since;
  }

  int fills(String vessel) {
    return pots.get(vessel).fills;
  }

  /** Since the log began. */
  double lost(String vessel) {
    return pots.get(vessel).lost;
  }

  /** Share of each source, %. */
  Map<String, Double> shares(String vessel) {
    Map<String, Double> shares = new TreeMap<>();
    Pot pot = pots.get(vessel);
    pot.liquids.forEach((source, liquid) -> shares.put(source, 100 * liquid.litres / pot.litres()));
    return shares;
  }

  /** Days of a source's liquid, on average over all of it, by the vessels it was in. */
  Map<String, Double> days(String vessel, String source) {
    Map<String, Double> days = new TreeMap<>();
    Liquid liquid = pots.get(vessel).liquids.get(source);
    liquid.litreDays.forEach((where, value) -> days.put(where, value / liquid.litres));
    return days;
  }

  /** Months that what a vessel holds has spent in it, on average over all of it. */
  double months(String vessel) {
    Pot pot = pots.get(vessel);
    double litreDays =
        pot.liquids.values().stream()
            .mapToDouble(liquid -> liquid.litreDays.getOrDefault(vessel, 0.0))
            .sum();
    return litreDays / pot.litres() / (365.25 / 12);
  }
}
