package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.DAYS;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import java.time.LocalDate;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Chart;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** Which liquids ended in a lot, in which shares, and how long they lay in which wood. */
final class Lineage {
  static final String TITLE = "Lineage";
  private static final int RIGHT = 5;

  private Lineage() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 24, 24, 12, 13, 2, 30, 14, 40);
    Block left =
        page.head(
            TITLE,
            "Every transfer once, in order: from, to, how much, when. Nothing else is needed to tell what is in a bottle.");
    int top = left.row();
    Table log =
        left.table(36, in("From", TEXT), in("To", TEXT), in("Volume", VOLUME), in("Day", DATE));
    page.freeze(log.top());
    log.fill(transfers());
    log.nameBlock("From", "Day", "transfers");
    Block right =
        page.at(top, RIGHT, 3)
            .heading("What is in it")
            .input("Lot", TEXT, "Shore 26", "lineage_lot", "Any vessel or lot of the list.");
    Table shares =
        right.table(
            5,
            always(
                "Source",
                TEXT,
                "IFERROR(INDEX(BLEND.LINEAGE(transfers,lineage_lot,units),#,1),\"\")"),
            always(
                "Share",
                PERCENT,
                "IFERROR(INDEX(BLEND.LINEAGE(transfers,lineage_lot,units),#,2),\"\")"));
    right
        .verdict(
            "IF(CELLAR.WHY(\"BLEND.LINEAGE\",transfers,lineage_lot,units)=\"\",\"The log is sound: no vessel gave more than it held.\",CELLAR.WHY(\"BLEND.LINEAGE\",transfers,lineage_lot,units))",
            2)
        .heading("How long it lay in which wood");
    Table woods =
        right.table(
            5,
            in("Vessel", TEXT),
            out("Days", DAYS, "BLEND.AGE(transfers,lineage_lot,[Vessel],units)"));
    woods.fill(new Object[][] {{"C1"}, {"C2"}, {"C3"}, {"steel tank"}});
    right.note(
        "Days that a litre of the lot has spent there, on average over the whole lot: half of it 200 days makes 100.");
    int next = right.row() + 1;
    page.chart(
        new Chart(next, RIGHT, next + 14, RIGHT + 3, "Sources of the lot", "", "% of volume")
            .bars("share", shares, "Source", "Share")
            .up(0, 100, "0"));
    page.chart(
        new Chart(
                next + 15,
                RIGHT,
                next + 29,
                RIGHT + 3,
                "Days of the lot in each vessel",
                "",
                "days")
            .bars("days", woods, "Vessel", "Days"));
  }

  private static Object[][] transfers() {
    LocalDate pitched = LocalDate.of(2025, 3, 3);
    LocalDate casked = LocalDate.of(2025, 5, 12);
    LocalDate bochet = LocalDate.of(2025, 6, 16);
    LocalDate blended = LocalDate.of(2026, 3, 2);
    return new Object[][] {
      {"Heather must 25", "steel tank", 760.0, pitched},
      {"steel tank", "loss", 34.0, casked},
      {"rye in the staves", "C1", 4.6, casked},
      {"steel tank", "C1", 203.2, casked},
      {"Heather 24 in the staves", "C2", 6.0, casked},
      {"steel tank", "C2", 228.0, casked},
      {"Bochet must 25", "ferment tank 2", 250.0, LocalDate.of(2025, 4, 7)},
      {"ferment tank 2", "C3", 225.0, bochet},
      {"ferment tank 2", "loss", 25.0, bochet},
      {"steel tank", "C1", 11.2, LocalDate.of(2025, 12, 15)},
      {"C1", "loss", 11.0, LocalDate.of(2025, 12, 16)},
      {"C1", "Shore 26", 195.0, blended},
      {"C2", "Shore 26", 95.0, blended},
      {"C3", "Shore 26", 42.0, blended},
      {"steel tank", "Shore 26", 48.0, blended},
      {"Shore 26", "loss", 5.0, blended}
    };
  }
}
