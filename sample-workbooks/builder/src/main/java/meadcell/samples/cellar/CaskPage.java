package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.COUNT;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.DAYS;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Chart;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;
import meadcell.samples.sheet.Workings;

/** Everything about one cask, by the logs. */
final class CaskPage {
  static final String TITLE = "This cask";
  private static final int RIGHT = 7;
  private static final int TASTINGS = 12;
  private static final int FILLS = 9;

  /** How many fills back Movements is followed. */
  private static final int FILLS_BACK = 5;

  private static final Field OXYGEN = of(Quantity.MILLIGRAM_PER_LITRE, 1);
  private static final Field MG_PER_L = of(Quantity.MILLIGRAM_PER_LITRE, 0);
  private static final Field SCORE = of(Quantity.SCORE, 1);

  private CaskPage() {}

  static void add(Book book) {
    book.formulaName("cask_row", "MATCH(cask,vessel_name,0)");
    book.formulaName(
        "cask_past", "SUMPRODUCT((past_vessel=cask)*(past_liquid<>\"\")*ISNUMBER(past_from))");
    book.formulaName("cask_at", "IFERROR(INDEX(v_at,MATCH(cask,vessel_name,0)),\"\")");
    Page page = book.page(TITLE, 22, 16, 13, 13, 13, 13, 2, 22, 11, 11, 11, 11).onSheets(2);
    Block head =
        page.head(
            TITLE,
            "What it holds and wants, what wood and air have done, what tasters found. Everything stands in the logs; choose a cask.");
    int top = head.row();
    Block left = page.at(top, 0, 6);
    left.choose("Cask", "vessel_list", "C1", "cask", "Any name of the register Vessels.")
        .verdict(
            "IF(cask=\"\",\"Choose a cask.\",IF(cask_at<>\"\",\"It holds \"&cask_liquid&\", \"&FIXED(cask_holds,IF(units=\"US\",2,1),TRUE)&IF(units=\"US\",\" gal.\",\" L.\")&IF(N(INDEX(v_space,cask_row))<-0.01*N(INDEX(v_capacity,cask_row)),\" That is more than it can: look at its rows and its sizes.\",\"\"),IF(COUNT(held_volume)=0,\"The log cannot be followed: see Today.\",cask&\" is empty on this day.\")))",
            1);
    holds(left);
    wants(left);
    wood(left);
    Block right = page.at(top, RIGHT, 5);
    Table tastings = tastings(right);
    occupants(right);
    oxygen(right);
    int below = Math.max(left.row(), right.row()) + 1;
    page.turn(below);
    Block tools = page.at(below, 0, 6);
    ThreeWays.add(book, tools);
    NailSample.add(tools);
    scores(page, tastings, below + 1);
    FirstFill.add(book, page.at(below + 16, RIGHT, 5));
  }

  /** A line that stays blank while the cask is empty. */
  private static void line(
      Block block, String label, Field field, String formula, String name, String note) {
    block.result(label, field, "IF(cask_at=\"\",\"\",IFERROR(" + formula + ",\"\"))", name, note);
  }

  private static void line(Block block, String label, Field field, String formula) {
    line(block, label, field, formula, "", "");
  }

  private static void holds(Block block) {
    String dipped =
        "MAXIFS(mv_day,mv_to,cask,mv_from,\"gauge\",mv_day,\"<=\"&today,mv_day,\">=\"&cask_since)";
    String losses = "INDEX(VESSEL.LOSSES(moves,cask,cask_since,today,kept),1,";
    block.heading("What it holds");
    line(
        block,
        "Liquid",
        TEXT,
        "INDEX(held_liquid,cask_at)",
        "cask_liquid",
        "Of which most is in it: page Story has all.");
    line(block, "Filled on", DATE, "INDEX(v_since,cask_row)", "cask_since", "");
    line(block, "Days in it", DAYS, "today-cask_since");
    line(block, "Holds by the log", VOLUME, "INDEX(v_holds,cask_row)*litre", "cask_holds", "");
    line(
        block,
        "Headspace",
        VOLUME,
        "IF(INDEX(v_space,cask_row)=\"\",\"\",INDEX(v_space,cask_row)*litre)",
        "cask_space",
        "After the last row of Movements; what was lost since comes on top.");
    line(block, "Last dip on", DATE, "IF(" + dipped + "=0,\"\"," + dipped + ")", "cask_dipped", "");
    line(
        block,
        "by which it held",
        VOLUME,
        "AVERAGEIFS(mv_volume,mv_to,cask,mv_from,\"gauge\",mv_day,cask_dipped)*litre");
    line(
        block,
        "Topped up since filling",
        VOLUME,
        "SUMIFS(mv_volume,mv_to,cask,mv_from,\"<>gauge\",mv_day,\">\"&cask_since,mv_day,\"<=\"&today)*litre",
        "",
        "");
    line(
        block,
        "Lost since filling",
        VOLUME,
        losses + "1)*litre",
        "",
        "What dips found missing beyond all rows.");
    line(block, "± (standard)", VOLUME, losses + "2)*litre");
    line(
        block,
        "A year",
        of(Quantity.PERCENT_PER_YEAR, 1),
        losses + "3)",
        "",
        "Of what it held. Type it into Vessels, and Today reckons with it.");
  }

