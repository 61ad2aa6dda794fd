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

  private Barrels() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 8, 12, 12, 16, 16, 11, 11, 11, 11, 10, 11, 11, 10, 8, 10, 10, 10);
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
        """
            57.4 | 2026-02-23 | 4.2 | 2
            58.7 | 2026-02-23 | 3.4 | 6
            60.1 | 2026-02-23 | 4.9 | 6
            47.6 | 2026-02-23 | 3.8 | 3
            """);
    casks
        .name("Dipped on", "barrels_dipped")
        .name("Holds", "barrels_holds")
        .name("Headspace", "barrels_headspace");
    int second = head.row();
    threeWays(page.at(second, 0, 8).labels(3));
    history(page.at(second, 9, 8).labels(3));
    int third = second + 18;
    nail(page.at(third + 11, 9, 8).labels(3));
    wood(page.at(third + 19, 9, 8).labels(3));
    topping(page.at(third, 0, 4), page.at(third, 5, 3).labels(2));
    firstFill(page.at(third, 9, 8).labels(3));
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
      out(
          "Fill",
          Field.COUNT,
          "IF(OR([Cask]=\"\",INDEX(register_before,#)=\"\"),\"\",INDEX(register_before,#)+COUNTIF(occupant_cask,[Cask])+1)"),
      out(
          "Oxygen by wood",
          of(Quantity.MILLIGRAM_PER_LITRE, 1),
          "BARREL.OXYGEN([Days in wood],IF([Fill]=1,oxygen_new,oxygen_used),INDEX(register_ratio,#))"),
      out("Oak taken", PERCENT, "BARREL.EXTRACTION([Days in wood],oak_half,[Fill])"),
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
    block.form(
        """
            ? 2 |  | IF(AND(ABS(way_by_dip-way_by_weight)<=2*SQRT(u_by_dip^2+u_by_weight^2),ABS(way_by_drop-way_by_weight)<=2*SQRT(u_by_drop^2+u_by_weight^2),ABS(way_dip+way_drop-way_bilge)<=2*SQRT(way_u_dip^2+way_u_drop^2+way_u_bilge^2)),"The three agree within twice their uncertainty. Dip and drop lean on the same sizes; the scale does not.","They do not agree: look for a slip in a size, the stick or the empty weight.")
            """);
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
    block.form(
        """
            # What is still in the wood
            Cask                    | wood_cask   | TEXT     | C2 | Past occupants: sheet Barrel register.
            Topped up since filling | wood_topped | VOLUME 1 | 6.5 | From its topping log.
            Line in the register    | wood_row    | COUNT 0  | =MATCH(wood_cask,register_cask,0)
            Held in the staves      | wood_soaked | VOLUME 1 | =BARREL.SOAKED(INDEX(register_area,wood_row),units) | 6 mm deep, half of it liquid.
            """);
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
    log.fill(
        """
            soak-in | 2025-05-26 | 5.8
                    | 2025-06-23 | 0.66
                    | 2025-07-21 | 0.69
                    | 2025-08-18 | 0.73
                    | 2025-09-15 | 0.66
                    | 2025-10-20 | 0.79
                    | 2025-11-17 | 0.62
                    | 2025-12-15 | 0.60
            """);
    log.name("Date", "top_dates").name("Day", "top_days").name("Topped with", "top_litres");
    balance.form(
        """
            # In = out + held + lost?
            Filled on            | top_filled   | DATE      | 2025-05-12
            Filled with          | top_fill     | VOLUME 1  | 203.2
            Samples drawn        | top_samples  | VOLUME 1  | 0.4
            ± of the dip         | top_u_dip    | VOLUME 2  | 0.4
            Capacity             | top_capacity | VOLUME 1  | =INDEX(register_volume,1)
            Loss                 | top_rate     | PERCENT 2 | =INDEX(BARREL.LOSSRATE(top_days,top_litres,top_capacity,units),1,1)
            ± (standard)         | top_u_rate   | PERCENT 2 | =INDEX(BARREL.LOSSRATE(top_days,top_litres,top_capacity,units),1,2)
            In                   | top_in       | VOLUME 1  | =top_fill+SUM(top_litres)
            Out                  | top_out      | VOLUME 1  | =top_samples
            Soaked into the wood | top_soaked   | VOLUME 1  | =INDEX(top_litres,1)
            Lost since           | top_lost     | VOLUME 1  | =top_capacity*top_rate/100*(INDEX(barrels_dipped,1)-INDEX(top_dates,1))/365.25
            Held by dip          | top_held     | VOLUME 1  | =INDEX(barrels_holds,1)
            Left unexplained     | top_open     | VOLUME 2  | =top_in-top_out-top_soaked-top_lost-top_held
            ± (standard)         | top_u_open   | VOLUME 2  | =SQRT(top_u_dip^2+(top_lost*top_u_rate/top_rate)^2)
            ? 2 |  | IF(ABS(top_open)<=2*top_u_open,"The log closes within its uncertainty.","The log does not close: look for a leak, a forgotten topping or a misread stick.")
            . The first topping fills what the wood soaked up and does not count as loss. Loss: per cent a year.
            """);
  }

  /** The spirit that a first fill takes up, and what the cellar's air does to strength. */
  private static void firstFill(Block block) {
    block.form(
        """
            # First fill of the rye cask C1
            Strength filled in         | rye_abv      | BARREL.SPIRITGAIN abv 1       | 14.2
            Strength of the spirit     | rye_spirit   | BARREL.SPIRITGAIN spiritAbv 0 | 60 | From the distiller's papers.
            Drained before filling     | rye_drained  | BARREL.SPIRITGAIN drained 1   | 1.0 | Rinsed out with water.
            Spirit in the staves       | rye_soaked   | VOLUME 1                      | =BARREL.SOAKED(INDEX(register_area,1),units)
            Strength once they are one | rye_after    | PERCENT_VOL 2                 | =BARREL.SPIRITGAIN(top_fill,rye_abv,rye_soaked,rye_spirit,rye_drained,units) | Counts for label and tax.
            Humidity of the cellar     | rye_humidity | BARREL.STRENGTH humidity 0    | 80
            Strength after a year      |              | PERCENT_VOL 2                 | =BARREL.STRENGTH(rye_after,top_rate,rye_humidity) | Damp air takes alcohol before water. An estimate.
            ! A cask that has held spirit gives off vapour that burns: no flame, no burning wick, and air it before any sulfur.
            """);
  }

  /** What the columns on oxygen and oak rest on. */
  private static void wood(Block block) {
    block.form(
        """
            # What wood and air are taken to give
            Oxygen a year, used wood  | oxygen_used | MILLIGRAM_PER_LITRE 0 0.1..100 | 10 | In 225 L; by the wood of a litre in other sizes.
            Oxygen a year, new wood   | oxygen_new  | MILLIGRAM_PER_LITRE 0 0.1..100 | 20 | Both: common practice, no source, and uncertain by a factor of two.
            Half of its oak is out in | oak_half    | BARREL.EXTRACTION halfTime 0 | 120 | Invented: take it from your own notes with BARREL.EXTRACTIONFIT.
            . Each fill takes half of what the wood can give: 30 to 70 % would not surprise. Count every fill (sheet Barrel register).
            """);
  }

  /** What a nail hole gives before the cask's own vacuum stops it. */
  private static void nail(Block block) {
    block.form(
        """
            # Before you pull the nail of C1
            Sample wanted          | nail_amount | BARREL.SAMPLETIME amount 0 | 40
            Hole                   | nail_hole   | BARREL.SAMPLETIME hole 1   | 2.8
            Surface above the hole | nail_depth  | BARREL.SAMPLETIME depth 0  | 30
            Most that runs         |             | MILLILITRE 0               | =BARREL.SAMPLEMAX(INDEX(barrels_headspace,1),nail_depth,way_density,0,units) | Then a tight cask sucks air instead.
            Time for the sample    |             | SECONDS 0                  | =BARREL.SAMPLETIME(nail_amount,INDEX(barrels_headspace,1),nail_hole,nail_depth,way_density,units)
            """);
  }
}
