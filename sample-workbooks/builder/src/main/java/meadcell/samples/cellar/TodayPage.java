package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.given;
import static meadcell.samples.sheet.Field.COUNT;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Table.always;

import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** What the cellar wants this week, the oldest first, and why. */
final class TodayPage {
  static final String TITLE = "Today";
  static final int LINES = 60;

  private TodayPage() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 13, 11, 18, 16, 66).onOneSheet();
    Block block =
        page.head(TITLE, "What the cellar wants from now to a week ahead, the longest due first.");
    block
        .input(
            "Day",
            DATE,
            null,
            "today_typed",
            "Blank: the last day in the logs. Type another, and pages show the cellar as it was then. =TODAY() follows the calendar, but works all out anew at every change.")
        .result(
            "Shown is",
            DATE,
            "IF(today_typed=\"\",told_last,today_typed)",
            "today",
            "Rows of later days do not count.")
        .verdict(sound(), 3, "book_sound");
    Table tasks =
        block.table(
            LINES,
            always(
                "Due", DATE, "IFERROR(IF(SMALL(tasks,#)<today+8,INT(SMALL(tasks,#)),\"\"),\"\")"),
            always("Days late", COUNT, "IF([Due]=\"\",\"\",IF([Due]<=today,today-[Due],\"\"))"),
            always(
                "Where",
                TEXT,
                "IF([Due]=\"\",\"\",IF(KIND=5,INDEX(lot_name,ROWN),INDEX(v_name,ROWN)))"
                    .replace("KIND", kind())
                    .replace("ROWN", row())),
            always(
                "What",
                TEXT,
                given(
                        "[Due]",
                        "CHOOSE(KIND,\"top up\",\"taste\",\"sulfite\",\"analyse\","
                            + whatOfFerment()
                            + ")")
                    .replace("KIND", kind())
                    .replace("ROWN", row())),
            always("Why", TEXT, why().replace("KIND", kind()).replace("ROWN", row())));
    page.freeze(tasks.top());
    String more = "COUNTIF(tasks,\"<\"&(today+8))-" + LINES;
    page.at(tasks.top() + LINES, 0, 5)
        .verdict(
            "IF(ISERROR(log_why),\"\",IF("
                + more
                + ">0,("
                + more
                + ")&\" more follow: do these first.\",\"These are all.\"))",
            1,
            "today_more")
        .note(
            "Days round to the safe side. Top up: headspace by the log and the cask's loss (Vessels, else Start). Sulfite: the earliest day of SULFITE.LASTS. A ferment is watched until Lots has the day it was closed.");
  }

  /** A complaint is more useful than pages that stay blank. */
  private static String sound() {
    String rules =
        "house_limit,house_loss,house_taste,house_analyse,house_read,house_molecular,house_oxygen,house_humidity";
    String ruleMissing =
        "IF(COUNT(%s)<8,\"A rule of the house is blank on Start: what hangs on it is missing here, or due at once. \",\"\")"
            .formatted(rules);
    String unfollowed =
        "\"Movements cannot be followed, and pages stay blank. \"&log_why&\" Row 1 of transfers is line \"&ROW(INDEX(move_day,2))&\". \"";
    return "IF(ISERROR(log_why),\"Nothing is worked out: see sheet Start.\",%s&IF(AND(COUNT(mv_day)>0,log_why<>\"\"),%s,\"\")&%s)"
        .formatted(ruleMissing, unfollowed, Told.sentence());
  }

  private static String row() {
    return "INT(ROUND(MOD(SMALL(tasks,#),1)*10000,0)/8)";
  }

  private static String kind() {
    return "MOD(ROUND(MOD(SMALL(tasks,#),1)*10000,0),8)";
  }

  /** Why the task in row ROWN of its kind is due. */
  private static String why() {
    return given(
        "[Due]",
        "CHOOSE(KIND," + String.join(",", topUp(), taste(), sulfite(), analyse(), ferment()) + ")");
  }

  private static String topUp() {
    return "\"lacks \"&FIXED(INDEX(v_space,ROWN)*litre,IF(units=\"US\",2,1),TRUE)&IF(units=\"US\",\" gal\",\" L\")&\" by the log; a loss of \"&FIXED(INDEX(v_loss,ROWN),1,TRUE)&\" % a year comes on top\"";
  }

  private static String taste() {
    return "IF(INDEX(v_tasted,ROWN)=0,\"not tasted since it was filled\",\"last tasted \"&(today-INDEX(v_tasted,ROWN))&\" days ago\")";
  }

  private static String sulfite() {
    return "\"free SO2 was \"&FIXED(INDEX(v_free,ROWN),0,TRUE)&\" mg/L \"&(today-INDEX(v_read,ROWN))&\" days ago, and \"&FIXED(INDEX(v_need,ROWN),0,TRUE)&\" are needed at pH \"&FIXED(INDEX(v_ph,ROWN),2,TRUE)";
  }

  private static String analyse() {
    return "IF(INDEX(v_free,ROWN)=\"\",\"no free SO2 since the last filling or sulfite\",IF(INDEX(v_ph,ROWN)=\"\",\"no pH since it was filled\",\"last analysed \"&(today-INDEX(v_read,ROWN))&\" days ago\"))";
  }

  private static String ferment() {
    return "IF(READ=0,\"no reading yet\",\"last read \"&(today-READ)&\" days ago: \"&STATE)"
        .replace("READ", ofLot("l_read"))
        .replace("STATE", ofLot("l_state"));
  }

  private static String whatOfFerment() {
    return "IF(READ=0,\"read\",IF(STATE=\"finished\",\"rack or close\",IF(STATE=\"stalled\",\"wake or decide\",\"read\")))"
        .replace("READ", ofLot("l_read"))
        .replace("STATE", ofLot("l_state"));
  }

  /** CHOOSE works out the other kinds, too, whose rows may lie beyond those of lots. */
  private static String ofLot(String column) {
    return "INDEX(#,MIN(ROWN,ROWS(#)))".replace("#", column);
  }
}