  private static void wants(Block block) {
    block.heading("What it wants");
    line(
        block,
        "Top up by",
        DATE,
        "INDEX(v_top,cask_row)",
        "",
        "Headspace, loss and limit: Vessels, else Start.");
    line(block, "Taste by", DATE, "INDEX(v_taste,cask_row)");
    line(block, "Analyse by", DATE, "INDEX(v_analyse,cask_row)");
    line(
        block,
        "Sulfite by",
        DATE,
        "INDEX(v_sulfite,cask_row)",
        "",
        "The earliest day by SULFITE.LASTS, from its readings if they surely fall, else from oxygen.");
    line(
        block,
        "Free SO₂ needed",
        MG_PER_L,
        "INDEX(v_need,cask_row)",
        "",
        "For the molecular SO₂ on Start, at the last pH.");
    line(
        block,
        "Last free SO₂",
        MG_PER_L,
        "INDEX(v_free,cask_row)",
        "cask_free",
        "Since the last filling or sulfite.");
    line(block, "Last pH", of(Quantity.PH, 2), "INDEX(v_ph,cask_row)", "cask_ph", "");
    line(
        block,
        "Molecular SO₂",
        of(Quantity.MILLIGRAM_PER_LITRE, 2),
        "IF(OR(cask_free=\"\",cask_ph=\"\"),\"\",SULFITE.MOLECULAR(cask_free,cask_ph))");
  }

  private static void wood(Block block) {
    block.heading("What the wood gives");
    String sizes =
        "INDEX(vessel_head,cask_row),INDEX(vessel_bilge,cask_row),INDEX(vessel_length,cask_row),kept";
    line(
        block,
        "Fill",
        COUNT,
        "INDEX(held_fills,cask_at)+INDEX(vessel_before,cask_row)",
        "cask_fill",
        "Counted by Movements, with those before it in Vessels.");
    line(
        block,
        "Wood",
        TEXT,
        "IF(INDEX(vessel_wood,cask_row)=\"\",\"\",INDEX(vessel_wood,cask_row)&\", \"&INDEX(vessel_toast,cask_row))");
    line(
        block,
        "Wood for each litre",
        of(Quantity.SQUARE_CENTIMETRE_PER_LITRE, 0),
        "IF(INDEX(v_wood,cask_row)=0,\"\",INDEX(v_wood,cask_row))");
    line(
        block,
        "Held in the staves",
        VOLUME,
        "BARREL.SOAKED(BARREL.AREA(" + sizes + "),kept)*litre",
        "",
        "6 mm deep, half of it liquid.");
  }

  private static Table tastings(Block block) {
    block.heading("Tastings of this filling");
    Table table =
        block.table(
            TASTINGS,
            always(
                "Tasted on",
                DATE,
                "IF(cask_at=\"\",\"\",IFERROR(IF(MINIFS(tasting_day,tasting_vessel,cask,tasting_score,\">=0\",tasting_day,\">\"&MAX(cask_since-1,MAX([ABOVE])),tasting_day,\"<=\"&today)=0,\"\",MINIFS(tasting_day,tasting_vessel,cask,tasting_score,\">=0\",tasting_day,\">\"&MAX(cask_since-1,MAX([ABOVE])),tasting_day,\"<=\"&today)),\"\"))"),
            always(
                "Months in it",
                of(Quantity.NUMBER, 1),
                "IF([Tasted on]=\"\",\"\",IFERROR(BLEND.AGE(moves,cask,cask,[Tasted on],,kept)/30.4375,\"\"))"),
            always(
                "Mean score",
                SCORE,
                "IF([Tasted on]=\"\",\"\",AVERAGEIFS(tasting_score,tasting_vessel,cask,tasting_day,[Tasted on]))"),
            always(
                "Tasters",
                COUNT,
                "IF([Tasted on]=\"\",\"\",COUNTIFS(tasting_vessel,cask,tasting_day,[Tasted on],tasting_score,\">=0\"))"),
            always(
                "Say bottle",
                COUNT,
                "IF([Tasted on]=\"\",\"\",COUNTIFS(tasting_vessel,cask,tasting_day,[Tasted on],tasting_verdict,\"bottle\"))"));
    table.name("Tasted on", "cask_tasted").name("Mean score", "cask_scores");
    String trend = "PANEL.TREND(cask_tasted,cask_scores)";
    block.verdict(
        "IF(COUNT(cask_tasted)<3,\"Three tastings or more show a trend.\",IF(INDEX(T,1,2)>0,\"Still improving: \",IF(INDEX(T,1,3)<0,\"Past its best: \",\"Level, or the tastings cannot tell: \"))&FIXED(INDEX(T,1,1),2,TRUE)&\" points a month, \"&FIXED(INDEX(T,1,2),2,TRUE)&\" to \"&FIXED(INDEX(T,1,3),2,TRUE)&\".\")"
            .replace("T,1,", trend + ",1,"),
        2);
    return table;
  }

