package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.DAYS;
import static meadcell.samples.sheet.Field.NUMBER;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
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

/** A year from casks to bottles: what is in a bottle, what it is like, what air did to it. */
final class OneBottle {
  static final String TITLE = "One bottle";
  private static final int RIGHT = 6;
  private static final Field OXYGEN = of(Quantity.MILLIGRAM_PER_LITRE, 2);

  private static final String TRANSFERS =
      """
      Heather mead 25   | tank A    | 520   | 2025-09-01
      rye in the staves | C11       | 4.6   | 2025-09-02
      tank A            | C11       | 205   | 2025-09-02
      tank A            | C12       | 225   | 2025-09-02
      gauge             | C11       | 207.6 | 2025-11-03
      tank A            | C11       | 2     | 2025-11-03
      gauge             | C12       | 223.1 | 2025-11-03
      tank A            | C12       | 1.9   | 2025-11-03
      gauge             | C11       | 206.8 | 2026-02-02
      tank A            | C11       | 2.8   | 2026-02-02
      gauge             | C12       | 222.3 | 2026-02-02
      tank A            | C12       | 2.7   | 2026-02-02
      gauge             | C11       | 206.9 | 2026-05-04
      gauge             | C12       | 222.5 | 2026-05-04
      Cherry mead 25    | C12       | 2.5   | 2026-05-04
      C11               | Tarn 26   | 110   | 2026-06-01
      C12               | Tarn 26   | 120   | 2026-06-01
      Bochet mead 25    | Tarn 26   | 40    | 2026-06-01
      C11               | demijohns | 96.9  | 2026-06-01
      C12               | demijohns | 105   | 2026-06-01
      Tarn 26           | loss      | 4     | 2026-06-15
      Tarn 26           | bottles   | 266   | 2026-06-15
      """;

  private static final String ANALYSES =
      """
      Heather mead 25   | 2025-09-01 | strength           | 13.2 | 0.1
      Heather mead 25   | 2025-09-01 | titratable acidity | 5.8  | 0.1
      Heather mead 25   | 2025-09-01 | total SO2          | 70   | 5
      rye in the staves | 2025-09-02 | strength           | 58   | 3
      rye in the staves | 2025-09-02 | titratable acidity | 0.4  | 0.2
      rye in the staves | 2025-09-02 | total SO2          | 0
      C11               | 2026-02-02 | strength           | 14.1 | 0.1
      Cherry mead 25    | 2026-05-04 | strength           | 11.4 | 0.1
      Cherry mead 25    | 2026-05-04 | titratable acidity | 7.9  | 0.1
      Cherry mead 25    | 2026-05-04 | total SO2          | 60   | 5
      Bochet mead 25    | 2026-06-01 | strength           | 12.1 | 0.1
      Bochet mead 25    | 2026-06-01 | titratable acidity | 5.2  | 0.1
      Bochet mead 25    | 2026-06-01 | total SO2          | 65   | 5
      """;

