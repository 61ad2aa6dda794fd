package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.DAYS;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

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
        """
            2025-06-16 | 9.8  | 6
            2025-07-14 | 10.6 | 5
            2025-08-18 | 10.9 | 6
            2025-09-15 | 11.9 | 6
            2025-10-20 | 12.6 | 6
            2025-11-17 | 13.2 | 5
            2025-12-15 | 13.7 | 6
            2026-01-19 | 14.6 | 6
            2026-02-16 | 15.1 | 6
            """);
    scores.name("Day", "panel_days").name("Mean score", "panel_means");
    right.form(
        """
            # Still getting better?
            Filled on                  | panel_filled    | DATE    | 2025-05-12
            Gain a month               | panel_slope     | SCORE 2 | =INDEX(PANEL.TREND(panel_days,panel_means),1,1) | Slope of a straight line through all tastings.
            at least                   | panel_low       | SCORE 2 | =INDEX(PANEL.TREND(panel_days,panel_means),1,2) | 95 % limits.
            at most                    | panel_high      | SCORE 2 | =INDEX(PANEL.TREND(panel_days,panel_means),1,3)
            Gain a month, last four    |                 | SCORE 2 | =INDEX(PANEL.TREND(panel_days,panel_means,4),1,1) | Four tastings say little about a turn: see the limits.
            at least                   | panel_late_low  | SCORE 2 | =INDEX(PANEL.TREND(panel_days,panel_means,4),1,2)
            at most                    | panel_late_high | SCORE 2 | =INDEX(PANEL.TREND(panel_days,panel_means,4),1,3)
            Line at the day of filling | panel_level     | SCORE 2 | =AVERAGE(panel_means)-panel_slope*AVERAGE(panel_days)*12/365.25 | For the chart.
            ? 2 | panel_verdict | IF(panel_late_low>0,"Still improving.",IF(panel_late_high<0,"Past its best.",IF(panel_low>0,"Improving over the whole time; the last tastings alone cannot say whether it has levelled.","No trend can be seen.")))
            """);
    Table line =
        left.table(
            2,
            always("Ends", DATE, "panel_filled+IF(#=1,MIN(panel_days),MAX(panel_days))"),
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
            .points(scores, "Date", "Mean score")
            .line(line, "Ends", "Straight line")
            .up(0, 20, 5, "0"));
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
        """
            A | 1 | 2 | 4 | 3
            B | 2 | 1 | 4 | 3
            C | 1 | 3 | 4 | 2
            D | 1 | 2 | 3 | 4
            E | 2 | 1 | 3 | 4
            F | 1 | 2 | 4 | 3
            G | 3 | 1 | 4 | 2
            H | 1 | 2 | 4 | 3
            """);
    ranks.nameBlock("Heather 25 in C1", "Heather 24", "panel_ranks");
    right.form(
        """
            # Do they differ?
            Chance of such ranks if all were alike    | rank_p     | PROBABILITY 4 | =PANEL.RANKTEST(panel_ranks) | Friedman's test.
            Least difference of rank sums that counts | rank_least | NUMBER 1      | =PANEL.RANKDIFFERENCE(panel_ranks)
            C1 against last year's: difference        | rank_c1    | NUMBER 1      | =ABS(SUM(INDEX(panel_ranks,0,1))-SUM(INDEX(panel_ranks,0,4)))
            Agreement of the tasters                  |            | NUMBER 2      | =PANEL.AGREEMENT(panel_ranks) | Kendall's W: 0 none, 1 complete.
            ? 1 |  | IF(rank_p>0.05,"Cannot tell them apart by rank.",IF(rank_c1>=rank_least,"C1 and last year's differ; the lower rank sum is the better liked.","Some differ, but not C1 from last year's."))
            """);
  }

  private static void triangle(Block left, Block right) {
    left.form(
        """
            # Cask against cask: triangle test C1 and C2
            Tasters                       | tri_tasters | PANEL.TRIANGLE tasters 0 | 6 | Each gets three glasses, two alike.
            Found the odd glass           | tri_correct | PANEL.TRIANGLE correct 0 | 3
            Share we care about           | tri_share   | PANEL.SIMILAR share 0    | 30 | If fewer than this really taste it, pool.
            Chance if all guessed         | tri_p       | PROBABILITY 4            | =PANEL.TRIANGLE(tri_tasters,tri_correct)
            Needed to call them different | tri_needed  | COUNT 0                  | =PANEL.TRIANGLENEEDED(tri_tasters) | At the 5 % level.
            May be pooled                 | tri_similar | COUNT 0                  | =PANEL.SIMILAR(tri_tasters,tri_correct,tri_share) | 1 yes, 0 not shown.
            """);
    right.form(
        """
            # What would tell?
            Chance that these tasters notice | tri_power | PERCENT 1 | =100*PANEL.POWER(tri_tasters,tri_share) | If that share really tastes a difference.
            Tasters for 80 %                 | tri_80    | COUNT 0   | =INDEX(PANEL.TASTERSNEEDED(tri_share),1,1)
            Tasters for 90 %                 | tri_90    | COUNT 0   | =INDEX(PANEL.TASTERSNEEDED(tri_share),1,2) | Repeats by the same tasters count less than new tasters.
            ? 3 | tri_verdict | IF(tri_p<=0.05,"They differ: do not pool unasked.",IF(tri_similar=1,"Alike enough: they may be pooled.","Cannot tell. "&tri_tasters&" tasters notice such a difference in "&TEXT(tri_power,"0")&" of 100 cases; "&tri_80&" would in 80, "&tri_90&" in 90."))
            """);
  }
}
