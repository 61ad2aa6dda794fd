package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.NUMBER;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Field.words;
import static meadcell.samples.sheet.Log.chosen;
import static meadcell.samples.sheet.Log.numbered;
import static meadcell.samples.sheet.Log.typed;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Log;

/** What happened: a row for each event, in whatever order it is written down. */
final class Logs {
  static final String MOVES = "Movements";
  static final String READINGS = "Readings";
  static final String ANALYSES = "Analyses";
  static final String TASTINGS = "Tastings";
  static final String ADDITIONS = "Additions";

  /** A dip and a topping for each of 60 casks every six weeks, for three seasons. */
  static final int MOST_MOVES = 4000;

  static final int MOST_TASTINGS = 4000;
  static final int MOST = 2000;
  private static final Field TENTH = between(Quantity.SCORE, 0, "0 none to 10 very strong.", 0, 10);

  private Logs() {}

  static void add(Book book, Season season) {
    moves(book).fill(season.moves());
    readings(book).fill(season.readings());
    analyses(book).fill(season.analyses());
    tastings(book).fill(season.tastings());
    additions(book).fill(season.additions());
  }

  /** Begun, and without what is reckoned with. */
  private static String uncounted(String reckoned) {
    return "&IF(INDEX(" + reckoned + ",ROW())=\"\",\", so it is not counted\",\"\")";
  }

  private static Log moves(Book book) {
    return new Log(
        book,
        MOVES,
        "Whatever is filled, racked, topped up, dipped, lost or bottled. A dip: from gauge, to the cask, its wet depth. A lot comes in by its own name. Rows of one day count by their No.",
        MOST_MOVES,
        "IF(COUNT([move_volume],[move_dip])>0,\"\",IF(COUNTA([move_volume],[move_dip])=0,\", no volume\",\", a volume that is no text\"))"
            + "&IF(OR([move_from]=\"\",ISNUMBER(MATCH([move_from],source_list,0))),\"\",\", unknown source\")"
            + "&IF(ISNUMBER([move_no]),\"\",\", its No.\")"
            + "&IFERROR(IF(AND(NOT(ISNUMBER([move_volume])),[move_dip]>INDEX(vessel_bilge,MATCH([move_to],vessel_name,0))),\", a depth within the bilge\",\"\"),\"\")"
            + uncounted("moves_complete"),
        typed("Day", "move_day", 12, DATE).needed("day"),
        chosen("From", "move_from", 22, "source_list", false).needed("source"),
        chosen("To", "move_to", 18, "target_list", true).needed("vessel"),
        typed("Volume", "move_volume", 12, between(Quantity.VOLUME, 1, "", 0, 1_000_000)),
        typed("or wet depth", "move_dip", 17, between(Quantity.LENGTH, 1, "", 0.1, 500)),
        typed(
            "±",
            "move_u",
            9,
            between(
                Quantity.VOLUME,
                1,
                "Standard uncertainty of the volume. Blank: half a per cent.",
                0.001,
                10_000)),
        typed("Remarks", "move_note", 40, TEXT),
        numbered("move_no"));
  }

  private static Log readings(Book book) {
    return new Log(
        book,
        READINGS,
        "Hydrometers as read, at the temperature of the sample: of a lot while it ferments, of a vessel at rest before it is bottled. Pages correct them.",
        MOST,
        uncounted("readings_complete").substring(1),
        typed("Day", "reading_day", 12, DATE).needed("day"),
        chosen("Lot or vessel", "reading_lot", 18, "source_list", true).needed("lot or vessel"),
        typed("Gravity as read", "reading_gravity", 17, arg("GRAVITY.CORRECT", "reading", 4))
            .needed("gravity"),
        typed("Sample", "reading_temperature", 10, arg("GRAVITY.CORRECT", "temperature", 1))
            .needed("temperature"),
        typed("Remarks", "reading_note", 48, TEXT));
  }

  private static Log analyses(Book book) {
    return new Log(
        book,
        ANALYSES,
        "What was measured in which vessel or lot: strength in % vol, sugar and acids in g/L, SO2 in mg/L. Write each property always in the same words.",
        MOST,
        "IF(OR([analysis_lot]=\"\",ISNUMBER(MATCH([analysis_lot],source_list,0)),ISNUMBER(MATCH([analysis_lot],move_from,0))),\"\",\", unknown vessel or lot\")",
        chosen("Vessel or lot", "analysis_lot", 20, "source_list", false).needed("vessel or lot"),
        typed("Day", "analysis_day", 12, DATE).needed("day"),
        chosen("Property", "analysis_what", 22, "property_list", false).needed("property"),
        typed("Value", "analysis_value", 10, NUMBER).needed("value"),
        typed(
            "±",
            "analysis_u",
            8,
            between(
                Quantity.NUMBER,
                2,
                "Standard uncertainty: half of the ± that a laboratory prints.",
                0,
                1000)),
        typed("Remarks", "analysis_note", 44, TEXT));
  }

  private static Log tastings(Book book) {
    return new Log(
        book,
        TASTINGS,
        "A row for each taster and vessel. Draw the sample through the nail hole, not the bung; taste blind where you can.",
        MOST_TASTINGS,
        "IF(ISNUMBER([tasting_day]),IF([tasting_day]=INT([tasting_day]),\"\",\", a day without a time\"),\"\")",
        typed("Day", "tasting_day", 12, DATE).needed("day"),
        chosen("Vessel", "tasting_vessel", 16, "vessel_list", true).needed("vessel"),
        typed("Taster", "tasting_taster", 9, TEXT).needed("taster"),
        typed("Score", "tasting_score", 8, between(Quantity.SCORE, 1, "0 to 20.", 0, 20))
            .needed("score"),
        typed("Sweet", "tasting_sweet", 8, TENTH),
        typed("Acid", "tasting_acid", 8, TENTH),
        typed("Rough", "tasting_rough", 8, TENTH),
        typed("Savour", "tasting_savour", 9, TENTH),
        typed(
            "Finish",
            "tasting_finish",
            9,
            between(Quantity.SECONDS, 0, "Seconds that the taste lasts.", 0, 120)),
        typed(
            "Fault",
            "tasting_fault",
            12,
            words("none", "stale", "acetic", "sulfurous", "mousy", "other")),
        typed("Verdict", "tasting_verdict", 11, words("wait", "top up", "blend", "bottle")),
        typed("Words", "tasting_note", 28, TEXT));
  }

  private static Log additions(Book book) {
    return new Log(
        book,
        ADDITIONS,
        "Sulfite, sorbate, nutrients, acid, honey: what was added to what. Free SO₂ is followed from the last sulfite on; page This ferment reckons with honey, fruit and water from their day on; volumes follow Movements alone, so dip after adding them.",
        MOST,
        typed("Day", "addition_day", 12, DATE).needed("day"),
        chosen("Vessel", "addition_vessel", 18, "vessel_list", true).needed("vessel"),
        chosen("What", "addition_what", 26, "addition_list", false).needed("substance"),
        typed("Amount", "addition_amount", 11, of(Quantity.NUMBER, 1)).needed("amount"),
        typed("Unit", "addition_unit", 8, words("g", "mL", "kg", "L", "lb", "US gal"))
            .needed("unit"),
        typed("Remarks", "addition_note", 44, TEXT));
  }
}
