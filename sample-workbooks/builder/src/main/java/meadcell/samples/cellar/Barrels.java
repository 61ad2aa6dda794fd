package meadcell.samples.cellar;

import static meadcell.samples.sheet.Block.Entry.typed;
import static meadcell.samples.sheet.Block.Entry.worked;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.DAYS;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import java.time.LocalDate;
import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Block.Entry;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** The daily sheet: what each cask holds, when to top it up, what wood and air have done. */
final class Barrels {
  static final String TITLE = "Barrels";
  private static final String SIZES =
      "INDEX(register_head,#),INDEX(register_bilge,#),INDEX(register_length,#)";
  private static final Field LITRES2 = of(Quantity.VOLUME, 2);
  private static final Field SMALL_LENGTH =
      between(Quantity.LENGTH, 1, "Standard uncertainty of that measurement.", 0, 10);
  private static final LocalDate FILLED = LocalDate.of(2025, 5, 12);

  private Barrels() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 8, 12, 12, 16, 16, 11, 11, 11, 11, 10, 11, 11, 10, 10, 10, 10);
    Block head =
        page.head(
            TITLE,
            "Dip each cask through the bung hole. Grey cells say what it holds, when it wants topping up, and what wood and air have given it so far.");
    head.labels(3)
        .input(
            "Date of this page",
            DATE,
            LocalDate.of(2026, 3, 2),
            "today",
            "Type =TODAY() to keep it current.");
    Table casks = head.table(BarrelRegister.CASKS, columns());
    page.freeze(casks.top());
    casks.fill(
        new Object[][] {
          {57.4, LocalDate.of(2026, 2, 23), 4.2, 2.0},
          {58.7, LocalDate.of(2026, 2, 23), 3.4, 6.0},
          {60.1, LocalDate.of(2026, 2, 23), 4.9, 6.0},
          {47.6, LocalDate.of(2026, 2, 23), 3.8, 3.0}
        });
    casks.name("Dipped on", "barrels_dipped").name("Holds", "barrels_holds");
    int second = head.row();
    threeWays(page.at(second, 0, 8).labels(3));
    history(page.at(second, 9, 7).labels(3));
    int third = second + 18;
    topping(page.at(third, 0, 4), page.at(third, 5, 3).labels(2));
    firstFill(page.at(third, 9, 7).labels(3));
    page.turn(third + 1);
  }

  private static Table.Column[] columns() {
    return new Table.Column[] {
      always("Cask", TEXT, "IF(INDEX(register_cask,#)=\"\",\"\",INDEX(register_cask,#))"),
      out("Lot", TEXT, "IF([Cask]=\"\",\"\",INDEX(register_lot,#))"),
      out("Filled on", DATE, "IF([Cask]=\"\",\"\",INDEX(register_filled,#))"),
      in("Wet depth", arg("BARREL.CONTENTS", "dip", 1)),
      in("Dipped on", DATE),
      in("Loss", arg("BARREL.DAYSTOTOP", "lossRate", 1)),
      in("Headspace allowed", arg("BARREL.DAYSTOTOP", "limit", 1)),
      out("Holds", VOLUME, "BARREL.CONTENTS(" + SIZES + ",[Wet depth],units)"),
      out("Headspace", VOLUME, "INDEX(register_volume,#)-[Holds]"),
      out("Full", PERCENT, "100*[Holds]/INDEX(register_volume,#)"),
      out(
          "Top up by",
          DATE,
          "[Dipped on]+IF([Headspace]>=[Headspace allowed],0,BARREL.DAYSTOTOP(INDEX(register_volume,#),[Loss],[Headspace allowed],[Headspace],units))"),
      out("Due", TEXT, "IF([Top up by]<=today,\"now\",ROUND([Top up by]-today,0)&\" days\")"),
      out("Days in wood", DAYS, "today-[Filled on]"),
      out("Oxygen by wood", of(Quantity.MILLIGRAM_PER_LITRE, 1), "BARREL.OXYGEN([Days in wood])"),
      out("Oak taken", PERCENT, "BARREL.EXTRACTION([Days in wood],120)"),
      out(
          "Out of the staves",
          PERCENT,
          "IF([Cask]=\"\",\"\",BARREL.CARRYOVER(INDEX(register_volume,#),BARREL.SOAKED(INDEX(register_area,#),units),units))")
    };
  }

  /**
   * One cask by dip, by drop and by weight, each with the uncertainty that its measurements give.
   */
  private static void threeWays(Block block) {
    block
        .heading("One cask, three ways: C2")
        .note(
            "Each ± is a standard uncertainty. The columns say how many litres it makes in each way of measuring; their squares add.")
        .headers("Measured", "value", "±", "by dip", "by drop", "by weight");
    double dip = 58.7;
    String[] gauged = {"way_head", "way_bilge", "way_length"};
    int first = block.row() + 1;
    gauge(block, "Head, inside", gauged, 0, 51.0, 0.2);
    gauge(block, "Bilge, inside", gauged, 1, 64.0, 0.2);
    gauge(block, "Length, inside", gauged, 2, 81.0, 0.2);
    block.line(
        "Wet depth",
        typed(arg("BARREL.CONTENTS", "dip", 1), dip, "way_dip"),
        typed(SMALL_LENGTH, 0.2, "way_u_dip"),
        worked(
            LITRES2,
            spread(byDip("way_head", "way_bilge", "way_length", "@"), "way_dip", "way_u_dip"),
            ""));
    block.line(
        "Drop of the surface",
        typed(arg("BARREL.HEADSPACE", "drop", 1), 5.2, "way_drop"),
        typed(SMALL_LENGTH, 0.2, "way_u_drop"),
        null,
        worked(
            LITRES2,
            spread(byDrop("way_head", "way_bilge", "way_length", "@"), "way_drop", "way_u_drop"),
            ""));
    block.line(
        "Full weight",
        typed(arg("BARREL.BYWEIGHT", "gross", 1), 274.6, "way_gross"),
        typed(between(Quantity.MASS, 1, "Standard uncertainty.", 0, 50), 0.5, "way_u_gross"),
        null,
        null,
        worked(
            LITRES2,
            spread(byWeight("@", "way_wet", "way_density"), "way_gross", "way_u_gross"),
            ""));
    block.line(
        "Weight empty and wet",
        typed(arg("BARREL.BYWEIGHT", "wetEmpty", 1), 52.4, "way_wet"),
        typed(between(Quantity.MASS, 1, "Standard uncertainty.", 0, 50), 0.6, "way_u_wet"),
        null,
        null,
        worked(
            LITRES2,
            spread(byWeight("way_gross", "@", "way_density"), "way_wet", "way_u_wet"),
            ""));
    block.line(
        "Density",
        worked(
            of(Quantity.DENSITY, 4),
            "GRAVITY.DENSITY(0.9962,13*degree+freezing,14.4,units)",
            "way_density"),
        typed(between(Quantity.DENSITY, 4, "Standard uncertainty.", 0, 1), 0.0005, "way_u_density"),
        null,
        null,
        worked(
            LITRES2,
            spread(byWeight("way_gross", "way_wet", "@"), "way_density", "way_u_density"),
            ""));
    int last = block.row();
    block.line(
        "Contents",
        null,
        null,
        worked(VOLUME, byDip("way_head", "way_bilge", "way_length", "way_dip"), "way_by_dip"),
        worked(VOLUME, byDrop("way_head", "way_bilge", "way_length", "way_drop"), "way_by_drop"),
        worked(VOLUME, byWeight("way_gross", "way_wet", "way_density"), "way_by_weight"));
    block.line(
        "± (standard)",
        null,
        null,
        sum("F", first, last, "u_by_dip"),
        sum("G", first, last, "u_by_drop"),
        sum("H", first, last, "u_by_weight"));
    block.verdict(
        "IF(AND(ABS(way_by_dip-way_by_weight)<=2*SQRT(u_by_dip^2+u_by_weight^2),ABS(way_by_drop-way_by_weight)<=2*SQRT(u_by_drop^2+u_by_weight^2),ABS(way_dip+way_drop-way_bilge)<=2*SQRT(way_u_dip^2+way_u_drop^2+way_u_bilge^2)),"
            + "\"The three agree within twice their uncertainty. Dip and drop lean on the same sizes; the scale does not.\","
            + "\"They do not agree: look for a slip in a size, the stick or the empty weight.\")",
        2);
  }

  private static Entry sum(String column, int first, int last, String name) {
    return worked(VOLUME, "SQRT(SUMSQ(" + column + first + ":" + column + last + "))", name);
  }

  private static void gauge(
      Block block, String label, String[] names, int which, double value, double u) {
    String name = names[which];
    String spreadName = name.replace("way_", "way_u_");
    String[] moved = names.clone();
    moved[which] = "@";
    block.line(
        label,
        typed(arg("BARREL.VOLUME", name.substring(4), 1), value, name),
        typed(SMALL_LENGTH, u, spreadName),
        worked(
            LITRES2, spread(byDip(moved[0], moved[1], moved[2], "way_dip"), name, spreadName), ""),
        worked(
            LITRES2,
            spread(byDrop(moved[0], moved[1], moved[2], "way_drop"), name, spreadName),
            ""));
  }

  /** Half of what the result moves when the measurement at {@code @} goes from −u to +u. */
  private static String spread(String formula, String value, String u) {
    return "ABS("
        + formula.replace("@", value + "+" + u)
        + "-("
        + formula.replace("@", value + "-" + u)
        + "))/2";
  }

  private static String byDip(String head, String bilge, String length, String dip) {
    return "BARREL.CONTENTS(" + head + "," + bilge + "," + length + "," + dip + ",units)";
  }

  private static String byDrop(String head, String bilge, String length, String drop) {
    String sizes = head + "," + bilge + "," + length;
    return "BARREL.VOLUME(" + sizes + ",units)-BARREL.HEADSPACE(" + sizes + "," + drop + ",units)";
  }

  private static String byWeight(String gross, String wet, String density) {
    return "BARREL.BYWEIGHT(" + gross + "," + wet + "," + density + ",units)";
  }

  /** What the wood of one chosen cask remembers. */
  private static void history(Block block) {
    block
        .heading("What is still in the wood")
        .input("Cask", TEXT, "C2", "wood_cask", "Past occupants: sheet Barrel register.")
        .input("Topped up since filling", VOLUME, 6.5, "wood_topped", "From its topping log.")
        .result(
            "Line in the register", Field.COUNT, "MATCH(wood_cask,register_cask,0)", "wood_row", "")
        .result(
            "Held in the staves",
            VOLUME,
            "BARREL.SOAKED(INDEX(register_area,wood_row),units)",
            "wood_soaked",
            "6 mm deep, half of it liquid.");
    String known = "COUNTIF(occupant_cask,wood_cask)";
    String place = "MATCH(wood_cask&\"/\"&[Fill],occupant_fill,0)";
    Table fills =
        block.table(
            7,
            always("Fill", Field.COUNT, "IF(#<=" + known + "+1,#,\"\")"),
            out(
                "Liquid",
                TEXT,
                "IF([Fill]>"
                    + known
                    + ",INDEX(register_lot,wood_row),INDEX(occupant_liquid,"
                    + place
                    + "))"),
            out(
                "Volume",
                VOLUME,
                "IF([Fill]>"
                    + known
                    + ",INDEX(register_volume,wood_row),INDEX(occupant_volume,"
                    + place
                    + "))"),
            out(
                "Share",
                PERCENT,
                "INDEX(BARREL.HISTORY(wood_volumes,wood_soaked,100,wood_topped,units),[Fill])"));
    fills.name("Volume", "wood_volumes");
    block.note(
        "Shares of litres poured in; they add to 100. The last line is what the cask holds now, with its toppings.");
  }

  /** Toppings of one cask, the loss they show, and whether in = out + loss. */
  private static void topping(Block block, Block balance) {
    block.heading("Topping log of C1");
    Table log =
        block.table(
            14,
            in("Line", TEXT),
            in("Date", DATE),
            in("Topped with", VOLUME),
            out("Day", DAYS, "[Date]-top_filled"));
    log.fill(toppings());
    String days = log.range("Day");
    String litres = log.range("Topped with");
    balance
        .heading("In = out + held + lost?")
        .input("Filled on", DATE, FILLED, "top_filled", "")
        .input("Filled with", VOLUME, 203.2, "top_fill", "Brimful.")
        .input("Samples drawn", VOLUME, 0.4, "top_samples", "Through the nail.")
        .input(
            "± of the dip",
            of(Quantity.VOLUME, 2),
            0.4,
            "top_u_dip",
            "For 2 mm on the stick, near the top.")
        .result("Capacity", VOLUME, "INDEX(register_volume,1)", "top_capacity", "")
        .result(
            "Loss",
            of(Quantity.PERCENT, 2),
            "INDEX(BARREL.LOSSRATE(" + days + "," + litres + ",top_capacity,units),1,1)",
            "top_rate",
            "A year. The first topping fills what the wood soaked up and is left out.")
        .result(
            "± (standard)",
            of(Quantity.PERCENT, 2),
            "INDEX(BARREL.LOSSRATE(" + days + "," + litres + ",top_capacity,units),1,2)",
            "top_u_rate",
            "")
        .result("In", VOLUME, "top_fill+SUM(" + litres + ")", "top_in", "Filled and topped.")
        .result("Out", VOLUME, "top_samples", "top_out", "")
        .result(
            "Soaked into the wood",
            VOLUME,
            "INDEX(" + litres + ",1)",
            "top_soaked",
            "The first topping.")
        .result(
            "Lost since",
            VOLUME,
            "top_capacity*top_rate/100*(INDEX(barrels_dipped,1)-INDEX("
                + log.range("Date")
                + ",1))/365.25",
            "top_lost",
            "By the rate above, to the day of the dip.")
        .result("Held by dip", VOLUME, "INDEX(barrels_holds,1)", "top_held", "")
        .result(
            "Left unexplained",
            of(Quantity.VOLUME, 2),
            "top_in-top_out-top_soaked-top_lost-top_held",
            "top_open",
            "In − out − soaked − lost − held.")
        .result(
            "± (standard)",
            of(Quantity.VOLUME, 2),
            "SQRT(top_u_dip^2+(top_lost*top_u_rate/top_rate)^2)",
            "top_u_open",
            "")
        .verdict(
            "IF(ABS(top_open)<=2*top_u_open,\"The log closes within its uncertainty.\",\"The log does not close: look for a leak, a forgotten topping or a misread stick.\")",
            2);
  }

  private static Object[][] toppings() {
    int[] days = {14, 42, 70, 98, 126, 161, 189, 217};
    double[] litres = {5.8, 0.66, 0.69, 0.73, 0.66, 0.79, 0.62, 0.60};
    Object[][] rows = new Object[days.length][];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = new Object[] {i == 0 ? "soak-in" : null, FILLED.plusDays(days[i]), litres[i]};
    }
    return rows;
  }

  /** The spirit that a first fill takes up, and what the cellar's air does to strength. */
  private static void firstFill(Block block) {
    block
        .heading("First fill of the rye cask C1")
        .input("Strength filled in", arg("BARREL.SPIRITGAIN", "abv", 1), 14.2, "rye_abv", "")
        .input(
            "Strength of the spirit",
            arg("BARREL.SPIRITGAIN", "spiritAbv", 0),
            60,
            "rye_spirit",
            "From the distiller's papers.")
        .input(
            "Drained before filling",
            arg("BARREL.SPIRITGAIN", "drained", 1),
            1.0,
            "rye_drained",
            "Rinsed out with water.")
        .result(
            "Spirit in the staves",
            VOLUME,
            "BARREL.SOAKED(INDEX(register_area,1),units)",
            "rye_soaked",
            "")
        .result(
            "Strength once they are one",
            Field.ABV,
            "BARREL.SPIRITGAIN(top_fill,rye_abv,rye_soaked,rye_spirit,rye_drained,units)",
            "rye_after",
            "Counts for label and tax.")
        .input(
            "Humidity of the cellar", arg("BARREL.STRENGTH", "humidity", 0), 80, "rye_humidity", "")
        .result(
            "Strength after a year",
            Field.ABV,
            "BARREL.STRENGTH(rye_after,top_rate,rye_humidity)",
            "",
            "Damp air takes alcohol before water. An estimate.")
        .warning(
            "A cask that has held spirit gives off vapour that burns: no flame, no burning wick, and air it before any sulfur.");
  }
}
