package meadcell.vessel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.transfers.AtEndOf;
import meadcell.transfers.Shares;
import meadcell.transfers.Slack;
import meadcell.transfers.TransferLog;
import meadcell.transfers.TransferReason;
import meadcell.transfers.TransferRow;
import meadcell.transfers.Transfers;

/** What is in which vessel, since when, and what was lost, by the log of transfers. */
@Family(
    name = "VESSEL",
    about = "What is in which vessel, since when, and what was lost, by the log of transfers.",
    says = {VesselReason.class, TransferReason.class, Because.class})
public final class Vessel {
  private static final String REPLAY =
      "The log is replayed by day, rows of one day by order, else as written.";
  private static final String CONSERVATION = "Conservation of volume; no source needed.";
  private static final String LOG_NOTE =
      "A name that was never filled is a source: a liquid of that name, as much as is drawn. A barrel"
          + " that was full before the log began needs a gauge row first. Write loss in to for what"
          + " was lost, gauge in from or to for a measured content. Names are alike in any case.\n"
          + "More than the account has may be drawn or gauged up to twice the combined standard"
          + " uncertainty of account and row; beyond it the row is refused. Uncertainty left blank is"
          + " 0.5 % of the volume (common practice, no source).";

  /** The last row of a balance. */
  private static final String SUM = "sum";

  @Arg(name = "vessel", help = "Vessel, as transfers name it")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Name {}

