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
import meadcell.samples.sheet.Workings;

/** What is where, vessel by vessel. */
final class CasksNow {
  static final String TITLE = "Casks now";

  /** As many lines as one sheet of paper takes. */
  private static final int PRINTED = 75;

  private static final String AT = "INDEX(now_row,#+1)";

  private CasksNow() {}

  /** Where each line's vessel stands: those that hold something first. */
  static void workings(Workings state) {
    state
        .column(
            "now_key",
            Registers.MOST_VESSELS,
            "IF([v_name]=\"\",\"\",IF([v_at]=\"\",1000,0)+ROW())")
        .column(
            "now_row",
            Registers.MOST_VESSELS,
            "IF(ROW()-1>COUNT(now_key),\"\",MOD(SMALL(now_key,ROW()-1),1000))");
  }

  static void add(Book book) {
    Page page = book.page(TITLE, 14, 18, 12, 8, 11, 13, 8, 7, 12, 12, 12, 12).onSheets(1).upright();
    Table table =
        page.head(
                TITLE,
                "Every vessel of the register Vessels, on the day of page Today, by the log of movements: those that hold something first. Fill: how often it was filled.")
            .verdict(
                "IF(COUNT(v_holds)>PRINTED,COUNT(v_holds)&\" hold something, of which PRINTED are printed: select the lines of the others, and print the selection.\",\"\")"
                    .replace("PRINTED", Integer.toString(PRINTED)),
                1)
            .table(
                Registers.MOST_VESSELS,
                always("Vessel", TEXT, "IF(AT=\"\",\"\",INDEX(v_name,AT))".replace("AT", AT)),
                always("Mostly", TEXT, state("INDEX(held_liquid,INDEX(v_at,AT))&\"\"")),
                always("Since", DATE, state("INDEX(v_since,AT)")),
                always("Days", COUNT, state("today-INDEX(v_since,AT)")),
                always("Holds", VOLUME, state("INDEX(v_holds,AT)*litre")),
                always("Headspace", VOLUME, blank("v_space", "*litre")),
                always(
                    "Full",
                    PERCENT,
                    "IF(OR([Holds]=\"\",[Headspace]=\"\"),\"\",100*[Holds]/([Holds]+[Headspace]))"),
                always(
                    "Fill",
                    COUNT,
                    state("INDEX(held_fills,INDEX(v_at,AT))+INDEX(vessel_before,AT)")),
                always("Top up by", DATE, blank("v_top", "")),
                always("Taste by", DATE, blank("v_taste", "")),
                always("Sulfite by", DATE, blank("v_sulfite", "")),
                always("Analyse by", DATE, blank("v_analyse", "")));
    page.freeze(table.top());
    page.prints(table.top() + PRINTED);
  }

  private static String state(String formula) {
    return ("IF([Vessel]=\"\",\"\",IF(INDEX(v_at,AT)=\"\",\"\"," + formula + "))")
        .replace("AT", AT);
  }

  private static String blank(String column, String times) {
    return "IF([Vessel]=\"\",\"\",IF(INDEX(COLUMN,AT)=\"\",\"\",INDEX(COLUMN,AT)TIMES))"
        .replace("COLUMN", column)
        .replace("TIMES", times)
        .replace("AT", AT);
  }
}
