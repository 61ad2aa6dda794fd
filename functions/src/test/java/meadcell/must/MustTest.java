package meadcell.must;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.catalogue.Tables;
import meadcell.cellar.Cellar;
import meadcell.ferment.Feeding;
import meadcell.ferment.Ferment;
import meadcell.honey.Honey;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class MustTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static Rows<RecipeRow> recipe(Object[]... rows) {
    return Tables.read("MUST.GRAVITY", 0, rows);
  }

  private static Object[] row(Object... cells) {
    return cells;
  }

  @Property
  void aRecipeOfHoneyAndWaterIsWhatTheHoneyFunctionsSay(
      @Between(min = 1, max = 100) double honey,
      @Between(min = 50, max = 300) double water,
      @Between(min = 13, max = 21) double moisture) {
    Rows<RecipeRow> recipe = recipe(row("honey", honey, moisture), row("water", water, null));
    double volume = Must.volume(recipe);
    double gravity = Must.gravity(recipe);
    assertEquals(Honey.gravity(volume, honey, moisture), gravity, 1e-12);
    assertEquals(honey, Honey.needed(volume, gravity, moisture), 1e-9);
    assertEquals(Honey.sugar(honey, moisture, 94), Must.sugar(recipe), 1e-9);
  }

  @Property
  void mixingEqualPartsChangesNothing(
      @Between(min = 1, max = 40) double honey, @Between(min = 1, max = 50) double fruit) {
    Rows<RecipeRow> once = recipe(row("honey", honey), row("water", 80.0), row("plum", fruit));
    Rows<RecipeRow> twice =
        recipe(
            row("plum", fruit),
            row("honey", honey),
            row("water", 160.0),
            row(null, null),
            row("honey", honey),
            row("plum", fruit));
    assertEquals(Must.gravity(once), Must.gravity(twice), 1e-12);
    assertEquals(2 * Must.volume(once), Must.volume(twice), 1e-9);
    assertEquals(2 * Must.sugar(once), Must.sugar(twice), 1e-9);
  }

  @Property
  void fruitInTheRecipeOrAfterwardsIsTheSame(
      @Between(min = 5, max = 40) double honey, @Between(min = 1, max = 50) double fruit) {
    Rows<RecipeRow> without = recipe(row("honey", honey, null), row("water", 80.0, null));
    Rows<RecipeRow> with =
        recipe(row("honey", honey, null), row("water", 80.0, null), row("pear", fruit, 13.0));
    assertEquals(
        Must.gravity(with),
        Fruits.afterFruit(
            Must.volume(without),
            Must.gravity(without),
            "pear",
            fruit,
            OptionalDouble.of(13),
            NONE),
        1e-12);
  }

  @Property
  void waterBringsAMustToItsTarget(
      @Between(min = 1.06, max = 1.25) double gravity,
      @Between(min = 1.01, max = 1.05) double target) {
    double honey = Honey.needed(100, gravity, 17.2);
    double water = Mixing.dilute(100, gravity, target);
    double all = Honey.water(honey, gravity, 17.2) + water;
    assertEquals(Honey.water(honey, target, 17.2), all, 1e-9 * all);
    assertEquals(0, Mixing.dilute(100, gravity, gravity), 1e-9);
  }

  @Property
  void aMixIsNoWarmerThanItsWarmestPart(
      @Between(min = 1, max = 100) double honeyKg,
      @Between(min = 1, max = 100) double waterKg,
      @Between(min = 5, max = 40) double honeyC,
      @Between(min = 5, max = 80) double waterC) {
    double mixed =
        Mixing.mixTemperature(
            new String[] {"honey", "water"},
            new double[] {honeyKg, waterKg},
            new double[] {honeyC, waterC});
    assertTrue(mixed >= Math.min(honeyC, waterC) - 1e-9);
    assertTrue(mixed <= Math.max(honeyC, waterC) + 1e-9);
  }

  @Property
  void nutrientsHoldTheNitrogen(
      @Between(min = 0, max = 600) double nitrogen,
      @Between(min = 1, max = 15) double organicPercent) {
    for (Yeast.Rule rule : Yeast.Rule.values()) {
      Yeast.Nutrient nutrient = Yeast.nutrient(100, nitrogen, organicPercent, rule, 0, 100);
      double given =
          nutrient.phosphate() * 28.014 / 132.056 + nutrient.organic() * organicPercent / 100;
      assertEquals(nitrogen * 100 / 1000, given, 1e-9);
      assertTrue(nutrient.phosphate() <= (rule == Yeast.Rule.EU ? 100 : 95.87));
      assertTrue(nutrient.organic() >= -1e-12);
    }
  }

  @Property
  void feedingEndsAtTheThirdBreak(@Between(min = 1.05, max = 1.2) double original) {
    Feeding.Feed[] feeds = Feeding.feeding(100, 240, original, 4);
    double before = 2;
    double sum = 0;
    for (Feeding.Feed feed : feeds) {
      assertTrue(feed.gravity() < before);
      before = feed.gravity();
      sum += feed.nitrogen();
    }
    assertEquals(240, sum, 1e-9);
    assertEquals(Ferment.Break(original, 100.0 / 3, 0.995), before, 1e-12);
  }

  @Property
  void acidsThereAndBack(@Between(min = 0, max = 100) double amount) {
    for (Acidity.Acid from : Acidity.Acid.values()) {
      for (Acidity.Acid to : Acidity.Acid.values()) {
        assertEquals(amount, Acidity.acidAs(Acidity.acidAs(amount, from, to), to, from), 1e-12);
      }
    }
  }

  @Test
  void moreYeastForStrongerMustsWithoutAStep() {
    assertEquals(Yeast.yeast(1, 1.1, NONE), Yeast.yeast(1, 1.1001, NONE), 0.001);
    assertTrue(Yeast.yeast(1, 1.13, NONE) > Yeast.yeast(1, 1.12, NONE));
  }

  @Test
  void sugarGoesWithTheMeasuredBrixUnlessGiven() {
    assertEquals(
        1.5 * Must.sugar(recipe(row("grape", 10.0))),
        Must.sugar(recipe(row("grape", 10.0, 24.0))),
        1e-12);
    assertEquals(0.96 * 2, Must.sugar(recipe(row("grape", 10.0, 24.0, 20.0))), 1e-12);
  }

  @Test
  void namesInAnySpelling() {
    double expected = Fruits.fruitSugar("sour cherry", 10, true, NONE, NONE);
    assertEquals(expected, Fruits.fruitSugar("Sour-Cherry", 10, true, NONE, NONE));
    assertEquals(expected, Fruits.fruitSugar("SOURCHERRY", 10, true, NONE, NONE));
  }

  @Test
  void refusalsSayWhy() {
    refuses("Did you mean raspberry?", () -> Fruits.fruitSugar("rasberry", 1, true, NONE, NONE));
    refuses("Did you mean honey?", () -> Must.gravity(recipe(row("hony", 1.0))));
    refuses("is not known", () -> Fruits.fruitSugar("honey", 1, true, NONE, NONE));
    refuses("no sugars for elderberry", () -> Fruits.fruitSugar("elderberry", 1, true, NONE, NONE));
    refuses("no sugars for elderberry", () -> Must.sugar(recipe(row("elderberry", 1.0))));
    refuses("no °Brix", () -> Fruits.fruitJuice("mulberry", 1, true, NONE, NONE));
    refuses("whole is 0.5", () -> call("MUST.FRUITJUICE", "apple", 1.0, 0.5));
    refuses("Is the water missing?", () -> Must.gravity(recipe(row("honey", 10.0))));
    refuses(
        "mass in row 2 of recipe is blank",
        () -> Must.gravity(recipe(row("honey", 1.0), row("water", null))));
    refuses(
        "mass in row 1 of recipe is the text", () -> Must.gravity(recipe(row("honey", "1 kg"))));
    refuses("it must be 10 to 30", () -> Must.gravity(recipe(row("honey", 1.0, 0.172))));
    refuses("nothing else", () -> Must.gravity(recipe(row("water", 1.0, 5.0))));
    refuses("The ingredient \"3\" is not known.", () -> Must.gravity(recipe(row(3.0, 1.0))));
    refuses("1 columns", () -> Must.gravity(recipe(row("honey"))));
    refuses("every mass is 0", () -> Must.gravity(recipe(row("honey", 0.0))));
    refuses("only blank", () -> Must.gravity(recipe(row(null, null))));
    refuses("cannot raise", () -> Mixing.dilute(100, 1.08, 1.09));
    refuses("MUST.DEACIDIFY", () -> Acidity.acidAdd(100, 6, 5, Acidity.Acid.MALIC));
    refuses("whole number", () -> call("MUST.FEEDING", 100.0, 200.0, 1.1, 2.5));
  }

  private static void call(String function, Object... arguments) {
    Cellar.catalogue().get(function).call(arguments);
  }

  private static void refuses(String why, Runnable call) {
    Refusal refusal = assertThrows(Refusal.class, call::run);
    assertTrue(refusal.getMessage().contains(why), refusal.getMessage());
  }
}
