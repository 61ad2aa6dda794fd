package meadcell.must;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.General;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Numbers;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.density.Sucrose;
import meadcell.density.Water;
import meadcell.ferment.Ferment;
import meadcell.law.UsHoneyWine;

/** What goes into the must: gravity, volume, sugar, temperature, nitrogen, acid, yeast. */
@Family(
    name = "MUST",
    about = "What goes into the must: gravity, volume, sugar, temperature, nitrogen, acid, yeast.",
    says = MustReason.class)
public final class Must {

  private static final String MIXING =
      "Mass balance; sucrose density: ICUMSA SPS-4. That honey and fruit solids count as sucrose is"
          + " from memory: the usual approximation for musts.";
  private static final String USDA =
      " Fruit: USDA National Nutrient Database for Standard Reference, release 26 (2013).";
  private static final String JUICE = " Least °Brix of juice: 21 CFR 101.30(h)(1).";
  private static final String RECIPE_NOTE =
      "Names are honey, water, sugar and the fruits of MUST.FRUITS. Blank rows are skipped. Fruit is"
          + " taken as bought: stones, stems and peel are taken off by USDA's refuse, and all of the"
          + " flesh but its fibre becomes juice, which pressing never quite reaches.\n"
          + "The table's °Brix are the least that juice may have; measure yours and give it in the"
          + " third column. Fruit, juice or syrup that is not in the table goes by its °Brix, and its"
          + " sugars where sugar is asked for; a name that is nearly one of the table's wants its"
          + " refuse too, in the fifth column. 0 stands for a place that does not apply.";
  private static final Range SPECIFIC_HEATS = Range.between(1, 4.2);
  private static final String MOLAR =
      "Computed from molar masses; tartaric acid 150.086 g/mol, two" + " protons.";

  @Arg(name = "recipe", help = "A row for each ingredient")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface RecipeTable {}

  @Arg(name = "fruit", help = "Name of the fruit; MUST.FRUITS lists them")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Fruit {}

  @Arg(name = "mass", help = "Fruit", is = Quantity.MASS, above = 0, to = 1e6)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Mass {}

  @Arg(
      name = "whole",
      help = "1 if weighed with stones, stems or peel, which are taken off; 0 if prepared",
      byDefault = 1)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Whole {}

  @Arg(
      name = "brix",
      help = "°Brix of the juice as measured",
      is = Quantity.BRIX,
      from = 1,
      to = 85)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Brix {}

  @Arg(
      name = "refuse",
      help = "Stones, stems or peel of the whole; left out: the table's, 0 for what is not in it",
      is = Quantity.PERCENT,
      from = 0,
      to = 90)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Refuse {}

  @Arg(name = "volume", help = "Must", is = Quantity.VOLUME, above = 0, to = 1e6)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MustVolume {}

