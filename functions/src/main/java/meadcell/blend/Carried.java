package meadcell.blend;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import meadcell.blend.Analyses.Analysis;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Explained;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.catalogue.Statement;
import meadcell.density.Evaporation;
import meadcell.transfers.AtEndOf;
import meadcell.transfers.Slack;
import meadcell.transfers.TransferLog;
import meadcell.transfers.TransferReason;
import meadcell.transfers.TransferRow;
import meadcell.transfers.Transfers;

/** What a lot is like, carried from analyses of its parts. */
@Family(name = "BLEND", says = Because.class)
public final class Carried {
  private static final int MOST_NAMED = 4;

  private Carried() {}

  /**
   * A property of a lot.
   *
   * @param value in the unit of the analyses
   * @param uncertainty its standard uncertainty
   * @param because what it was carried from
   */
  public record Value(
      @Gives("value") double value,
      @Gives("its standard uncertainty") double uncertainty,
      Statement because)
      implements Explained {}

  /**
   * {@return a property of a lot and its standard uncertainty, a row}
   *
   * @param transfers a row for each transfer
   * @param analyses a row for each analysis
   * @param lot vessel, as transfers name it
   * @param property what is asked, as analyses name it
   * @param day state at the end of this day; left out: after the last transfer, day number
   * @param humidityPercent relative humidity of the cellar, %
   * @param additions a row for each addition; left out or blank: there were none
   */
  @CellarFunction(
      summary =
          "Strength, sugar, acid, total SO₂ or whatever else is conserved of a lot and its standard"
              + " uncertainty, carried from the last analyses of its parts through every transfer,"
              + " topping, addition and evaporation.",
      formula =
          "The log is replayed by day, each vessel well mixed. Amounts add up: of strength the masses"
              + " of water and ethanol as in BLEND.ABV, of all else value · volume. What a gauge row"
              + " finds missing has evaporated: what is dissolved stays behind, strength goes by"
              + " humidity as in BARREL.STRENGTH. An analysis replaces what was carried; an addition"
              + " makes it unknown. u² = Σ (∂y/∂x · u(x))² over all analyses and all rows of transfers,"
              + " and the humidity.",
      source =
          "Conservation of mass; OIML R 22 (1975); propagation of uncertainty, JCGM 100:2008, 5.1.2."
              + " Evaporation: that of BARREL.STRENGTH, neutral humidity 67 ± 1.5 % (65 to 70 %, from"
              + " memory). Humidity left out is 67 ± 10 %, an uncertainty left blank 2 % of the value, 0.5"
              + " % of a volume: common practice, no source; of strength and sugar at least that of rounding to"
              + " 0.1 % vol and 1 g/L (JCGM 100:2008, F.2.2.1). Dry up to 4 g/L of sugar: EU and OIV (from"
              + " memory); alcoholic from 1.2 % vol: Regulation (EU) 1169/2011, article 28.",
      example =
          "BLEND.CARRIED({\"Heather mead\",\"Cask\",200,1;\"gauge\",\"Cask\",196,180;\"Cherry"
              + " mead\",\"Cask\",4,180};{\"Heather mead\",1,\"strength\",13,0.1;\"Cherry"
              + " mead\",170,\"strength\",11,0.1};\"Cask\";\"strength\";200;80)",
      note =
          "Analyses are named as in transfers, a vessel or a liquid from outside; property is any name,"
              + " in one unit throughout; strength (or abv, alcohol) is in % vol, sugar in g/L. A sample"
              + " counts for its vessel from the last filling of that day on; of two on a day, the later"
              + " row; day left out is that of the last row, analysis or addition. A liquid called"
              + " water holds nothing unless an analysis says so.\n"
              + "What additions name is not known from their day on, nor in what is drawn from there,"
              + " until an analysis of a later day; of an addition to a vessel that is empty all that"
              + " day, in what comes in first. Their property blank: everything changed; a name that no"
              + " analysis has: nothing. What was mixed in by a measured volume belongs into transfers"
              + " instead, and is carried.\n"
              + "Write to loss what ran away, and only what air took shall be missing at a gauge row. A"
              + " gauge beyond the account undoes evaporation that an earlier one had found too much of.\n"
              + "Refused: pH and free SO₂, which are not conserved, and gravities; a 0 without its"
              + " uncertainty, of strength and sugar excepted. Sugar and strength are"
              + " refused across a ferment: from the day after a liquid came in that has, as far as"
              + " analyses say, under 1.2 % vol and more than 4 g/L of sugar, until an analysis of what"
              + " was asked; in the time before an analysis that shows less sugar or more strength than"
              + " was carried, by three standard uncertainties; after two such in a row in one vessel,"
              + " until one shows no change or at most 4 g/L of sugar that day.\n"
              + "Total SO₂ slowly falls by itself: carried, it is an upper bound. Wood gives and takes"
              + " nothing here: measure after a spirit cask.",
      caution =
          "Arithmetic is no analysis: measure before you print a label, add sulfite or declare"
              + " anything.")
  public static Value carried(
      @Transfers Rows<TransferRow> transfers,
      @Arg(name = "analyses", help = "A row for each analysis") Rows<AnalysisRow> analyses,
      @Arg(name = "lot", help = "Vessel, as transfers name it") String lot,
      @Arg(name = "property", help = "What is asked, as analyses name it") String property,
      @AtEndOf OptionalDouble day,
      @Arg(
              name = "humidity",
              help =
                  "Relative humidity of the cellar; left out: 67, at which strength stands still",
              is = Quantity.PERCENT,
              from = 40,
              to = 99)
          OptionalDouble humidityPercent,
      @Arg(
              name = "additions",
              help = "A row for each addition of which only an analysis tells what it did")
          Optional<Rows<AdditionRow>> additions) {
    Property asked = Property.asked(property);
    if (analyses.stream().noneMatch(row -> asked.isNamed(row.property()))) {
      List<String> names = analyses.stream().map(AnalysisRow::property).distinct().toList();
      throw Refusal.unknownName(BlendReason.NO_SUCH_PROPERTY, property, names);
    }
    TransferLog log = TransferLog.of(transfers, OptionalDouble.empty(), Slack.byUncertainty());
    int index = log.find(TransferReason.UNKNOWN_LOT, lot);
    List<AdditionRow> added = additions.map(Rows::list).orElse(List.of());
    double end = day.orElse(lastDay(log, analyses, asked, added));
    double humidity = humidityPercent.orElse(Evaporation.NEUTRAL_HUMIDITY);
    Walk walk =
        Walk.of(
            new Walk.Asked(
                log, analyses.list(), added, asked, end, humidity, humidityPercent.isEmpty()));
    Carry carry = walk.carry();
    if (carry.volumeL(index) == 0 || log.filled().noneMatch(vessel -> vessel == index)) {
      throw new Refusal(TransferReason.NOTHING_LEFT).with("lot", log.name(index));
    }
    walk.refuseRestless(index);
    if (!carry.isKnown(index)) {
      throw carry.refusal(asked, index);
    }
    Slopes slopes = carry.slopes(index);
    double byHumidity = walk.byHumidity(index);
    return new Value(
        carry.valueOf(index),
        Math.sqrt(slopes.variance() + byHumidity * byHumidity),
        because(log, slopes.byAnalysis()));
  }

