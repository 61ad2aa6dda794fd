package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.lastDay;
import static meadcell.samples.cellar.Formulas.latest;

import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Log;
import meadcell.samples.sheet.Workings;

/**
 * What pages rest on: every complete row of the logs once more as functions want it, the state of
 * each vessel and lot on the day of the book, and the lists to choose from.
 */
final class Behind {
  static final String STATE = "Workings";

  /** Rows that may be inserted into a log before its last are no longer seen, which Today tells. */
  private static final int SPARE = 200;

  private static final int STATES = Registers.MOST_VESSELS + 20;

  private Behind() {}

  static void add(Book book) {
    Workings logs = new Workings(book, "Workings logs");
    moves(logs.beside("moves", Logs.MOST_MOVES + SPARE, "mv_volume"));
    readings(logs.beside("readings", Logs.MOST + SPARE, "g_gravity"));
    analyses(logs.beside("analyses", Logs.MOST + SPARE, "an_value"));
    Feeds.fed(logs.beside("additions", Logs.MOST + SPARE, "ad_day"));
    book.lacking().forEach(log -> lacking(logs, log));
    book.formulaName("moves", "INDEX(moves_block,1,1):INDEX(moves_block,moves_used,6)");
    book.formulaName("analyses", "INDEX(analyses_block,1,1):INDEX(analyses_block,analyses_used,5)");
    book.formulaName("changes", "INDEX(changes_block,1,1):INDEX(changes_block,additions_used,3)");
    Workings state = new Workings(book, STATE);
    lists(state);
    vessels(state);
    Feeds.workings(book, state);
    lots(state);
    tasks(state);
    CasksNow.workings(state);
    CaskPage.workings(state);
    ThreeWays.workings(state);
    GlassesPage.workings(state);
    FermentPage.workings(state);
    BottlePage.workings(state);
    WholeCasks.workings(state);
    StoryPage.workings(state);
    InstrumentPage.workings(new Workings(book, "Workings instruments"));
    Told.workings(state);
    names(book);
  }

  /** What each row of a log lacks. */
  private static void lacking(Workings logs, Log.Lacking log) {
    int rows = log.rows() + SPARE;
    logs.column(log.log() + "_lack", rows, log.log() + "_lacks")
        .block(log.log() + "_lacking", log.log() + "_lack", log.log() + "_lack", rows);
  }

  private static void moves(Workings moves) {
    String size = numberAt("mv_at", "mv_at", "SIZE", "\"\"");
    moves
        .following("mv_from", copied("mv_volume", "move_from"))
        .following("mv_to", copied("mv_volume", "move_to"))
        .following(
            "mv_volume",
            "IF(({move_from}=\"\")+({move_to}=\"\")+(1-ISNUMBER({move_day})),\"\",IF(ISNUMBER({move_volume}),{move_volume},IF([mv_at]=\"\",\"\","
                + "CELLAR.MAP(\"BARREL.CONTENTS\",HEAD,BILGE,LENGTH,IF([mv_at]=\"\",\"\",{move_dip}),\"\",kept))))"
                    .replace("HEAD", size.replace("SIZE", "vessel_head"))
                    .replace("BILGE", size.replace("SIZE", "vessel_bilge"))
                    .replace("LENGTH", size.replace("SIZE", "vessel_length")))
        .following("mv_day", days("mv_volume", "move_day"))
        .following("mv_u", numbers("mv_volume", "move_u"))
        // by the time of day, if one is typed with it; then by number
        .following(
            "mv_order",
            "IF(([mv_volume]=\"\")+(1-ISNUMBER({move_no})),\"\",1E7*MOD({move_day},1)+{move_no})")
        // the vessel in whose sizes a dip is read
        .following(
            "mv_at",
            "IF(ISNUMBER({move_dip})*(1-ISNUMBER({move_volume})),MATCH({move_to},vessel_name,0),\"\")")
        .block("moves_block", "mv_from", "mv_order");
  }

