package meadcell.blend;

import meadcell.density.EthanolWater;

/** Water and ethanol by mass, which is conserved where volume is not; all volumes are at 20 °C. */
record WaterAndEthanol(double massKg, double ethanolKg) {
  private static final double LITRES_PER_CUBIC_METRE = 1000;

  static WaterAndEthanol of(double volumeL, double abv) {
    double ethanol = EthanolWater.massFraction(abv / 100);
    double massKg = volumeL * EthanolWater.density(ethanol, 20) / LITRES_PER_CUBIC_METRE;
    return new WaterAndEthanol(massKg, massKg * ethanol);
  }

  static WaterAndEthanol blend(double[] volumesL, double[] abvs) {
    double massKg = 0;
    double ethanolKg = 0;
    for (int i = 0; i < volumesL.length; i++) {
      WaterAndEthanol lot = of(volumesL[i], abvs[i]);
      massKg += lot.massKg;
      ethanolKg += lot.ethanolKg;
    }
    return new WaterAndEthanol(massKg, ethanolKg);
  }

  double abv() {
    return 100 * EthanolWater.volumeFraction(ethanolFraction());
  }

  double volumeL() {
    return massKg / EthanolWater.density(ethanolFraction(), 20) * LITRES_PER_CUBIC_METRE;
  }

  /** How many parts of {@code addition} bring this liquid to a strength. */
  double partsToReach(WaterAndEthanol addition, double abv) {
    double target = EthanolWater.massFraction(abv / 100);
    return (target * massKg - ethanolKg) / (addition.ethanolKg - target * addition.massKg);
  }

  private double ethanolFraction() {
    return ethanolKg / massKg;
  }
}
