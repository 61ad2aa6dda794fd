package meadcell.must;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.law.UsHoneyWine;

/** What fruit brings to a must: sugar and juice. */
@Family(name = "MUST")
public final class Fruits {
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

  private Fruits() {}

  /** {@return the table of fruits, a row} */
  @CellarFunction(
      summary =
          "The table of fruits: name, USDA number, g of water, sugars and fibre in 100 g of flesh, %"
              + " refuse, °Brix of the juice.",
      formula = "None; blank where the source has no value.",
      source =
          "USDA National Nutrient Database for Standard Reference, release 26 (2013)."
              + Shared.JUICE,
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
   * @param refuse stones, stems or peel of the whole; left out: the table's, 0 for what is not in
   *     it, %
   */
  @CellarFunction(
      summary = "Fermentable sugar in fruit.",
      gives = Quantity.MASS,
      formula = "mass · (1 − refuse/100) · sugars/100.",
      source = "USDA National Nutrient Database for Standard Reference, release 26 (2013).",
      example = "MUST.FRUITSUGAR(\"sour cherry\";25)",
      note =
          "For black currant, elderberry, muscadine, prickly pear and quince USDA has no sugars: give"
              + " your own. Fruit differs with kind and ripeness: apples from 5.7 to 16.1 %, grapes from 11.5 to 17.6 % (common practice, no source).")
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
   * @param refuse stones, stems or peel of the whole; left out: the table's, 0 for what is not in
   *     it, %
   */
  @CellarFunction(
      summary = "Juice that fruit gives to a must.",
      gives = Quantity.VOLUME,
      formula = "mass · (1 − refuse/100) · (1 − fibre/100) over the density of juice of its °Brix.",
      source =
          "USDA National Nutrient Database for Standard Reference, release 26 (2013)."
              + Shared.JUICE
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
   * @param refuse stones, stems or peel of the whole; left out: the table's, 0 for what is not in
   *     it, %
   */
  @CellarFunction(
      summary = "Specific gravity of a must or mead once the juice of whole fruit has mixed in.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "Masses and dissolved solids of must and juice are added; the juice as in MUST.FRUITJUICE.",
      source = Shared.MIXING + Shared.USDA + Shared.JUICE,
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
}