  private static void readings(Workings readings) {
    String lot = "{reading_lot}&\"\"";
    readings
        .following(
            "g_at",
            "IF({reading_lot}=\"\",\"\",IFERROR(MATCH(LOT,lot_name,0),MATCH(INDEX(held_lot,MATCH(LOT,held_name,0)),lot_name,0)))"
                .replace("LOT", lot))
        .following(
            "g_whole",
            "IF([g_at]=\"\",\"\",IF(ISNUMBER({reading_day})*ISNUMBER({reading_gravity})*ISNUMBER({reading_temperature}),1,\"\"))")
        .following(
            "g_gravity",
            "IF([g_whole]=\"\",\"\",CELLAR.MAP(\"GRAVITY.CORRECT\",READING,TEMPERATURE,CALIBRATION,ORIGINAL,kept))"
                .replace("READING", copied("g_whole", "reading_gravity"))
                .replace("TEMPERATURE", copied("g_whole", "reading_temperature"))
                .replace(
                    "CALIBRATION",
                    numberAt("g_whole", "g_at", "lot_calibration", "IF(kept=\"US\",60,20)"))
                .replace("ORIGINAL", numberAt("g_whole", "g_at", "lot_original", "\"\"")))
        .following("g_lot", copied("g_gravity", "reading_lot"))
        .following("g_day", days("g_gravity", "reading_day"));
  }

  private static void analyses(Workings analyses) {
    analyses
        .following("an_lot", copied("an_value", "analysis_lot"))
        .following("an_day", days("an_value", "analysis_day"))
        .following("an_what", copied("an_value", "analysis_what"))
        .following(
            "an_value",
            "IF(({analysis_lot}=\"\")+({analysis_what}=\"\")+(1-ISNUMBER({analysis_day}))+(1-ISNUMBER({analysis_value})),\"\",{analysis_value})")
        .following("an_u", numbers("an_value", "analysis_u"))
        .block("analyses_block", "an_lot", "an_u");
  }

  /** A column of a log, blank where its row is not complete. */
  private static String copied(String complete, String column) {
    return "IF([" + complete + "]=\"\",\"\",{" + column + "})";
  }

  /** What a register has in the row of its own that a column names; one error would void all. */
  private static String numberAt(String complete, String at, String register, String otherwise) {
    return "IF([COMPLETE]=\"\",\"\",IF(ISNUMBER(INDEX(REGISTER,[AT])),INDEX(REGISTER,[AT]),OTHERWISE))"
        .replace("COMPLETE", complete)
        .replace("AT", at)
        .replace("REGISTER", register)
        .replace("OTHERWISE", otherwise);
  }

  private static String days(String complete, String column) {
    return "IF([" + complete + "]=\"\",\"\",INT({" + column + "}))";
  }

  private static String numbers(String complete, String column) {
    return "IF(([COMPLETE]=\"\")+(1-ISNUMBER({COLUMN})),\"\",{COLUMN})"
        .replace("COMPLETE", complete)
        .replace("COLUMN", column);
  }

  /** Where the last name of a register stands, counted as its names are. */
  private static String last(String names) {
    return "SUMPRODUCT(MAX((NAMES<>\"\")*(ROW(NAMES)-ROW(INDEX(NAMES,1))+1)))"
        .replace("NAMES", names);
  }

  private static void lists(Workings state) {
    state
        .column("last_vessel", 1, last("vessel_name"))
        .block("vessel_last", "last_vessel", "last_vessel", 1)
        .column("last_lot", 1, last("lot_name"))
        .block("lot_last", "last_lot", "last_lot", 1)
        .column(
            "target_names",
            STATES,
            "IF(ROW()=2,\"loss\",IF(ROW()-1<=vessel_last,INDEX(vessel_name,ROW()-1),\"\"))")
        .column(
            "source_names",
            STATES + Registers.MOST_LOTS,
            "IF(ROW()=2,\"gauge\",IF(ROW()-1<=vessel_last,INDEX(vessel_name,ROW()-1),IF(ROW()-vessel_last<=lot_last,INDEX(lot_name,ROW()-vessel_last),\"\")))")
        .words(
            "property_list",
            "strength",
            "sugar",
            "titratable acidity",
            "total SO2",
            "free SO2",
            "pH",
            "volatile acidity")
        .words(
            "addition_list",
            "potassium metabisulfite",
            "potassium sorbate",
            "ammonium phosphate",
            "organic nutrient",
            "honey",
            "tartaric acid",
            "fining");
  }

