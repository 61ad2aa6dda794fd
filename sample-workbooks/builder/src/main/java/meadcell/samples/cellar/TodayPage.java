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
import meadcell.samples.sheet.Workings;

/** What the cellar wants this week: what cannot wait, then the rest, the oldest first; and why. */
final class TodayPage {
  static final String TITLE = "Today";

  /** All there can be of 60 casks and of every lot; what is printed is one sheet of paper. */
  static final int LINES = 340;

  private static final int PRINTED = 60;
  private static final String KIND = "INDEX(task_kind,#+1)";
  private static final String ROW = "INDEX(task_row,#+1)";

  /** Before the day of what cannot wait stands so much less; a day of its own is far above 0. */
  private static final int AHEAD = 1_000_000;

  private TodayPage() {}

  /** Behind the point of a task's number are its row and its kind, as the columns stand. */
  static String due(String date, int kind, String cannotWait) {
    return "IF([DATE]=\"\",\"\",[DATE]-IF(IFERROR(NOW,FALSE),AHEAD,0)+(ROW()*8+KIND)/10000)"
        .replace("DATE", date)
        .replace("KIND", Integer.toString(kind))
        .replace("NOW", cannotWait)
        .replace("AHEAD", Integer.toString(AHEAD));
  }

  /** The tasks that the page lists, in their order. */
  static void workings(Workings state) {
    String chosen =
        "IF(today_kind=1,1,IF(today_kind=2,tasks<0,COLUMN(tasks)-COLUMN(INDEX(tasks,1,1))=today_kind-3))";
    state
        .words(
            "show_list", "all", "cannot wait", "top up", "taste", "sulfite", "analyse", "ferments")
        .column("show_kind", 1, "IF(today_show=\"\",1,IFERROR(MATCH(today_show,show_list,0),1))")
        .block("today_kind", "show_kind", "show_kind", 1)
        .array(
            LINES,
            "IFERROR(SMALL(IF(ISNUMBER(tasks)*(tasks<today+8)*CHOSEN,tasks,\"\"),ROW($A$1:$A$LINES)),\"\")"
                .replace("CHOSEN", chosen)
                .replace("LINES", Integer.toString(LINES)),
            "task_key")
        .column("task_kind", LINES, "IF([task_key]=\"\",\"\",MOD(" + behind("[task_key]") + ",8))")
        .column("task_row", LINES, "IF([task_key]=\"\",\"\",INT(" + behind("[task_key]") + "/8))");
  }

  private static String behind(String key) {
    return "ROUND(MOD(" + key + ",1)*10000,0)";
  }

  static void add(Book book) {
    Page page = book.page(TITLE, 13, 11, 18, 16, 66).onSheets(1);
    Block block =
        page.head(
            TITLE,
            "What the cellar wants from now to a week ahead: first what cannot wait, then the rest, each the longest due first.");
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
        .choose(
            "Work",
            "show_list",
            "all",
            "today_show",
            "One kind of work, or what cannot wait: a ferment that stalled, sulfite due by now, a cask that by now lacks twice what it may (our own limits, no source).")
        .verdict(sound(), 3, "book_sound")
        .verdict(counts(), 2, "today_counts")
        .verdict(more(), 1, "today_more");
    Table tasks =
        block.table(
            LINES,
            always(
                "Due",
                DATE,
                "IF(KEY=\"\",\"\",INT(KEY)+IF(KEY<0,AHEAD,0))"
                    .replace("KEY", "INDEX(task_key,#+1)")
                    .replace("AHEAD", Integer.toString(AHEAD))),
            always("Days late", COUNT, "IF([Due]=\"\",\"\",IF([Due]<=today,today-[Due],\"\"))"),
            always(
                "Where",
                TEXT,
                "IF([Due]=\"\",\"\",IF(KIND=5,INDEX(lot_name,ROWN),INDEX(v_name,ROWN)))"
                    .replace("KIND", KIND)
                    .replace("ROWN", ROW)),
            always(
                "What",
                TEXT,
                given(
                        "[Due]",
                        "CHOOSE(KIND,\"top up\",\"taste\",\"sulfite\",\"analyse\","
                            + whatOfFerment()
                            + ")")
                    .replace("KIND", KIND)
                    .replace("ROWN", ROW)),
            always("Why", TEXT, why().replace("KIND", KIND).replace("ROWN", ROW)));
    page.freeze(tasks.top());
    page.prints(tasks.top() + PRINTED);
    page.at(tasks.top() + LINES, 0, 5)
        .note(
            "Days round to the safe side. Top up: headspace by the log and the cask's loss (Vessels, else Start). Sulfite: the earliest day of SULFITE.LASTS. A ferment is watched until Lots has the day it was closed.");
  }

  /** Of all work, whatever kind is shown. */
  private static String counts() {
    return "IF(ISERROR(log_why),\"\",IF(WEEK=0,\"Nothing is wanted up to a week ahead.\",\"Cannot wait: \"&IF(COUNTIF(tasks,\"<0\")=0,\"nothing\",AHEAD(due_ferment)&\" stalled, \"&AHEAD(due_sulfite)&\" for sulfite, \"&AHEAD(due_top)&\" to top up\")&\". In all, up to a week ahead: \"&IN(due_top)&\" to top up, \"&IN(due_taste)&\" to taste, \"&IN(due_sulfite)&\" for sulfite, \"&IN(due_analyse)&\" to analyse, of ferments \"&IN(due_ferment)&\".\"))"
        .replaceAll("AHEAD\\((\\w+)\\)", "COUNTIF($1,\"<0\")")
        .replaceAll("IN\\((\\w+)\\)", "COUNTIF($1,\"<\"&(today+8))")
        .replace("WEEK", "COUNTIF(tasks,\"<\"&(today+8))");
  }

  private static String more() {
    String all =
        "IF(today_kind=2,COUNTIF(tasks,\"<0\"),COUNTIF(IF(today_kind=1,tasks,INDEX(tasks,0,MAX(1,today_kind-2))),\"<\"&(today+8)))";
    return "IF(ISERROR(log_why),\"\",IF(ALL>LINES,(ALL-LINES)&\" more follow: choose a kind of work to see them.\",IF(today_kind=1,\"These are all\",\"These are all of this: \"&today_show)&IF(ALL>PRINTED,\"; paper has the first PRINTED.\",\".\")))"
        .replace("ALL", all)
        .replace("LINES", Integer.toString(LINES))
        .replace("PRINTED", Integer.toString(PRINTED));
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

  /** Why the task in row ROWN of its kind is due. */
  private static String why() {
    return given(
        "[Due]",
        "IF(INDEX(task_key,#+1)<0,\"Cannot wait: \",\"\")&CHOOSE(KIND,"
            + String.join(",", topUp(), taste(), sulfite(), analyse(), ferment())
            + ")");
  }

  private static String topUp() {
    String volume =
        "FIXED(INDEX(COLUMN,ROWN)*litre,IF(units=\"US\",2,1),TRUE)&IF(units=\"US\",\" gal\",\" L\")";
    return "\"lacks \"&"
        + volume.replace("COLUMN", "v_space")
        + "&\" by the log; with a loss of \"&FIXED(INDEX(v_loss,ROWN),1,TRUE)&\" % a year, by now \"&"
        + volume.replace("COLUMN", "v_lacks");
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
