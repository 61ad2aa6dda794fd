package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Field.words;
import static meadcell.samples.sheet.Log.typed;
import static meadcell.samples.sheet.Table.always;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Log;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Workings;

/** What an instrument lacks, by its checks in water, ice and known solutions. */
final class InstrumentPage {
  static final String TITLE = "Instruments";
  static final String CHECKS = "Instrument checks";
  private static final int MOST = 300;
  private static final int SHOWN = 16;

  /** Degrees, °Bx or gravity, as the instrument shows them. */
  private static final Field READ = of(Quantity.NUMBER, 4);

  private static final Field FINE = of(Quantity.NUMBER, 5);

  private static final String VERDICT =
      """
      IF(tool="","Choose an instrument.",
      IF(COUNT(tool_rows)=0,"Instrument checks has no complete check of it up to today.",
      IF(COUNT(tool_rows)>SHOWN,"It has more checks than the page shows: the last SHOWN count.","")
      &IF(tool_at="","Type a reading for which the offset is wanted.",
      IF(tool_offset="",IF(tool_u="",CELLAR.WHY("GRAVITY.OFFSET",tool_seen,tool_true,tool_at),CELLAR.WHY("GRAVITY.OFFSET",tool_seen,tool_true,tool_at,tool_u)),
      "Add "&FIXED(tool_offset,IF(tool_kind="hydrometer",4,2),TRUE)&" ± "&FIXED(tool_offset_u,IF(tool_kind="hydrometer",4,2),TRUE)&" to a reading of "&tool_at&": "&IF(tool_kind="thermometer","as thermometer of GRAVITY.CORRECT.",IF(tool_kind="refractometer","as offset of GRAVITY.BRIXCORRECT.","as offset of GRAVITY.CORRECT."))
      &IF(ABS(tool_offset)<2*tool_offset_u," It is less than twice its uncertainty: it may be none.",""))))
      &IF(COUNT(ck_open)=0,""," Not counted, because they are not complete: "&COUNT(ck_open)&" in Instrument checks, first in line "&(MIN(ck_open)+ROW(INDEX(check_day,1))-1)&"."))"""
          .replace("\n", "")
          .replace("SHOWN", Integer.toString(SHOWN));

  private InstrumentPage() {}

  static void log(Book book, Season season) {
    new Log(
            book,
            CHECKS,
            "Hydrometers and refractometers in water and in weighed solutions, thermometers in melting ice. Wipe the instrument, let all come to one temperature, and read twice.",
            MOST,
            "IF(AND(OR([check_in]=\"sugar\",[check_in]=\"salt\"),NOT(ISNUMBER([check_percent]))),\", no share dissolved\",\"\")&IF(AND([check_kind]=\"hydrometer\",COUNT([check_temperature],[check_calibration])<2),\", no temperatures\",\"\")&IF(ISNUMBER(INDEX(ck_open,ROW())),\", so it is not counted\",\"\")",
            typed("Instrument", "check_tool", 22, TEXT).needed("instrument"),
            typed("Day", "check_day", 12, DATE).needed("day"),
            typed("Kind", "check_kind", 15, words("hydrometer", "refractometer", "thermometer"))
                .needed("kind"),
            typed("Checked in", "check_in", 13, words("water", "sugar", "salt", "ice"))
                .needed("liquid"),
            typed(
                "Dissolved",
                "check_percent",
                12,
                between(Quantity.PERCENT_MASS, 1, "g in 100 g of solution.", 0, 60)),
            typed(
                "Temperature", "check_temperature", 14, arg("GRAVITY.SOLUTION", "temperature", 1)),
            typed("Made for", "check_calibration", 11, arg("GRAVITY.SOLUTION", "calibration", 0)),
            typed("As read", "check_read", 10, READ).needed("reading"),
            typed(
                "±",
                "check_u",
                8,
                between(
                    Quantity.NUMBER,
                    4,
                    "Standard uncertainty: a third of what can just be told apart (common practice, no source). Blank: from the scatter of three checks or more.",
                    0.00001,
                    5)),
            typed("Remarks", "check_note", 40, TEXT))
        .fill(season.checks());
  }