  private static double lastDay(
      TransferLog log, Rows<AnalysisRow> analyses, Property asked, List<AdditionRow> added) {
    DoubleStream analysed =
        analyses.stream()
            .filter(row -> asked.isNamed(row.property()))
            .mapToDouble(AnalysisRow::day);
    DoubleStream others =
        DoubleStream.concat(
            DoubleStream.of(log.day()), added.stream().mapToDouble(AdditionRow::day));
    return DoubleStream.concat(analysed, others).max().orElseThrow();
  }

  private static Statement because(TransferLog log, Map<Analysis, Double> byAnalysis) {
    List<Statement> parts =
        byAnalysis.entrySet().stream()
            .filter(entry -> entry.getKey().row() > 0 && entry.getValue() != 0)
            .sorted(
                Map.Entry.<Analysis, Double>comparingByValue(Comparator.reverseOrder())
                    .thenComparing(entry -> entry.getKey().row()))
            .limit(MOST_NAMED)
            .map(
                entry ->
                    Statement.of(Because.ANALYSIS)
                        .with("row", entry.getKey().row())
                        .with("lot", log.name(entry.getKey().lot()))
                        .with("day", entry.getKey().day(), Quantity.DATE)
                        .with("value", entry.getKey().value(), Quantity.NUMBER)
                        .with("slope", entry.getValue(), Quantity.NUMBER, 3))
            .toList();
    return Statement.of(Because.CARRIED).with("count", byAnalysis.size()).with("parts", parts);
  }
}
