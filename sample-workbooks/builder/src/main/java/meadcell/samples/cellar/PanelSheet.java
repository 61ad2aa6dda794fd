package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.COUNT;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.DAYS;
import static meadcell.samples.sheet.Field.NUMBER;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.PROBABILITY;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import java.time.LocalDate;
import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Chart;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** What a small panel can and cannot tell. */
final class PanelSheet {
  static final String TITLE = "Panel";
  private static final Field SCORE =
      between(Quantity.SCORE, 1, "Mean of the panel, 0 to 20.", 0, 20);
  private static final int RIGHT = 7;

  private PanelSheet() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 12, 13, 13, 13, 13, 12, 2, 36, 14, 42);
    Block head =
        page.head(
            TITLE,
            "Is it still getting better? Is it another mead than last year's? May two casks be pooled? Six tasters see little; the sheet says how little.");
    int top = head.row();
    trend(page, page.at(top, 0, 6), page.at(top, RIGHT, 3));
    int second = top + 27;
    page.turn(second + 1);
    ranks(page.at(second, 0, 6), page.at(second, RIGHT, 3));
    triangle(page.at(second + 18, 0, 6).labels(3), page.at(second + 18, RIGHT, 3));
  }

  private static void trend(Page page, Block left, Block right) {
    left.heading("Scores of cask C1 over the months");
    Table scores =
        left.table(
            16,
            in("Date", DATE),
            out("Day", DAYS, "[Date]-panel_filled"),
            in("Mean score", SCORE),
            in("Tasters", of(Quantity.COUNT, 0)),
            out("Months in wood", of(Quantity.NUMBER, 1), "[Day]*12/365.25"));
    scores.fill(
        new Object[][] {
          {LocalDate.of(2025, 6, 16), 9.8, 6},
          {LocalDate.of(2025, 7, 14), 10.6, 5},
          {LocalDate.of(2025, 8, 18), 10.9, 6},
          {LocalDate.of(2025, 9, 15), 11.9, 6},
          {LocalDate.of(2025, 10, 20), 12.6, 6},
          {LocalDate.of(2025, 11, 17), 13.2, 5},
          {LocalDate.of(2025, 12, 15), 13.7, 6},
          {LocalDate.of(2026, 1, 19), 14.6, 6},
          {LocalDate.of(2026, 2, 16), 15.1, 6}
        });
    String days = scores.range("Day");
    String means = scores.range("Mean score");
    right
        .heading("Still getting better?")
        .input("Filled on", DATE, LocalDate.of(2025, 5, 12), "panel_filled", "")
        .result(
            "Gain a month",
            of(Quantity.SCORE, 2),
            "INDEX(PANEL.TREND(" + days + "," + means + "),1,1)",
            "panel_slope",
            "Slope of a straight line through all tastings.")
        .result(
            "at least",
            of(Quantity.SCORE, 2),
            "INDEX(PANEL.TREND(" + days + "," + means + "),1,2)",
            "panel_low",
            "95 % limits.")
        .result(
            "at most",
            of(Quantity.SCORE, 2),
            "INDEX(PANEL.TREND(" + days + "," + means + "),1,3)",
            "panel_high",
            "")
        .result(
            "Gain a month, last four",
            of(Quantity.SCORE, 2),
            "INDEX(PANEL.TREND(" + days + "," + means + ",4),1,1)",
            "",
            "Four tastings say little about a turn: see the limits.")
        .result(
            "at least",
            of(Quantity.SCORE, 2),
            "INDEX(PANEL.TREND(" + days + "," + means + ",4),1,2)",
            "panel_late_low",
            "")
        .result(
            "at most",
            of(Quantity.SCORE, 2),
            "INDEX(PANEL.TREND(" + days + "," + means + ",4),1,3)",
            "panel_late_high",
            "")
        .result(
            "Line at the day of filling",
            of(Quantity.SCORE, 2),
            "AVERAGE(" + means + ")-panel_slope*AVERAGE(" + days + ")*12/365.25",
            "panel_level",
            "For the chart.")
        .verdict(
            "IF(panel_late_low>0,\"Still improving.\",IF(panel_late_high<0,\"Past its best.\",IF(panel_low>0,\"Improving over the whole time; the last tastings alone cannot say whether it has levelled.\",\"No trend can be seen.\")))",
            2,
            "panel_verdict");
    Table line =
        left.table(
            2,
            always("Ends", DATE, "panel_filled+IF(#=1,MIN(" + days + "),MAX(" + days + "))"),
            out(
                "Straight line",
                of(Quantity.SCORE, 2),
                "panel_level+panel_slope*([Ends]-panel_filled)*12/365.25"));
    page.chart(
        new Chart(
                right.row() + 1,
                RIGHT,
                right.row() + 14,
                RIGHT + 3,
                "Cask C1: mean score of the panel",
                "date",
                "score")
            .points("panel", scores, "Date", "Mean score")
            .line("straight line", line, "Ends", "Straight line")
            .up(0, 20, "0"));
  }

  private static void ranks(Block left, Block right) {
    left.heading("This lot against last year's: ranks (1 = best)");
    Field rank =
        between(
            Quantity.COUNT, Field.AS_TYPED, "Rank of this sample; ties get the mean rank.", 1, 4);
    Table ranks =
        left.table(
            12,
            in("Taster", TEXT),
            in("Heather 25 in C1", rank),
            in("Heather 25 in C2", rank),
            in("Heather 25 unaged", rank),
            in("Heather 24", rank));
    ranks.fill(
        new Object[][] {
          {"A", 1, 2, 4, 3}, {"B", 2, 1, 4, 3}, {"C", 1, 3, 4, 2}, {"D", 1, 2, 3, 4},
          {"E", 2, 1, 3, 4}, {"F", 1, 2, 4, 3}, {"G", 3, 1, 4, 2}, {"H", 1, 2, 4, 3}
        });
    String all = ranks.block("Heather 25 in C1", "Heather 24");
    String sums =
        "ABS(SUM(" + ranks.range("Heather 25 in C1") + ")-SUM(" + ranks.range("Heather 24") + "))";
    right
        .heading("Do they differ?")
        .result(
            "Chance of such ranks if all were alike",
            PROBABILITY,
            "PANEL.RANKTEST(" + all + ")",
            "rank_p",
            "Friedman's test.")
        .result(
            "Least difference of rank sums that counts",
            of(Quantity.NUMBER, 1),
            "PANEL.RANKDIFFERENCE(" + all + ")",
            "rank_least",
            "")
        .result("C1 against last year's: difference", of(Quantity.NUMBER, 1), sums, "rank_c1", "")
        .result(
            "Agreement of the tasters",
            NUMBER,
            "PANEL.AGREEMENT(" + all + ")",
            "",
            "Kendall's W: 0 none, 1 complete.")
        .verdict(
            "IF(rank_p>0.05,\"Cannot tell them apart by rank.\",IF(rank_c1>=rank_least,\"C1 and last year's differ; the lower rank sum is the better liked.\",\"Some differ, but not C1 from last year's.\"))",
            1);
  }

  private static void triangle(Block left, Block right) {
    left.heading("Cask against cask: triangle test C1 and C2")
        .input(
            "Tasters",
            arg("PANEL.TRIANGLE", "tasters", 0),
            6,
            "tri_tasters",
            "Each gets three glasses, two alike.")
        .input("Found the odd glass", arg("PANEL.TRIANGLE", "correct", 0), 3, "tri_correct", "")
        .input(
            "Share we care about",
            arg("PANEL.SIMILAR", "share", 0),
            30,
            "tri_share",
            "If fewer than this really taste it, pool.")
        .result(
            "Chance if all guessed",
            PROBABILITY,
            "PANEL.TRIANGLE(tri_tasters,tri_correct)",
            "tri_p",
            "")
        .result(
            "Needed to call them different",
            COUNT,
            "PANEL.TRIANGLENEEDED(tri_tasters)",
            "tri_needed",
            "At the 5 % level.")
        .result(
            "May be pooled",
            COUNT,
            "PANEL.SIMILAR(tri_tasters,tri_correct,tri_share)",
            "tri_similar",
            "1 yes, 0 not shown.");
    right
        .heading("What would tell?")
        .result(
            "Chance that these tasters notice",
            PERCENT,
            "100*PANEL.POWER(tri_tasters,tri_share)",
            "tri_power",
            "If that share really tastes a difference.")
        .result(
            "Tasters for 80 %", COUNT, "INDEX(PANEL.TASTERSNEEDED(tri_share),1,1)", "tri_80", "")
        .result(
            "Tasters for 90 %",
            COUNT,
            "INDEX(PANEL.TASTERSNEEDED(tri_share),1,2)",
            "tri_90",
            "Repeats by the same tasters count less than new tasters.")
        .verdict(
            "IF(tri_p<=0.05,\"They differ: do not pool unasked.\",IF(tri_similar=1,\"Alike enough: they may be pooled.\",\"Cannot tell. \"&tri_tasters&\" tasters notice such a difference in \"&TEXT(tri_power,\"0\")&\" of 100 cases; \"&tri_80&\" would in 80, \"&tri_90&\" in 90.\"))",
            3,
            "tri_verdict");
  }
}
