package meadcell.samples.cellar;

import static meadcell.samples.sheet.Block.Entry.worked;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** Up to four meads side by side, by the tastings of one day; and the triangle test. */
final class PanelPage {
  static final String TITLE = "Panel";
  private static final int TASTERS = 12;
  private static final int MEADS = 4;
  private static final int RIGHT = 10;
  private static final Field SCORE = of(Quantity.SCORE, 1);
  private static final Field RANK = of(Quantity.NUMBER, 1);

  private PanelPage() {}

  static void add(Book book) {
    book.formulaName(
        "panel_count",
        "IF(panel_1=\"\",0,IF(panel_2=\"\",1,IF(panel_3=\"\",2,IF(panel_4=\"\",3,4))))");
    Page page = book.page(TITLE, 12, 11, 11, 11, 11, 7, 7, 7, 7, 2, 30, 12, 30);
    Block head =
        page.head(
            TITLE,
            "Are these meads different, and which is liked better? Scores and tasters stand in Tastings; choose up to four vessels. Six tasters see little; the page says how little.");
    int top = head.row();
    Block left = page.at(top, 0, 9);
    Block right = page.at(top, RIGHT, 3);
    meads(right);
    Table table = left.arrayTable(TASTERS, columns());
    table.nameBlock("Rank 1", "Rank 4", "panel_ranks");
    means(left, table);
    verdict(right);
    triangle(page.at(Math.max(left.row(), 0), 0, 9).labels(3));
    power(right);
  }

  private static void meads(Block block) {
    block
        .choose("First mead", "vessel_list", "C1", "panel_1", "")
        .choose("Second", "vessel_list", "C2", "panel_2", "")
        .choose(
            "Third",
            "vessel_list",
            "C3",
            "panel_3",
            "Leave blank what is not compared, from the last on.")
        .choose("Fourth", "vessel_list", "C4", "panel_4", "")
        .input(
            "Tasted on",
            DATE,
            null,
            "panel_day",
            "Blank: the last day on which the first was tasted.")
        .result(
            "Day taken",
            DATE,
            "IF(panel_day<>\"\",panel_day,IF(MAXIFS(tasting_day,tasting_vessel,panel_1&\"\",tasting_score,\">=0\",tasting_day,\"<=\"&today)=0,\"\",MAXIFS(tasting_day,tasting_vessel,panel_1&\"\",tasting_score,\">=0\",tasting_day,\"<=\"&today)))",
            "panel_on",
            "");
  }

  private static Table.Column[] columns() {
    Table.Column[] columns = new Table.Column[1 + 2 * MEADS];
    columns[0] =
        always(
            "Taster",
            TEXT,
            "IFERROR(INDEX(tasting_taster,MATCH(1,(tasting_day=panel_on)*((tasting_vessel=panel_1)+(tasting_vessel=panel_2)+(tasting_vessel=panel_3)+(tasting_vessel=panel_4)>0)*ISNUMBER(tasting_score)*(tasting_taster<>\"\")*(COUNTIF([ABOVE],tasting_taster)=0),0)),\"\")");
    for (int i = 1; i <= MEADS; i++) {
      columns[i] =
          always(
              "Score " + i,
              SCORE,
              "IF(OR([Taster]=\"\",panel_#=\"\"),\"\",IFERROR(AVERAGEIFS(tasting_score,tasting_day,panel_on,tasting_vessel,panel_#,tasting_taster,[Taster]),\"\"))"
                  .replace("panel_#", "panel_" + i));
      columns[MEADS + i] =
          always(
              "Rank " + i,
              RANK,
              "IF([Score N]=\"\",\"\",IF(COUNT([Score 1],[Score 2],[Score 3],[Score 4])<panel_count,\"\",COUNTIF([Score 1]:[Score 4],\">\"&[Score N])+(COUNTIF([Score 1]:[Score 4],[Score N])+1)/2))"
                  .replace("Score N", "Score " + i));
    }
    return columns;
  }

