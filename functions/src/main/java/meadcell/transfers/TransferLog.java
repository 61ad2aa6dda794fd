package meadcell.transfers;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import meadcell.catalogue.General;
import meadcell.catalogue.Place;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;

/**
 * A log of transfers, replayed by day, within a day by the rows' order, else as written, up to the
 * end of one day: what moved where, and how much every vessel holds then.
 *
 * <p>A name that was never filled is a source: what is drawn from it is liquid of that name.
 */
public final class TransferLog {
  private static final String LOSS = "loss";
  private static final String GAUGE = "gauge";

  /**
   * Liquid that came into {@code to}, of whose content it then made up {@code share}; from a vessel
   * or, if {@code fresh}, from outside the log.
   */
  record Move(double day, int from, boolean fresh, int to, double share) {}

  /** What became of a vessel's content. */
  public enum Posting {
    /** Came in. */
    IN,
    /** Went out. */
    OUT,
    /** Was lost; below 0 where more was found than the account had. */
    LOST
  }

  /**
   * An entry of a vessel's account.
   *
   * @param day when
   * @param vessel index of the vessel
   * @param posting what became of it
   * @param volumeL how much, L
   */
  public record Entry(double day, int vessel, Posting posting, double volumeL) {}

  final List<Move> moves = new ArrayList<>();
  private final List<Step> steps = new ArrayList<>();
  private final List<Entry> entries = new ArrayList<>();
  private final double day;
  private final Slack slack;
  private final List<Content> vessels = new ArrayList<>();
  private final Map<String, Integer> byName = new HashMap<>();
  private final int loss;
  private final int gauge;

  TransferLog(Rows<TransferRow> transfers, OptionalDouble endOfDay, Slack slack) {
    this.slack = slack;
    loss = index(LOSS);
    gauge = index(GAUGE);
    transfers.forEach(this::check);
    List<TransferRow> rows = inOrder(transfers.list());
    double asked = endOfDay.orElse(rows.get(rows.size() - 1).day());
    double until = asked;
    for (TransferRow row : rows) {
      if (Math.floor(row.day()) <= Math.floor(asked)) {
        replay(row, index(row.from()), index(row.to()));
        until = Math.max(until, row.day());
      }
    }
    day = until;
  }

  private record Placed(TransferRow row, double order) {
    double day() {
      return row.day();
    }
  }

  /** By day; within it by their order, a row without one after the row above it. */
  private static List<TransferRow> inOrder(List<TransferRow> rows) {
    List<Placed> placed = new ArrayList<>();
    double order = Double.NEGATIVE_INFINITY;
    for (TransferRow row : rows) {
      order = row.order().orElse(order);
      placed.add(new Placed(row, order));
    }
    placed.sort(Comparator.comparingDouble(Placed::day).thenComparingDouble(Placed::order));
    return placed.stream().map(Placed::row).toList();
  }

  /**
   * {@return the replay of a log}
   *
   * @param transfers its rows
   * @param endOfDay the day up to which; empty for the last one of the log
   * @param slack how much more than the account may be drawn or gauged
   */
  public static TransferLog of(Rows<TransferRow> transfers, OptionalDouble endOfDay, Slack slack) {
    return Replays.of(transfers, endOfDay, slack);
  }

  /** {@return the day up to which it is replayed} */
  public double day() {
    return day;
  }

  /** {@return how many names it has} */
  public int size() {
    return vessels.size();
  }

  /**
   * {@return a name as it is written first}
   *
   * @param index its index
   */
  public String name(int index) {
    return vessels.get(index).name;
  }

  /**
   * {@return what a vessel holds, L}
   *
   * @param index its index
   */
  public double volumeL(int index) {
    return vessels.get(index).volumeL;
  }

  /**
   * {@return how often a vessel was filled when it was empty}
   *
   * @param index its index
   */
  public int fills(int index) {
    return vessels.get(index).fills;
  }

  /**
   * {@return the day on which a vessel was last filled when it was empty}
   *
   * @param index its index
   */
  public double filledOn(int index) {
    return vessels.get(index).filledOn;
  }

  /**
   * {@return what a vessel lost between its measurements}
   *
   * @param index its index
   */
  public List<Span> spans(int index) {
    return Collections.unmodifiableList(vessels.get(index).spans);
  }

  /** {@return the entries of all vessels' accounts, by day} */
  public List<Entry> entries() {
    return Collections.unmodifiableList(entries);
  }

  /** {@return what each row did, in the order of the replay} */
  public List<Step> steps() {
    return Collections.unmodifiableList(steps);
  }

  /** {@return the indexes of what was filled, in the order of the log; not of what was lost} */
  public IntStream filled() {
    return IntStream.range(0, vessels.size())
        .filter(index -> index != loss && vessels.get(index).filled);
  }

