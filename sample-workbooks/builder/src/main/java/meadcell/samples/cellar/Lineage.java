package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.DAYS;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Chart;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** Which liquids ended in a lot, in which shares, and how long they lay in which wood. */
final class Lineage {
  static final String TITLE = "Lineage";
  private static final int RIGHT = 5;

  private static final String TRANSFERS =
      """
            Heather must 25          | steel tank     | 610   | 2025-03-03
            Bochet must 25           | ferment tank 2 | 290   | 2025-04-07
            steel tank               | loss           | 34    | 2025-05-12
            rye in the staves        | C1             | 4.6   | 2025-05-12
            steel tank               | C1             | 203.2 | 2025-05-12
            Heather 24 in the staves | C2             | 5.9   | 2025-05-12
            steel tank               | C2             | 228   | 2025-05-12
            ferment tank 2           | C3             | 225   | 2025-06-16
            ferment tank 2           | carboys        | 41    | 2025-06-16
            ferment tank 2           | loss           | 24    | 2025-06-16
            steel tank               | C1             | 10.6  | 2025-12-15
            C1                       | loss           | 10.6  | 2025-12-15
            C1                       | Shore 26       | 110   | 2026-03-02
            C2                       | Shore 26       | 110   | 2026-03-02
            carboys                  | Shore 26       | 40    | 2026-03-02
            steel tank               | Shore 26       | 120   | 2026-03-02
            Shore 26                 | loss           | 5     | 2026-03-02
            """;

  private Lineage() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 24, 24, 12, 13, 2, 26, 14, 2, 44);
    Block left =
        page.head(
            TITLE,
            "Every transfer once, in order: from, to, how much, when. Nothing else is needed to tell"
                + " what is in a bottle.");
    Table log =
        left.table(31, in("From", TEXT), in("To", TEXT), in("Volume", VOLUME), in("Day", DATE));
    page.freeze(log.top());
    log.fill(TRANSFERS).nameBlock("From", "Day", "transfers");
    Block right = page.at(log.top() - 1, RIGHT, 2);
    right.heading("What is in it").form("Lot | lineage_lot | TEXT | Shore 26");
    Table shares =
        right.table(6, always("Source", TEXT, source(1)), always("Share", PERCENT, source(2)));
    right.verdict(
        "IF(lineage_why=\"\",\"The log is sound: no vessel gave more than it held.\",lineage_why)"
            .replace("lineage_why", "CELLAR.WHY(\"BLEND.LINEAGE\",transfers,lineage_lot,units)"),
        3);
    right.heading("How long it lay in which wood");
    Table woods =
        right.table(
            6,
            in("Vessel", TEXT),
            out("Days", DAYS, "BLEND.AGE(transfers,lineage_lot,[Vessel],units)"));
    woods.fill(
        """
            C1
            C2
            C3
            carboys
            steel tank
            """);
    right.note("Average over the whole lot: where half of it lay 200 days, 100 are shown.");
    chart(page, log.top(), "Sources of the lot", "% of volume", shares, "Source", "Share");
    chart(page, log.top() + 17, "Days in each vessel", "days", woods, "Vessel", "Days");
  }

  private static String source(int column) {
    return "IFERROR(INDEX(BLEND.LINEAGE(transfers,lineage_lot,units),#," + column + "),\"\")";
  }

  private static void chart(
      Page page, int row, String title, String up, Table table, String labels, String values) {
    page.chart(
        new Chart(row, RIGHT + 3, row + 15, RIGHT + 4, title, "", up).bars(table, labels, values));
  }
}
