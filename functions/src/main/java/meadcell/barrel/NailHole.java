package meadcell.barrel;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/**
 * Mead running out of a small hole in the head of a closed barrel: pressures in kPa, amounts in mL.
 *
 * <p>The hole stays so far below the surface that a sample does not change the depth. What changes
 * is the gas above: as mead leaves it expands (Boyle) and holds the rest back.
 */
final class NailHole {
  private static final double STANDARD_GRAVITY = 9.80665;

  /** Highest gas pressure a wooden cask is asked to bear here (common practice, no source). */
  private static final double HIGHEST_PUSH = 15;

  private NailHole() {}

  /** {@return pressure of the mead standing above the hole} */
  static double head(double depthCm, double densityKgPerL) {
    return densityKgPerL * STANDARD_GRAVITY * depthCm / 100;
  }

  /** {@return what drives the mead out; refused where the vacuum holds it back} */
  static double driving(double depthCm, double densityKgPerL, double vacuum) {
    double head = head(depthCm, densityKgPerL);
    if (vacuum >= head) {
      throw new Refusal(BarrelReason.HELD_BACK)
          .with("vacuum", vacuum, Quantity.PRESSURE)
          .with("head", head, Quantity.PRESSURE, 3);
    }
    return head - vacuum;
  }

  /** {@return torricelli's flow: mm² times m/s is mL/s} */
  static double flow(double holeMm, double driving, double densityKgPerL, double coefficient) {
    return coefficient * area(holeMm) * Math.sqrt(2 * driving / densityKgPerL);
  }

  private static double area(double holeMm) {
    return Math.PI / 4 * holeMm * holeMm;
  }

  /** {@return amount after which the gas, p V constant, no longer lets mead out} */
  static double most(double headspaceL, double depthCm, double densityKgPerL, double vacuum) {
    double atRest = Air.STANDARD_PRESSURE - head(depthCm, densityKgPerL);
    return 1000 * headspaceL * driving(depthCm, densityKgPerL, vacuum) / atRest;
  }

  /**
   * Seconds for an amount: ∫ dv / flow with the driving pressure p₀V₀/(V₀+v) − a, a the gas
   * pressure at rest. With tan²ψ the driving pressure over a, the integral is ψ + sin ψ cos ψ.
   */
  static double seconds(
      double amountMl,
      double headspaceL,
      double holeMm,
      double depthCm,
      double densityKgPerL,
      double vacuum,
      double coefficient) {
    double most = most(headspaceL, depthCm, densityKgPerL, vacuum);
    if (amountMl >= most) {
      throw new Refusal(BarrelReason.FLOW_STOPS)
          .with("amount", amountMl, Quantity.MILLILITRE)
          .with("most", most, Quantity.MILLILITRE, 3);
    }
    double before = 1000 * headspaceL;
    double gas = Air.STANDARD_PRESSURE - vacuum;
    double atRest = Air.STANDARD_PRESSURE - head(depthCm, densityKgPerL);
    double first = driving(depthCm, densityKgPerL, vacuum);
    double last =
        Math.max(0, first - gas * amountMl / (before + amountMl)); // never below 0 by rounding
    double scale = gas * before / (atRest * Math.sqrt(atRest));
    return Math.sqrt(densityKgPerL / 2)
        / (coefficient * area(holeMm))
        * scale
        * (angle(first / atRest) - angle(last / atRest));
  }

  private static double angle(double tanSquared) {
    double tan = Math.sqrt(tanSquared);
    return Math.atan(tan) + tan / (1 + tanSquared);
  }

  /** {@return gas pressure to add so that mead just runs against a vacuum} */
  static double push(double depthCm, double densityKgPerL, double vacuum) {
    double needed = Math.max(0, vacuum - head(depthCm, densityKgPerL));
    if (needed > HIGHEST_PUSH) {
      throw new Refusal(BarrelReason.PUSH_TOO_HIGH)
          .with("needed", needed, Quantity.PRESSURE, 3)
          .with("most", HIGHEST_PUSH, Quantity.PRESSURE, 3);
    }
    return needed;
  }
}
