package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.ABV;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.DAYS;
import static meadcell.samples.sheet.Field.GRAMS_PER_LITRE;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.SG;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import java.time.LocalDate;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Chart;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** Readings as taken, made true; when it ends; laboratory against calculation; a fed batch. */
final class FermentLog {
  static final String TITLE = "Ferment log";
  private static final LocalDate PITCHED = LocalDate.of(2026, 3, 2);
  private static final double ORIGINAL = 1.106;

  /** Day, temperature, note. */
  private static final String SAMPLES =
      """
      0  | 18   | pitched, first feed
      2  | 18.5 |
      4  | 19   | second feed
      6  | 19   |
      8  | 18.5 | third feed, last air
      10 | 18   |
      12 | 17   |
      14 | 16.5 |
      17 | 16   | moved to the cold room
      20 | 15   |
      24 | 14   |
      28 | 13.5 |
      33 | 13   | clearing
      38 | 13   |
      44 | 13   |
      50 | 13   |
      """;

  private static final int RIGHT = 12;

  private FermentLog() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 12, 10, 10, 22, 7, 10, 10, 10, 10, 10, 10, 2, 30, 17, 34);
    Block log =
        page.head(
            "Ferment log",
            "Type what you read, at the temperature you read it: the hydrometer is corrected, also with"
                + " alcohol in the sample.");
    Table readings = log.table(24, columns());
    page.freeze(readings.top());
    readings.fill(demo()).name("Day", "ferment_days").name("Gravity", "ferment_gravities");
    batch(page.at(readings.top(), RIGHT, 3));
    Block below = page.at(readings.top() + 27, 0, 11).labels(3);
    fed(below);
    laboratory(page.at(readings.top() + 36, RIGHT, 3));
    curve(page, below, readings);
  }

  private static Table.Column[] columns() {
    return new Table.Column[] {
      in("Date", DATE),
      in("Reading", arg("GRAVITY.CORRECT", "reading", 3)),
      in("Sample", arg("GRAVITY.CORRECT", "temperature", 1)),
      in("Note", TEXT),
      out("Day", DAYS, "[Date]-ferment_start"),
      out(
          "Gravity",
          SG,
          "GRAVITY.CORRECT([Reading],[Sample],ferment_calibration,ferment_original,units)"),
      out("Strength", ABV, "ALCOHOL.ABV(ferment_original,[Gravity])"),
      out("Sugar left", GRAMS_PER_LITRE, "ALCOHOL.SUGARLEFT(ferment_original,[Gravity])"),
      out(
          "Sugar at least",
          GRAMS_PER_LITRE,
          "INDEX(ALCOHOL.SUGARLEFTLIMITS(ferment_original,[Gravity]),1,1)"),
      out(
          "Sugar at most",
          GRAMS_PER_LITRE,
          "INDEX(ALCOHOL.SUGARLEFTLIMITS(ferment_original,[Gravity]),1,2)"),
      out(
          "Of the way to the end",
          PERCENT,
          "FERMENT.PROGRESS(ferment_original,[Gravity],ferment_final)")
    };
  }

  /** The readings of a logistic fall, as a hydrometer shows them at the cellar's temperatures. */
  private static String demo() {
    DoubleUnaryOperator gravity = Forward.fall(1.1075, 0.9958, 13, 0.27);
    return SAMPLES
        .lines()
        .map(line -> line.split("\\|"))
        .map(
            cells -> {
              int day = Integer.parseInt(cells[0].trim());
              double temperature = Double.parseDouble(cells[1]);
              double reading =
                  Forward.hydrometer(gravity.applyAsDouble(day), temperature, ORIGINAL);
              return PITCHED.plusDays(day)
                  + "|"
                  + reading
                  + "|"
                  + temperature
                  + "|"
                  + (cells.length > 2 ? cells[2] : "");
            })
        .collect(Collectors.joining("\n"));
  }

  private static void batch(Block block) {
    block.form(
        """
            Lot                       |                     | TEXT                          | Heather 26 | 300 L, heather honey and lake water.
            Pitched on                | ferment_start       | DATE                          | 2026-03-02
            Original gravity          | ferment_original    | ALCOHOL.ABV original 3        | 1.106 | Corrected to 20 °C.
            Hydrometer made for       | ferment_calibration | GRAVITY.CORRECT calibration 0 | 20 | Printed on its scale.
            Final gravity expected    | ferment_final       | FERMENT.PROGRESS final 3      | 0.996 | The end that the last column counts from; sugar may be left there.
            Last gravity              | ferment_last        | SPECIFIC_GRAVITY 4            | =INDEX(ferment_gravities,MATCH(MAX(ferment_days),ferment_days,0))
            Strength now              | ferment_abv         | PERCENT_VOL 2                 | =ALCOHOL.ABV(ferment_original,ferment_last)
            First break               |                     | SPECIFIC_GRAVITY 4            | =FERMENT.BREAK(ferment_original,33.3,ferment_final) | A third of the way to the end: last feed.
            Second break              |                     | SPECIFIC_GRAVITY 4            | =FERMENT.BREAK(ferment_original,66.7,ferment_final) | Two thirds of it.
            Terminal gravity, forecast | ferment_end        | SPECIFIC_GRAVITY 4            | =INDEX(FERMENT.FORECAST(ferment_days,ferment_gravities),1,1) | Refused until the readings show an end.
            at least                  | ferment_lower       | SPECIFIC_GRAVITY 4            | =INDEX(FERMENT.FORECAST(ferment_days,ferment_gravities),1,5)
            at most                   | ferment_upper       | SPECIFIC_GRAVITY 4            | =INDEX(FERMENT.FORECAST(ferment_days,ferment_gravities),1,6) | 95 % limits of the end.
            Day it comes within 0.001 |                     | DAYS 0                        | =INDEX(FERMENT.FORECAST(ferment_days,ferment_gravities),1,3)
            Fastest fall              |                     | GRAVITY_PER_DAY 4             | =INDEX(FERMENT.FORECAST(ferment_days,ferment_gravities),1,4)
            State                     | ferment_state       | TEXT                          | =FERMENT.STATE(ferment_days,ferment_gravities,ferment_final) | finished, falling, stalled or cannot tell. Finished alone is no reason to bottle.
            ? 6 |  | CELLAR.WHY("FERMENT.STATE",ferment_days,ferment_gravities,ferment_final)
            """);
  }

  private static void laboratory(Block block) {
    block.form(
        """
            # Laboratory against calculation
            Laboratory's strength    | lab_abv | PERCENT_VOL 2 0..25 | 14.5 | By distillation.
            its standard uncertainty | lab_u   | PERCENT_VOL 2 0..2  | 0.06 | Half of the ± that it prints.
            Calculated strength      |         | PERCENT_VOL 2       | =ferment_abv | Balling's balance and Tabarié.
            its standard uncertainty | calc_u  | PERCENT_VOL 2       | =ALCOHOL.UNCERTAINTY(ferment_original,ferment_last) | Hydrometers, and mostly the yield of alcohol, in which yeasts differ: 3.5 % of the strength. ALCOHOL.CALIBRATE finds your own from laboratory results.
            ? 2 |  | IF(ABS(lab_abv-ferment_abv)<=2*SQRT(lab_u^2+calc_u^2),"They agree: "&TEXT(ABS(lab_abv-ferment_abv),"0.00")&" apart, up to "&TEXT(2*SQRT(lab_u^2+calc_u^2),"0.00")&" is chance. The label takes the laboratory's.","They differ by more than chance: check the original gravity and whether honey was added later.")
            """);
  }

  private static void fed(Block block) {
    block.form(
        """
            # A batch fed in steps (Bochet 26)
            Volume                            | fed_volume   | FERMENT.ORIGINALAFTER volume 0   | 200 | In the tank when the honey goes in.
            Original gravity                  | fed_original | FERMENT.ORIGINALAFTER original 3 | 1.082 | Set low, so that the yeast starts well.
            Gravity before feeding            | fed_before   | FERMENT.ORIGINALAFTER present 3  | 1.030
            Honey fed                         | fed_honey    | FERMENT.ORIGINALAFTER honey 1    | 22 | Buckwheat, caramelised.
            Gravity now                       | fed_now      | ALCOHOL.ABV present 3            | 1.018
            Original gravity that counts      | fed_counts   | SPECIFIC_GRAVITY 4               | =FERMENT.ORIGINALAFTER(fed_volume,fed_original,fed_before,fed_honey,units) | As if all the honey had been there at first.
            Strength                          |              | PERCENT_VOL 2                    | =ALCOHOL.ABV(fed_counts,fed_now)
            Strength if the feed is forgotten |              | PERCENT_VOL 2                    | =ALCOHOL.ABV(fed_original,fed_now) | Wrong, and too low.
            """);
  }

  /** The readings, and between which gravities they are forecast to end. */
  private static void curve(Page page, Block block, Table readings) {
    block.heading("Where it is forecast to end");
    Table end =
        block.table(
            2,
            always("From and to", DATE, "ferment_start+(#-1)*MAX(ferment_days)"),
            always("Forecast", SG, "ferment_end"),
            always("At least", SG, "ferment_lower"),
            always("At most", SG, "ferment_upper"));
    int top = readings.top() + 22;
    page.chart(
        new Chart(
                top,
                RIGHT,
                top + 12,
                RIGHT + 3,
                "Gravity, and where it is forecast to end",
                "date",
                "gravity at 20 °C")
            .points(readings, "Date", "Gravity")
            .line(end, "From and to", "Forecast")
            .line(end, "From and to", "At least")
            .line(end, "From and to", "At most")
            .up(0.98, 1.12, 0.02, "0.00"));
  }
}
