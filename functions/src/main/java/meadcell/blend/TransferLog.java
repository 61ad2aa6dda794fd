package meadcell.blend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import meadcell.catalogue.Numbers;
import meadcell.catalogue.Refusal;

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

  TransferLog(Object[][] transfers, OptionalDouble endOfDay, double tolerancePercent) {
    tolerance = tolerancePercent / 100;
    loss = index(LOSS);
    gauge = index(GAUGE);
    List<Entry> entries = read(transfers);
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
  int find(String what, String name) {
    Integer index = byName.get(key(name));
    if (index == null || index == gauge) {
      List<String> known = vessels.stream().map(vessel -> vessel.name).toList();
      throw Refusal.unknownName(what, name, known);
    }
    return index;
  }

  // ---- reading ----------------------------------------------------------------------------

  private List<Entry> read(Object[][] transfers) {
    if (transfers[0].length != 4) {
      throw Refusal.inconsistent(
          "transfers must have four columns: from, to, volume, day; it has "
              + transfers[0].length
              + ".");
    }
    List<Entry> entries = new ArrayList<>();
    for (int i = 0; i < transfers.length; i++) {
      if (!Cells.isBlank(transfers[i])) {
        entries.add(entry(transfers[i], i + 1));
      }
    }
    if (entries.isEmpty()) {
      throw Refusal.wrongKind("transfers has only blank cells.");
    }
    return entries;
  }

  private Entry entry(Object[] cells, int row) {
    String where = " in row " + row + " of transfers";
    int from = index(Cells.name(cells[0], "from" + where));
    int to = index(Cells.name(cells[1], "to" + where));
    double volumeL = Cells.notBelow0(cells[2], "volume" + where);
    if (volumeL == 0 && from != gauge && to != gauge) {
      throw Refusal.outOfRange("volume" + where + " is 0.");
    }
    if (from == to || from == loss || from == gauge && to == loss) {
      throw Refusal.inconsistent(
          "Row "
              + row
              + " of transfers cannot move \""
              + name(from)
              + "\" to \""
              + name(to)
              + "\".");
    }
    return new Entry(row, from, to, volumeL, Cells.number(cells[3], "day" + where));
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

  // ---- replaying --------------------------------------------------------------------------

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
      refuseBeyondTolerance(from, from.overdrawnL, "draws from", entry);
    }
    if (from.volumeL < ROUNDING * from.fillL) {
      from.volumeL = 0;
    }
  }

  private void fill(int source, boolean fresh, int target, double volumeL, Entry entry) {
    Vessel to = vessels.get(target);
    if (to.drawnAsSourceInRow > 0 && !to.filled) {
      throw Refusal.inconsistent(
          "Row "
              + entry.row
              + " of transfers fills \""
              + to.name
              + "\", which row "
              + to.drawnAsSourceInRow
              + " drew from; put a gauge row before it that says how much was left, 0 if nothing.");
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
      refuseBeyondTolerance(vessel, entry.volumeL - vessel.volumeL, "gauges in", entry);
    }
    vessel.hold(entry.volumeL);
  }

  private void refuseBeyondTolerance(Vessel vessel, double excessL, String verb, Entry entry) {
    if (excessL > (tolerance + ROUNDING) * vessel.fillL) {
      String excess =
          vessel.fillL == 0
              ? "\", which is empty by then."
              : "\" "
                  + Numbers.text(100 * excessL / vessel.fillL, 3)
                  + " % of its fill more than it holds by then; tolerance is "
                  + Numbers.text(100 * tolerance)
                  + " %.";
      throw Refusal.inconsistent(
          "Row "
              + entry.row
              + " of transfers "
              + verb
              + " \""
              + vessel.name
              + excess
              + " Is a filling before it missing?");
    }
  }
}
