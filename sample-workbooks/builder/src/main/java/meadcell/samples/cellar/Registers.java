package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.ABV;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Field.words;
import static meadcell.samples.sheet.Log.typed;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Log;

/** What there is: each lot, each vessel, and what casks held before the log began, once. */
final class Registers {
  static final String LOTS = "Lots";
  static final String VESSELS = "Vessels";
  static final String PAST = "Past occupants";
  static final int MOST_LOTS = 100;
  static final int MOST_VESSELS = 150;
  private static final int MOST_PAST = 300;

  private Registers() {}

  static void add(Book book, Season season) {
    lots(book).fill(season.lots());
    vessels(book).fill(season.vessels());
    past(book).fill(season.past());
  }

  /** Of a name that stands twice only the first row is ever found. */
  private static String twice(String name) {
    return "IF([NAME]=\"\",\"\",IF(COUNTIF(NAME,[NAME])>1,\", a name of its own\",\"\"))"
        .replace("NAME", name);
  }

  private static Log lots(Book book) {
    return new Log(
        book,
        LOTS,
        "Every must and mead that enters the cellar from outside, by the name that Movements and Readings use.",
        MOST_LOTS,
        twice("lot_name"),
        typed("Lot", "lot_name", 16, TEXT).needed("name"),
        typed("Kind", "lot_kind", 16, TEXT),
        typed("Pitched", "lot_pitched", 12, DATE),
        typed("Original gravity", "lot_original", 19, arg("ALCOHOL.ABV", "original", 4)),
        typed("May end at", "lot_final", 14, arg("FERMENT.STATE", "expected", 3)),
        typed("Hydrometer for", "lot_calibration", 19, arg("GRAVITY.CORRECT", "calibration", 0)),
        typed("Ferment closed", "lot_closed", 18, DATE),
        typed("Honey, fruit, remarks", "lot_note", 42, TEXT));
  }

  private static Log vessels(Book book) {
    return new Log(
        book,
        VESSELS,
        "Every cask, tank, glass and bottling, by the name that all logs use. Measure casks inside, empty and dry.",
        MOST_VESSELS,
        twice("vessel_name"),
        typed("Vessel", "vessel_name", 14, TEXT).needed("name"),
        typed("Kind", "vessel_kind", 8, words("cask", "tank", "glass", "bottles")),
        typed("Wood", "vessel_wood", 15, TEXT),
        typed("Toast", "vessel_toast", 10, words("none", "light", "medium", "heavy", "char")),
        typed("Made", "vessel_made", 8, of(Quantity.NUMBER, 0)),
        typed(
            "Fills before",
            "vessel_before",
            14,
            between(Quantity.COUNT, 0, "Fills before the first line of Movements.", 0, 30)),
        typed("Head", "vessel_head", 8, arg("BARREL.VOLUME", "head", 1)),
        typed("Bilge", "vessel_bilge", 8, arg("BARREL.VOLUME", "bilge", 1)),
        typed("Length", "vessel_length", 9, arg("BARREL.VOLUME", "length", 1)),
        typed(
            "Capacity",
            "vessel_capacity",
            11,
            between(
                Quantity.VOLUME, 1, "Where it is not gauged: tanks and glass.", 0.1, 1_000_000)),
        typed(
            "Top up at",
            "vessel_limit",
            12,
            between(
                Quantity.VOLUME, 1, "Headspace at which to top up. Blank: the house's.", 0, 500)),
        typed(
            "Loss",
            "vessel_loss",
            8,
            between(
                Quantity.PERCENT_PER_YEAR,
                1,
                "Per cent of the capacity a year, as page This cask finds it. Blank: the house's.",
                0.1,
                50)),
        typed("Cooper, remarks", "vessel_note", 22, TEXT),
        typed(
            "Weighs wet",
            "vessel_tare",
            12,
            between(
                Quantity.MASS,
                1,
                "The empty cask just after racking, its wood still wet. Blank: it is not weighed.",
                1,
                50_000)));
  }

  private static Log past(Book book) {
    return new Log(
        book,
        PAST,
        "What casks held before the first line of Movements, oldest first, as the seller said.",
        MOST_PAST,
        Log.chosen("Cask", "past_vessel", 14, "vessel_list", true).needed("cask"),
        typed("Liquid", "past_liquid", 20, TEXT).needed("liquid"),
        typed("From", "past_from", 12, DATE).needed("first day"),
        typed("To", "past_to", 12, DATE),
        typed("Strength", "past_strength", 11, ABV),
        typed("Volume", "past_volume", 11, VOLUME),
        typed("Remarks", "past_note", 48, TEXT));
  }
}