  @Arg(name = "from", help = "First day", is = Quantity.DATE, above = 0, to = 300000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface From {}

  @Arg(name = "to", help = "Last day", is = Quantity.DATE, above = 0, to = 300000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface To {}

  private Vessel() {}

  /**
   * {@return what a vessel holds, L}
   *
   * @param transfers a row for each transfer
   * @param vessel vessel, as transfers name it
   * @param day state at the end of this day; left out: after the last transfer, day number
   */
  @CellarFunction(
      summary = "What a vessel holds at the end of a day, by the log of transfers.",
      gives = Quantity.VOLUME,
      formula = REPLAY + " Content = what was gauged last + what came in − what went out.",
      source = CONSERVATION,
      example =
          "VESSEL.HOLDS({\"Heather must\",\"Tank\",300,1;\"Tank\",\"Cask\",225,9;\"Cask\",\"loss\",2,40};"
              + "\"Cask\")",
      note = LOG_NOTE)
  public static double holds(
      @Transfers Rows<TransferRow> transfers, @Name String vessel, @AtEndOf OptionalDouble day) {
    TransferLog log = replay(transfers, day);
    return log.volumeL(find(log, vessel));
  }

  /**
   * {@return every vessel that holds something, a row each}
   *
   * @param transfers a row for each transfer
   * @param day state at the end of this day; left out: after the last transfer, day number
   */
  @CellarFunction(
      summary =
          "Every vessel that holds something at the end of a day: the liquid of which it holds most,"
              + " how much, since when, and its number of fills.",
      formula =
          REPLAY
              + " Each vessel counts as well mixed; the largest liquid is the first of BLEND.LINEAGE. A"
              + " fill begins when something comes into the empty vessel.",
      source = CONSERVATION,
      example =
          "VESSEL.LIST({\"Heather must\",\"Tank\",300,1;\"Tank\",\"Cask\",225,9;\"Cask\",\"loss\",2,40})",
      note = LOG_NOTE)
  public static Held[] list(@Transfers Rows<TransferRow> transfers, @AtEndOf OptionalDouble day) {
    TransferLog log = replay(transfers, day);
    Shares shares = Shares.atEndOf(log);
    Held[] held =
        log.filled()
            .filter(index -> log.volumeL(index) > 0)
            .mapToObj(
                index ->
                    new Held(
                        log.name(index),
                        log.name(largest(shares.of(index))),
                        log.volumeL(index),
                        log.day() - log.filledOn(index),
                        log.fills(index)))
            .toArray(Held[]::new);
    if (held.length == 0) {
      throw new Refusal(VesselReason.ALL_EMPTY);
    }
    return held;
  }

  /** Of equal ones, the first in the log. */
  private static int largest(Map<Integer, Double> shares) {
    return shares.entrySet().stream()
        .min(
            Map.Entry.<Integer, Double>comparingByValue()
                .reversed()
                .thenComparing(Map.Entry.comparingByKey()))
        .orElseThrow()
        .getKey();
  }

  /**
   * {@return how often a vessel was filled when it was empty}
   *
   * @param transfers a row for each transfer
   * @param vessel vessel, as transfers name it
   */
  @CellarFunction(
      summary = "How often a vessel was filled when it was empty: toppings do not count.",
      gives = Quantity.COUNT,
      formula = REPLAY + " A fill begins when something comes into the empty vessel.",
      source = CONSERVATION,
      example =
          "VESSEL.FILLS({\"Heather must\",\"Cask\",225,1;\"Cask\",\"Tank\",225,300;\"Cherry must\","
              + "\"Cask\",225,310};\"Cask\")",
      note = LOG_NOTE)
  public static int fills(@Transfers Rows<TransferRow> transfers, @Name String vessel) {
    TransferLog log = replay(transfers, OptionalDouble.empty());
    return log.fills(find(log, vessel));
  }

  /**
   * {@return what a vessel lost between two days, a row}
   *
   * @param transfers a row for each transfer
   * @param vessel vessel, as transfers name it
   * @param from first day, day number
   * @param to last day, day number
   */
  @CellarFunction(
      summary =
          "What a vessel lost between two days beyond what rows say, found by gauge rows: how much,"
              + " its standard uncertainty, and in a year.",
      formula =
          "Loss = what the account has − what was gauged, even over the days between a filling or"
              + " gauge and the next gauge. Its variance is that of both measurements and of all that"
              + " went in and out between them. Per year: of the mean content, 365.25 days.",
      source =
          "Conservation of volume; propagation of uncertainty, JCGM 100:2008, 5.1.2. Yearly losses of"
              + " casks, 1 % to 9 %: as a Swiss glossary of wine quotes them.",
      example =
          "VESSEL.LOSSES({\"Heather must\",\"Cask\",225,1;\"gauge\",\"Cask\",221,183};\"Cask\";1;183)",
      note =
          LOG_NOTE
              + "\nDays before the first filling or gauge and after the last gauge are not counted."
              + " Rows to loss are known and not counted. CELLAR.WHY with the same arguments says"
              + " whether evaporation explains it.")
  public static Losses losses(
      @Transfers Rows<TransferRow> transfers,
      @Name String vessel,
      @From double from,
      @To double to) {
    refuseOrder(from, to);
    TransferLog log = replay(transfers, OptionalDouble.empty());
    int index = find(log, vessel);
    return Losses.between(from, to, log.name(index), log.spans(index));
  }

  /**
   * {@return the account of every vessel between two days, and the sum}
   *
   * @param transfers a row for each transfer
   * @param from first day, day number
   * @param to last day, day number
   */
  @CellarFunction(
      summary =
          "The account of every vessel between two days: opening, in, out, lost, closing; last, the"
              + " sum of all.",
      formula =
          "Opening + in − out − lost = closing, in every row. What a gauge row finds missing is lost on"
              + " its day; what it finds beyond the account, within the uncertainty, is a loss below 0.",
      source =
          "Conservation of volume. 27 CFR part 24, subpart O, asks for such records of still wine; what"
              + " they must hold stands there.",
      example =
          "VESSEL.BALANCE({\"Heather must\",\"Tank\",300,1;\"Tank\",\"Cask\",225,9;\"gauge\",\"Cask\",222,"
              + "100};1;100)",
      note = LOG_NOTE + "\nIn the sum, what went from vessel to vessel is both in and out.",
      caution =
          "Records for tax follow the law of the place; ask your authority what it wants kept.")
  public static Account[] balance(
      @Transfers Rows<TransferRow> transfers, @From double from, @To double to) {
    refuseOrder(from, to);
    TransferLog log = replay(transfers, OptionalDouble.of(to));
    Account[] accounts = new Account[log.size()];
    Arrays.setAll(accounts, index -> Account.empty(log.name(index)));
    for (TransferLog.Entry entry : log.entries()) {
      accounts[entry.vessel()] =
          accounts[entry.vessel()].with(entry.posting(), entry.volumeL(), entry.day() < from);
    }
    List<Account> rows = new ArrayList<>();
    Account sum = Account.empty(SUM);
    for (Account account : accounts) {
      if (!account.isEmpty()) {
        rows.add(account);
        sum = sum.plus(account);
      }
    }
    if (rows.isEmpty()) {
      throw new Refusal(VesselReason.NOTHING_HAPPENED);
    }
    rows.add(sum);
    return rows.toArray(Account[]::new);
  }

  private static TransferLog replay(Rows<TransferRow> transfers, OptionalDouble day) {
    return TransferLog.of(transfers, day, Slack.byUncertainty());
  }

  private static int find(TransferLog log, String vessel) {
    int index = log.find(TransferReason.UNKNOWN_VESSEL, vessel);
    if (log.filled().noneMatch(filled -> filled == index)) {
      throw new Refusal(VesselReason.NEVER_FILLED).with("vessel", log.name(index));
    }
    return index;
  }

  private static void refuseOrder(double from, double to) {
    if (from > to) {
      throw new Refusal(VesselReason.FROM_AFTER_TO)
          .with("from", from, Quantity.DATE)
          .with("to", to, Quantity.DATE);
    }
  }
}
