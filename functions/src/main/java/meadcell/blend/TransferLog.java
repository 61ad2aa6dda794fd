package meadcell.blend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import meadcell.catalogue.General;
import meadcell.catalogue.Place;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;

/**
 * A log of transfers, replayed in the order of its days up to the end of one day: what moved where,
 * and how much every vessel holds then.
 *
 * <p>A name that was never filled is a source: what is drawn from it is liquid of that name.
 */
final class TransferLog {
  private static final String LOSS = "loss";
  private static final String GAUGE = "gauge";

  /** A remainder, as a part of the fill, that is only rounding. */
  private static final double ROUNDING = 1e-12;

  /**
   * Liquid that came into {@code to}, of whose content it then made up {@code share}; from a vessel
   * or, if {@code fresh}, from outside the log.
   */
  record Move(double day, int from, boolean fresh, int to, double share) {}

  private record Entry(int row, int from, int to, double volumeL, double day) {}

  private static final class Vessel {
    final String name;
    boolean filled;
    int drawnAsSourceInRow;
    double volumeL;

    /** The most it held, and what was drawn beyond its content, since it was last empty. */
    double fillL;

    double overdrawnL;

    Vessel(String name) {
      this.name = name;
    }

    void hold(double measuredL) {
      filled = true;
      volumeL = measuredL;
      fillL = measuredL;
      overdrawnL = 0;
    }
  }

  final List<Move> moves = new ArrayList<>();
  final double day;
  private final double tolerance;
  private final List<Vessel> vessels = new ArrayList<>();
  private final Map<String, Integer> byName = new HashMap<>();
  private final int loss;
  private final int gauge;

  TransferLog(Rows<TransferRow> transfers, OptionalDouble endOfDay, double tolerancePercent) {
    tolerance = tolerancePercent / 100;
    loss = index(LOSS);
    gauge = index(GAUGE);
    List<Entry> entries = new ArrayList<>(transfers.stream().map(this::entry).toList());
    entries.sort(Comparator.comparingDouble(Entry::day));
    day = endOfDay.orElse(entries.get(entries.size() - 1).day);
    for (Entry entry : entries) {
      if (entry.day <= day) {
        replay(entry);
      }
    }
  }

  int size() {
    return vessels.size();
  }

  String name(int index) {
    return vessels.get(index).name;
  }

  double volumeL(int index) {
    return vessels.get(index).volumeL;
  }

  /** The index of a name in the log, in any case. */
  int find(BlendReason unknown, String name) {
    Integer index = byName.get(key(name));
    if (index == null || index == gauge) {
      List<String> known = vessels.stream().map(vessel -> vessel.name).toList();
      throw Refusal.unknownName(unknown, name, known);
    }
    return index;
  }

  private Entry entry(TransferRow row) {
    int from = index(row.from());
    int to = index(row.to());
    if (row.volumeL() == 0 && from != gauge && to != gauge) {
      throw new Refusal(General.ZERO)
          .about("transfers", new Place(row.row(), 3, "volume"))
          .with("value", 0, Quantity.VOLUME);
    }
    if (from == to || from == loss || from == gauge && to == loss) {
      throw new Refusal(BlendReason.CANNOT_MOVE)
          .with("row", row.row())
          .with("from", name(from))
          .with("to", name(to));
    }
    return new Entry(row.row(), from, to, row.volumeL(), row.day());
  }

  private int index(String name) {
    return byName.computeIfAbsent(
        key(name),
        key -> {
          vessels.add(new Vessel(name));
          return vessels.size() - 1;
        });
  }

  private static String key(String name) {
    return name.trim().toLowerCase(Locale.ROOT);
  }

  private void replay(Entry entry) {
    if (entry.from == gauge) {
      measure(entry.to, entry);
    } else if (entry.to == gauge) {
      measure(entry.from, entry);
    } else {
      Vessel from = vessels.get(entry.from);
      if (from.filled) {
        draw(from, entry);
      } else {
        from.drawnAsSourceInRow = entry.row;
      }
      fill(entry.from, !from.filled, entry.to, entry.volumeL, entry);
    }
  }

  /** Beyond what the log has left, a little may be drawn: then the vessel had held that more. */
  private void draw(Vessel from, Entry entry) {
    from.volumeL -= entry.volumeL;
    if (from.volumeL < 0) {
      from.overdrawnL -= from.volumeL;
      refuseBeyondTolerance(
          from, from.overdrawnL, BlendReason.DRAWN_BEYOND, BlendReason.DRAWN_FROM_EMPTY, entry);
    }
    if (from.volumeL < ROUNDING * from.fillL) {
      from.volumeL = 0;
    }
  }

  private void fill(int source, boolean fresh, int target, double volumeL, Entry entry) {
    Vessel to = vessels.get(target);
    if (to.drawnAsSourceInRow > 0 && !to.filled) {
      throw new Refusal(BlendReason.FILLS_A_SOURCE)
          .with("row", entry.row)
          .with("vessel", to.name)
          .with("drawnRow", to.drawnAsSourceInRow);
    }
    if (to.volumeL == 0) {
      to.hold(volumeL);
    } else {
      to.volumeL += volumeL;
      to.fillL = Math.max(to.fillL, to.volumeL);
    }
    moves.add(new Move(entry.day, source, fresh, target, volumeL / to.volumeL));
  }

  /** What is missing is lost; a little more than the log has scales the content. */
  private void measure(int index, Entry entry) {
    Vessel vessel = vessels.get(index);
    if (!vessel.filled) {
      moves.add(new Move(entry.day, index, true, index, 1));
    } else if (entry.volumeL < vessel.volumeL) {
      fill(index, false, loss, vessel.volumeL - entry.volumeL, entry);
    } else {
      refuseBeyondTolerance(
          vessel,
          entry.volumeL - vessel.volumeL,
          BlendReason.GAUGED_BEYOND,
          BlendReason.GAUGED_EMPTY,
          entry);
    }
    vessel.hold(entry.volumeL);
  }

  private void refuseBeyondTolerance(
      Vessel vessel, double excessL, BlendReason beyond, BlendReason empty, Entry entry) {
    if (excessL > (tolerance + ROUNDING) * vessel.fillL) {
      throw new Refusal(vessel.fillL == 0 ? empty : beyond)
          .with("row", entry.row)
          .with("vessel", vessel.name)
          .with("excess", 100 * excessL / vessel.fillL, Quantity.PERCENT, 3)
          .with("tolerance", 100 * tolerance, Quantity.PERCENT);
    }
  }
}
