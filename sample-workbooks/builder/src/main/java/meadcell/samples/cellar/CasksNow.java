package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.COUNT;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Table.always;

import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** What is where, vessel by vessel. */
final class CasksNow {
  static final String TITLE = "Casks now";

  private CasksNow() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 14, 18, 12, 8, 11, 12, 8, 7, 12, 12, 12, 12);
    Table table =
        page.head(
                TITLE,
                "Every vessel of the register Vessels, on the day of page Today, by the log of movements.")
            .table(
                Registers.MOST_VESSELS,
                always("Vessel", TEXT, "INDEX(v_name,#+1)"),
                always("Mostly", TEXT, state("INDEX(held_liquid,INDEX(v_at,#+1))&\"\"")),
                always("Since", DATE, state("INDEX(v_since,#+1)")),
                always("Days", COUNT, state("today-INDEX(v_since,#+1)")),
                always("Holds", VOLUME, state("INDEX(v_holds,#+1)*litre")),
                always("Headspace", VOLUME, blank("v_space", "*litre")),
                always(
                    "Full",
                    PERCENT,
                    "IF(OR([Holds]=\"\",[Headspace]=\"\"),\"\",100*[Holds]/([Holds]+[Headspace]))"),
                always(
                    "Fill",
                    COUNT,
                    state("INDEX(held_fills,INDEX(v_at,#+1))+INDEX(vessel_before,#+1)")),
                always("Top up by", DATE, blank("v_top", "")),
                always("Taste by", DATE, blank("v_taste", "")),
                always("Sulfite by", DATE, blank("v_sulfite", "")),
                always("Analyse by", DATE, blank("v_analyse", "")));
    page.freeze(table.top());
  }

  private static String state(String formula) {
    return "IF(INDEX(v_at,#+1)=\"\",\"\"," + formula + ")";
  }

  private static String blank(String column, String times) {
    return "IF(INDEX(COLUMN,#+1)=\"\",\"\",INDEX(COLUMN,#+1)TIMES)"
        .replace("COLUMN", column)
        .replace("TIMES", times);
  }
}
