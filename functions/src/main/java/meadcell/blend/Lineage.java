package meadcell.blend;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.Comparator;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Rows;
import meadcell.transfers.Ancestry;
import meadcell.transfers.AtEndOf;
import meadcell.transfers.Slack;
import meadcell.transfers.TransferLog;
import meadcell.transfers.TransferReason;
import meadcell.transfers.TransferRow;
import meadcell.transfers.Transfers;

/** The story of a lot, by its transfers. */
@Family(name = "BLEND")
public final class Lineage {
  private static final String LOG_NOTE =
      "A name that was never filled is a source: a liquid of that name, as much as is drawn. A barrel"
          + " that was full before the log began needs a gauge row first. Names are alike in any"
          + " case; a misspelt one shows up as a source.\n"
          + "day left out is the last day of the log; give TODAY() to count up to now.\n"
          + "Write loss in to for what was lost. Write gauge in from or to for a measured content:"
          + " what the log has beyond it is counted as loss, a little more than the log has scales"
          + " the content.\n"
          + "Logs overdraw a little: up to tolerance, in % of the most the vessel held since it was"
          + " last empty, the vessel counts as having held that much more; beyond it the row is"
          + " refused.";

  @Arg(name = "lot", help = "Vessel or lot to explain, as transfers name it")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Lot {}

  @Arg(
      name = "tolerance",
      help = "How much of a vessel's fill may be drawn beyond what the log has left in it",
      is = Quantity.PERCENT,
      from = 0,
      to = 20,
      byDefault = 3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Tolerance {}

  private Lineage() {}

  /**
   * {@return what a lot is made of, a row}
   *
   * @param transfers A row for each transfer
   * @param lot vessel or lot to explain, as transfers name it
   * @param day state at the end of this day; left out: after the last transfer, day number
   * @param tolerancePercent how much of a vessel's fill may be drawn beyond what the log has left
   *     in it, %
   */
  @CellarFunction(
      summary = "Every liquid that ended in a lot and its share in %, largest first, then by name.",
      formula =
          "The log is replayed by day, rows of one day by order, else as written; each vessel counts as"
              + " well mixed, and a transfer takes its mixture along. Shares are by volume and add up to 100.",
      source = "Conservation of volume; no source needed.",
      example =
          "BLEND.LINEAGE({\"Heather must\",\"Tank\",300,1;\"Cherry must\",\"Tank\",100,1;\"Tank\","
              + "\"Cask\",225,9};\"Cask\")",
      note = LOG_NOTE)
  public static Object[][] lineage(
      @Transfers Rows<TransferRow> transfers,
      @Lot String lot,
      @AtEndOf OptionalDouble day,
      @Tolerance double tolerancePercent) {
    TransferLog log = TransferLog.of(transfers, day, Slack.ofFill(tolerancePercent));
    double[] shares = new Ancestry(log, log.find(TransferReason.UNKNOWN_LOT, lot)).sourceShare();
    return IntStream.range(0, shares.length)
        .filter(source -> shares[source] > 0)
        .boxed()
        .sorted(
            Comparator.<Integer>comparingDouble(source -> -shares[source]).thenComparing(log::name))
        .map(source -> new Object[] {log.name(source), 100 * shares[source]})
        .toArray(Object[][]::new);
  }

  /**
   * {@return how long a lot was in a vessel, days}
   *
   * @param transfers A row for each transfer
   * @param lot vessel or lot to explain, as transfers name it
   * @param vessel vessel it was in, as transfers name it
   * @param day state at the end of this day; left out: after the last transfer, day number
   * @param tolerancePercent how much of a vessel's fill may be drawn beyond what the log has left
   *     in it, %
   */
  @CellarFunction(
      summary =
          "Days that the liquid now in a lot has spent in a vessel, on average over all of it.",
      gives = Quantity.DAYS,
      formula =
          "Volume-weighted mean: each part of the liquid counts its own days in the vessel, and none"
              + " if it never was there. Over all vessels they add up to the mean age since the liquid"
              + " entered the log.",
      source = "Conservation of volume; no source needed.",
      example =
          "BLEND.AGE({\"Heather must\",\"Cask\",225,1;\"Cask\",\"Tank\",150,181;\"Cherry must\","
              + "\"Tank\",50,181};\"Tank\";\"Cask\")",
      note = LOG_NOTE)
  public static double age(
      @Transfers Rows<TransferRow> transfers,
      @Lot String lot,
      @Arg(name = "vessel", help = "Vessel it was in, as transfers name it") String vessel,
      @AtEndOf OptionalDouble day,
      @Tolerance double tolerancePercent) {
    TransferLog log = TransferLog.of(transfers, day, Slack.ofFill(tolerancePercent));
    return new Ancestry(log, log.find(TransferReason.UNKNOWN_LOT, lot))
        .days()[log.find(TransferReason.UNKNOWN_VESSEL, vessel)];
  }
}
