package meadcell.blend;

import meadcell.density.EthanolWater;
import meadcell.density.Evaporation;

/**
 * What of a property is conserved, in a litre of the log's account: it adds up where liquids mix,
 * and stays where water and alcohol evaporate as far as it does not.
 */
interface Amounts {
  /** {@return what a litre holds} */
  double[] of(double value);

  /** {@return the property of what a litre holds} */
  double value(double[] perLitre);

  /** {@return what a litre holds once the account's volume has become what was found} */
  double[] evaporated(double[] perLitre, double accountL, double foundL);

  /** Something dissolved, in an amount per volume. */
  record Dissolved() implements Amounts {
    @Override
    public double[] of(double value) {
      return new double[] {value};
    }

    @Override
    public double value(double[] perLitre) {
      return perLitre[0];
    }

    @Override
    public double[] evaporated(double[] perLitre, double accountL, double foundL) {
      return new double[] {perLitre[0] * accountL / foundL};
    }
  }

  /** Alcohol, % vol: the mass of all and of the ethanol, in kg. */
  record Alcohol(double humidity) implements Amounts {
    @Override
    public double[] of(double abv) {
      double ethanol = EthanolWater.massFraction(Math.max(0, abv) / 100);
      double kilograms = EthanolWater.density(ethanol, 20) / 1000;
      return new double[] {kilograms, kilograms * ethanol};
    }

    @Override
    public double value(double[] perLitre) {
      return 100 * EthanolWater.volumeFraction(perLitre[1] / perLitre[0]);
    }

    /** What mixing contracted did not evaporate. */
    @Override
    public double[] evaporated(double[] perLitre, double accountL, double foundL) {
      double ethanol = perLitre[1] / perLitre[0];
      double contractedL = accountL * perLitre[0] * 1000 / EthanolWater.density(ethanol, 20);
      double lossPercent = 100 * (1 - foundL / contractedL);
      return of(
          Evaporation.strength(
              value(perLitre), lossPercent, humidity, Evaporation.NEUTRAL_HUMIDITY));
    }
  }
}
