package meadcell.gravity;

import meadcell.density.EthanolWater;

/** The liquid that climbs the stem of a hydrometer. */
final class Meniscus {
  private static final double GRAVITATION = 9.80665;

  /** Mass fractions of ethanol. */
  private static final double[] ETHANOL = {0, 0.05, 0.10, 0.15, 0.20, 0.25, 0.30};

  /** N/m at 20 °C: Vázquez, Alvarez, Navaza 1995, J. Chem. Eng. Data 40:611 (from memory). */
  private static final double[] TENSION = {
    0.07275, 0.05641, 0.04814, 0.04272, 0.03856, 0.03609, 0.03353
  };

  private Meniscus() {}

  /** {@return surface tension of water with that ethanol, N/m} */
  static double tension(double abv) {
    double ethanol = EthanolWater.massFraction(abv / 100);
    int i = 0;
    while (ethanol > ETHANOL[i + 1]) {
      i++;
    }
    double share = (ethanol - ETHANOL[i]) / (ETHANOL[i + 1] - ETHANOL[i]);
    return TENSION[i] + share * (TENSION[i + 1] - TENSION[i]);
  }

  /** {@return its height, mm: Langberg's formula} */
  static double heightMm(double stemMm, double tension, double density) {
    double stem = stemMm / 1000;
    double weight = density * GRAVITATION * stem;
    return 1000 * tension / weight * (Math.sqrt(1 + 2 * weight * stem / tension) - 1);
  }
}