  private OneBottle() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 22, 14, 19, 12, 12, 2, 28, 13, 13, 13, 2, 64);
    Block head =
        page.head(
            TITLE,
            "A year at Tarn Hollow, an invented cellar, from the casks to one bottle: what was moved and"
                + " measured on the left, what follows from it on the right. Print the right side as"
                + " a card.");
    int top = head.row();
    Block left = page.at(top, 0, 5);
    left.heading("What was moved and gauged");
    Table log =
        left.table(28, in("From", TEXT), in("To", TEXT), in("Volume", VOLUME), in("Day", DATE));
    log.fill(TRANSFERS).nameBlock("From", "Day", "bottle_transfers");
    left.heading("What was measured");
    left.table(
            18,
            in("Lot", TEXT),
            in("Day", DATE),
            in("Property", TEXT),
            in("Value", NUMBER),
            in("±", NUMBER))
        .fill(ANALYSES)
        .nameBlock("Lot", "±", "bottle_analyses");
    Block right = card(page, page.at(top, RIGHT, 4), log.top());
    int turn = Math.max(left.row(), right.row());
    page.turn(turn);
    air(page.at(turn, 0, 5));
    vessels(page.at(turn, RIGHT, 4));
  }

  private static void air(Block left) {
    left.heading("What lets air in");
    left.table(
            5,
            in("Vessel", TEXT),
            in("Wood", of(Quantity.SQUARE_CENTIMETRE_PER_LITRE, 0)),
            in("Capacity", VOLUME),
            in("Bottles", NUMBER))
        .fill(
            """
            C11     | 92 | 212
            C12     | 90 | 228
            bottles | 0  |     | 1
            """)
        .nameBlock("Vessel", "Bottles", "bottle_vessels");
    left.note(
        "A mead, cask or property more: a row more. Capacity stays blank where gas or a lid keeps the"
            + " air off.");
  }

  private static Block card(Page page, Block right, int top) {
    right
        .heading("The bottle")
        .form(
            """
            Lot      | bottle_lot      | TEXT                          | bottles
            As of    | bottle_day      | DATE                          | 2026-06-15
            Humidity | bottle_humidity | BLEND.CARRIED humidity 0      | 75
            """);
    Table story =
        right.table(
            14,
            always("Liquid, and where it was", TEXT, story(1)),
            always("Share", PERCENT, story(2)),
            always("Days", DAYS, story(3)));
    right.heading("What it is like");
    right
        .table(
            5, in("Property", TEXT), out("Value", NUMBER, carried(1)), out("±", NUMBER, carried(2)))
        .fill("strength\ntitratable acidity\ntotal SO2\n");
    right.note(
        "Carried from the analyses, ± one standard uncertainty. Strength in % vol, acid in g/L.");
    right.heading("What air it took up");
    Table oxygen =
        right.table(
            6,
            always("Way", TEXT, oxygen(1)),
            always("Oxygen", OXYGEN, oxygen(2)),
            always("At least", OXYGEN, oxygen(3)),
            always("At most", OXYGEN, oxygen(4)));
    right.heading("What the casks lost");
    right
        .table(
            3,
            in("Cask", TEXT),
            out("Lost", VOLUME, losses(1)),
            out("±", VOLUME, losses(2)),
            out("A year", of(Quantity.PERCENT_PER_YEAR, 1), losses(3)))
        .fill("C11\nC12\n");
    chart(
        page,
        top,
        "Days of each liquid, and where",
        "days",
        story,
        "Liquid, and where it was",
        "Days");
    chart(page, top + 20, "Oxygen taken up", "mg/L", oxygen, "Way", "Oxygen");
    return right;
  }

  private static void vessels(Block right) {
    right.heading("What is where");
    right.table(
        5,
        always("Vessel", TEXT, held(1)),
        always("Holds", VOLUME, held(3)),
        always("Since", DAYS, held(4)),
        always("Fills", Field.COUNT, held(5)));
    right
        .heading("How long the sulfite of C12 would have lasted")
        .form(
            """
            Free SO₂ read      | bottle_free    | SULFITE.LASTS free 0       | 26
            Read on            | bottle_read    | DATE                       | 2026-05-04
            Act at             | bottle_act     | SULFITE.LASTS limit 0      | 18
            Oxygen in a year   | bottle_oxygen  | MILLIGRAM_PER_LITRE 1      | =INDEX(BLEND.OXYGEN(bottle_transfers,bottle_vessels,"C12",DATE(2025,9,2),DATE(2026,5,31),units),6,2)*365.25/271
            Act between        |                | DATE                       | =INDEX(SULFITE.LASTS(bottle_read,bottle_free,bottle_act,bottle_oxygen),1,2)
            and                |                | DATE                       | =INDEX(SULFITE.LASTS(bottle_read,bottle_free,bottle_act,bottle_oxygen),1,3)
            """);
  }

  private static String story(int column) {
    return cell("BLEND.STORY(bottle_transfers,bottle_lot,bottle_day,units)", column);
  }

  private static String oxygen(int column) {
    return cell(
        "BLEND.OXYGEN(bottle_transfers,bottle_vessels,bottle_lot,1,bottle_day,units)", column);
  }

  private static String held(int column) {
    return cell("VESSEL.LIST(bottle_transfers,bottle_day,units)", column);
  }

  /** Rows that the answer does not have stay empty. */
  private static String cell(String rows, int column) {
    return "IFERROR(INDEX(" + rows + ",#," + column + "),\"\")";
  }

  private static String carried(int column) {
    return "INDEX(BLEND.CARRIED(bottle_transfers,bottle_analyses,bottle_lot,[Property],bottle_day,"
        + "bottle_humidity,units),1,"
        + column
        + ")";
  }

  private static String losses(int column) {
    return "INDEX(VESSEL.LOSSES(bottle_transfers,[Cask],DATE(2025,9,2),DATE(2026,5,4),units),1,"
        + column
        + ")";
  }

  private static void chart(
      Page page, int row, String title, String up, Table table, String labels, String values) {
    page.chart(
        new Chart(row, RIGHT + 5, row + 18, RIGHT + 6, title, "", up).bars(table, labels, values));
  }
}
