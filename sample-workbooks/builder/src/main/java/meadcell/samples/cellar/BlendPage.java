package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.cell;
import static meadcell.samples.cellar.Formulas.given;
import static meadcell.samples.cellar.Formulas.orBlank;
import static meadcell.samples.cellar.Formulas.quoted;
import static meadcell.samples.sheet.Block.Entry.typed;
import static meadcell.samples.sheet.Block.Entry.worked;
import static meadcell.samples.sheet.Field.ABV;
import static meadcell.samples.sheet.Field.GRAMS_PER_LITRE;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.choose;
import static meadcell.samples.sheet.Table.in;

import meadcell.catalogue.Quantity;
import meadcell.law.UsHoneyWine;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** From today's stock and the targets to a plan. */
final class BlendPage {
  static final String TITLE = "Blend";
  static final int LOTS = 8;

  private BlendPage() {}

  static void add(Book book) {
    book.formulaName("blend_targets", "blend_abv_low:blend_acid_high");
    Page page = book.page(TITLE, 24, 13, 12, 13, 13, 13, 12, 10, 12, 40);
    Block block =
        page.head(
            TITLE,
            "The cheapest blend on target from what is in stock today. Contents come from Movements, strength, sugar and acid from Analyses, carried through every transfer.");
    targets(block);
    stock(block);
    plan(block);
    page.turn(block.row() + 1);
    WholeCasks.add(block);
    bench(block);
  }

  private static void targets(Block block) {
    Field share = between(Quantity.PERCENT_VOL, 1, "Blank: no limit.", 0, 25);
    Field grams = between(Quantity.GRAM_PER_LITRE, 1, "Blank: no limit.", 0, 300);
    block
        .heading("What the blend shall be")
        .form("Volume | blend_volume | BLEND.PLAN volume 0 | 320")
        .headers("Targets", null, null, "Strength", "Sugar", "Acid")
        .line(
            "at least",
            null,
            null,
            typed(share, 13.0, "blend_abv_low"),
            typed(grams, 15, "blend_sugar_low"),
            typed(grams, 4.8, "blend_acid_low"))
        .line(
            "at most",
            null,
            null,
            typed(share, 14.6, "blend_abv_high"),
            typed(grams, 25, "blend_sugar_high"),
            typed(grams, 5.8, "blend_acid_high"));
  }

  private static String carried(String property, int place) {
    return given("[Vessel]", orBlank(cell(Formulas.carried("[Vessel]", quoted(property)), place)));
  }

  /** The first thing that is not known of a vessel. */
  private static String missing() {
    return given(
        "[Vessel]",
        "IF([In stock]=\"\",\"it holds nothing\",IF([Strength]=\"\",%s,IF([Sugar]=\"\",%s,IF([Acid]=\"\",%s,\"\"))))"
            .formatted(
                Formulas.notCarried("[Vessel]", quoted("strength")),
                Formulas.notCarried("[Vessel]", quoted("sugar")),
                Formulas.notCarried("[Vessel]", quoted("titratable acidity"))));
  }

  private static void stock(Block block) {
    block.heading("Stock and plan");
    Table stock =
        block.table(
            LOTS,
            choose("Vessel", "vessel_list"),
            always(
                "In stock",
                VOLUME,
                "IF([Vessel]=\"\",\"\",IFERROR(VESSEL.HOLDS(moves,[Vessel],today,kept)*litre,\"\"))"),
            in(
                "Cost a unit",
                between(
                    Quantity.NUMBER,
                    2,
                    "Of a litre, or of a gallon: only the order counts. Blank: nothing.",
                    0,
                    100_000)),
            always("Strength", ABV, carried("strength", 1)),
            always("Sugar", GRAMS_PER_LITRE, carried("sugar", 1)),
            always("Acid", GRAMS_PER_LITRE, carried("titratable acidity", 1)),
            always(
                "Plan", VOLUME, "IF(OR([Vessel]=\"\",blend_why<>\"\"),\"\",INDEX(" + PLAN + ",#))"),
            always("Share", PERCENT, "IF([Plan]=\"\",\"\",100*[Plan]/blend_volume)"),
            always("Strength ±", ABV, carried("strength", 2)),
            always("Not in the plan because", Field.TEXT, missing()));
    stock.fill(
        """
        C1 | 9.40
        C2 | 8.90
        C3 | 8.10
        Carboys | 7.40
        Tank 1 | 6.20
        """);
    stock
        .name("Vessel", "blend_vessels")
        .name("Plan", "blend_plan")
        .name("Strength", "blend_abvs")
        .name("Sugar", "blend_sugars")
        .name("Acid", "blend_acids");
    block.note(
        "Put in only vessels of which all three are known. The share is also the mL of each in a bench blend of 100 mL: mix it, taste it, measure its pH, which does not blend by volume.");
    block.warning(UsHoneyWine.BLEND);
    stock.nameBlock("In stock", "Acid", "blend_stock");
  }

  private static final String PLAN = "BLEND.PLAN(blend_stock,blend_targets,blend_volume,units)";

  private static void plan(Block block) {
    block
        .heading("What comes out")
        .result(
            "Not on target because",
            Field.TEXT,
            "IF(OR(COUNT(blend_targets)=0,blend_volume=\"\"),\"Type the volume and a target.\",IF(COUNTA(blend_vessels)=0,\"Choose vessels.\",CELLAR.WHY(\"BLEND.PLAN\",blend_stock,blend_targets,blend_volume,units)))",
            "blend_why",
            "Blank while the plan is on target.")
        .verdict(
            "IF(blend_why<>\"\",\"No plan: \"&blend_why,\"On target. A little less comes out than goes in: alcohol and water shrink when they mix.\")",
            3)
        .headers("Blend", "Volume", "Strength", "Sugar", "Acid")
        .line(
            "The plan",
            worked(VOLUME, ok("BLEND.VOLUME(blend_plan,blend_abvs,units)"), "plan_volume"),
            worked(ABV, ok("BLEND.ABV(blend_plan,blend_abvs,units)"), "plan_abv"),
            worked(GRAMS_PER_LITRE, ok("BLEND.MEAN(blend_plan,blend_sugars,units)"), "plan_sugar"),
            worked(GRAMS_PER_LITRE, ok("BLEND.MEAN(blend_plan,blend_acids,units)"), "plan_acid"));
  }

  private static String ok(String formula) {
    return "IF(blend_why<>\"\",\"\"," + formula + ")";
  }

  private static void bench(Block block) {
    block.form(
        """
        # Bench trial, scaled to the plan
        Blend in the glass              | bench_glass    | BLEND.TRIAL trial 0 | 100
        Acid solution that tasted right | bench_added    | BLEND.TRIAL added 2 | 0.6 | mL, from a pipette.
        Strength of that solution       | bench_strength | NUMBER 0            | 10 | g in 100 mL.
        Tartaric acid for the plan      |                | GRAM 0              | =IF(plan_volume="","",IFERROR(BLEND.TRIAL(bench_glass,bench_added,plan_volume,bench_strength,units),"")) | Add half, stir, wait, measure, then the rest. Then write it into Additions.
        """);
  }
}
