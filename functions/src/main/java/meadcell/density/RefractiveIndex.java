package meadcell.density;

/**
 * Refractive index at 589 nm and 20 °C of sugar solutions, ethanol solutions and mead.
 *
 * <p>The polynomials are least-squares fits, made for this library, to published tables. Sucrose:
 * 21 five-digit values of 10 to 30 % in OIV-MA-AS2-02 Table II (ICUMSA 1974), water 1.33299, and
 * the four-digit values to 84 % in the CRC Handbook of Chemistry and Physics, 102nd ed.,
 * Concentrative properties of aqueous solutions; largest deviations 7e-6 and 8e-5. Ethanol: the
 * four-digit values of 0 to 30 % by mass in the same handbook; largest deviation 5e-5.
 *
 * <p>In a mead each adds what it adds alone at the same grams per litre, as {@link Mixture} has it
 * for gravities. No published table of sugar, ethanol and water together stands behind that: what
 * follows from it is an estimate.
 */
public final class RefractiveIndex {

  /** By power of the mass fraction of sucrose. */
  private static final double[] SUCROSE = {
    1.33298807, 0.14294802, 0.05202587, 0.02395537, -0.00582385
  };

  /** What ethanol adds to water, by power of its mass fraction. */
  private static final double[] ETHANOL = {0, 5.43970683e-2, 0.135034917, -0.295232305};

  private RefractiveIndex() {}

  /**
   * {@return index of a sucrose solution}
   *
   * @param massFraction mass fraction of sucrose, −0.1 to 0.9
   */
  public static double sucrose(double massFraction) {
    return Polynomial.value(SUCROSE, massFraction);
  }

  /**
   * {@return mass fraction of a sucrose solution of that index; the inverse of {@link #sucrose}}
   *
   * @param index refractive index at 589 nm and 20 °C
   */
  public static double sucroseMassFraction(double index) {
    return Polynomial.inverse(SUCROSE, index, Sucrose.LEAST, Sucrose.MOST);
  }

  /**
   * {@return index of a mead of that gravity and alcohol; ethanol up to 30 % by mass}
   *
   * @param gravity gravity 20/20
   * @param abvFraction volume fraction of ethanol at 20 °C
   */
  public static double mead(double gravity, double abvFraction) {
    double ethanol = EthanolWater.massFraction(abvFraction);
    double residue = gravity - (EthanolWater.density20(ethanol) / EthanolWater.WATER_20 - 1);
    return sucrose(Sucrose.massFractionFromGravity(residue)) + Polynomial.value(ETHANOL, ethanol);
  }
}
