package meadcell.blend;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.transfers.AtEndOf;
import meadcell.transfers.Slack;
import meadcell.transfers.TransferLog;
import meadcell.transfers.TransferReason;
import meadcell.transfers.TransferRow;
import meadcell.transfers.Transfers;

/** The oxygen that a lot has taken up. */
@Family(name = "BLEND")
public final class Oxygen {
  private Oxygen() {}

  /**
   * What one way of air into mead has brought.
   *
   * @param way how it came in
   * @param oxygen mg in each litre of the lot
   * @param lower the least that is likely
   * @param upper the most that is likely
   */
  public record Share(
      @Gives(value = "way", is = Quantity.TEXT) String way,
      @Gives(value = "oxygen", is = Quantity.MILLIGRAM_PER_LITRE) double oxygen,
      @Gives(value = "lower limit", is = Quantity.MILLIGRAM_PER_LITRE) double lower,
      @Gives(value = "upper limit", is = Quantity.MILLIGRAM_PER_LITRE) double upper) {}

  /**
   * {@return the oxygen that a lot took up, a row for each way and the sum}
   *
   * @param transfers a row for each transfer
   * @param vessels a row for each vessel that lets air in
   * @param lot vessel, as transfers name it
   * @param from what came in after this day; left out: all, day number
   * @param day state at the end of this day; left out: after the last transfer, day number
   * @param racking into what is moved to an empty vessel, mg/L
   * @param topping into a vessel that is topped up, mg/L
   * @param opening from each litre of headspace at the end of a day on which a vessel was open, mg
   * @param filling into what is filled into bottles, mg/L
   * @param wood through the wood of a 225 L barrel, mg/L per year
   */
  @CellarFunction(
      summary =
          "Oxygen budget of a lot by its log: what each litre took up at rackings, toppings, from"
              + " opened headspaces, through wood and at the filling of bottles, with limits.",
      formula =
          "The log is replayed by day, each vessel well mixed; a litre takes along what it took up."
              + " Racking: into what goes to an empty vessel. Topping: into the whole vessel, where less"
              + " than a tenth of its content comes in; more counts as racked. Opening: opening ·"
              + " (capacity − content) ÷ content at the end of each day with a row for the vessel. Wood:"
              + " wood · area ÷ 85.86 · days ÷ 365.25, as in BARREL.OXYGEN. Liquid from outside brings"
              + " none along. Limits: sums of squares of each way's own.",
      source =
          "From memory: racking a barrel 2 to 5 mg/L, closed 0.3 to 1 (Vivas); topping 0.2 to 0.5"
              + " (Vidal). Bottling: aim at most 0.2 to 0.5, limit 0.8, careless 4 to 5 (Wineland 2019;"
              + " Winetech 2019). Opening: 280 mg in a litre of moist air at 15 °C, as"
              + " BARREL.HEADSPACEOXYGEN has it, all of it taken up: an upper limit. Wood: default and"
              + " doubt of BARREL.OXYGEN. A tenth: common practice, no source.",
      example =
          "BLEND.OXYGEN({\"Mead\",\"Tank\",300,1;\"Tank\",\"Cask\",225,9;\"Mead\",\"Cask\",3,100};"
              + "{\"Cask\",90,228};\"Cask\";;374)",
      note =
          "A vessel that is missing in vessels lets no air in; one misspelt or twice there is"
              + " refused. Leave capacity blank where gas or a lid keeps air off. Limits are parts of"
              + " the value: racking and topping 4/7 to 10/7, the span of the source around its"
              + " middle; wood half to twice; opening none to all; filling a quarter to 2.5. They"
              + " scale with a rate of your own.\n"
              + "SULFITE.USED says how much SO₂ that takes; a year's sum serves SULFITE.LASTS.")
  public static Share[] oxygen(
      @Transfers Rows<TransferRow> transfers,
      @Arg(name = "vessels", help = "A row for each vessel that lets air in") Rows<AirRow> vessels,
      @Arg(name = "lot", help = "Vessel, as transfers name it") String lot,
      @Arg(
              name = "from",
              help = "Count what came in after this day; left out: all",
              is = Quantity.DATE,
              above = 0,
              to = 300000)
          OptionalDouble from,
      @AtEndOf OptionalDouble day,
      @Arg(
              name = "racking",
              help = "Into what is moved to an empty vessel",
              is = Quantity.MILLIGRAM_PER_LITRE,
              from = 0,
              to = 10,
              byDefault = 3.5)
          double racking,
      @Arg(
              name = "topping",
              help = "Into a vessel that is topped up",
              is = Quantity.MILLIGRAM_PER_LITRE,
              from = 0,
              to = 10,
              byDefault = 0.35)
          double topping,
      @Arg(
              name = "opening",
              help = "From each litre of headspace that was open",
              is = Quantity.MILLIGRAM,
              from = 0,
              to = 320,
              byDefault = 280)
          double opening,
      @Arg(
              name = "filling",
              help = "Into what is filled into bottles",
              is = Quantity.MILLIGRAM_PER_LITRE,
              from = 0,
              to = 10,
              byDefault = 0.8)
          double filling,
      @Arg(
              name = "wood",
              help = "Through the wood of a 225 L barrel",
              is = Quantity.MILLIGRAM_PER_LITRE_YEAR,
              from = 0,
              to = 100,
              byDefault = 10)
          double wood) {
    TransferLog log = TransferLog.of(transfers, day, Slack.byUncertainty());
    int index = log.find(TransferReason.UNKNOWN_LOT, lot);
    if (log.volumeL(index) == 0) {
      throw new Refusal(TransferReason.NOTHING_LEFT).with("lot", log.name(index));
    }
    Map<Way, Double> rates =
        Map.of(
            Way.RACKING,
            racking,
            Way.TOPPING,
            topping,
            Way.OPENING,
            opening,
            Way.FILLING,
            filling,
            Way.WOOD,
            wood);
    Uptake uptake = new Uptake(log, vessels, from.orElse(0), rates);
    List<Share> shares = new ArrayList<>();
    double sum = 0;
    double below = 0;
    double above = 0;
    for (Way way : Way.values()) {
      double mg = uptake.of(index, way);
      shares.add(new Share(way.word(), mg, mg * way.lower, mg * way.upper));
      sum += mg;
      below = Math.hypot(below, mg - mg * way.lower);
      above = Math.hypot(above, mg * way.upper - mg);
    }
    shares.add(new Share("sum", sum, sum - below, sum + above));
    return shares.toArray(Share[]::new);
  }
}
