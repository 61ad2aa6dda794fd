package meadcell.ferment;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Sucrose;
import meadcell.ferment.Shared.Original;
import meadcell.ferment.Shared.Present;
import meadcell.ferment.Shared.Volume;
import meadcell.honey.Honey;
import meadcell.law.UsHoneyWine;
import meadcell.must.Addition;

/** What becomes of a running ferment when something is put into it. */
@Family(name = "FERMENT")
public final class AfterAddition {
  private static final Set<String> SPIRITS =
      Set.of(
          "alcohol", "brandy", "ethanol", "rum", "spirit", "spirits", "vodka", "whiskey", "whisky");

  private AfterAddition() {}

  /**
   * A ferment as it is after an addition.
   *
   * @param original as if all had been in the must from the start, SG
   * @param present gravity just after mixing, SG
   * @param volumeL its volume, L
   */
  public record Enlarged(
      @Gives(value = "effective original gravity", is = Quantity.SPECIFIC_GRAVITY) double original,
      @Gives(value = "present gravity", is = Quantity.SPECIFIC_GRAVITY) double present,
      @Gives(value = "volume", is = Quantity.VOLUME) double volumeL) {}

  /**
   * {@return the ferment after an addition, a row}
   *
   * @param volumeL mead before the addition, L
   * @param original gravity of the must before fermentation, SG
   * @param present gravity just before the addition, SG
   * @param ingredient honey, sugar, water, a fruit of MUST.FRUITS or, with its °Brix, juice or
   *     syrup
   * @param massKg mass of the ingredient as weighed, kg
   * @param brix °Brix of the juice or syrup as measured, °Bx
   * @param moisturePercent water in honey, %
   * @param refuse stones, stems or peel of the whole, %
   */
  @CellarFunction(
      summary =
          "Original gravity, present gravity and volume of a ferment after honey, sugar, fruit, juice,"
              + " syrup or water was put into it: the ones to take from then on.",
      formula =
          "The mead is turned back into the must it was, by Balling's balance; liquid and solids of the"
              + " addition are added, which gives the effective original gravity. The ethanol made so"
              + " far stays; the balance turns the larger must into mead with as much.",
      source =
          Shared.BALANCE
              + " Solids count as sucrose, as in HONEY.GRAVITY and MUST.GRAVITY. Fruit: USDA Standard"
              + " Reference 26, as in MUST.FRUITS.",
      example = "FERMENT.AFTERADDITION(100;1.09;1.02;\"raspberry\";20)",
      note =
          "volume and present are those just before the addition. Whole fruit counts without stones,"
              + " peel and fibre, and as if all its juice had come out, which takes weeks.\n"
              + "For a second addition give the results as original, present and volume.",
      caution =
          "Sugar in a ferment that had come to rest wakes it: leave it room and a way for the gas."
              + " Carbon dioxide gathers in closed rooms and kills. "
              + UsHoneyWine.FRUIT)
  public static Enlarged afterAddition(
      @Volume(help = "Mead before the addition") double volumeL,
      @Original double original,
      @Present(help = "Gravity just before the addition") double present,
      @Arg(
              name = "ingredient",
              help =
                  "honey, sugar, water, a fruit of MUST.FRUITS or, with its °Brix, juice or syrup")
          String ingredient,
      @Arg(name = "mass", help = "As weighed", is = Quantity.MASS, above = 0, to = 1e6)
          double massKg,
      @Arg(
              name = "brix",
              help = "°Brix of the juice or syrup as measured",
              is = Quantity.BRIX,
              from = 1,
              to = 85)
          OptionalDouble brix,
      @Arg(
              name = "moisture",
              help = "Water in the honey",
              is = Quantity.PERCENT,
              from = 10,
              to = 30,
              byDefault = Honey.MEAN_MOISTURE)
          double moisturePercent,
      @Arg(
              name = "refuse",
              help =
                  "Stones, stems or peel of the whole; left out: the table's; 0 for juice or syrup",
              is = Quantity.PERCENT,
              from = 0,
              to = 90)
          OptionalDouble refuse) {
    if (SPIRITS.contains(ingredient.toLowerCase(Locale.ROOT))) {
      throw new Refusal(FermentReason.SPIRIT).with("ingredient", ingredient);
    }
    Addition added = Addition.of(ingredient, massKg, brix, moisturePercent, refuse);
    double mustKg = volumeL * Course.mustPerLitre(original, present) / 1000;
    double ethanolKg = volumeL * Course.ethanol(original, present) / 1000;
    double solidsKg = mustKg * Sucrose.massFractionFromGravity(original) + added.solidsKg();
    double allKg = mustKg + added.liquidKg();
    double enlarged = Sucrose.specificGravity(solidsKg / allKg);
    if (enlarged > Honey.THICKEST_MUST) {
      throw new Refusal(FermentReason.TOO_MUCH_ADDED)
          .with("ingredient", ingredient)
          .with("gravity", enlarged, Quantity.NUMBER, 4)
          .with("most", Honey.THICKEST_MUST, Quantity.NUMBER);
    }
    double gravity = Math.min(enlarged, Course.gravity(enlarged, ethanolKg / allKg));
    return new Enlarged(enlarged, gravity, Course.litres(allKg, ethanolKg, gravity));
  }
}
