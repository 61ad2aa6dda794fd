package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.cell;
import static meadcell.samples.cellar.Formulas.given;
import static meadcell.samples.cellar.Formulas.orBlank;
import static meadcell.samples.sheet.Field.DAYS;
import static meadcell.samples.sheet.Field.NUMBER;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Chart;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;
import meadcell.samples.sheet.Workings;

/** What is in a vessel, where it was, what it is like, what air it took up. */
final class StoryPage {
  static final String TITLE = "Story";
  private static final String PROPERTIES =
      "CHOOSE(#,\"strength\",\"sugar\",\"titratable acidity\",\"total SO2\")";

  private static final int LINES = 22;
  private static final int RIGHT = 6;

  private StoryPage() {}

  static void workings(Workings state) {
    state.array(
        LINES,
        "BLEND.STORY(moves_block,story_lot,today,kept)",
        "story_what",
        "story_share",
        "story_days");
    state.array(
        6,
        "BLEND.OXYGEN(moves_block,air_block,story_lot,,today,,,,,house_oxygen,kept)",
        "story_way",
        "story_oxygen",
        "story_least",
        "story_most");
  }

  static void add(Book book) {
    Page page = book.page(TITLE, 30, 12, 12, 12, 12, 2, 58).onSheets(1);
    Block block =
        page.head(
            TITLE,
            "Every liquid in it, its share and age, and the vessels it was in: by Movements and Analyses. Print it as a card.");
    int top = block.row();
    Block left = page.at(top, 0, 5);
    left.choose("Lot, cask or bottling", "vessel_list", "Shore 25", "story_lot", "")
        .verdict(
            "IF(story_lot=\"\",\"Choose one.\",IF(ISERROR(INDEX(story_what,2)),CELLAR.WHY(\"BLEND.STORY\",moves,story_lot,today,kept),\"Shares are of the volume; an indented vessel is where that liquid was.\"))",
            2);
    Table story =
        left.table(
            LINES,
            always("Liquid, and where it was", TEXT, told("story_what")),
            always("Share", PERCENT, told("story_share")),
            always("Days", DAYS, told("story_days")));
    left.heading("What it is like");
    left.table(
        4,
        always("Property", TEXT, PROPERTIES),
        always("Value", NUMBER, carried(1)),
        always("±", NUMBER, carried(2)));
    left.note(
        "Carried from Analyses, ± one standard uncertainty: % vol, g/L, g/L, mg/L. Blank where Analyses do not reach, or Additions changed it since; measure before you print a label.");
    left.heading("What air it took up");
    Table oxygen =
        left.table(
            6,
            always("Way", TEXT, told("story_way")),
            always("Oxygen", of(Quantity.MILLIGRAM_PER_LITRE, 1), told("story_oxygen")),
            always("At least", of(Quantity.MILLIGRAM_PER_LITRE, 1), told("story_least")),
            always("At most", of(Quantity.MILLIGRAM_PER_LITRE, 1), told("story_most")));
    chart(
        page,
        top,
        26,
        "Days of each liquid, and where",
        "days",
        story,
        "Liquid, and where it was",
        "Days");
    chart(page, top + 27, 18, "Oxygen taken up", "mg/L", oxygen, "Way", "Oxygen");
  }

  private static String told(String column) {
    return "IFERROR(IF(story_lot=\"\",\"\",INDEX(" + column + ",#+1)),\"\")";
  }

  private static String carried(int place) {
    return given("story_lot", orBlank(cell(Formulas.carried("story_lot", "[Property]"), place)));
  }

  private static void chart(
      Page page,
      int row,
      int rows,
      String title,
      String up,
      Table table,
      String labels,
      String values) {
    page.chart(
        new Chart(row, RIGHT, row + rows, RIGHT + 1, title, "", up).bars(table, labels, values));
  }
}
