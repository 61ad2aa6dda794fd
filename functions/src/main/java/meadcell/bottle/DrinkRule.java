package meadcell.bottle;

import meadcell.density.EthanolWater;

/** Whose standard drink is counted. */
public enum DrinkRule {
  /** 14 g = 0.6 US fl oz. */
  USA(14),
  /** No law of the Union; the commonest figure in its countries and in WHO's questionnaires. */
  EU(10),
  /** The unit: 10 mL of pure alcohol. */
  UK(EthanolWater.PURE_ETHANOL_DENSITY_20 / 100),
  AUSTRALIA(10);

  final double ethanolG;

  DrinkRule(double ethanolG) {
    this.ethanolG = ethanolG;
  }
}
