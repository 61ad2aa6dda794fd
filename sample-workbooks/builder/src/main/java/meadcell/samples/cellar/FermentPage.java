package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.cell;
import static meadcell.samples.cellar.Formulas.given;
import static meadcell.samples.sheet.Field.ABV;
import static meadcell.samples.sheet.Field.COUNT;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.GRAMS_PER_LITRE;
import static meadcell.samples.sheet.Field.SG;
import static meadcell.samples.sheet.Field.TEMPERATURE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.out;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Chart;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;
import meadcell.samples.sheet.Workings;

/** The readings of one lot, made true; whether it still falls, and where it will end. */
final class FermentPage {
  static final String TITLE = "This ferment";
  private static final int SHOWN = 36;
  private static final int MOST_READINGS = 120;
  private static final int RIGHT = 10;
  private static final String FORECAST = "FERMENT.FORECAST(ferment_days,ferment_gravities)";

  private static final String LAST = "MATCH(MAX(ferment_days),ferment_days,0)";

  /** What the feeds do to the numbers, or why they do not. */
  private static final String FED =
      """
      IF(OR(COUNT(feed_key)=0,ferment=""),"",
      IF(COUNTIF(feed_whys,"?*")>0,"Not counted, so strength and sugar stay blank from then on: line "&(INDEX(feed_row,1+FIRST)+ROW(INDEX(addition_day,1))-1)&" of Additions ("&INDEX(addition_what,INDEX(feed_row,1+FIRST))&"): "&INDEX(feed_whys,FIRST),
      IF(COUNT(feed_key)=MOST,"Of the feeds in Additions the page counts MOST at most. ","")
      &"Fed by Additions, the last time on "&YEAR(feed_last)&"-"&RIGHT("0"&MONTH(feed_last),2)&"-"&RIGHT("0"&DAY(feed_last),2)&": strength and sugar reckon with it, the state with the readings since."
      ))"""
          .replace("\n", "")
          .replace("FIRST", "MATCH(\"?*\",feed_whys,0)")
          .replace("MOST", Integer.toString(Feeds.MOST));

  private FermentPage() {}

  /** The readings of the chosen lot in the order of days, their rows behind the point. */
  static void workings(Workings state) {
    state.array(
        MOST_READINGS,
        "IFERROR(SMALL(IF((g_lot=ferment)*(g_day<=today),g_day+ROW(g_day)/100000,\"\"),ROW($A$1:$A$"
            + MOST_READINGS
            + ")),\"\")",
        "ferment_keys");
    state
        .column(
            "read_original",
            SHOWN,
            given("INDEX(ferment_days,ROW()-1)", Feeds.counting("INDEX(ferment_days,ROW()-1)")))
        .column("since_day", SHOWN, sinceFed("ferment_days"))
        .column("since_gravity", SHOWN, sinceFed("ferment_gravities"))
        .block("since_days", "since_day", "since_day", SHOWN)
        .block("since_gravities", "since_gravity", "since_gravity", SHOWN);
  }

  /** Readings that no honey was fed between. */
  private static String sinceFed(String column) {
    return "IF(INDEX(ferment_days,ROW()-1)=\"\",\"\",IF(INDEX(ferment_days,ROW()-1)>feed_last,INDEX(COLUMN,ROW()-1),\"\"))"
        .replace("COLUMN", column);
  }

