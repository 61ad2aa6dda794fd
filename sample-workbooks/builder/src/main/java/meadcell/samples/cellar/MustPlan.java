package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.ABV;
import static meadcell.samples.sheet.Field.MASS;
import static meadcell.samples.sheet.Field.SG;
import static meadcell.samples.sheet.Field.TEMPERATURE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.in;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** Honey, water, fruit and nutrients for a wanted strength. */
final class MustPlan {
  static final String TITLE = "Must plan";

  private MustPlan() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 34, 18, 16, 16, 16, 14);
    Block block =
        page.head(
            "Must plan",
            "From the wanted gravity to the honey on the scale, the feeding and the heat of the mix.");
    honey(block);
    nutrients(block);
    mixing(block);
    fruit(block);
    cellarAir(block);
  }

  private static void honey(Block block) {
    block
        .heading("Heather traditional: honey and water")
        .input(
            "Volume of must",
            arg("HONEY.NEEDED", "volume", 0),
            300,
            "must_volume",
            "What the tank shall hold before pitching.")
        .input(
            "Gravity wanted",
            arg("HONEY.NEEDED", "gravity", 3),
            1.106,
            "must_gravity",
            "At 20/20 °C.")
        .input(
            "Final gravity expected",
            arg("ALCOHOL.POTENTIAL", "final", 3),
            0.996,
            "must_final",
            "Below 1.000: alcohol is lighter than water.")
        .input(
            "Moisture of the honey",
            arg("HONEY.NEEDED", "moisture", 1),
            18.2,
            "must_moisture",
            "Heather honey is moist; read it with a refractometer (HONEY.MOISTURE).")
        .result(
            "Honey to weigh in",
            MASS,
            "HONEY.NEEDED(must_volume,must_gravity,must_moisture,units)",
            "must_honey",
            "")
        .result(
            "Room the honey takes",
            VOLUME,
            "HONEY.VOLUME(must_honey,must_moisture,units)",
            "",
            "Moisture gives its density: HONEY.DENSITY.")
        .result(
            "Water to add",
            VOLUME,
            "HONEY.WATER(must_honey,must_gravity,must_moisture,units)",
            "must_water",
            "By mass balance; honey and water together shrink a little.")
        .result(
            "Gravity of that mix",
            SG,
            "HONEY.GRAVITY(must_volume,must_honey,must_moisture,units)",
            "",
            "Must come back to the gravity wanted.")
        .result(
            "Strength if it ferments out",
            ABV,
            "ALCOHOL.POTENTIAL(must_gravity,must_final)",
            "",
            "")
        .input(
            "Fructose and glucose of the honey",
            arg("HONEY.ACCEPTABLE", "fructoseGlucose", 0),
            66,
            "must_reducing",
            "From the honey's analysis.")
        .input(
            "Sucrose of the honey", arg("HONEY.ACCEPTABLE", "sucrose", 1), 2.1, "must_sucrose", "")
        .result(
            "Honey within the general limits",
            TEXT,
            "IF(HONEY.ACCEPTABLE(must_moisture,must_reducing,must_sucrose)=1,\"yes\",\"no\")",
            "",
            "Directive 2001/110/EC, Annex II. Heather (Calluna) honey may be moister than others.");
  }

  private static void nutrients(Block block) {
    block
        .heading("Nutrients")
        .input(
            "Nitrogen demand of the yeast",
            arg("MUST.NITROGEN", "demand", 0),
            "medium",
            "must_demand",
            "The maker of the yeast says which.")
        .input(
            "Nitrogen already there",
            arg("MUST.NITROGEN", "present", 0),
            15,
            "must_present",
            "Honey brings next to none; fruit brings some.")
        .result(
            "Nitrogen to add",
            of(Quantity.MILLIGRAM_PER_LITRE, 0),
            "MUST.NITROGEN(must_gravity,must_demand,must_present)",
            "must_nitrogen",
            "Assimilable nitrogen.")
        .result(
            "Ammonium phosphate",
            of(Quantity.GRAM, 0),
            "INDEX(MUST.NUTRIENT(must_volume,must_nitrogen,units),1,1)",
            "",
            "Up to what the law allows.")
        .result(
            "Organic nutrient for the rest",
            of(Quantity.GRAM, 0),
            "INDEX(MUST.NUTRIENT(must_volume,must_nitrogen,units),1,2)",
            "",
            "With 4 % of nitrogen; read the bag.")
        .result(
            "Dry yeast",
            of(Quantity.GRAM, 0),
            "MUST.YEAST(must_volume,must_gravity,units)",
            "",
            "");
    String feeding = "INDEX(MUST.FEEDING(must_volume,must_nitrogen,must_gravity,4,units),#,";
    block.table(
        4,
        always("Feed", of(Quantity.COUNT, 0), "#"),
        always("at gravity", SG, feeding + "1)"),
        always("Nitrogen", of(Quantity.MILLIGRAM_PER_LITRE, 0), feeding + "2)"));
    block.note(
        "Nothing after the last of these: what the yeast leaves feeds what should not grow.");
  }

  private static void mixing(Block block) {
    block.heading("Temperature of the mix");
    Table parts =
        block.table(
            3,
            in("Ingredient", TEXT),
            in("Mass", arg("MUST.MIXTEMPERATURE", "masses", 0)),
            in("Temperature", arg("MUST.MIXTEMPERATURE", "temperatures", 0)));
    parts.fill(new Object[][] {{"honey", 99, 40}, {"water", 231, 14}});
    block.result(
        "Temperature of the must",
        TEMPERATURE,
        "MUST.MIXTEMPERATURE("
            + parts.range("Ingredient")
            + ","
            + parts.range("Mass")
            + ","
            + parts.range("Temperature")
            + ",units)",
        "",
        "Pitch only when it is where the yeast likes it. Warm honey pours; hot honey loses its scent.");
  }

  private static void fruit(Block block) {
    block.heading("Sour-cherry melomel: a recipe as a whole");
    Table recipe =
        block.table(
            5,
            in("Ingredient", TEXT),
            in("Mass", of(Quantity.MASS, 0)),
            in("Moisture or °Bx", of(Quantity.NUMBER, 1)));
    recipe.fill(
        new Object[][] {{"honey", 52, 17.5}, {"sour cherry", 60, null}, {"water", 120, null}});
    String range = recipe.block("Ingredient", "Moisture or °Bx");
    block
        .result(
            "Gravity",
            SG,
            "MUST.GRAVITY(" + range + ",units)",
            "",
            "Once the juice has mixed in. Blank: the honey's or the juice's usual value.")
        .result(
            "Volume",
            VOLUME,
            "MUST.VOLUME(" + range + ",units)",
            "",
            "Liquid only, without skins and stones.")
        .result("Fermentable sugar", MASS, "MUST.SUGAR(" + range + ",units)", "", "");
  }

  private static void cellarAir(Block block) {
    block
        .heading("Heat and gas while it ferments")
        .input(
            "Fastest fall expected",
            of(Quantity.GRAVITY_PER_DAY, 4),
            0.0080,
            "must_fall",
            "From the last batch: sheet Ferment log.")
        .input(
            "Room",
            arg("FERMENT.ROOMCO2", "room", 0),
            120,
            "must_room",
            "Volume of air in the room.")
        .input(
            "Changes of air an hour",
            arg("FERMENT.ROOMCO2", "airChanges", 1),
            1.0,
            "must_air",
            "Measured, not guessed: a closed cellar may have less than 0.2.")
        .result(
            "Carbon dioxide in all",
            of(Quantity.MASS, 1),
            "FERMENT.GAS(must_volume,must_gravity,must_final,units)",
            "",
            "")
        .result(
            "Heat in all",
            of(Quantity.KILOJOULE, 0),
            "FERMENT.HEAT(must_volume,must_gravity,must_final,units)",
            "",
            "")
        .result(
            "Cooling needed at the fastest",
            of(Quantity.WATT, 0),
            "FERMENT.COOLING(must_volume,must_gravity,must_final,must_fall,units)",
            "",
            "To hold the temperature.")
        .result(
            "Gas an hour at the fastest",
            of(Quantity.MASS_PER_HOUR, 2),
            "FERMENT.GAS(must_volume,must_gravity,must_gravity-must_fall,units)/24",
            "must_gas",
            "")
        .result(
            "Carbon dioxide in the room",
            of(Quantity.PARTS_PER_MILLION, 0),
            "FERMENT.ROOMCO2(must_gas,must_room,must_air,units)",
            "",
            "If the air were well mixed. Near the floor and in pits there is more.")
        .warning(
            "Carbon dioxide kills without warning and lies near the floor. A number here never means"
                + " that a room is safe: measure the air, ventilate, do not work alone, and follow the"
                + " rules for your place of work.");
  }
}
