package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.words;

import java.util.Map;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Factor;
import meadcell.samples.sheet.Page;

/** First sheet: how the book is kept, its units, the house's rules, the way to each sheet. */
final class Start {
  static final String TITLE = "Start";

  /** The day makes an office ask anew whenever it opens the file. */
  private static final String MISSING =
      "IF(AND(NOW()>0,ISERROR(CELLAR.VERSION())),\"Meadcell is not installed in this program, so nothing here is worked out: numbers are those saved last, and texts may be missing.\"&\" Install the extension meadcell.oxt (Tools ▸ Extensions), start the office again, and choose Data ▸ Calculate ▸ Recalculate Hard.\",\"\")";

  private Start() {}

  static void add(Book book, Map<String, String> pages, Map<String, String> logs) {
    Page page = book.page(TITLE, 28, 14, 26, 26, 26, 26).onSheets(2);
    Block block =
        page.head(
            "Cellar book",
            "A cellar's year in its logs, and pages that answer from them. Each fact is typed once.");
    block.alarm(MISSING, 2, "start_missing");
    block.warning(
        "Tarn Hollow is an invented cellar on an upland lake. Its lots, casks, people and readings are"
            + " invented. The arithmetic is real and its sources are named.");
    block.heading("Pages answer: choose a lot or a cask in the framed cell");
    pages.forEach(block::link);
    block.heading("Logs and registers take what happens: type in the next free row");
    logs.forEach(block::link);
    block.note(
        "Logs are not protected: insert rows, sort and filter them as you like. Rows of one day in Movements"
            + " count by their No., which stays with its row: give a row that you insert one between its"
            + " neighbours', such as 12.5. A row counts once it is complete. One that lacks"
            + " something is marked; what it lacks stands at the top of its log, and on Today. Pages are protected without a password, so that"
            + " no formula is lost by mistake.");
    page.turn(block.row() + 1);
    rules(block);
    block
        .heading("Your own cellar, and the next season")
        .story(
            "To begin: save a copy of this file, and delete the rows of Tarn Hollow in the logs and registers"
                + " (select their cells up to the remarks, Del; the column No. stays). Type your vessels into Vessels, your lots into Lots, and what each"
                + " vessel holds today into Movements: from the lot, to the vessel, how much.\n"
                + "A vessel that is emptied gets a last row in Movements: from gauge, to the vessel, volume 0."
                + " A cask that is sold keeps its row in Vessels, since its past needs it.\n"
                + "The next season needs nothing but its lots in Lots: the logs hold some three seasons of 60"
                + " casks. When Movements is nearly full, make room:")
        .note(
            "1. Save a copy, and go on in it. The old file keeps the old seasons and their stories.\n"
                + "2. On Today, type a day some months back, before all analyses and tastings that still count. Casks now"
                + " shows what each vessel held at its end. Print it.\n"
                + "3. Delete the rows up to that day in Movements and in Analyses.\n"
                + "4. For each vessel that held something, type a row into Movements: that day; from its name with the"
                + " year, as C1 2026, which is typed into Lots, too; to the vessel; its volume. In Vessels, put Fill less one into Fills before;"
                + " for a cask that was empty, the Fill of a day on which it was full.\n"
                + "5. On Today, take that day away again. What lay in a vessel before that day is told by the old file alone;"
                + " strength and sugar stay blank until they are analysed again.");
    block
        .heading("On paper")
        .story(
            "Pages are as wide as a sheet of A4, with margins so large that they come whole on US Letter, too:"
                + " choose your paper in the print dialog and print in actual size. To lay a page out anew"
                + " for Letter: Format ▸ Page Style ▸ Page, or Page Layout ▸ Size. Print what you need:"
                + " in the print dialog, the selected sheets.");
    units(block);
  }

  private static void rules(Block block) {
    block.form(
        """
        # The house's rules
        Top up at a headspace of   | house_limit     | VOLUME 1 0.1..100             | 2   | Where Vessels does not say: what a cask may lack.
        Loss of a cask             | house_loss      | BARREL.DAYSTOTOP lossRate 1   | 4   | Where Vessels does not say. 1 to 9 % a year: a Swiss glossary of wine.
        Taste a cask every         | house_taste     | DAYS 0 1..400                 | 60  | Days; common practice, no source.
        Analyse it every           | house_analyse   | DAYS 0 1..400                 | 60  | Free SO₂ and pH, in days; common practice, no source.
        Read a ferment every       | house_read      | DAYS 0 1..60                  | 4   | Days; common practice, no source.
        Molecular SO₂ at least     | house_molecular | SULFITE.FREENEEDED molecular 2 | 0.5 | 0.5 to 0.8 mg/L: common practice for dry and sweet.
        Oxygen through used wood   | house_oxygen    | MILLIGRAM_PER_LITRE 0 0.1..100 | 10  | A year, in 225 L; uncertain by a factor of two (common practice, no source).
        Humidity of the cellar     | house_humidity  | BARREL.STRENGTH humidity 0    | 75  | Damp air takes alcohol, dry air water.
        """);
  }

  private static void units(Block block) {
    block
        .heading("Units")
        .input(
            "Typed in",
            words("metric", "US"),
            "metric",
            "kept",
            "What all logs, registers and framed cells are kept in; each says its unit. Choose before the first row: it converts nothing.")
        .input(
            "Shown in",
            words("metric", "US"),
            "metric",
            "units",
            "What pages show results in. Change it whenever you like: what was typed stays.")
        .result(
            "Functions",
            TEXT,
            "IFERROR(CELLAR.VERSION(),\"not installed\")",
            "",
            "Version of the installed functions. If there is none, all numbers are those saved last.");
    factor(block, Factor.LITRE, "a litre in US gallons (231 in³, exact)");
    factor(block, Factor.KILOGRAM, "a kilogram in pounds (exact)");
    factor(block, Factor.CENTIMETRE, "a centimetre in inches (exact)");
    factor(block, Factor.SQUAREMETRE, "a square metre in square feet (exact)");
    factor(block, Factor.CUBICMETRE, "a cubic metre in cubic feet (exact)");
    factor(block, Factor.KILOPASCAL, "a kilopascal in pounds on a square inch (exact)");
    factor(block, Factor.DEGREE, "a °C in °F");
    Factor.FREEZING.put(block, "and what is added to a temperature.");
  }

  private static void factor(Block block, Factor factor, String note) {
    factor.put(block, "1 while both are alike; else " + note + ", or the reverse.");
  }
}