  static void add(Book book) {
    book.formulaName("ferment_row", "MATCH(ferment,lot_name,0)");
    book.formulaName("ferment_closed", "INDEX(lot_closed,MATCH(ferment,lot_name,0))");
    Page page =
        book.page(TITLE, 12, 10, 9, 9, 10, 10, 8, 8, 8, 2, 22, 14, 35).onSheets(1).upright();
    Block head =
        page.head(
            TITLE,
            "Readings are corrected to the hydrometer's temperature, with the alcohol in the sample. They stand in Readings, the lot in Lots.");
    int top = head.row();
    Block left = page.at(top, 0, 9);
    Table readings = left.table(SHOWN, columns());
    readings.name("Read on", "ferment_days").name("Gravity", "ferment_gravities");
    left.note("The last " + SHOWN + " readings; of more, the page shows and reckons with these.");
    Block right = page.at(top, RIGHT, 3);
    facts(right);
    Table ends = ends(left);
    feeds(left);
    page.chart(
        new Chart(
                right.row() + 1,
                RIGHT,
                right.row() + 16,
                RIGHT + 3,
                "Gravity, and where it is forecast to end",
                "date",
                "gravity at 20 °C")
            .points(readings, "Read on", "Gravity")
            .line(ends, "From and to", "Forecast")
            .line(ends, "From and to", "At least")
            .line(ends, "From and to", "At most")
            .up(0.98, 1.14, 0.02, "0.00"));
  }

  private static Table.Column[] columns() {
    String key = "INDEX(ferment_keys,#+1+MAX(0,COUNT(ferment_keys)-" + SHOWN + "))";
    String row = "ROUND(MOD(" + key + ",1)*100000,0)";
    return new Table.Column[] {
      always("Read on", DATE, "IF(ISNUMBER(" + key + "),INT(" + key + "),\"\")"),
      out("Day", COUNT, "IF(ferment_pitched=\"\",\"\",[Read on]-ferment_pitched)"),
      out(
          "As read",
          of(Quantity.SPECIFIC_GRAVITY, 3),
          "IF([Read on]=\"\",\"\",INDEX(reading_gravity," + row + "))"),
      out(
          "Sample",
          TEMPERATURE,
          "IF([Read on]=\"\",\"\",INDEX(reading_temperature," + row + ")*degree+freezing)"),
      out("Gravity", SG, "IF([Read on]=\"\",\"\",INDEX(g_gravity," + row + "))"),
      out("Strength", ABV, reckoned("IFERROR(ALCOHOL.ABV(ORIGINAL,[Gravity]),\"\")")),
      out(
          "Sugar left",
          GRAMS_PER_LITRE,
          reckoned("IFERROR(ALCOHOL.SUGARLEFT(ORIGINAL,[Gravity]),\"\")")),
      out(
          "at least",
          GRAMS_PER_LITRE,
          reckoned("IFERROR(INDEX(ALCOHOL.SUGARLEFTLIMITS(ORIGINAL,[Gravity]),1,1),\"\")")),
      out(
          "at most",
          GRAMS_PER_LITRE,
          reckoned("IFERROR(INDEX(ALCOHOL.SUGARLEFTLIMITS(ORIGINAL,[Gravity]),1,2),\"\")"))
    };
  }

  /** By the original gravity that counts for the reading of this row. */
  private static String reckoned(String formula) {
    return "IF(ORIGINAL=\"\",\"\",FORMULA)"
        .replace("FORMULA", formula)
        .replace("ORIGINAL", "INDEX(read_original,#+1)");
  }

  /** A line that stays blank while there is nothing to say. */
  private static void line(
      Block block, String label, Field field, String formula, String name, String note) {
    block.result(label, field, "IFERROR(" + formula + ",\"\")", name, note);
  }

  private static String registered(String column) {
    return "IF(INDEX(" + column + ",ferment_row)=\"\",\"\",INDEX(" + column + ",ferment_row))";
  }

