package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.MILLIGRAMS_PER_LITRE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import java.time.LocalDate;
import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Chart;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** Free SO₂, volatile acidity and pH of one cask over time, and when to act. */
final class Analyses {
  static final String TITLE = "Analyses";
  private static final int RIGHT = 8;

  private Analyses() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 12, 10, 10, 12, 10, 13, 13, 2, 34, 14, 36);
    Block left =
        page.head(
            TITLE,
            "Cask C1 since its last sulfite addition. Copy the sheet for each cask; after an addition start a new one.");
    int top = left.row();
    Table log =
        left.table(
            20,
            in("Date", DATE),
            in("Free SO₂", arg("SULFITE.DECAY", "free", 0)),
            in("pH", arg("SULFITE.MOLECULAR", "ph", 2)),
            in("Titre of volatile acid", arg("LAB.VOLATILE", "titre", 2)),
            in("Taster's note", TEXT),
            out(
                "Molecular SO₂",
                of(Quantity.MILLIGRAM_PER_LITRE, 2),
                "SULFITE.MOLECULAR([Free SO₂],[pH])"),
            out(
                "Volatile acid",
                of(Quantity.GRAM_PER_LITRE, 2),
                "LAB.VOLATILE([Titre of volatile acid],analysis_normality,analysis_sample)"));
    page.freeze(log.top());
    log.fill(
        new Object[][] {
          {LocalDate.of(2025, 10, 20), 44, 3.48, 1.60, "clean"},
          {LocalDate.of(2025, 11, 17), 41, 3.49, 1.65, "clean"},
          {LocalDate.of(2025, 12, 15), 39, 3.49, 1.65, "clean"},
          {LocalDate.of(2026, 1, 19), 35, 3.50, 1.75, "clean"},
          {LocalDate.of(2026, 2, 16), 33, 3.51, 1.80, "clean"}
        });
    String dates = log.range("Date");
    String volatiles = log.range("Volatile acid");
    Block right =
        page.at(top, RIGHT, 3)
            .heading("When to act")
            .input(
                "Molecular SO₂ at least",
                arg("SULFITE.FREENEEDED", "molecular", 2),
                0.5,
                "analysis_molecular",
                "One's own mark.")
            .result(
                "Free SO₂ at least",
                MILLIGRAMS_PER_LITRE,
                "SULFITE.FREENEEDED(analysis_molecular,INDEX("
                    + log.range("pH")
                    + ",MATCH(MAX("
                    + dates
                    + "),"
                    + dates
                    + ",0)))",
                "analysis_free",
                "At the last pH.")
            .result(
                "Sulfite again by",
                DATE,
                "SULFITE.DECAY(" + dates + "," + log.range("Free SO₂") + ",analysis_free)",
                "analysis_due",
                "First-order decline through the readings.")
            .input(
                "Volatile acid at most",
                between(Quantity.GRAM_PER_LITRE, 2, "One's own alarm, as acetic.", 0, 3),
                0.8,
                "analysis_volatile",
                "As acetic; the law allows more, taste less.")
            .result(
                "Rise of volatile acid a month",
                of(Quantity.GRAM_PER_LITRE, 3),
                "INDEX(PANEL.TREND(" + dates + "," + volatiles + "),1,1)",
                "analysis_rise",
                "Straight line; PANEL.TREND takes any number over time.")
            .result(
                "Reaches that by",
                DATE,
                "IF(analysis_rise<=0,\"\",MAX("
                    + dates
                    + ")+(analysis_volatile-INDEX("
                    + volatiles
                    + ",MATCH(MAX("
                    + dates
                    + "),"
                    + dates
                    + ",0)))/analysis_rise*30.4375)",
                "",
                "If it goes on so. Top up and look for air first.")
            .result(
                "Rise of pH a month",
                of(Quantity.PH, 3),
                "INDEX(PANEL.TREND(" + dates + "," + log.range("pH") + "),1,1)",
                "",
                "")
            .verdict(
                "IF(analysis_due<=today,\"Sulfite is due now.\",\"Sulfite is due in \"&ROUND(analysis_due-today,0)&\" days.\")",
                1)
            .heading("How the titres are read")
            .input(
                "Sodium hydroxide",
                arg("LAB.VOLATILE", "normality", 3),
                0.1,
                "analysis_normality",
                "")
            .input(
                "Mead distilled",
                arg("LAB.VOLATILE", "sample", 0),
                20,
                "analysis_sample",
                "After OIV-MA-AS313-02.");
    page.chart(
        new Chart(
                right.row() + 1,
                RIGHT,
                right.row() + 16,
                RIGHT + 3,
                "Free SO₂ of cask C1",
                "date",
                "mg/L")
            .points("free SO₂", log, "Date", "Free SO₂")
            .up(0, 50, "0"));
  }
}
