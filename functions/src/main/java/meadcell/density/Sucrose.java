package meadcell.density;

/**
 * Sucrose solutions after ICUMSA SPS-4, which also stand for honey musts.
 *
 * <p>ρ(w,t) = ρ_water(t) + Σ τ^i c[i][k] w^k with τ = (t − 20 °C)/100 and the water of {@link
 * Water#bettinSpieweck}. Safe from 0 to 0.8 and 5 to 80 °C (from memory: the stated validity). The
 * polynomial is monotone, and inverses are given, from {@value #LEAST} to {@value #MOST}: what has
 * a gravity below 1 counts formally as negative sucrose, as in an apparent extract.
 */
public final class Sucrose {

  /** Least mass fraction an inverse returns; its gravity is below 0.97. */
  static final double LEAST = -0.1;

  /** Greatest mass fraction an inverse returns. */
  static final double MOST = 0.9;

  /** Row k holds the coefficients of w^k by power of τ; row 0, the water, is no polynomial. */
  private static final double[][] BY_POWER = {
    {0},
    {385.1761, -46.2720, 59.7712, -47.2207, 18.3184},
    {135.3705, -7.1720, 7.2491, -21.6977, 12.3081},
    {40.9299, 1.1597, 12.3630, 27.6301},
    {-3.9643, 5.1126, -35.4791},
    {13.4853, 17.5254},
    {-17.2890},
  };

  private static final double[] AT_20 = polynomial(20);
  private static final double[] GRAMS_PER_LITRE = Polynomial.timesX(AT_20);

  /** Density of water at 20 °C: what a gravity is multiplied by to become a density. */
  public static final double WATER_20 = AT_20[0];

  private Sucrose() {}

  /**
   * {@return density of a solution in kg/m³}
   *
   * @param massFraction mass fraction of sucrose, −0.1 to 0.9
   * @param temperatureC temperature, 5 to 80 °C
   */
  public static double density(double massFraction, double temperatureC) {
    return Polynomial.value(polynomial(temperatureC), massFraction);
  }

  /**
   * {@return mass fraction of a solution of that density; the inverse of {@link #density}}
   *
   * @param density density in kg/m³, at that temperature
   * @param temperatureC temperature, 5 to 80 °C
   */
  public static double massFraction(double density, double temperatureC) {
    return massFraction(density, polynomial(temperatureC));
  }

  static double massFraction(double density, double[] polynomial) {
    return Polynomial.inverse(polynomial, density, LEAST, MOST);
  }

  /**
   * {@return gravity 20/20 of a solution}
   *
   * @param massFraction mass fraction of sucrose, −0.1 to 0.9
   */
  public static double specificGravity(double massFraction) {
    return density20(massFraction) / WATER_20;
  }

  /**
   * {@return mass fraction of a solution of that gravity; the inverse of {@link #specificGravity}}
   *
   * @param gravity gravity 20/20
   */
  public static double massFractionFromGravity(double gravity) {
    return massFraction(gravity * WATER_20, AT_20);
  }

  /**
   * {@return extract at 20 °C: g of sucrose in a litre of a solution of that gravity}
   *
   * @param gravity gravity 20/20
   */
  public static double gramsPerLitre(double gravity) {
    return massFractionFromGravity(gravity) * gravity * WATER_20;
  }

  /**
   * {@return gravity 20/20 of a solution; the inverse of {@link #gramsPerLitre}}
   *
   * @param gramsPerLitre g of sucrose in a litre at 20 °C
   */
  public static double gravityFromGramsPerLitre(double gramsPerLitre) {
    return specificGravity(Polynomial.inverse(GRAMS_PER_LITRE, gramsPerLitre, LEAST, MOST));
  }

  static double density20(double massFraction) {
    return Polynomial.value(AT_20, massFraction);
  }

  /** {@return density at one temperature as a polynomial in the mass fraction} */
  static double[] polynomial(double temperatureC) {
    double[] coefficients = Polynomial.collapse(BY_POWER, (temperatureC - 20) / 100);
    coefficients[0] = Water.bettinSpieweck(temperatureC);
    return coefficients;
  }
}