  @Arg(
      name = "gravity",
      help = "Gravity of the must",
      is = Quantity.SPECIFIC_GRAVITY,
      above = 1,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MustGravity {}

  @Arg(name = "volume", help = "Must or mead", is = Quantity.VOLUME, above = 0, to = 1e6)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MeadVolume {}

  private Must() {}

  /**
   * {@return gravity of a recipe, SG}
   *
   * @param recipe A row for each ingredient
   */
  @CellarFunction(
      summary = "Specific gravity of a must by its recipe.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "The SG of the sucrose solution with the solids of honey (100 − moisture), sugar and juice"
              + " (°Brix) in the mass of all liquid.",
      source = MIXING + USDA + JUICE,
      example = "MUST.GRAVITY({\"honey\",30;\"water\",70;\"raspberry\",10})",
      note = RECIPE_NOTE)
  public static double gravity(@RecipeTable Rows<RecipeRow> recipe) {
    return new Recipe(recipe).liquid().gravity();
  }

  /**
   * {@return volume of a recipe, L}
   *
   * @param recipe A row for each ingredient
   */
  @CellarFunction(
      summary = "Volume of a must by its recipe, at 20 °C and without the pulp of fruit.",
      gives = Quantity.VOLUME,
      formula = "Mass of all liquid over the density of its gravity.",
      source = MIXING + USDA + JUICE,
      example = "MUST.VOLUME({\"honey\",30;\"water\",70;\"raspberry\",10})",
      note = RECIPE_NOTE + "\nLeave room in the tank for pulp and foam.")
  public static double volume(@RecipeTable Rows<RecipeRow> recipe) {
    return new Recipe(recipe).liquid().volumeL();
  }

  /**
   * {@return fermentable sugar of a recipe, kg}
   *
   * @param recipe A row for each ingredient
   */
  @CellarFunction(
      summary = "Fermentable sugar of a must by its recipe.",
      gives = Quantity.MASS,
      formula =
          "Honey: 94 % of its solids. Sugar: 99.8 %. Fruit: USDA's total sugars of the flesh, or the"
              + " fourth column; with °Brix in the third column only, in proportion to it.",
      source =
          "Honey: White et al. 1962, USDA Technical Bulletin 1261. Sugar: NDB 19335."
              + USDA
              + " Sugars in proportion to °Brix: common practice, no source.",
      example = "MUST.SUGAR({\"honey\",30;\"water\",70;\"raspberry\",10})",
      note = RECIPE_NOTE)
  public static double sugar(@RecipeTable Rows<RecipeRow> recipe) {
    return new Recipe(recipe).sugarKg();
  }

  /** {@return the table of fruits, a row} */
  @CellarFunction(
      summary =
          "The table of fruits: name, USDA number, g of water, sugars and fibre in 100 g of flesh, %"
              + " refuse, °Brix of the juice.",
      formula = "None; blank where the source has no value.",
      source = "USDA National Nutrient Database for Standard Reference, release 26 (2013)." + JUICE,
      example = "MUST.FRUITS()",
      note =
          "The fibre of blackcurrant is not USDA's but what its water leaves beside juice of 11 °Bx.")
  public static Object[][] fruits() {
    return Ingredient.fruits().stream()
        .map(
            fruit ->
                new Object[] {
                  fruit.name(),
                  fruit.ndb(),
                  fruit.waterPercent(),
                  orBlank(fruit.sugarsPercent()),
                  fruit.fibrePercent(),
                  fruit.refusePercent(),
                  orBlank(fruit.brix())
                })
        .toArray(Object[][]::new);
  }

  private static Object orBlank(OptionalDouble value) {
    return value.isPresent() ? (Object) value.getAsDouble() : "";
  }

  /**
   * {@return sugar of a fruit, kg}
   *
   * @param fruit name of the fruit; MUST.FRUITS lists them
   * @param massKg fruit, kg
   * @param whole 1 if weighed with stones, stems or peel, which are taken off; 0 if prepared
   * @param sugarsPercent sugars you know of, of the edible part, %
   */
  @CellarFunction(
      summary = "Fermentable sugar in fruit.",
      gives = Quantity.MASS,
      formula = "mass · (1 − refuse/100) · sugars/100.",
      source = "USDA National Nutrient Database for Standard Reference, release 26 (2013).",
      example = "MUST.FRUITSUGAR(\"sour cherry\";25)",
      note =
          "For black currant, elderberry, muscadine, prickly pear and quince USDA has no sugars: give"
              + " your own. Fruit differs with kind and ripeness: apples from 5.7 to 16.1 %, grapes from 11.5 to 17.6 % (a compilation at plantanswers.com).")
  public static double fruitSugar(
      @Fruit String fruit,
      @Mass double massKg,
      @Whole boolean whole,
      @Arg(
              name = "sugars",
              help = "Sugars you know of, of the edible part",
              is = Quantity.PERCENT,
              from = 1,
              to = 100)
          OptionalDouble sugarsPercent,
      @Refuse OptionalDouble refuse) {
    Ingredient found =
        Ingredient.fruit(fruit, OptionalDouble.empty(), sugarsPercent, refuse(whole, refuse));
    return found.sugarKg(edibleKg(found, massKg, whole), sugarsPercent);
  }

  /**
   * {@return juice of a fruit, L}
   *
   * @param fruit name of the fruit; MUST.FRUITS lists them
   * @param massKg fruit, kg
   * @param whole 1 if weighed with stones, stems or peel, which are taken off; 0 if prepared
   * @param brix °Brix of the juice as measured, °Bx
   */
  @CellarFunction(
      summary = "Juice that fruit gives to a must.",
      gives = Quantity.VOLUME,
      formula = "mass · (1 − refuse/100) · (1 − fibre/100) over the density of juice of its °Brix.",
      source =
          "USDA National Nutrient Database for Standard Reference, release 26 (2013)."
              + JUICE
              + " That all but the fibre becomes juice: common practice, no source.",
      example = "MUST.FRUITJUICE(\"sour cherry\";25)",
      note =
          "All that can come, after weeks on the fruit. A press gets less: see what yours leaves.")
  public static double fruitJuice(
      @Fruit String fruit,
      @Mass double massKg,
      @Whole boolean whole,
      @Brix OptionalDouble brix,
      @Refuse OptionalDouble refuse) {
    Ingredient found = Ingredient.fruit(fruit, brix, OptionalDouble.empty(), refuse(whole, refuse));
    return juice(found, edibleKg(found, massKg, whole), brix).volumeL();
  }

  /** Prepared fruit has none. */
  private static OptionalDouble refuse(boolean whole, OptionalDouble refuse) {
    return whole ? refuse : OptionalDouble.of(0);
  }

  private static double edibleKg(Ingredient fruit, double massKg, boolean whole) {
    return whole ? fruit.edibleKg(massKg) : massKg;
  }

  private static Juice juice(Ingredient fruit, double edibleKg, OptionalDouble brix) {
    double kg = fruit.liquidKg(edibleKg);
    return new Juice(kg, kg * fruit.brix(brix) / 100);
  }

  /**
   * {@return gravity after fruit, SG}
   *
   * @param volumeL must before the fruit, L
   * @param gravity its gravity, SG
   * @param fruit name of the fruit; MUST.FRUITS lists them
   * @param massKg whole fruit, kg
   * @param brix °Brix of the juice as measured, °Bx
   */
  @CellarFunction(
      summary = "Specific gravity of a must or mead once the juice of whole fruit has mixed in.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "Masses and dissolved solids of must and juice are added; the juice as in MUST.FRUITJUICE.",
      source = MIXING + USDA + JUICE,
      example = "MUST.AFTERFRUIT(100;1.08;\"raspberry\";20)",
      note =
          "In a ferment it is the gravity just after mixing, an approximation; and fruit changes the"
              + " original gravity for alcohol too.",
      caution = UsHoneyWine.FRUIT)
  public static double afterFruit(
      @Arg(
              name = "volume",
              help = "Must before the fruit",
              is = Quantity.VOLUME,
              above = 0,
              to = 1e6)
          double volumeL,
      @Arg(
              name = "gravity",
              help = "Its gravity",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.3)
          double gravity,
      @Fruit String fruit,
      @Arg(name = "mass", help = "Whole fruit", is = Quantity.MASS, above = 0, to = 1e6)
          double massKg,
      @Brix OptionalDouble brix,
      @Refuse OptionalDouble refuse) {
    Ingredient found = Ingredient.fruit(fruit, brix, OptionalDouble.empty(), refuse);
    return Juice.of(volumeL, gravity).plus(juice(found, found.edibleKg(massKg), brix)).gravity();
  }

  /**
   * {@return water for a lower gravity, L}
   *
   * @param volumeL must, L
   * @param gravity its gravity, SG
   * @param target gravity wanted, SG
   */
  @CellarFunction(
      summary = "Water to add to a must to bring it down to a target gravity.",
      gives = Quantity.VOLUME,
      formula =
          "mass · (w(gravity) / w(target) − 1) of water, with w the sucrose content of that SG; water"
              + " at 20 °C, 0.9982 kg/L.",
      source = MIXING + " Water: Tanaka et al. 2001.",
      example = "MUST.DILUTE(100;1.12;1.1)",
      note = "For unfermented musts.",
      caution = UsHoneyWine.WATER)
  public static double dilute(
      @MustVolume double volumeL,
      @Arg(
              name = "gravity",
              help = "Its gravity",
              is = Quantity.SPECIFIC_GRAVITY,
              above = 1,
              to = 1.3)
          double gravity,
      @Arg(
              name = "target",
              help = "Gravity wanted",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1.002,
              to = 1.3)
          double target) {
    if (target > gravity) {
      throw new Refusal(MustReason.WATER_CANNOT_RAISE)
          .with("target", target, Quantity.SPECIFIC_GRAVITY)
          .with("gravity", gravity, Quantity.SPECIFIC_GRAVITY);
    }
    Juice must = Juice.of(volumeL, gravity);
    double waterKg = must.solidsKg() / Sucrose.massFractionFromGravity(target) - must.kg();
    return waterKg / (Water.density(20) / 1000);
  }

  /**
   * {@return temperature of a mix, °C}
   *
   * @param ingredients names, as in a recipe
   * @param massesKg their masses, kg
   * @param temperaturesC their temperatures, °C
   */
  @CellarFunction(
      summary = "Temperature of a must right after mixing its ingredients.",
      gives = Quantity.TEMPERATURE,
      formula =
          "Σ mass · c · temperature / Σ mass · c, with c in kJ/(kg·K): water 4.19, honey 2.26, sugar"
              + " 1.24, fruit 4.19 for its water and 0.84 for the rest.",
      source =
          "Honey of 17.4 % moisture at 20 °C: 0.54 cal/(g·°C), White's value as suppliers repeat it."
              + " Fruit: R. L. Earle, Unit Operations in Food Processing, Appendix 7, with USDA's"
              + " water. Water and sugar: from memory.",
      example = "MUST.MIXTEMPERATURE({\"honey\";\"water\"};{30;70};{15;30})",
      note =
          "The tank takes its part: steel little, thick walls more. Frozen fruit must be thawed"
              + " first: melting takes more heat than all the rest.",
      caution = "Pour hot honey and water slowly; both scald.")
  public static double mixTemperature(
      @Arg(
              name = "ingredients",
              help =
                  "Names, as in a recipe; or the specific heat in kJ/(kg·K) of one not in the table")
          String[] ingredients,
      @Arg(name = "masses", help = "Their masses", is = Quantity.MASS, above = 0, to = 1e6)
          double[] massesKg,
      @Arg(
              name = "temperatures",
              help = "Their temperatures",
              is = Quantity.TEMPERATURE,
              above = 0,
              to = 100)
          double[] temperaturesC) {
    double heat = 0;
    double capacity = 0;
    for (int i = 0; i < ingredients.length; i++) {
      double part = massesKg[i] * specificHeat(ingredients[i]);
      capacity += part;
      heat += part * temperaturesC[i];
    }
    return heat / capacity;
  }

  private static double specificHeat(String ingredient) {
    OptionalDouble given = Numbers.plain(ingredient);
    if (given.isEmpty()) {
      OptionalDouble none = OptionalDouble.empty();
      return Ingredient.named(ingredient, none, none, none).specificHeat();
    }
    double heat = given.getAsDouble();
    if (!SPECIFIC_HEATS.contains(heat)) {
      throw new Refusal(General.OUTSIDE)
          .about("ingredients")
          .with("value", heat, Quantity.NUMBER)
          .with("range", SPECIFIC_HEATS, Quantity.NUMBER);
    }
    return heat;
  }

  /** How much nitrogen a yeast asks for, against the table's. */
  public enum Demand {
    LOW(0.75),
    MEDIUM(1),
    HIGH(1.25);

    private final double factor;

    Demand(double factor) {
      this.factor = factor;
    }
  }

  /**
   * {@return nitrogen to add, mg/L}
   *
   * @param gravity gravity of the must, SG
   * @param demand what the yeast asks for
   * @param present assimilable nitrogen that is there, mg/L
   */
  @CellarFunction(
      summary = "Yeast assimilable nitrogen that a must still needs.",
      gives = Quantity.MILLIGRAM_PER_LITRE,
      formula =
          "200 mg N/L at 21 °Bx and 25 more for each °Bx above (less below), but not more than the 350"
              + " of 27 °Bx; times 0.75, 1 or 1.25 for low, medium or high demand; not less than 140;"
              + " less what is present, and not below 0.",
      source =
          "From memory: Bisson and Butzke 2000, Am. J. Enol. Vitic. 51:168, 200, 250, 300, 350 mg N/L"
              + " at 21, 23, 25, 27 °Bx. Least 140: the low end of what healthy ferments are reported"
              + " with (Butzke 1998, Spayd 1998, in Watson et al., Oregon State University). Demand"
              + " factors: common practice, no source.",
      example = "MUST.NITROGEN(1.1;\"medium\";20)",
      note =
          "The published range ends at 27 °Bx, SG 1.115, and is for grape must: above it the answer"
              + " stays at its end, not because strong musts need no more, but because nothing"
              + " published says how much. Honey itself brings almost none (from memory).\n"
              + "More than yeast uses feeds spoilage.")
  public static double nitrogen(
      @MustGravity double gravity,
      @Arg(name = "demand", help = "What the yeast asks for", byDefaultWord = "medium")
          Demand demand,
      @Arg(
              name = "present",
              help = "Assimilable nitrogen that is there",
              is = Quantity.MILLIGRAM_PER_LITRE,
              from = 0,
              to = 1000,
              byDefault = 0)
          double present) {
    double brix = 100 * Sucrose.massFractionFromGravity(gravity);
    double table = Math.min(350, 200 + 25 * (brix - 21));
    return Math.max(0, Math.max(140, demand.factor * table) - present);
  }

  /** Whose law sets a limit. */
  public enum Rule {
    USA(8 * 453.59237 / 3785.411784), // 8 lb in 1000 gal
    EU(1);

    private final double mostPhosphate;

    Rule(double mostPhosphate) {
      this.mostPhosphate = mostPhosphate;
    }
  }

  /** What to weigh out. */
  public record Nutrient(
      @Gives(value = "ammonium phosphate", is = Quantity.GRAM) double phosphate,
      @Gives(value = "organic nutrient", is = Quantity.GRAM) double organic) {}

  /**
   * {@return nutrients for that nitrogen, a row}
   *
   * @param volumeL must, L
   * @param nitrogen nitrogen to add, as MUST.NITROGEN gives it, mg/L
   * @param organicPercent nitrogen in the organic nutrient, from its label, %
   * @param rule whose limit
   */
  @CellarFunction(
      summary =
          "Nutrients for that much nitrogen: ammonium phosphate for a share of it, within what the law"
              + " lets the batch have in all, and organic nutrient for the rest.",
      formula =
          "Diammonium phosphate is 21.21 % nitrogen: share · nitrogen of it, but with given not more"
              + " than 0.96 g/L (USA) or 1 g/L (EU) in all. Organic nutrient: the rest over"
              + " organicPercent.",
      source =
          "USA: 27 CFR 24.246, 8 lb per 1000 gal (0.96 g/L) of ammonium phosphates. EU: from memory,"
              + " Delegated Regulation (EU) 2019/934, 1 g/L of ammonium salts, a rule for wine. Nitrogen"
              + " of the salt: computed from molar masses, 28.014 of 132.056. Half of the nitrogen from"
              + " the salt: common practice, no source.",
      example = "MUST.NUTRIENT(100;250)",
      note =
          "Gives two cells in a row. In parts, as MUST.FEEDING has them, give each part what all parts"
              + " before it got as given, so that the cap holds for the batch.\n"
              + "share 100 takes the salt first, 0 none. Whether organic nitrogen counts in full is"
              + " disputed. Monoammonium phosphate has 12.18 % nitrogen and counts to the same limit.\n"
              + "Whether wine's EU limit binds mead is not shown: mead is no wine there.",
      caution =
          "The limit is for all ammonium phosphate that the lot ever gets. Laws change: the text in"
              + " force decides.")
  public static Nutrient nutrient(
      @MustVolume double volumeL,
      @Arg(
              name = "nitrogen",
              help = "Nitrogen to add, as MUST.NITROGEN gives it",
              is = Quantity.MILLIGRAM_PER_LITRE,
              from = 0,
              to = 600)
          double nitrogen,
      @Arg(
              name = "organicPercent",
              help = "Nitrogen in the organic nutrient, from its label",
              is = Quantity.PERCENT,
              from = 1,
              to = 15,
              byDefault = 4)
          double organicPercent,
      @Arg(name = "rule", help = "Whose limit", byDefaultWord = "usa") Rule rule,
      @Arg(
              name = "given",
              help = "Ammonium phosphate that the batch already got",
              is = Quantity.GRAM,
              from = 0,
              to = 1e6,
              byDefault = 0)
          double givenG,
      @Arg(
              name = "share",
              help = "Share of the nitrogen that ammonium phosphate shall bring",
              is = Quantity.PERCENT,
              from = 0,
              to = 100,
              byDefault = 50)
          double share) {
    double nitrogenOfSalt = 2 * 14.007 / 132.056;
    double nitrogenG = volumeL * nitrogen / 1000;
    double allowed = Math.max(0, volumeL * rule.mostPhosphate - givenG);
    double phosphate = Math.min(share / 100 * nitrogenG / nitrogenOfSalt, allowed);
    return new Nutrient(
        phosphate, (nitrogenG - phosphate * nitrogenOfSalt) / (organicPercent / 100));
  }

  /**
   * {@return when to feed, a row}
   *
   * @param volumeL must, L
   * @param nitrogen nitrogen to add in all, as MUST.NITROGEN gives it, mg/L
   * @param original gravity of the must before fermentation, SG
   * @param parts how many parts, a whole number
   */
  @CellarFunction(
      summary =
          "When to feed nitrogen: for each part the gravity at which to give it, mg N/L of it, and g N"
              + " for the batch.",
      formula =
          "Equal parts at equal steps of sugar gone, the first at the original gravity, the last when"
              + " one third of the sugar is gone (FERMENT.BREAK).",
      source = "Common practice, no source.",
      example = "MUST.FEEDING(100;250;1.1)",
      note =
          "A row for each part; what to weigh out for it: MUST.NUTRIENT, given what the parts before it"
              + " got. The first one is for when the yeast has begun to work, some hours"
              + " after pitching. After the third break yeast takes up little.",
      caution =
          "Powder thrown into a working ferment makes it foam over: dissolve it first. Stirring frees"
              + " carbon dioxide: ventilate.")
  public static Object[][] feeding(
      @MustVolume double volumeL,
      @Arg(
              name = "nitrogen",
              help = "Nitrogen to add in all, as MUST.NITROGEN gives it",
              is = Quantity.MILLIGRAM_PER_LITRE,
              from = 0,
              to = 600)
          double nitrogen,
      @Arg(
              name = "original",
              help = "Gravity of the must before fermentation",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1.02,
              to = 1.3)
          double original,
      @Arg(
              name = "parts",
              help = "How many parts, a whole number",
              is = Quantity.COUNT,
              from = 1,
              to = 10,
              byDefault = 4)
          int parts) {
    List<Object[]> rows = new ArrayList<>();
    for (int i = 0; i < parts; i++) {
      double gravity =
          i == 0 ? original : Ferment.Break(original, 100.0 / 3 * i / (parts - 1), 0.995);
      double part = nitrogen / parts;
      rows.add(new Object[] {gravity, part, part * volumeL / 1000});
    }
    return rows.toArray(Object[][]::new);
  }

  /** Acids by grams for a mole of protons: molar mass over protons. */
  public enum Acid {
    TARTARIC(150.086, 2),
    MALIC(134.087, 2),
    CITRIC(192.123, 3),
    CITRIC_MONOHYDRATE(210.138, 3),
    LACTIC(90.078, 1),
    ACETIC(60.052, 1),
    SUCCINIC(118.088, 2),
    GLUCONIC(196.155, 1),
    SULFURIC(98.072, 2);

    private final double gramsPerProton;

    Acid(double molarMass, int protons) {
      gramsPerProton = molarMass / protons;
    }
  }

  /**
   * {@return an acidity in terms of another acid, g/L}
   *
   * @param amount acidity, g/L
   * @param from the acid it is stated as
   * @param to the acid to state it as
   */
  @CellarFunction(
      summary = "An acidity stated as one acid, restated as another.",
      gives = Quantity.GRAM_PER_LITRE,
      formula = "amount · (molar mass / protons) of the one over that of the other.",
      source = MOLAR,
      example = "MUST.ACIDAS(6;\"tartaric\";\"gluconic\")",
      note = "Gluconic acid is the main acid of honey (from memory).")
  public static double acidAs(
      @Arg(name = "amount", help = "Acidity", is = Quantity.GRAM_PER_LITRE, from = 0, to = 100)
          double amount,
      @Arg(name = "from", help = "The acid it is stated as") Acid from,
      @Arg(name = "to", help = "The acid to state it as") Acid to) {
    return amount * to.gramsPerProton / from.gramsPerProton;
  }

  /**
   * {@return acid to add, g}
   *
   * @param volumeL must or mead, L
   * @param present titratable acidity now, as tartaric, g/L
   * @param target titratable acidity wanted, as tartaric, g/L
   * @param acid the acid to add
   */
  @CellarFunction(
      summary = "Acid to add to raise the titratable acidity to a target.",
      gives = Quantity.GRAM,
      formula = "volume · (target − present) · (molar mass / protons) over that of tartaric acid.",
      source = MOLAR,
      example = "MUST.ACIDADD(100;3;5;\"malic\")",
      note =
          "present and target are g/L as tartaric acid. pH does not follow from it: try on a sample"
              + " and taste.",
      caution = "Which acids may be added, and how much, is a matter of law where you sell.")
  public static double acidAdd(
      @MeadVolume double volumeL,
      @Arg(
              name = "present",
              help = "Titratable acidity now, as tartaric",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 30)
          double present,
      @Arg(
              name = "target",
              help = "Titratable acidity wanted, as tartaric",
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 30)
          double target,
      @Arg(name = "acid", help = "The acid to add") Acid acid) {
    if (target < present) {
      throw new Refusal(MustReason.ACID_CANNOT_LOWER)
          .with("target", target, Quantity.GRAM_PER_LITRE)
          .with("present", present, Quantity.GRAM_PER_LITRE);
    }
    return volumeL * acidAs(target - present, Acid.TARTARIC, acid);
  }

  /** Carbonates by grams for a mole of protons. */
  public enum Salt {
    POTASSIUM_BICARBONATE(100.114, 1),
    POTASSIUM_CARBONATE(138.205, 2),
    CALCIUM_CARBONATE(100.086, 2);

    private final double gramsPerProton;

    Salt(double molarMass, int protons) {
      gramsPerProton = molarMass / protons;
    }
  }

  /**
   * {@return carbonate to lower acidity, g}
   *
   * @param volumeL must or mead, L
   * @param drop titratable acidity to take away, as tartaric, g/L
   * @param salt the salt to add
   */
  @CellarFunction(
      summary = "Carbonate salt that takes a given acidity away.",
      gives = Quantity.GRAM,
      formula =
          "volume · drop · (molar mass / protons taken) of the salt over that of tartaric acid.",
      source =
          MOLAR
              + " Potassium bicarbonate 100.114, potassium carbonate 138.205, calcium carbonate"
              + " 100.086 g/mol.",
      example = "MUST.DEACIDIFY(100;1;\"potassiumbicarbonate\")",
      note =
          "drop is g/L as tartaric acid. Where grape brings tartaric acid, potassium salts"
              + " let cream of tartar settle and less is needed; honey and most fruit bring none. Add"
              + " half, wait, measure.",
      caution =
          "It foams and frees carbon dioxide: leave headspace, stir in little by little, ventilate."
              + " In the United States the fixed acids may not be brought below 5 g/L (27 CFR"
              + " 24.246); other laws differ.")
  public static double deacidify(
      @MeadVolume double volumeL,
      @Arg(
              name = "drop",
              help = "Titratable acidity to take away, as tartaric",
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 15)
          double drop,
      @Arg(name = "salt", help = "The salt to add") Salt salt) {
    return volumeL * drop * salt.gramsPerProton / Acid.TARTARIC.gramsPerProton;
  }

  /**
   * {@return dry yeast, g}
   *
   * @param volumeL must, L
   * @param gravity gravity of the must, SG
   * @param dose dry yeast for a litre, g/L
   */
  @CellarFunction(
      summary = "Dry yeast for a must.",
      gives = Quantity.GRAM,
      formula =
          "volume · dose; if dose is left out 0.25 g/L up to SG 1.100, 0.5 from 1.150 on, in"
              + " proportion between.",
      source = "Common practice, no source.",
      example = "MUST.YEAST(100;1.12)",
      note = "The maker's leaflet goes before this. Rehydrate as it says.")
  public static double yeast(
      @MustVolume double volumeL,
      @MustGravity double gravity,
      @Arg(
              name = "dose",
              help = "Dry yeast for a litre",
              is = Quantity.GRAM_PER_LITRE,
              from = 0.05,
              to = 2)
          OptionalDouble dose) {
    double strength = Math.min(1, Math.max(0, (gravity - 1.1) / 0.05));
    return volumeL * dose.orElse(0.25 + 0.25 * strength);
  }
}
