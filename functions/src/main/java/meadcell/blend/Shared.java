package meadcell.blend;

/** Limits and sources of more than one topic of the blend. */
final class Shared {
  static final double MOST_VOLUME_L = 1e6;
  static final String R22 =
      "Mass balance at 20 °C with the densities of OIML R 22 (1975), general formula.";
  static final String MASS_BALANCE =
      "Masses and ethanol masses add up: m = V ρ(q), p = Σ ethanol ÷ Σ m; % vol = 100 p ρ(p) ÷"
          + " ρ(1), V = Σ m ÷ ρ(p), ρ of water and ethanol at 20 °C.";
  static final String SUGAR_IGNORED =
      "Volumes are at 20 °C. The sugar of a mead is left out of account; it changes contraction"
          + " little.";

  private Shared() {}
}
