package meadcell.density;

/**
 * Water, sugar and ethanol together: a fermenting or finished mead.
 *
 * <p>Tabarié's rule (OIV-MA-AS2-03B) adds what the alcohol and the extract, each dissolved alone,
 * take from and give to the gravity of water. It is used here at any temperature, with each part
 * relative to its own formula's water and the sum on the water of {@link Sucrose}:
 *
 * <p>ρ(t) = ρ_sucrose(w,t) + ρ_water(t) (ρ_ethanol(p,t)/ρ_ethanol(0,t) − 1)
 *
 * <p>So at 20 °C it is gravity times water; without alcohol it is exactly {@link Sucrose#density};
 * without extract it is {@link EthanolWater#density} within the 0.004 kg/m³ by which the waters of
 * the two formulas differ between 0 and 40 °C.
 *
 * <p>The extract belongs to the residue, the solution that holds it without the alcohol: its g/L
 * are at 20 °C, its mass fraction is that of this solution, not of the mead.
 */
public final class Mixture {

  private Mixture() {}

  /**
   * {@return gravity 20/20 of a mead with this extract and alcohol}
   *
   * @param extractGramsPerLitre g of extract in a litre of the residue at 20 °C
   * @param abvFraction volume fraction of ethanol at 20 °C
   */
  public static double gravity(double extractGramsPerLitre, double abvFraction) {
    return Sucrose.gravityFromGramsPerLitre(extractGramsPerLitre)
        + (EthanolWater.gravity20(abvFraction) - 1);
  }

  /**
   * {@return g of extract in a litre of the residue at 20 °C; the inverse of {@link #gravity}}
   *
   * @param gravity gravity 20/20
   * @param abvFraction volume fraction of ethanol at 20 °C
   */
  public static double extract(double gravity, double abvFraction) {
    return Sucrose.gramsPerLitre(residueGravity(gravity, abvFraction));
  }

  /**
   * {@return density of a mead in kg/m³}
   *
   * @param gravity gravity 20/20
   * @param abvFraction volume fraction of ethanol at 20 °C
   * @param temperatureC temperature, 5 to 40 °C
   */
  public static double density(double gravity, double abvFraction, double temperatureC) {
    double extract = Sucrose.massFractionFromGravity(residueGravity(gravity, abvFraction));
    return Sucrose.density(extract, temperatureC) + alcoholShift(abvFraction, temperatureC);
  }

  private static double residueGravity(double gravity, double abvFraction) {
    return gravity - (EthanolWater.gravity20(abvFraction) - 1);
  }

  private static double alcoholShift(double abvFraction, double temperatureC) {
    double ethanol = EthanolWater.massFraction(abvFraction);
    double[] alcohol = EthanolWater.polynomial(temperatureC);
    return alcoholShift(ethanol, alcohol, Water.bettinSpieweck(temperatureC));
  }

  /** {@return what the alcohol adds to the density, less than 0} */
  static double alcoholShift(double ethanolMassFraction, double[] alcohol, double water) {
    return water * (Polynomial.value(alcohol, ethanolMassFraction) / alcohol[0] - 1);
  }
}
