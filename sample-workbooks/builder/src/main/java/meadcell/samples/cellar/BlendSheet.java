package meadcell.samples.cellar;

import static meadcell.samples.sheet.Block.Entry.typed;
import static meadcell.samples.sheet.Block.Entry.worked;
import static meadcell.samples.sheet.Field.ABV;
import static meadcell.samples.sheet.Field.GRAMS_PER_LITRE;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import meadcell.catalogue.Quantity;
import meadcell.law.UsHoneyWine;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** From the stock and the targets to a plan, whole-cask blends beside it, and the bench trial. */
final class BlendSheet {
  static final String TITLE = "Blend";
  private static final int LOTS = 6;
  private static final Field WHOLE =
      between(Quantity.COUNT, 0, "1: all of this lot goes in. 0: none.", 0, 1);
  private static final Field PH = arg("SULFITE.MOLECULAR", "ph", 2);

  private BlendSheet() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 27, 11, 11, 11, 11, 11, 11, 11, 9, 9, 9, 11, 11, 11);
    Block block =
        page.head(
            TITLE,
            "The plan is the cheapest blend that meets every target from what is in stock."
                + " Strength mixes with contraction, sugar and acid by volume. pH does not blend by"
                + " volume: measure it on the bench blend.");
    String[] limits = targets(block);
    Table stock = stock(block, limits);
    results(block, stock, limits);
    bench(block);
  }

  /** The two lines of targets, for a formula: strength, sugar and acid in D, E and F. */
  private static String[] targets(Block block) {
    Field share = between(Quantity.PERCENT_VOL, 1, "Blank: no limit.", 0, 25);
    Field grams = between(Quantity.GRAM_PER_LITRE, 1, "Blank: no limit.", 0, 300);
    block
        .heading("What the blend shall be")
        .form("Volume | blend_volume | BLEND.PLAN volume 0 | 380")
        .headers("Targets", null, null, "Strength", "Sugar", "Acid")
        .line(
            "at least",
            null,
            null,
            typed(share, 14.3, ""),
            typed(grams, 8, ""),
            typed(grams, 5.0, ""))
        .line(
            "at most",
            null,
            null,
            typed(share, 14.6, ""),
            typed(grams, 12, ""),
            typed(grams, 5.6, ""));
    int most = block.row();
    return new String[] {
      "$D$" + (most - 1) + ":$F$" + most, Integer.toString(most - 1), Integer.toString(most)
    };
  }

  private static Table stock(Block block, String[] limits) {
    block.heading("Stock, the plan, and three blends of whole casks");
    Table stock =
        block.table(
            LOTS,
            in("Lot", TEXT),
            in("In stock", of(Quantity.VOLUME, 0)),
            in("Cost a unit", of(Quantity.NUMBER, 2)),
            in(
                "Strength",
                between(Quantity.PERCENT_VOL, 1, "By laboratory or sheet Ferment log.", 0, 25)),
            in("Sugar", between(Quantity.GRAM_PER_LITRE, 1, "Fermentable sugar.", 0, 300)),
            in("Acid", between(Quantity.GRAM_PER_LITRE, 1, "As tartaric.", 0, 30)),
            out(
                "Plan",
                VOLUME,
                "IF([In stock]=\"\",\"\",INDEX(BLEND.PLAN(blend_stock,"
                    + limits[0]
                    + ",blend_volume,units),#))"),
            out("Share", PERCENT, "100*[Plan]/blend_volume"),
            in("A", WHOLE),
            in("B", WHOLE),
            in("C", WHOLE),
            out("Volume of A", VOLUME, "[In stock]*[A]"),
            out("Volume of B", VOLUME, "[In stock]*[B]"),
            out("Volume of C", VOLUME, "[In stock]*[C]"));
    stock.fill(
        """
            Heather 25, cask C1    | 195 | 9.40 | 14.9 | 3  | 5.6 | 1 | 1 | 0
            Heather 25, cask C2    | 220 | 8.90 | 14.3 | 4  | 5.4 | 0 | 1 | 1
            Bochet 25, cask C3     | 215 | 8.10 | 13.2 | 62 | 4.6 | 0 | 0 | 0
            Bochet 25, carboys     | 40  | 7.40 | 13.3 | 60 | 4.5 | 0 | 1 | 1
            Heather 25, steel tank | 120 | 6.20 | 14.1 | 2  | 4.9 | 1 | 0 | 1
            """);
    block.note(
        "The share is also the mL of each lot in a bench blend of 100 mL: mix it, taste it, measure its pH.");
    block.warning(UsHoneyWine.BLEND);
    return stock.nameBlock("In stock", "Acid", "blend_stock");
  }

  private static void results(Block block, Table stock, String[] limits) {
    block
        .heading("What comes out")
        .headers("Blend", "Volume", "Strength", "Sugar", "Acid", "pH, bench", "On target");
    int row = block.row() + 1;
    for (String blend : new String[] {"Plan", "Volume of A", "Volume of B", "Volume of C"}) {
      String litres = stock.range(blend);
      block.line(
          blend.equals("Plan") ? "The plan" : "Blend " + blend.substring("Volume of ".length()),
          worked(
              VOLUME,
              "BLEND.VOLUME(" + litres + "," + stock.range("Strength") + ",units)",
              blend.equals("Plan") ? "plan_volume" : ""),
          worked(
              ABV,
              "BLEND.ABV(" + litres + "," + stock.range("Strength") + ",units)",
              blend.equals("Plan") ? "plan_abv" : ""),
          worked(
              GRAMS_PER_LITRE,
              "BLEND.MEAN(" + litres + "," + stock.range("Sugar") + ",units)",
              blend.equals("Plan") ? "plan_sugar" : ""),
          worked(
              GRAMS_PER_LITRE,
              "BLEND.MEAN(" + litres + "," + stock.range("Acid") + ",units)",
              blend.equals("Plan") ? "plan_acid" : ""),
          typed(PH, blend.equals("Plan") ? 3.52 : null, blend.equals("Plan") ? "plan_ph" : ""),
          worked(TEXT, onTarget(row, limits), blend.equals("Plan") ? "plan_on_target" : ""));
      row++;
    }
    block.note("A little less comes out than goes in: alcohol and water shrink when they mix.");
  }

  /** Whether columns C, D, E of a row lie within the limits in D, E, F of the target lines. */
  private static String onTarget(int row, String[] limits) {
    String[] columns = {"C", "D", "E"};
    String[] bounds = {"D", "E", "F"};
    StringBuilder all = new StringBuilder();
    for (int i = 0; i < columns.length; i++) {
      String value = "ROUND(" + columns[i] + row + ",4)";
      String least = "$" + bounds[i] + "$" + limits[1];
      String most = "$" + bounds[i] + "$" + limits[2];
      all.append(i == 0 ? "" : ",")
          .append(value + ">=" + least + ",OR(" + most + "=\"\"," + value + "<=" + most + ")");
    }
    return "IF(AND(" + all + "),\"yes\",\"no\")";
  }

  private static void bench(Block block) {
    block.form(
        """
            # Bench trial, scaled to the cellar
            Blend in the glass              | bench_glass    | BLEND.TRIAL trial 0 | 100
            Acid solution that tasted right | bench_added    | BLEND.TRIAL added 2 | 0.6 | mL, from a pipette.
            Strength of that solution       | bench_strength | NUMBER 0            | 10 | g in 100 mL.
            Tartaric acid for the plan      |                | GRAM 0              | =BLEND.TRIAL(bench_glass,bench_added,plan_volume,bench_strength,units) | Add half, stir, wait, measure, then the rest.
            """);
  }
}
