package meadcell.density;

/**
 * Ethanol–water after OIML R 22, general formula (Wagenbreth and Blanke 1971), −20 to 40 °C.
 *
 * <p>ρ(p,t) = A1 + Σ A_k p^(k−1) + Σ B_k (t−20)^k + ΣΣ C_i,k p^k (t−20)^i. Volume fractions are at
 * 20 °C: q = p ρ(p,20)/ρ(1,20).
 */
public final class EthanolWater {

  /** Row k holds the coefficients of p^k by power of t − 20 °C: A, then B (row 0) or C. */
  private static final double[][] BY_POWER = {
    {
      9.982012300e2,
      -2.0618513e-1,
      -5.2682542e-3,
      3.6130013e-5,
      -3.8957702e-7,
      7.1693540e-9,
      -9.9739231e-11
    },
    {
      -1.929769495e2,
      1.693443461530087e-1,
      -1.193013005057010e-2,
      -6.802995733503803e-4,
      4.075376675622027e-6,
      -2.788074354782409e-8
    },
    {
      3.891238958e2,
      -1.046914743455169e1,
      2.517399633803461e-1,
      1.876837790289664e-2,
      -8.763058573471110e-6,
      1.345612883493354e-8
    },
    {
      -1.668103923e3,
      7.196353469546523e1,
      -2.170575700536993,
      -2.002561813734156e-1,
      6.515031360099368e-6
    },
    {
      1.352215441e4,
      -7.047478054272792e2,
      1.353034988843029e1,
      1.022992966719220,
      -1.515784836987210e-6
    },
    {-8.829278388e4, 3.924090430035045e3, -5.029988758547014e1, -2.895696483903638},
    {3.062874042e5, -1.210164659068747e4, 1.096355666577570e2, 4.810060584300675},
    {-6.138381234e5, 2.248646550400788e4, -1.422753946421155e2, -4.672147440794683},
    {7.470172998e5, -2.605562982188164e4, 1.080435942856230e2, 2.458043105903461},
    {-5.478461354e5, 1.852373922069467e4, -4.414153236817392e1, -5.411227621436812e-1},
    {2.234460334e5, -7.420201433430137e3, 7.442971530188783},
    {-3.903285426e4, 1.285617841998974e3},
  };

  private static final double[] AT_20 = polynomial(20);
  private static final double[] GRAMS_PER_LITRE = Polynomial.timesX(AT_20);
  static final double WATER_20 = AT_20[0];

  /** ρ(1,20): also the grams of ethanol in a litre, per unit of volume fraction. */
  public static final double PURE_ETHANOL_DENSITY_20 = density20(1);

  private EthanolWater() {}

  /**
   * {@return density of a mixture in kg/m³}
   *
   * @param ethanolMassFraction mass fraction of ethanol, 0 to 1
   * @param temperatureC temperature, −20 to 40 °C
   */
  public static double density(double ethanolMassFraction, double temperatureC) {
    return Polynomial.value(polynomial(temperatureC), ethanolMassFraction);
  }

  /**
   * {@return volume fraction at 20 °C of a mass fraction}
   *
   * @param massFraction mass fraction of ethanol, 0 to 1
   */
  public static double volumeFraction(double massFraction) {
    return massFraction * density20(massFraction) / PURE_ETHANOL_DENSITY_20;
  }

  /**
   * {@return mass fraction of a volume fraction; the inverse of {@link #volumeFraction}}
   *
   * @param volumeFraction volume fraction of ethanol at 20 °C, 0 to 1
   */
  public static double massFraction(double volumeFraction) {
    return massFraction(GRAMS_PER_LITRE, volumeFraction * PURE_ETHANOL_DENSITY_20);
  }

  /**
   * {@return mass fraction of a mixture of that density; the inverse of {@link #density} at 20 °C}
   *
   * @param density20 density at 20 °C in kg/m³
   */
  public static double massFractionFromDensity(double density20) {
    return massFraction(AT_20, density20);
  }

  /**
   * {@return inverse of {@link #gravity20}}
   *
   * @param gravity20 gravity 20/20, of ethanol to 1
   */
  public static double volumeFractionFromGravity(double gravity20) {
    return volumeFraction(massFractionFromDensity(gravity20 * WATER_20));
  }

  /**
   * {@return gravity of a water–ethanol mixture of that volume fraction, on R 22's own water}
   *
   * @param volumeFraction volume fraction of ethanol at 20 °C, 0 to 1
   */
  public static double gravity20(double volumeFraction) {
    return density20(massFraction(volumeFraction)) / WATER_20;
  }

  static double density20(double massFraction) {
    return Polynomial.value(AT_20, massFraction);
  }

  /** {@return density at one temperature as a polynomial in the mass fraction} */
  static double[] polynomial(double temperatureC) {
    return Polynomial.collapse(BY_POWER, temperatureC - 20);
  }

  /** The ends stand aside by what rounding can move an answer of 0 or 1. */
  private static double massFraction(double[] polynomial, double wanted) {
    return Polynomial.inverse(polynomial, wanted, -1e-12, 1 + 1e-12);
  }
}
