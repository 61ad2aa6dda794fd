package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.lastDay;
import static meadcell.samples.cellar.Formulas.latest;

import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Workings;

/**
 * What pages rest on: every complete row of the logs once more as functions want it, the state of
 * each vessel and lot on the day of the book, and the lists to choose from.
 */
final class Behind {
  static final String MOVES = "Workings moves";
  static final String STATE = "Workings";

  /** Rows that may be inserted into a log before its last are no longer seen, which Today tells. */
  private static final int SPARE = 200;

  private static final int STATES = Registers.MOST_VESSELS + 20;

  private Behind() {}

  static void add(Book book) {
    moves(new Workings(book, MOVES));
    book.formulaName("moves", "INDEX(moves_block,1,1):INDEX(moves_block,moves_used,6)");
    book.formulaName("analyses", "INDEX(analyses_block,1,1):INDEX(analyses_block,analyses_used,5)");
    Workings rows = new Workings(book, "Workings readings");
    readings(rows);
    analyses(rows);
    Workings state = new Workings(book, STATE);
    lists(state);
    vessels(state);
    Feeds.workings(book);
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

  private static void moves(Workings moves) {
    int rows = Logs.MOST_MOVES + SPARE;
    moves
        .column("mv_from", rows, "IF([mv_volume]=\"\",\"\",INDEX(move_from,ROW()))")
        .column("mv_to", rows, "IF([mv_volume]=\"\",\"\",INDEX(move_to,ROW()))")
        .column(
            "mv_volume",
            rows,
            "IF(ROW()>ROWS(move_day),\"\",IF(OR(INDEX(move_from,ROW())=\"\",INDEX(move_to,ROW())=\"\",NOT(ISNUMBER(INDEX(move_day,ROW())))),\"\","
                + "IF(ISNUMBER(INDEX(move_volume,ROW())),INDEX(move_volume,ROW()),"
                + "IF(ISNUMBER(INDEX(move_dip,ROW())),IFERROR(BARREL.CONTENTS("
                + "INDEX(vessel_head,MATCH(INDEX(move_to,ROW()),vessel_name,0)),"
                + "INDEX(vessel_bilge,MATCH(INDEX(move_to,ROW()),vessel_name,0)),"
                + "INDEX(vessel_length,MATCH(INDEX(move_to,ROW()),vessel_name,0)),"
                + "INDEX(move_dip,ROW()),kept),\"\"),\"\"))))")
        .column("mv_day", rows, "IF([mv_volume]=\"\",\"\",INT(INDEX(move_day,ROW())))")
        .column(
            "mv_u",
            rows,
            "IF([mv_volume]=\"\",\"\",IF(ISNUMBER(INDEX(move_u,ROW())),INDEX(move_u,ROW()),\"\"))")
        // by the time of day, if one is typed with it; then by number
        .column(
            "mv_order",
            rows,
            "IF([mv_volume]=\"\",\"\",IF(ISNUMBER(INDEX(move_no,ROW())),1E7*MOD(INDEX(move_day,ROW()),1)+INDEX(move_no,ROW()),\"\"))")
        .column(
            "mv_open",
            rows,
            "IF(OR([mv_volume]<>\"\",ROW()>ROWS(move_day)),\"\",IF(COUNTA(INDEX(move_day,ROW()),INDEX(move_from,ROW()),INDEX(move_to,ROW()),INDEX(move_volume,ROW()),INDEX(move_dip,ROW()))=0,\"\",ROW()))")
        .block("moves_block", "mv_from", "mv_order", rows)
        .column("moves_end", 1, "SUMPRODUCT(MAX((mv_volume<>\"\")*ROW(mv_volume)))")
        .column("moves_last", 1, "MAX(1,[moves_end]-1)")
        .block("moves_used", "moves_last", "moves_last", 1);
  }

  private static void readings(Workings readings) {
    int rows = Logs.MOST + SPARE;
    readings
        .column(
            "g_at",
            rows,
            "IF(ROW()>ROWS(reading_lot),\"\",IFERROR(MATCH(INDEX(reading_lot,ROW())&\"\",lot_name,0),IFERROR(MATCH(INDEX(held_lot,MATCH(INDEX(reading_lot,ROW())&\"\",held_name,0)),lot_name,0),\"\")))")
        .column(
            "g_gravity",
            rows,
            "IF(OR([g_at]=\"\",NOT(ISNUMBER(INDEX(reading_day,ROW()))),NOT(ISNUMBER(INDEX(reading_gravity,ROW()))),NOT(ISNUMBER(INDEX(reading_temperature,ROW())))),\"\","
                + "IFERROR(GRAVITY.CORRECT(INDEX(reading_gravity,ROW()),INDEX(reading_temperature,ROW()),"
                + "IF(ISNUMBER(INDEX(lot_calibration,[g_at])),INDEX(lot_calibration,[g_at]),IF(kept=\"US\",60,20)),"
                + "INDEX(lot_original,[g_at]),kept),\"\"))")
        .column("g_lot", rows, "IF([g_gravity]=\"\",\"\",INDEX(reading_lot,ROW()))")
        .column("g_day", rows, "IF([g_gravity]=\"\",\"\",INT(INDEX(reading_day,ROW())))")
        .column(
            "g_open",
            rows,
            "IF(OR([g_gravity]<>\"\",ROW()>ROWS(reading_day)),\"\",IF(COUNTA(INDEX(reading_day,ROW()),INDEX(reading_lot,ROW()),INDEX(reading_gravity,ROW()),INDEX(reading_temperature,ROW()))=0,\"\",ROW()))");
  }

  private static void analyses(Workings analyses) {
    int rows = Logs.MOST + SPARE;
    analyses
        .column("an_lot", rows, "IF([an_value]=\"\",\"\",INDEX(analysis_lot,ROW()))")
        .column("an_day", rows, "IF([an_value]=\"\",\"\",INT(INDEX(analysis_day,ROW())))")
        .column("an_what", rows, "IF([an_value]=\"\",\"\",INDEX(analysis_what,ROW()))")
        .column(
            "an_value",
            rows,
            "IF(ROW()>ROWS(analysis_day),\"\",IF(OR(INDEX(analysis_lot,ROW())=\"\",INDEX(analysis_what,ROW())=\"\",NOT(ISNUMBER(INDEX(analysis_day,ROW()))),NOT(ISNUMBER(INDEX(analysis_value,ROW())))),\"\",INDEX(analysis_value,ROW())))")
        .column(
            "an_u",
            rows,
            "IF([an_value]=\"\",\"\",IF(ISNUMBER(INDEX(analysis_u,ROW())),INDEX(analysis_u,ROW()),\"\"))")
        .column(
            "an_open",
            rows,
            "IF(OR([an_value]<>\"\",ROW()>ROWS(analysis_day)),\"\",IF(COUNTA(INDEX(analysis_lot,ROW()),INDEX(analysis_day,ROW()),INDEX(analysis_what,ROW()),INDEX(analysis_value,ROW()))=0,\"\",ROW()))")
        .block("analyses_block", "an_lot", "an_u", rows)
        .column("analyses_end", 1, "SUMPRODUCT(MAX((an_value<>\"\")*ROW(an_value)))")
        .column("analyses_last", 1, "MAX(1,[analyses_end]-1)")
        .block("analyses_used", "analyses_last", "analyses_last", 1);
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
            "IF([v_cask]=\"\",\"\",MAX([v_since],MAXIFS(addition_day,addition_vessel,[v_name],addition_what,\"*sulfi*\",addition_day,\"<=\"&today)))")
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
            "IF([l_open]=\"\",\"\",IF(OR([l_read]<=INDEX(l_fed,ROW()),INDEX(lot_final,ROW())=\"\"),\"cannot tell\",IFERROR(FERMENT.STATE(IF((g_lot=INDEX(lot_name,ROW()))*(g_day<=today)*(g_day>INDEX(l_fed,ROW())),g_day,\"\"),IF((g_lot=INDEX(lot_name,ROW()))*(g_day<=today)*(g_day>INDEX(l_fed,ROW())),g_gravity,\"\"),INDEX(lot_final,ROW())),\"cannot tell\")))");
  }

  /**
   * When something is due, with its row and kind behind the point: 1 top up, 2 taste, 3 sulfite, 4
   * analyse, 5 a ferment.
   */
  private static void tasks(Workings state) {
    state
        .column("due_top", STATES, due("v_top", 1))
        .column("due_taste", STATES, due("v_taste", 2))
        .column("due_sulfite", STATES, due("v_sulfite", 3))
        .column("due_analyse", STATES, due("v_analyse", 4))
        .column(
            "due_ferment",
            Registers.MOST_LOTS + 20,
            "IF([l_open]=\"\",\"\",IF([l_read]=0,INDEX(lot_pitched,ROW()),IF(OR([l_state]=\"finished\",[l_state]=\"stalled\"),[l_read],[l_read]+house_read))+(ROW()*8+5)/10000)")
        .block("tasks", "due_top", "due_ferment", STATES);
  }

  private static String due(String date, int kind) {
    return "IF([" + date + "]=\"\",\"\",[" + date + "]+(ROW()*8+" + kind + ")/10000)";
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
