package meadcell.must;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Rows;

/** What goes into the must: gravity, volume, sugar, temperature, nitrogen, acid, yeast. */
@Family(
    name = "MUST",
    about = "What goes into the must: gravity, volume, sugar, temperature, nitrogen, acid, yeast.",
    says = MustReason.class)
public final class Must {
  private static final String RECIPE_NOTE =
      "Names are honey, water, sugar and the fruits of MUST.FRUITS. Blank rows are skipped. Fruit is"
          + " taken as bought: stones, stems and peel are taken off by USDA's refuse, and all of the"
          + " flesh but its fibre becomes juice, which pressing never quite reaches.\n"
          + "The table's °Brix are the least that juice may have; measure yours and give it in the"
          + " third column. Fruit, juice or syrup that is not in the table goes by its °Brix, and its"
          + " sugars where sugar is asked for; a name that is nearly one of the table's wants its"
          + " refuse too, in the fifth column. 0 stands for a place that does not apply.";

  @Arg(name = "recipe", help = "A row for each ingredient")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface RecipeTable {}

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
      source = Shared.MIXING + Shared.USDA + Shared.JUICE,
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
      source = Shared.MIXING + Shared.USDA + Shared.JUICE,
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
              + Shared.USDA
              + " Sugars in proportion to °Brix: common practice, no source.",
      example = "MUST.SUGAR({\"honey\",30;\"water\",70;\"raspberry\",10})",
      note = RECIPE_NOTE)
  public static double sugar(@RecipeTable Rows<RecipeRow> recipe) {
    return new Recipe(recipe).sugarKg();
  }
}