  private static void facts(Block block) {
    block.choose("Lot", "lot_list", "Heather 26", "ferment", "Any lot of the register Lots.");
    line(block, "Kind", TEXT, registered("lot_kind"), "", "");
    line(block, "Pitched", DATE, registered("lot_pitched"), "ferment_pitched", "");
    line(block, "May end at", SG, registered("lot_final"), "ferment_final", "");
    line(block, "Original gravity", SG, registered("lot_original"), "ferment_original", "");
    line(
        block,
        "that counts by now",
        SG,
        "IF(COUNT(feed_key)=0,ferment_original,INDEX(feed_counts,1+COUNT(feed_key)))",
        "ferment_counts",
        "With what was fed by Additions: below on the left.");
    line(
        block,
        "Last gravity",
        SG,
        "INDEX(ferment_gravities,LAST)".replace("LAST", LAST),
        "ferment_last",
        "");
    line(
        block,
        "Strength then",
        ABV,
        "ALCOHOL.ABV(INDEX(read_original,1+LAST),ferment_last)".replace("LAST", LAST),
        "ferment_abv",
        "");
    line(
        block,
        "of which uncertain",
        ABV,
        "ALCOHOL.UNCERTAINTY(INDEX(read_original,1+LAST),ferment_last)".replace("LAST", LAST),
        "",
        "Standard, mostly the yield of alcohol, in which yeasts differ.");
    line(
        block,
        "First break",
        SG,
        "FERMENT.BREAK(ferment_counts,33.3,ferment_final)",
        "",
        "A third of the way to the end: last nutrient.");
    line(
        block,
        "State",
        TEXT,
        "IF(OR(COUNT(ferment_days)=0,ferment_final=\"\"),\"\",IF(COUNT(since_days)=0,\"cannot tell\",FERMENT.STATE(since_days,since_gravities,ferment_final)))",
        "ferment_state",
        "Finished alone is no reason to bottle: see page Bottle this.");
    block
        .verdict(
            "IF(ferment=\"\",\"Choose a lot.\",IF(COUNT(ferment_days)=0,\"No complete reading of this lot.\",IF(ferment_final=\"\",\"Lots does not say where it may end.\",IF(COUNT(since_days)=0,\"Read it again: it was fed since.\",CELLAR.WHY(\"FERMENT.STATE\",since_days,since_gravities,ferment_final)))))",
            3)
        .verdict(FED, 3, "ferment_fed");
    line(
        block,
        "Will end at",
        SG,
        forecast(1),
        "ferment_end",
        "Refused until the readings show an end.");
    line(block, "at least", SG, forecast(5), "ferment_lower", "");
    line(block, "at most", SG, forecast(6), "ferment_upper", "95 % limits.");
    line(block, "within 0.001 of it on", DATE, "ROUNDUP(" + forecast(3) + ",0)", "", "");
    block.verdict(
        "IF(COUNT(ferment_days)=0,\"\",IF(COUNT(feed_key)>0,\"No forecast: it takes readings from the start on, with nothing fed between them.\",IF(ferment_end=\"\",CELLAR.WHY(\"FERMENT.FORECAST\",ferment_days,ferment_gravities),\"\")))",
        2);
  }

  private static String forecast(int place) {
    return "IF(COUNT(feed_key)>0,\"\"," + cell(FORECAST, place) + ")";
  }

  private static void feeds(Block block) {
    block.heading("What was fed, by Additions");
    block.table(
        Feeds.MOST,
        always("Fed on", DATE, "INDEX(feed_day,#+1)"),
        always(
            "Line",
            COUNT,
            "IF([Fed on]=\"\",\"\",INDEX(feed_row,#+1)+ROW(INDEX(addition_day,1))-1)"),
        always("Gravity before", SG, "INDEX(feed_present,#+1)"),
        always("Gravity after", SG, "INDEX(feed_left,#+1)"),
        always("Original then", SG, "INDEX(feed_counts,#+1)"));
    block.note(
        "Honey counts as moist as usual (17.2 %). A reading of the day of a feed counts as taken before it. Gravity before: the last reading by then.");
  }

  private static Table ends(Block block) {
    return block
        .heading("The forecast, as drawn")
        .table(
            2,
            always(
                "From and to",
                DATE,
                "IF(ferment_end=\"\",\"\",IF(#=1,MIN(ferment_days),MAX(ferment_days)))"),
            always("Forecast", SG, "IF(ferment_end=\"\",\"\",ferment_end)"),
            always("At least", SG, "IF(ferment_end=\"\",\"\",ferment_lower)"),
            always("At most", SG, "IF(ferment_end=\"\",\"\",ferment_upper)"));
  }
}
