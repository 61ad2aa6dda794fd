package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.ABV;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.DAYS;
import static meadcell.samples.sheet.Field.GRAMS_PER_LITRE;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.SG;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import java.time.LocalDate;
import java.util.function.DoubleUnaryOperator;
import meadcell.catalogue.Quantity;
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
  private static final int[] DAYS_READ = {
    0, 2, 4, 6, 8, 10, 12, 14, 17, 20, 24, 28, 33, 38, 44, 50
  };
  private static final double[] TEMPERATURES = {
    18, 18.5, 19, 19, 18.5, 18, 17, 16.5, 16, 15, 14, 13.5, 13, 13, 13, 13
  };
  private static final int RIGHT = 10;
  private static final int POINTS = 25;

  private FermentLog() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 12, 10, 10, 22, 7, 10, 10, 10, 10, 2, 30, 17, 34);
    Block log =
        page.head(
            "Ferment log",
            "Type what you read, at the temperature you read it: the hydrometer is corrected, also with"
                + " alcohol in the sample.");
    Table readings = log.table(24, columns());
    page.freeze(readings.top());
    readings.fill(demo());
    batch(page.at(readings.top(), RIGHT, 3), readings);
    Block below = page.at(readings.top() + 27, 0, 9).labels(3);
    fed(below);
    laboratory(page.at(readings.top() + 27, RIGHT, 3), readings);
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
      out("Sugar gone", PERCENT, "FERMENT.PROGRESS(ferment_original,[Gravity],ferment_final)")
    };
  }

  private static Object[][] demo() {
    DoubleUnaryOperator gravity = Forward.fall(1.1075, 0.9958, 13, 0.27);
    String[] notes = new String[DAYS_READ.length];
    notes[0] = "pitched, first feed";
    notes[2] = "second feed";
    notes[4] = "third feed, last air";
    notes[8] = "moved to the cold room";
    notes[12] = "clearing";
    Object[][] rows = new Object[DAYS_READ.length][];
    for (int i = 0; i < rows.length; i++) {
      double t = TEMPERATURES[i];
      double reading = Forward.hydrometer(gravity.applyAsDouble(DAYS_READ[i]), t, ORIGINAL);
      rows[i] = new Object[] {PITCHED.plusDays(DAYS_READ[i]), reading, t, notes[i]};
    }
    return rows;
  }

  private static void batch(Block block, Table readings) {
    String days = readings.range("Day");
    String gravities = readings.range("Gravity");
    block
        .input("Lot", TEXT, "Heather 26", "", "300 L, heather honey and lake water.")
        .input("Pitched on", DATE, PITCHED, "ferment_start", "")
        .input(
            "Original gravity",
            arg("ALCOHOL.ABV", "original", 3),
            ORIGINAL,
            "ferment_original",
            "Corrected to 20 °C.")
        .input(
            "Hydrometer made for",
            arg("GRAVITY.CORRECT", "calibration", 0),
            20,
            "ferment_calibration",
            "Printed on its scale.")
        .input(
            "Final gravity expected",
            arg("FERMENT.PROGRESS", "final", 3),
            0.996,
            "ferment_final",
            "")
        .result(
            "Last gravity",
            SG,
            "INDEX(" + gravities + ",MATCH(MAX(" + days + ")," + days + ",0))",
            "ferment_last",
            "")
        .result(
            "Strength now", ABV, "ALCOHOL.ABV(ferment_original,ferment_last)", "ferment_abv", "")
        .result(
            "First break",
            SG,
            "FERMENT.BREAK(ferment_original,33.3,ferment_final)",
            "",
            "A third of the sugar gone: last feed.")
        .result(
            "Second break",
            SG,
            "FERMENT.BREAK(ferment_original,66.7,ferment_final)",
            "",
            "Two thirds gone.")
        .result(
            "Terminal gravity, fitted",
            SG,
            "INDEX(FERMENT.FORECAST(" + days + "," + gravities + "),1,1)",
            "ferment_end",
            "Logistic curve through the readings.")
        .result(
            "its standard error",
            SG,
            "INDEX(FERMENT.FORECAST(" + days + "," + gravities + "),1,2)",
            "",
            "")
        .result(
            "Day it comes within 0.001",
            of(Quantity.DAYS, 0),
            "INDEX(FERMENT.FORECAST(" + days + "," + gravities + "),1,3)",
            "ferment_day",
            "")
        .result(
            "Fastest fall",
            of(Quantity.GRAVITY_PER_DAY, 4),
            "INDEX(FERMENT.FORECAST(" + days + "," + gravities + "),1,4)",
            "ferment_fastest",
            "")
        .result(
            "State",
            TEXT,
            "FERMENT.STATE(" + days + "," + gravities + ",ferment_final)",
            "",
            "finished, falling, stalled or cannot tell.");
  }

  private static void laboratory(Block block, Table readings) {
    block
        .heading("Laboratory against calculation")
        .input(
            "Laboratory's strength",
            between(Quantity.PERCENT_VOL, 2, "From the certificate, % vol.", 0, 25),
            14.5,
            "lab_abv",
            "By distillation.")
        .input(
            "its standard uncertainty",
            between(Quantity.PERCENT_VOL, 2, "From the certificate, % vol.", 0, 2),
            0.06,
            "lab_u",
            "Half of the ± that it prints.")
        .result("Calculated strength", ABV, "ferment_abv", "", "Balling's balance and Tabarié.")
        .result(
            "its standard uncertainty",
            ABV,
            "ALCOHOL.UNCERTAINTY(ferment_original,ferment_last)",
            "calc_u",
            "Hydrometers, and what the yeast's yield may differ.")
        .verdict(
            "IF(ABS(lab_abv-ferment_abv)<=2*SQRT(lab_u^2+calc_u^2),\"They agree: \"&TEXT(ABS(lab_abv-ferment_abv),\"0.00\")&\" apart, up to \"&TEXT(2*SQRT(lab_u^2+calc_u^2),\"0.00\")&\" is chance. The label takes the laboratory's.\",\"They differ by more than chance: check the original gravity and whether honey was added later.\")",
            2);
  }

  private static void fed(Block block) {
    block
        .heading("A batch fed in steps (Bochet 26)")
        .input(
            "Volume",
            arg("FERMENT.ORIGINALAFTER", "volume", 0),
            200,
            "fed_volume",
            "In the tank when the honey goes in.")
        .input(
            "Original gravity",
            arg("FERMENT.ORIGINALAFTER", "original", 3),
            1.082,
            "fed_original",
            "Set low, so that the yeast starts well.")
        .input(
            "Gravity before feeding",
            arg("FERMENT.ORIGINALAFTER", "present", 3),
            1.030,
            "fed_before",
            "")
        .input(
            "Honey fed",
            arg("FERMENT.ORIGINALAFTER", "honey", 1),
            22,
            "fed_honey",
            "Buckwheat, caramelised.")
        .input("Gravity now", arg("ALCOHOL.ABV", "present", 3), 1.018, "fed_now", "")
        .result(
            "Original gravity that counts",
            SG,
            "FERMENT.ORIGINALAFTER(fed_volume,fed_original,fed_before,fed_honey,units)",
            "fed_counts",
            "As if all the honey had been there at first.")
        .result("Strength", ABV, "ALCOHOL.ABV(fed_counts,fed_now)", "", "")
        .result(
            "Strength if the feed is forgotten",
            ABV,
            "ALCOHOL.ABV(fed_original,fed_now)",
            "",
            "Wrong, and too low.");
  }

  /** The fitted curve in 25 points, from what FERMENT.FORECAST gives at two tolerances. */
  private static void curve(Page page, Block block, Table readings) {
    String days = readings.range("Day");
    String series = days + "," + readings.range("Gravity");
    String height =
        "4*ferment_fastest*(ferment_day-INDEX(FERMENT.FORECAST(" + series + ",0.01),1,3))";
    block
        .heading("The fitted curve")
        .result(
            "Height, from the original gravity",
            SG,
            "ferment_original-ferment_end",
            "curve_guess",
            "")
        .result(
            "Height of the curve",
            SG,
            height + "/LN((curve_guess/0.001-1)/(curve_guess/0.01-1))",
            "curve_height",
            "From two days and the fastest fall.")
        .result(
            "Steepness a day",
            of(Quantity.NUMBER, 3),
            "4*ferment_fastest/curve_height",
            "curve_rate",
            "")
        .result(
            "Half of the fall is done on day",
            of(Quantity.DAYS, 1),
            "ferment_day-LN(curve_height/0.001-1)/curve_rate",
            "curve_half",
            "");
    Table curve =
        block.table(
            POINTS,
            always(
                "Date on the curve", DATE, "ferment_start+(#-1)*MAX(" + days + ")/" + (POINTS - 1)),
            out(
                "Gravity on the curve",
                SG,
                "ferment_end+curve_height/(1+EXP(curve_rate*([Date on the curve]-ferment_start-curve_half)))"));
    int top = readings.top() + 15;
    page.chart(
        new Chart(
                top,
                RIGHT,
                top + 12,
                RIGHT + 3,
                "Gravity against the fitted curve",
                "date",
                "gravity at 20 °C")
            .points("readings, corrected", readings, "Date", "Gravity")
            .line("fitted", curve, "Date on the curve", "Gravity on the curve")
            .up(0.98, 1.12, "0.00"));
  }
}
