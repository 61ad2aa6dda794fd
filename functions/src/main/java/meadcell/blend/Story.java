package meadcell.blend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Rows;
import meadcell.transfers.AtEndOf;
import meadcell.transfers.Provenance;
import meadcell.transfers.Slack;
import meadcell.transfers.TransferLog;
import meadcell.transfers.TransferReason;
import meadcell.transfers.TransferRow;
import meadcell.transfers.Transfers;

/** Where a lot came from, to be read by who drinks it. */
@Family(name = "BLEND")
public final class Story {
  /** Of spaces that do not break: programs that store texts as XML drop others at their start. */
  private static final String INDENT = "\u00A0".repeat(4);

  /** Less than this part of a day in a vessel is passing through it. */
  private static final double PASSING = 1e-6;

  private Story() {}

  /**
   * A line of a lot's story.
   *
   * @param what a liquid, or indented a vessel that it was in
   * @param sharePercent how much of the lot the liquid is, %
   * @param days since the liquid entered the log, or in the vessel
   */
  public record Line(
      @Gives(value = "liquid, or indented a vessel", is = Quantity.TEXT) String what,
      @Gives(value = "share of the lot", is = Quantity.PERCENT) double sharePercent,
      @Gives(value = "age, or time in the vessel", is = Quantity.DAYS) double days) {}

  /**
   * {@return the story of a lot, a row for each liquid and for each vessel it was in}
   *
   * @param transfers a row for each transfer
   * @param lot vessel or lot to explain, as transfers name it
   * @param day state at the end of this day; left out: after the last transfer, day number
   */
  @CellarFunction(
      summary =
          "The story of a lot, ready to print: every liquid in it, its share and age, and below it the"
              + " vessels that it was in, and how long.",
      formula =
          "The log is replayed by day as for BLEND.LINEAGE. Each part of a liquid counts its own days"
              + " in a vessel, on average over all of that liquid in the lot; over the vessels they add"
              + " up to its age, the days since it entered the log.",
      source = "Conservation of volume; no source needed.",
      example =
          "BLEND.STORY({\"Heather must\",\"Cask\",225,1;\"Cask\",\"Tank\",150,181;\"Cherry must\","
              + "\"Tank\",50,181};\"Tank\";200)",
      note =
          "Largest share first, then the longest time. The share of a vessel's row is that of its"
              + " liquid. More than the log has may be drawn or gauged up to twice the combined"
              + " uncertainty, as for VESSEL.HOLDS.")
  public static Line[] story(
      @Transfers Rows<TransferRow> transfers,
      @Arg(name = "lot", help = "Vessel or lot to explain, as transfers name it") String lot,
      @AtEndOf OptionalDouble day) {
    TransferLog log = TransferLog.of(transfers, day, Slack.byUncertainty());
    Provenance made = new Provenance(log, log.find(TransferReason.UNKNOWN_LOT, lot));
    Map<Integer, Double> shares = made.shares();
    List<Line> lines = new ArrayList<>();
    for (int source : largestFirst(shares, log)) {
      Map<Integer, Double> days = made.days(source);
      double percent = 100 * shares.get(source);
      double age = days.values().stream().mapToDouble(d -> d).sum();
      lines.add(new Line(log.name(source), percent, age));
      for (int vessel : largestFirst(days, log)) {
        if (days.get(vessel) > PASSING) {
          lines.add(new Line(INDENT + log.name(vessel), percent, days.get(vessel)));
        }
      }
    }
    return lines.toArray(Line[]::new);
  }

  private static List<Integer> largestFirst(Map<Integer, Double> values, TransferLog log) {
    return values.keySet().stream()
        .sorted(Comparator.<Integer>comparingDouble(i -> -values.get(i)).thenComparing(log::name))
        .toList();
  }
}
