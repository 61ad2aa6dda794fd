package meadcell.bottle;

import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.density.EthanolWater;

/**
 * An amount of mead and what in it gives energy.
 *
 * @param amountMl amount of mead, mL
 * @param abv strength, % vol
 * @param sugar sugar, g/L
 * @param glycerol glycerol, g/L
 * @param acid organic acids, g/L
 */
public record Portion(
    @Arg(
            name = "amount",
            help = "Amount of mead, 100 for a label",
            is = Quantity.MILLILITRE,
            above = 0,
            to = 1_000_000)
        double amountMl,
    @Shared.AnyStrength double abv,
    @Arg(name = "sugar", help = "Sugar", is = Quantity.GRAM_PER_LITRE, from = 0, to = 900)
        double sugar,
    @Arg(
            name = "glycerol",
            help = "Glycerol",
            is = Quantity.GRAM_PER_LITRE,
            from = 0,
            to = 50,
            byDefault = 0)
        double glycerol,
    @Arg(
            name = "acid",
            help = "Organic acids",
            is = Quantity.GRAM_PER_LITRE,
            from = 0,
            to = 50,
            byDefault = 0)
        double acid) {

  /** Its energy by factors for each gram of ethanol, sugar, glycerol and acid. */
  double energy(double perEthanol, double perSugar, double perGlycerol, double perAcid) {
    double ethanol = abv / 100 * EthanolWater.PURE_ETHANOL_DENSITY_20;
    return amountMl
        / 1000
        * (perEthanol * ethanol + perSugar * sugar + perGlycerol * glycerol + perAcid * acid);
  }
}