  private static void vessels(Workings state) {
    String sizes =
        "INDEX(vessel_head,ROW()),INDEX(vessel_bilge,ROW()),INDEX(vessel_length,ROW()),kept";
    state
        .column(
            "log_says", 1, "IF(COUNT(mv_day)=0,\"\",CELLAR.WHY(\"VESSEL.LIST\",moves,today,kept))")
        .block("log_why", "log_says", "log_says", 1)
        .array(
            STATES,
            "VESSEL.LIST(moves_block,today,kept)",
            "held_vessel",
            "held_liquid",
            "held_volume",
            "held_days",
            "held_fills")
        // Calc does not find texts that come from an add-in until they went through one of its own
        .column("held_lot", STATES, "IFERROR(INDEX(held_liquid,ROW())&\"\",\"\")")
        .column("held_name", STATES, "IFERROR(INDEX(held_vessel,ROW())&\"\",\"\")")
        .column(
            "v_capacity",
            STATES,
            "IF([v_name]=\"\",\"\",IF(ISNUMBER(INDEX(vessel_capacity,ROW())),INDEX(vessel_capacity,ROW()),IFERROR(BARREL.VOLUME("
                + sizes
                + "),\"\")))")
        .column("v_name", STATES, "IF(ROW()>ROWS(vessel_name),\"\",INDEX(vessel_name,ROW())&\"\")")
        .column(
            "v_wood",
            STATES,
            "IF([v_name]=\"\",\"\",IFERROR(BARREL.AREAPERLITRE(" + sizes + "),0))")
        .column(
            "v_air",
            STATES,
            "IF([v_name]=\"\",\"\",IF(INDEX(vessel_kind,ROW())=\"cask\",[v_capacity],\"\"))")
        .column(
            "v_bottles",
            STATES,
            "IF([v_name]=\"\",\"\",IF(INDEX(vessel_kind,ROW())=\"bottles\",1,\"\"))")
        .block("air_block", "v_name", "v_bottles", STATES)
        .column("v_at", STATES, "IF([v_name]=\"\",\"\",IFERROR(MATCH([v_name],held_name,0),\"\"))")
        .column("v_holds", STATES, "IF([v_at]=\"\",\"\",INDEX(held_volume,[v_at]))")
        .column("v_since", STATES, "IF([v_at]=\"\",\"\",today-INDEX(held_days,[v_at]))")
        .column(
            "v_cask", STATES, "IF([v_at]=\"\",\"\",IF(INDEX(vessel_kind,ROW())=\"cask\",1,\"\"))")
        .column(
            "v_space", STATES, "IF(OR([v_at]=\"\",[v_capacity]=\"\"),\"\",[v_capacity]-[v_holds])")
        .column(
            "v_touched",
            STATES,
            "IF([v_at]=\"\",\"\",MAX(MAXIFS(mv_day,mv_to,[v_name],mv_day,\"<=\"&today),MAXIFS(mv_day,mv_from,[v_name],mv_day,\"<=\"&today)))")
        .column(
            "v_limit",
            STATES,
            "IF([v_cask]=\"\",\"\",IF(ISNUMBER(INDEX(vessel_limit,ROW())),INDEX(vessel_limit,ROW()),IF(house_limit=\"\",\"\",house_limit/litre)))")
        .column(
            "v_loss",
            STATES,
            "IF([v_cask]=\"\",\"\",IF(ISNUMBER(INDEX(vessel_loss,ROW())),INDEX(vessel_loss,ROW()),house_loss))")
        .column(
            "v_top",
            STATES,
            "IF(OR([v_cask]=\"\",[v_space]=\"\"),\"\",IF([v_space]>=[v_limit],[v_touched],IFERROR(INT([v_touched]+BARREL.DAYSTOTOP([v_capacity],[v_loss],[v_limit],MAX(0,[v_space]),kept)),\"\")))")
        .column(
            "v_tasted",
            STATES,
            "IF([v_cask]=\"\",\"\",MAXIFS(tasting_day,tasting_vessel,[v_name],tasting_score,\">=0\",tasting_day,\">=\"&[v_since],tasting_day,\"<=\"&today))")
        .column("v_taste", STATES, "IF([v_cask]=\"\",\"\",MAX([v_since],[v_tasted])+house_taste)")
        .column(
            "v_ph", STATES, "IF([v_at]=\"\",\"\"," + latest("[v_name]", "pH", "[v_since]") + ")")
        .column(
            "v_sulfited",
            STATES,
            "IF([v_cask]=\"\",\"\",MAX([v_since],"
                + Formulas.lastSulfite("[v_name]", "today")
                + "))")
        .column(
            "v_read",
            STATES,
            "IF([v_cask]=\"\",\"\"," + lastDay("[v_name]", "free SO2", "[v_sulfited]") + ")")
        .column(
            "v_free",
            STATES,
            "IF([v_cask]=\"\",\"\"," + latest("[v_name]", "free SO2", "[v_sulfited]") + ")")
        .column(
            "v_need",
            STATES,
            "IF([v_ph]=\"\",\"\",IFERROR(SULFITE.FREENEEDED(house_molecular,[v_ph]),\"\"))")
        .column(
            "v_oxygen",
            STATES,
            "IF([v_cask]=\"\",\"\",IFERROR(BARREL.OXYGEN(365.25,house_oxygen,BARREL.OAKRATIO("
                + sizes
                + ")),\"\"))")
        .arrays(
            "v_sulfite",
            STATES,
            "IF(OR([v_cask]=\"\",[v_free]=\"\",[v_need]=\"\"),\"\",IF([v_free]<=[v_need],[v_read],IFERROR(INT(INDEX(SULFITE.LASTS(IF(FREE,an_day,\"\"),IF(FREE,an_value,\"\"),[v_need],[v_oxygen]),1,2)),\"\")))"
                .replace(
                    "FREE",
                    "(an_lot=[v_name])*(an_what=\"free SO2\")*(an_day>=[v_sulfited])*(an_day<=today)"))
        .column(
            "v_analyse",
            STATES,
            "IF([v_cask]=\"\",\"\",IF(OR([v_free]=\"\",[v_ph]=\"\"),[v_sulfited]+14,[v_read]+house_analyse))");
  }