  private static void means(Block block, Table table) {
    Block.Entry[] names = new Block.Entry[MEADS];
    Block.Entry[] means = new Block.Entry[MEADS];
    Block.Entry[] spreads = new Block.Entry[MEADS];
    Block.Entry[] sums = new Block.Entry[2 * MEADS];
    for (int i = 1; i <= MEADS; i++) {
      String scores = table.range("Score " + i);
      names[i - 1] = worked(TEXT, "panel_" + i + "&\"\"", "");
      means[i - 1] = worked(SCORE, "IF(COUNT(" + scores + ")=0,\"\",AVERAGE(" + scores + "))", "");
      spreads[i - 1] =
          worked(
              SCORE,
              "IF(COUNT(S)<2,\"\",INDEX(PANEL.SCORE(S),1,2))".replace("S)", scores + ")"),
              "");
      sums[MEADS + i - 1] =
          worked(
              RANK,
              "IF(COUNT(R)=0,\"\",SUM(R))".replace("R)", table.range("Rank " + i) + ")"),
              "panel_sum_" + i);
    }
    block.line("Mead", names).line("Mean", means).line("± 95 %", spreads).line("Rank sum", sums);
    block.note(
        "1 is best. Ranks come from the scores; a taster who did not taste all meads is not ranked.");
  }

  private static void verdict(Block block) {
    String ranks = "INDEX(panel_ranks,1,1):INDEX(panel_ranks," + TASTERS + ",panel_count)";
    block
        .heading("Do they differ?")
        .result(
            "Chance of such ranks if all were alike",
            of(Quantity.PROBABILITY, 4),
            "IF(COUNT(panel_sum_1)=0,\"\",IFERROR(PANEL.RANKTEST(" + ranks + "),\"\"))",
            "rank_p",
            "Friedman's test; three meads or four.")
        .result(
            "Least difference of rank sums that counts",
            RANK,
            "IF(rank_p=\"\",\"\",PANEL.RANKDIFFERENCE(" + ranks + "))",
            "rank_least",
            "For pairs chosen before tasting.")
        .result(
            "Agreement of the tasters",
            of(Quantity.NUMBER, 2),
            "IF(rank_p=\"\",\"\",PANEL.AGREEMENT(" + ranks + "))",
            "",
            "Kendall's W: 0 none, 1 complete.")
        .verdict(
            "IF(panel_count<3,\"Choose three meads or four, or use the triangle test.\",IF(rank_p=\"\",\"No taster tasted all of them that day.\",IF(rank_p>0.05,\"Cannot tell them apart by rank.\",\"Some differ. The first against the second: \"&IF(ABS(panel_sum_1-panel_sum_2)<rank_least,\"cannot tell.\",IF(panel_sum_1<panel_sum_2,\"the first is liked better.\",\"the second is liked better.\")))))",
            3);
  }

  private static void triangle(Block block) {
    block.form(
        """
        # May two be pooled? A triangle test
        Tasters                       | tri_tasters | PANEL.TRIANGLE tasters 0 | 6 | Each gets three glasses, two alike.
        Found the odd glass           | tri_correct | PANEL.TRIANGLE correct 0 | 3
        Share we care about           | tri_share   | PANEL.SIMILAR share 0    | 30 | If fewer than this really taste it, pool.
        Chance if all guessed         | tri_p       | PROBABILITY 4            | =IF(OR(tri_tasters="",tri_correct=""),"",PANEL.TRIANGLE(tri_tasters,tri_correct))
        Needed to call them different | tri_needed  | COUNT 0                  | =IF(tri_tasters="","",PANEL.TRIANGLENEEDED(tri_tasters)) | At the 5 % level.
        """);
  }

  private static void power(Block block) {
    block.form(
        """
        # What a triangle of that size tells
        Chance that these tasters notice | tri_power | PERCENT 1 | =IF(OR(tri_tasters="",tri_share=""),"",100*PANEL.POWER(tri_tasters,tri_share)) | If that share really tastes a difference.
        Tasters for 80 %                 | tri_80    | COUNT 0   | =IF(tri_share="","",INDEX(PANEL.TASTERSNEEDED(tri_share),1,1))
        Tasters for 90 %                 | tri_90    | COUNT 0   | =IF(tri_share="","",INDEX(PANEL.TASTERSNEEDED(tri_share),1,2)) | Repeats by the same tasters count less than new tasters.
        ? 3 |  | IF(OR(tri_p="",tri_share=""),"Type who tasted and who found the odd glass.",IF(tri_p<=0.05,"They differ: do not pool unasked.",IF(PANEL.SIMILAR(tri_tasters,tri_correct,tri_share)=1,"Alike enough: they may be pooled.","Cannot tell. "&tri_tasters&" tasters notice such a difference in "&FIXED(tri_power,0,TRUE)&" of 100 cases; "&tri_80&" would in 80, "&tri_90&" in 90.")))
        """);
  }
}
