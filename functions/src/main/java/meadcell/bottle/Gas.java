package meadcell.bottle;

import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.law.UsTaxClass;

/**
 * What decides a tax class beside the strength.
 *
 * @param co2 carbon dioxide, g/L
 * @param carbonation where it came from
 * @param honeyAndWaterOnly whether the mead is made from nothing else
 */
public record Gas(
    @Arg(
            name = "co2",
            help = "Carbon dioxide",
            is = Quantity.GRAM_PER_LITRE,
            from = 0,
            to = 20,
            byDefault = 0)
        double co2,
    @Arg(name = "carbonation", help = "Where the gas came from", byDefaultWord = "natural")
        Labelling.Carbonation carbonation,
    @Arg(
            name = "honeyAndWaterOnly",
            help = "1 if made from nothing but honey and water, else 0",
            byDefault = 0)
        boolean honeyAndWaterOnly) {

  /**
   * {@return the US tax class}
   *
   * @param abv true strength, % vol
   */
  public UsTaxClass taxClass(double abv) {
    return UsTaxClass.of(abv, co2, carbonation == Labelling.Carbonation.NATURAL, honeyAndWaterOnly);
  }
}
