package meadcell.must;

import java.util.OptionalDouble;
import meadcell.catalogue.Refusal;

/**
 * What an ingredient brings into a must or mead: its liquid and what is dissolved in that.
 *
 * @param liquidKg all but stones, peel and fibre, kg
 * @param solidsKg dissolved in it, counted as sucrose, kg
 */
public record Addition(double liquidKg, double solidsKg) {

  /**
   * {@return what honey, sugar, water, a fruit of MUST.FRUITS or, with its °Brix, anything else
   * brings}
   *
   * @param ingredient its name
   * @param massKg as weighed, kg
   * @param brix of its juice as measured, °Bx
   * @param moisturePercent water in honey, %
   * @param refuse what of the whole is no flesh, %; empty for the table's
   */
  public static Addition of(
      String ingredient,
      double massKg,
      OptionalDouble brix,
      double moisturePercent,
      OptionalDouble refuse) {
    Ingredient found = Ingredient.named(ingredient, brix, OptionalDouble.empty(), refuse);
    if (brix.isPresent() && found.isPlain()) {
      throw new Refusal(MustReason.NO_JUICE).with("ingredient", found.name());
    }
    double liquidKg = found.liquidKg(found.edibleKg(massKg));
    double percent = found.isHoney() ? 100 - moisturePercent : found.brix(brix);
    return new Addition(liquidKg, liquidKg * percent / 100);
  }
}