  /** Fills by Movements, the present one first, and the casks of the register before them. */
  static void workings(Workings state) {
    state
        .column(
            "fill_at",
            FILLS_BACK,
            "IF(cask_at=\"\",\"\",IF(ROW()=2,today,IF([BEFORE_from]=\"\",\"\",IF(MAXIFS(mv_day,mv_from,cask,mv_day,\"<=\"&[BEFORE_from])=0,\"\",MAXIFS(mv_day,mv_from,cask,mv_day,\"<=\"&[BEFORE_from])-1))))"
                .replace("[BEFORE_from]", "INDEX(fill_from,ROW()-1)"))
        .arrays(
            "fill_row",
            FILLS_BACK,
            "IF([fill_at]=\"\",\"\",IFERROR(MATCH(cask,INDEX(VESSEL.LIST(moves_block,[fill_at],kept),0,1)&\"\",0),\"\"))")
        .column(
            "fill_from",
            FILLS_BACK,
            "IF([fill_row]=\"\",\"\",[fill_at]-INDEX(VESSEL.LIST(moves,[fill_at],kept),[fill_row],4))")
        .column(
            "fill_liquid",
            FILLS_BACK,
            "IF([fill_row]=\"\",\"\",INDEX(VESSEL.LIST(moves,[fill_at],kept),[fill_row],2)&\"\")")
        .column(
            "fill_volume",
            FILLS_BACK,
            "IF([fill_row]=\"\",\"\",VESSEL.HOLDS(moves,cask,[fill_from],kept))");
  }

  private static void occupants(Block block) {
    block.heading("What it held, oldest first");
    String earlier = "cask_past";
    String line =
        "ROUND(1000*MOD(SMALL(IF((past_vessel=cask)*(past_liquid<>\"\")*ISNUMBER(past_from),INT(past_from)+(ROW(past_vessel)-ROW(INDEX(past_vessel,1))+1)/1000,\"\"),[No.]),1),0)";
    // rows of the register first, then those of Movements, whose present one stands first there
    String back = "COUNT(fill_from)+" + earlier + "-[No.]+2";
    block.arrayTable(
        FILLS,
        always("Liquid", TEXT, pick("past_liquid", "fill_liquid", line, back)),
        always("No.", COUNT, "IF(OR(cask=\"\",#>" + earlier + "+COUNT(fill_from)),\"\",#)"),
        always("From", DATE, pick("past_from", "fill_from", line, back)),
        always(
            "Volume",
            VOLUME,
            "IF(PICK=\"\",\"\",PICK*litre)"
                .replace("PICK", pick("past_volume", "fill_volume", line, back))));
    block.note(
        "Before Movements: register Past occupants. What its staves still held when it was filled is a row of its own in Movements, at most what is held in the staves; page Story has its share.");
  }

  private static String pick(String past, String fill, String line, String back) {
    return "IF([No.]=\"\",\"\",IF([No.]<=cask_past,INDEX("
        + past
        + ","
        + line
        + "),INDEX("
        + fill
        + ","
        + back
        + ")))";
  }

  private static void oxygen(Block block) {
    block.heading("Oxygen since it was pitched").headers("By", "mg/L", "at least", "at most");
    block.array(
        6,
        "IF(cask_at=\"\",\"\",IFERROR(BLEND.OXYGEN(moves_block,air_block,cask,,today,,,,,house_oxygen,kept),\"\"))",
        TEXT,
        OXYGEN,
        OXYGEN,
        OXYGEN);
  }

  private static void scores(Page page, Table tastings, int row) {
    page.chart(
        new Chart(
                row,
                RIGHT,
                row + 15,
                RIGHT + 5,
                "Mean score of the panel, this filling",
                "date",
                "score")
            .points(tastings, "Tasted on", "Mean score")
            .up(0, 20, 5, "0"));
  }
}