  /**
   * {@return the index of a name in the log, in any case}
   *
   * @param unknown the refusal's reason where it has none
   * @param name the name
   */
  public int find(TransferReason unknown, String name) {
    OptionalInt index = indexOf(name);
    if (index.isEmpty()) {
      throw Refusal.unknownName(unknown, name, names());
    }
    return index.getAsInt();
  }

  /**
   * {@return the index of a name, in any case; empty where the log does not have it}
   *
   * @param name the name
   */
  public OptionalInt indexOf(String name) {
    Integer index = byName.get(key(name));
    return index == null || index == gauge ? OptionalInt.empty() : OptionalInt.of(index);
  }

  /** {@return all names as they are written first} */
  public List<String> names() {
    return vessels.stream().map(vessel -> vessel.name).toList();
  }

  private void check(TransferRow row) {
    int from = index(row.from());
    int to = index(row.to());
    if (row.volumeL() == 0 && from != gauge && to != gauge) {
      throw new Refusal(General.ZERO)
          .about("transfers", new Place(row.row(), 3, "volume"))
          .with("value", 0, Quantity.VOLUME);
    }
    if (from == to || from == loss || from == gauge && to == loss) {
      throw new Refusal(TransferReason.CANNOT_MOVE)
          .with("row", row.row())
          .with("from", name(from))
          .with("to", name(to));
    }
  }

  private int index(String name) {
    return byName.computeIfAbsent(
        key(name),
        key -> {
          vessels.add(new Content(name));
          return vessels.size() - 1;
        });
  }

  private static String key(String name) {
    return name.trim().toLowerCase(Locale.ROOT);
  }

  private void replay(TransferRow row, int from, int to) {
    if (from == gauge) {
      measure(to, row);
    } else if (to == gauge) {
      measure(from, row);
    } else {
      Content source = vessels.get(from);
      if (source.filled) {
        draw(from, row, to == loss ? Posting.LOST : Posting.OUT);
      } else {
        source.drawnAsSourceInRow = row.row();
      }
      fill(from, !source.filled, to, row);
    }
  }

  /** Beyond what the log has left, a little may be drawn: then the vessel had held that more. */
  private void draw(int index, TransferRow row, Posting posting) {
    Content from = vessels.get(index);
    double variance = from.varianceWith(row);
    double beyond = from.draw(row);
    if (beyond > 0) {
      slack.refuseBeyond(
          new Slack.Excess(from.name, row.row(), false, from.overdrawnL, from.fillL, variance));
      entries.add(new Entry(row.day(), index, Posting.LOST, -beyond));
    }
    entries.add(new Entry(row.day(), index, posting, row.volumeL()));
  }

  private void fill(int source, boolean fresh, int target, TransferRow row) {
    Content to = vessels.get(target);
    if (to.drawnAsSourceInRow > 0 && !to.filled) {
      throw new Refusal(TransferReason.FILLS_A_SOURCE)
          .with("row", row.row())
          .with("vessel", to.name)
          .with("drawnRow", to.drawnAsSourceInRow);
    }
    Step.Kind kind = fresh ? Step.Kind.CAME : Step.Kind.MOVED;
    steps.add(new Step(row, kind, source, target, vessels.get(source).volumeL, to.volumeL));
    if (to.volumeL == 0) {
      to.begin(row);
    } else {
      to.put(row);
    }
    moves.add(new Move(row.day(), source, fresh, target, row.volumeL() / to.volumeL));
    if (target != loss) {
      entries.add(new Entry(row.day(), target, Posting.IN, row.volumeL()));
    }
  }

  /** What is missing is lost; a little more than the log has scales the content. */
  private void measure(int index, TransferRow row) {
    Content vessel = vessels.get(index);
    if (!vessel.filled) {
      steps.add(new Step(row, Step.Kind.CAME, index, index, 0, 0));
      moves.add(new Move(row.day(), index, true, index, 1));
      entries.add(new Entry(row.day(), index, Posting.IN, row.volumeL()));
      vessel.begin(row);
      return;
    }
    double missing = vessel.volumeL - row.volumeL();
    steps.add(new Step(row, Step.Kind.GAUGED, index, index, vessel.volumeL, vessel.volumeL));
    entries.add(new Entry(row.day(), index, Posting.LOST, missing));
    if (missing > 0) {
      lose(index, missing, row);
    } else {
      slack.refuseBeyond(
          new Slack.Excess(
              vessel.name, row.row(), true, -missing, vessel.fillL, vessel.varianceWith(row)));
    }
    vessel.gauge(row);
  }

  private void lose(int index, double volumeL, TransferRow row) {
    Content lost = vessels.get(loss);
    TransferRow found =
        new TransferRow(
            row.row(), row.from(), LOSS, volumeL, row.day(), row.uncertaintyL(), row.order());
    if (lost.volumeL == 0) {
      lost.begin(found);
    } else {
      lost.put(found);
    }
    moves.add(new Move(row.day(), index, false, loss, volumeL / lost.volumeL));
  }
}
