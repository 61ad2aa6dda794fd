package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

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
        """
            2025-10-20 | 44 | 3.48 | 1.60 | clean
            2025-11-17 | 41 | 3.49 | 1.65 | clean
            2025-12-15 | 39 | 3.49 | 1.65 | clean
            2026-01-19 | 35 | 3.50 | 1.75 | clean
            2026-02-16 | 33 | 3.51 | 1.80 | clean
            """);
    log.name("Date", "analysis_dates")
        .name("Free SO₂", "analysis_so2")
        .name("pH", "analysis_ph")
        .name("Volatile acid", "analysis_volatiles");
    Block right =
        page.at(top, RIGHT, 3)
            .form(
                """
                # When to act
                Molecular SO₂ at least        | analysis_molecular | SULFITE.FREENEEDED molecular 2 | 0.5 | One's own mark.
                Free SO₂ at least             | analysis_free      | MILLIGRAM_PER_LITRE 0          | =SULFITE.FREENEEDED(analysis_molecular,INDEX(analysis_ph,MATCH(MAX(analysis_dates),analysis_dates,0))) | At the last pH.
                Sulfite again by              | analysis_due       | DATE                           | =SULFITE.DECAY(analysis_dates,analysis_so2,analysis_free) | First-order decline through the readings.
                Volatile acid at most         | analysis_volatile  | GRAM_PER_LITRE 2 0..3          | 0.8 | As acetic; the law allows more, taste less.
                Rise of volatile acid a month | analysis_rise      | GRAM_PER_LITRE 3               | =INDEX(PANEL.TREND(analysis_dates,analysis_volatiles),1,1) | Straight line; PANEL.TREND takes any number over time.
                Reaches that by               |                    | DATE                           | =IF(analysis_rise<=0,"",MAX(analysis_dates)+(analysis_volatile-INDEX(analysis_volatiles,MATCH(MAX(analysis_dates),analysis_dates,0)))/analysis_rise*30.4375) | If it goes on so. Top up and look for air first.
                Rise of pH a month            |                    | PH 3                           | =INDEX(PANEL.TREND(analysis_dates,analysis_ph),1,1)
                ? 1 |  | IF(analysis_due<=today,"Sulfite is due now.","Sulfite is due in "&ROUND(analysis_due-today,0)&" days.")
                # How the titres are read
                Sodium hydroxide | analysis_normality | LAB.VOLATILE normality 3 | 0.1
                Mead distilled   | analysis_sample    | LAB.VOLATILE sample 0    | 20 | After OIV-MA-AS313-02.
                """);
    page.chart(
        new Chart(
                right.row() + 1,
                RIGHT,
                right.row() + 16,
                RIGHT + 3,
                "Free SO₂ of cask C1",
                "date",
                "mg/L")
            .points(log, "Date", "Free SO₂")
            .up(0, 50, 10, "0"));
  }
}