  /** What each check should have shown; an incomplete row has none. */
  static void workings(Workings state) {
    int rows = MOST + 20;
    state
        .column(
            "ck_due",
            rows,
            "IF(ROW()>ROWS(check_tool),\"\",IF(OR(INDEX(check_tool,ROW())=\"\",NOT(ISNUMBER(INDEX(check_day,ROW()))),NOT(ISNUMBER(INDEX(check_read,ROW())))),\"\",IFERROR("
                + "IF(INDEX(check_kind,ROW())=\"thermometer\",IF(INDEX(check_in,ROW())=\"ice\",IF(kept=\"US\",32,0),\"\"),"
                + "IF(OR(INDEX(check_in,ROW())=\"\",INDEX(check_in,ROW())=\"ice\",AND(INDEX(check_in,ROW())<>\"water\",NOT(ISNUMBER(INDEX(check_percent,ROW()))))),\"\","
                + "IF(INDEX(check_kind,ROW())=\"refractometer\",IF(INDEX(check_in,ROW())=\"water\",0,IF(INDEX(check_in,ROW())=\"sugar\",INDEX(check_percent,ROW()),GRAVITY.SALTBRIX(INDEX(check_percent,ROW())))),"
                + "IF(AND(INDEX(check_kind,ROW())=\"hydrometer\",ISNUMBER(INDEX(check_temperature,ROW())),ISNUMBER(INDEX(check_calibration,ROW()))),GRAVITY.SOLUTION(IF(INDEX(check_in,ROW())=\"water\",0,INDEX(check_percent,ROW())),INDEX(check_temperature,ROW()),IF(INDEX(check_in,ROW())=\"salt\",\"salt\",\"sugar\"),INDEX(check_calibration,ROW()),kept),\"\")))),\"\")))")
        .column(
            "ck_key",
            rows,
            "IF([ck_due]=\"\",\"\",IF(AND(INDEX(check_tool,ROW())&\"\"=tool&\"\",INT(INDEX(check_day,ROW()))<=today,INDEX(check_day,ROW())>=tool_from),INT(INDEX(check_day,ROW()))+ROW()/1000,\"\"))")
        .column(
            "ck_open",
            rows,
            "IF(OR([ck_due]<>\"\",ROW()>ROWS(check_tool)),\"\",IF(COUNTA(INDEX(check_tool,ROW()),INDEX(check_day,ROW()),INDEX(check_read,ROW()))=0,\"\",ROW()))")
        .column(
            "ck_first",
            rows,
            "IF(ROW()>ROWS(check_tool),\"\",IF(INDEX(check_tool,ROW())=\"\",\"\",IF(COUNTIF(INDEX(check_tool,1):INDEX(check_tool,ROW()),INDEX(check_tool,ROW()))=1,ROW(),\"\")))")
        .column(
            "ck_name",
            rows,
            "IF(ROW()-1>COUNT(ck_first),\"\",INDEX(check_tool,SMALL(ck_first,ROW()-1))&\"\")")
        .column("ck_like_day", SHOWN, like("tool_rows"))
        .block("tool_days", "ck_like_day", "ck_like_day", SHOWN)
        .column("ck_like_add", SHOWN, like("tool_adds"))
        .block("tool_offsets", "ck_like_add", "ck_like_add", SHOWN);
  }

  /** Only checks in the same as the newest tell of drift; others may differ by the scale. */
  private static String like(String column) {
    return "IF(INDEX(tool_where,ROW()-1)=\"\",\"\",IF(INDEX(tool_where,ROW()-1)=INDEX(tool_where,1),INDEX(COLUMN,ROW()-1),\"\"))"
        .replace("COLUMN", column);
  }

  static void add(Book book) {
    book.formulaName("tool_list", "INDEX(ck_name,2):INDEX(ck_name,MAX(2,COUNT(ck_first)+1))");
    counted(book, "tool_seen", "tool_read");
    counted(book, "tool_true", "tool_due");
    Page page = book.page(TITLE, 30, 14, 14, 14, 14, 14);
    Block block =
        page.head(
            TITLE,
            "What it lacks, by its checks: the offset that functions take, its uncertainty, and its drift.");
    block
        .choose("Instrument", "tool_list", "Hydrometer 1", "tool", "")
        .result(
            "Kind",
            TEXT,
            "IF(tool=\"\",\"\",IFERROR(INDEX(check_kind,MATCH(tool&\"\",check_tool,0))&\"\",\"\"))",
            "tool_kind",
            "Numbers are in its own scale: SG, °Bx, or the degrees that the logs are kept in.")
        .input(
            "Offset wanted at",
            READ,
            1.05,
            "tool_at",
            "A reading; from two checks on, the offset lies on their straight line.")
        .input("Checks count from", DATE, null, "tool_from", "Blank: from the first on.")
        .result(
            "Uncertainty of one check",
            READ,
            "IF(COUNT(tool_us)=0,\"\",MAX(tool_us))",
            "tool_u",
            "The largest of them. Blank: from their scatter, which wants three.")
        .verdict(VERDICT, 3, "tool_verdict")
        .table(
            SHOWN,
            always(
                "Checked in",
                TEXT,
                "IF([Day]=\"\",\"\",INDEX(check_in,AT)&IF(OR(INDEX(check_in,AT)=\"sugar\",INDEX(check_in,AT)=\"salt\"),\", \"&INDEX(check_percent,AT)&\" %\",\"\"))"
                    .replace("AT", at())),
            always("Day", DATE, "IF(#>COUNT(ck_key),\"\",INT(LARGE(ck_key,#)))"),
            always("As read", READ, "IF([Day]=\"\",\"\",INDEX(check_read,AT))".replace("AT", at())),
            always("Due", READ, "IF([Day]=\"\",\"\",INDEX(ck_due,AT))".replace("AT", at())),
            always("To add", FINE, "IF([Day]=\"\",\"\",[Due]-[As read])"),
            always(
                "±",
                READ,
                "IF([Day]=\"\",\"\",IF(ISNUMBER(INDEX(check_u,AT)),INDEX(check_u,AT),\"\"))"
                    .replace("AT", at())))
        .name("Checked in", "tool_where")
        .name("Day", "tool_rows")
        .name("As read", "tool_read")
        .name("Due", "tool_due")
        .name("To add", "tool_adds")
        .name("±", "tool_us");
    results(block);
  }

