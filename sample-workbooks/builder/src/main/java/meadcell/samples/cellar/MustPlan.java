package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.SG;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import meadcell.catalogue.Quantity;
import meadcell.law.UsHoneyWine;
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
    page.turn(block.row() + 1);
    fruit(block);
    FedBatch.add(block);
    cellarAir(block);
  }

  private static void honey(Block block) {
    block.form(
        """
            # Heather traditional: honey and water
            Volume of must                    | must_volume   | HONEY.NEEDED volume 0              | 300 | What the tank shall hold before pitching.
            Gravity wanted                    | must_gravity  | HONEY.NEEDED gravity 3             | 1.106 | At 20/20 °C.
            Final gravity expected            | must_final    | ALCOHOL.POTENTIAL final 3          | 0.996 | Below 1.000: alcohol is lighter than water.
            Moisture of the honey             | must_moisture | HONEY.NEEDED moisture 1            | 18.2 | Heather honey is moist; read it with a refractometer (HONEY.MOISTURE).
            Honey to weigh in                 | must_honey    | MASS 1                             | =IFERROR(HONEY.NEEDED(must_volume,must_gravity,must_moisture,units),"")
            Room the honey takes              |               | VOLUME 1                           | =IFERROR(HONEY.VOLUME(must_honey,must_moisture,units),"") | Moisture gives its density: HONEY.DENSITY.
            Water to add                      | must_water    | VOLUME 1                           | =IFERROR(HONEY.WATER(must_honey,must_gravity,must_moisture,units),"") | By mass balance; honey and water together shrink a little.
            Gravity of that mix               |               | SPECIFIC_GRAVITY 4                 | =IFERROR(HONEY.GRAVITY(must_volume,must_honey,must_moisture,units),"") | Must come back to the gravity wanted.
            Strength if it ferments out       |               | PERCENT_VOL 2                      | =IFERROR(ALCOHOL.POTENTIAL(must_gravity,must_final),"")
            Fructose and glucose of the honey | must_reducing | HONEY.ACCEPTABLE fructoseGlucose 0 | 66 | From the honey's analysis.
            Sucrose of the honey              | must_sucrose  | HONEY.ACCEPTABLE sucrose 1         | 2.1
            Honey within the general limits   |               | TEXT                               | =IF(OR(must_moisture="",must_reducing="",must_sucrose=""),"",IFERROR(IF(HONEY.ACCEPTABLE(must_moisture,must_reducing,must_sucrose)=1,"yes","no"),"")) | Directive 2001/110/EC, Annex II. Heather (Calluna) honey may be moister than others.
            ? 2 | | IF(must_honey="",CELLAR.WHY("HONEY.NEEDED",must_volume,must_gravity,must_moisture,units),IF(must_water="",CELLAR.WHY("HONEY.WATER",must_honey,must_gravity,must_moisture,units),"Honey and water in these masses give the gravity wanted."))
            """);
    block.warning(UsHoneyWine.WATER);
  }

  private static void nutrients(Block block) {
    block.form(
        """
            # Nutrients
            Nitrogen demand of the yeast  | must_demand   | MUST.NITROGEN demand 0  | medium | The maker of the yeast says which.
            Nitrogen already there        | must_present  | MUST.NITROGEN present 0 | 15 | Honey brings next to none; fruit brings some.
            Nitrogen to add               | must_nitrogen | MILLIGRAM_PER_LITRE 0   | =IFERROR(MUST.NITROGEN(must_gravity,must_demand,must_present),"") | Assimilable nitrogen.
            Share from ammonium phosphate | must_share    | MUST.NUTRIENT share 0   | 50 | Half of it: common practice, no source. 0: none, 100: the salt first.
            Whose limit                   | must_rule     | MUST.NUTRIENT rule 0    | usa | For all the salt that the batch ever gets. The EU's is wine's; whether it binds mead is not shown.
            Nitrogen in organic nutrient  | must_organic  | MUST.NUTRIENT organicPercent 1 | 4 | Read the bag.
            Ammonium phosphate in all     | must_salt     | GRAM 0                  | =IFERROR(INDEX(MUST.NUTRIENT(must_volume,must_nitrogen,must_organic,must_rule,0,must_share,units),1,1),"") | Its share, within the limit.
            Organic nutrient in all       |               | GRAM 0                  | =IFERROR(INDEX(MUST.NUTRIENT(must_volume,must_nitrogen,must_organic,must_rule,0,must_share,units),1,2),"") | For the rest.
            Dry yeast                     |               | GRAM 0                  | =IFERROR(MUST.YEAST(must_volume,must_gravity,units),"")
            ? 2 | | IF(must_nitrogen="",CELLAR.WHY("MUST.NITROGEN",must_gravity,must_demand,must_present),IF(must_salt="",CELLAR.WHY("MUST.NUTRIENT",must_volume,must_nitrogen,must_organic,must_rule,0,must_share,units),"Give it in these feeds:"))
            """);
    String feeding = "INDEX(MUST.FEEDING(must_volume,must_nitrogen,must_gravity,4,units),#,";
    String salts = "must_organic,must_rule,";
    String feed =
        "INDEX(MUST.NUTRIENT(must_volume,[Nitrogen],"
            + salts
            + "[Salt before],must_share,units),1,";
    block.table(
        4,
        always("Feed", of(Quantity.COUNT, 0), "#"),
        always("at gravity", SG, blank(feeding + "1)")),
        always("Nitrogen", of(Quantity.MILLIGRAM_PER_LITRE, 0), blank(feeding + "2)")),
        always(
            "Salt before",
            of(Quantity.GRAM, 0),
            blank(
                "INDEX(MUST.NUTRIENT(must_volume,must_nitrogen*(#-1)/4,"
                    + salts
                    + "0,must_share,units),1,1)")),
        out("Ammonium phosphate", of(Quantity.GRAM, 0), blank(feed + "1)")),
        out("Organic nutrient", of(Quantity.GRAM, 0), blank(feed + "2)")));
    block.note(
        "Each feed counts the ammonium phosphate that the feeds before it gave: the limit holds for"
            + " the batch. Nothing after the last of these: what the yeast leaves feeds what should"
            + " not grow.");
  }

  private static String blank(String formula) {
    return "IFERROR(" + formula + ",\"\")";
  }

  private static void mixing(Block block) {
    block.heading("Temperature of the mix");
    block.form(
        """
            Honey | mix_honey | TEMPERATURE 0 0..60 | 40 | Warm honey pours; hot honey loses its scent.
            Water | mix_water | TEMPERATURE 0 0..60 | 14
            """);
    block
        .table(
            2,
            always("Ingredient", TEXT, "IF(#=1,\"honey\",\"water\")"),
            always(
                "Mass",
                of(Quantity.MASS, 1),
                blank("IF(#=1,must_honey,must_water*GRAVITY.DENSITY(1,mix_water,0,units))")),
            always("Temperature", of(Quantity.TEMPERATURE, 0), "IF(#=1,mix_honey,mix_water)"))
        .name("Ingredient", "mix_ingredients")
        .name("Mass", "mix_masses")
        .name("Temperature", "mix_temperatures");
    block.form(
        """
            Temperature of the must |  | TEMPERATURE 1 | =IFERROR(MUST.MIXTEMPERATURE(mix_ingredients,mix_masses,mix_temperatures,units),"") | Of the plan above. Pitch only when it is where the yeast likes it.
            """);
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
        """
            honey       | 52  | 17.5
            sour cherry | 60  |
            water       | 120 |
            """);
    recipe.nameBlock("Ingredient", "Moisture or °Bx", "must_recipe");
    block.form(
        """
            Gravity           |  | SPECIFIC_GRAVITY 4 | =IFERROR(MUST.GRAVITY(must_recipe,kept),"") | Once the juice has mixed in. Blank: the honey's or the juice's usual value.
            Volume            |  | VOLUME 1           | =IFERROR(MUST.VOLUME(must_recipe,kept)*litre,"") | Liquid only, without skins and stones.
            Fermentable sugar |  | MASS 1             | =IFERROR(MUST.SUGAR(must_recipe,kept)*kilogram,"")
            ? 2 | | IF(ISERROR(MUST.GRAVITY(must_recipe,kept)),CELLAR.WHY("MUST.GRAVITY",must_recipe,kept),"Of these masses, all sugar dissolved.")
            """);
    block.warning(UsHoneyWine.FRUIT);
  }

  private static void cellarAir(Block block) {
    block.form(
        """
            # Heat and gas while it ferments
            Fastest fall expected         | must_fall | GRAVITY_PER_DAY 4            | 0.0080 | The steepest fall of the last batch: page This ferment.
            Room                          | must_room | FERMENT.ROOMCO2 room 0       | 120 | Volume of air in the room.
            Changes of air an hour        | must_air  | FERMENT.ROOMCO2 airChanges 1 | 1.0 | Measured, not guessed: a closed cellar may have less than 0.2.
            Carbon dioxide in all         |           | MASS 1                       | =IFERROR(FERMENT.GAS(must_volume,must_gravity,must_final,units),"")
            Heat in all                   |           | KILOJOULE 0                  | =IFERROR(FERMENT.HEAT(must_volume,must_gravity,must_final,units),"")
            Cooling needed at the fastest |           | WATT 0                       | =IFERROR(FERMENT.COOLING(must_volume,must_gravity,must_final,must_fall,units),"") | To hold the temperature.
            Gas an hour at the fastest    | must_gas  | MASS_PER_HOUR 2              | =IFERROR(FERMENT.GAS(must_volume,must_gravity,must_gravity-must_fall,units)/24,"")
            Carbon dioxide in the room    |           | PARTS_PER_MILLION 0          | =IFERROR(FERMENT.ROOMCO2(must_gas,must_room,must_air,units),"") | If the air were well mixed. Near the floor and in pits there is more. Blank: something above is, or is not possible.
            ! Carbon dioxide kills without warning and lies near the floor. No number here clears a room for entry: measure the air, ventilate, do not work alone, and follow the rules for your place of work.
            """);
  }
}
