package meadcell.honey;

import meadcell.density.Sucrose;
import meadcell.density.Water;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;

/** Density of honey at 20 °C by its moisture. */
final class HoneyDensity {
  static final double DRIEST = 13;
  static final double WETTEST = 25;
  private static final double TABLE_TO = 21;

  // from memory: White 1975, reprinted in Krell, FAO Agricultural Services Bulletin 124, 1996
  private static final UnivariateFunction SPECIFIC_GRAVITY =
      new LinearInterpolator()
          .interpolate(
              new double[] {DRIEST, 14, 15, 16, 17, 18, 19, 20, TABLE_TO},
              new double[] {
                1.4457, 1.4404, 1.4350, 1.4295, 1.4237, 1.4171, 1.4101, 1.4027, 1.3950
              });

  private HoneyDensity() {}

  static double kilogramsPerLitre(double moisturePercent) {
    double inTable = Math.min(moisturePercent, TABLE_TO);
    double beyond = sucrose(moisturePercent) - sucrose(inTable);
    return (SPECIFIC_GRAVITY.value(inTable) + beyond) * Water.density(20) / 1000;
  }

  /** Wetter honey than the table's: it thins as sucrose does. */
  private static double sucrose(double moisturePercent) {
    return Sucrose.specificGravity(1 - moisturePercent / 100);
  }
}