  /** All checks; or the newest, where all are of one point and no line can be laid through. */
  private static void counted(Book book, String name, String column) {
    book.formulaName(
        name,
        "INDEX(COLUMN,1):INDEX(COLUMN,IF(MAX(tool_due)=MIN(tool_due),1,MAX(1,COUNT(tool_rows))))"
            .replace("COLUMN", column));
  }

  private static String at() {
    return "ROUND(MOD(LARGE(ck_key,#),1)*1000,0)";
  }

  private static void results(Block block) {
    block.form(
        """
        # What to add to its reading
        Offset                     | tool_offset   | NUMBER 5 | =IF(OR(COUNT(tool_rows)=0,tool_at=""),"",OFFSET 1) | Into offset of GRAVITY.CORRECT or GRAVITY.BRIXCORRECT; a thermometer's into thermometer.
        its standard uncertainty   | tool_offset_u | NUMBER 5 | =IF(tool_offset="","",OFFSET 2) | For CELLAR.UNCERTAINTY.
        # Does it drift?
        Offset today               |               | NUMBER 5 | =IF(tool_drift="","",DRIFT 1) | By the checks in the same as the newest, on a straight line over the days.
        its standard uncertainty   |               | NUMBER 5 | =IF(tool_drift="","",DRIFT 2)
        Drift in a year            | tool_drift    | NUMBER 5 | =IF(COUNT(tool_days)<2,"",DRIFT 3)
        its standard uncertainty   | tool_drift_u  | NUMBER 5 | =IF(tool_drift="","",DRIFT 4)
        ? 2 |  | IF(tool_drift="",IF(COUNT(tool_days)<2,"No verdict on drift: it wants two checks in the same as the newest.",IF(tool_u="",CELLAR.WHY("GRAVITY.DRIFT",tool_days,tool_offsets,today),CELLAR.WHY("GRAVITY.DRIFT",tool_days,tool_offsets,today,tool_u))),IF(ABS(tool_drift)<2*tool_drift_u,"No drift that its uncertainty would not explain.","It drifts, or it changed at once: look for a crack, a slipped scale or dirt, and check it again."))
        . Checks of one single point, as in ice, hold for all readings, and the newest is taken. Pages correct Readings for temperature, not by this offset: where it counts, type the reading with the offset added, and say so in its remarks.
        """
            .replace("OFFSET 1", cell("GRAVITY.OFFSET(tool_seen,tool_true,tool_at)", 1))
            .replace("OFFSET 2", cell("GRAVITY.OFFSET(tool_seen,tool_true,tool_at)", 2))
            .replace("DRIFT 1", cell("GRAVITY.DRIFT(tool_days,tool_offsets,today)", 1))
            .replace("DRIFT 2", cell("GRAVITY.DRIFT(tool_days,tool_offsets,today)", 2))
            .replace("DRIFT 3", cell("GRAVITY.DRIFT(tool_days,tool_offsets,today)", 3))
            .replace("DRIFT 4", cell("GRAVITY.DRIFT(tool_days,tool_offsets,today)", 4)));
  }

  /** One number of a row of results; an uncertainty left blank is left out. */
  private static String cell(String call, int place) {
    String with = call.replace(")", ",tool_u)");
    return "IFERROR(IF(tool_u=\"\",INDEX(%s,1,%d),INDEX(%s,1,%d)),\"\")"
        .formatted(call, place, with, place);
  }
}