  private static void lots(Workings state) {
    int rows = Registers.MOST_LOTS + 20;
    state
        .column(
            "l_open",
            rows,
            "IF(ROW()>ROWS(lot_name),\"\",IF(AND(INDEX(lot_name,ROW())<>\"\",ISNUMBER(INDEX(lot_pitched,ROW()))),IF(AND(INDEX(lot_pitched,ROW())<=today,OR(INDEX(lot_closed,ROW())=\"\",INDEX(lot_closed,ROW())>today)),1,\"\"),\"\"))")
        .column(
            "l_read",
            rows,
            "IF([l_open]=\"\",\"\",MAXIFS(g_day,g_lot,INDEX(lot_name,ROW()),g_day,\"<=\"&today))")
        .arrays(
            "l_state",
            rows,
            "IF([l_open]=\"\",\"\",IF(OR([l_read]<=[l_fed],INDEX(lot_final,ROW())=\"\"),\"cannot tell\",IFERROR(FERMENT.STATE(IF(COUNTS,g_day,\"\"),IF(COUNTS,g_gravity,\"\"),INDEX(lot_final,ROW())),\"cannot tell\")))"
                .replace("COUNTS", "(g_lot=INDEX(lot_name,ROW()))*(g_day<=today)*(g_day>[l_fed])"))
        .column(
            "l_due",
            rows,
            "IF([l_open]=\"\",\"\",IF([l_read]=0,INDEX(lot_pitched,ROW()),IF(OR([l_state]=\"finished\",[l_state]=\"stalled\"),[l_read],[l_read]+house_read)))");
  }

  /** When something is due, column by column the kinds of work. */
  private static void tasks(Workings state) {
    state
        .column(
            "v_lacks",
            STATES,
            "IF(OR([v_cask]=\"\",[v_space]=\"\"),\"\",[v_space]+[v_capacity]*[v_loss]/100*(today-[v_touched])/365.25)")
        .column("due_top", STATES, TodayPage.due("v_top", 1, "[v_lacks]>=2*[v_limit]"))
        .column("due_taste", STATES, TodayPage.due("v_taste", 2, "FALSE"))
        .column("due_sulfite", STATES, TodayPage.due("v_sulfite", 3, "[v_sulfite]<=today"))
        .column("due_analyse", STATES, TodayPage.due("v_analyse", 4, "FALSE"))
        .column(
            "due_ferment",
            Registers.MOST_LOTS + 20,
            TodayPage.due("l_due", 5, "[l_state]=\"stalled\""))
        .block("tasks", "due_top", "due_ferment", STATES);
    TodayPage.workings(state);
  }

  private static void names(Book book) {
    book.formulaName("vessel_list", "INDEX(vessel_name,2):INDEX(vessel_name,MAX(2,vessel_last))");
    book.formulaName("lot_list", "INDEX(lot_name,2):INDEX(lot_name,MAX(2,lot_last))");
    book.formulaName(
        "target_list", "INDEX(target_names,2):INDEX(target_names,MAX(2,vessel_last+1))");
    book.formulaName(
        "source_list", "INDEX(source_names,2):INDEX(source_names,MAX(2,vessel_last+lot_last))");
  }
}
