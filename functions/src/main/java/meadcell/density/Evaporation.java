package meadcell.density;

import meadcell.catalogue.General;
import meadcell.catalogue.Refusal;

/** Strength of what is left when water and ethanol leave through the wood at different rates. */
public final class Evaporation {
  /** Relative humidity at which the strength stands still, %: common practice, no source. */
  public static final double NEUTRAL_HUMIDITY = 67;

  private static final int MOST_ROUNDS = 100;

  private Evaporation() {}

  /**
   * {@return the strength after, % vol}
   *
   * <p>Each leaves in proportion to what is there; water also to the dryness of the air, measured
   * against that at which both leave alike. With τ the ethanol's share of time constants gone by,
   * ethanol falls as e^−τ and water as e^−kτ until only the wanted volume is left. A loss below 0
   * puts back what would have left.
   *
   * @param abv strength before, % vol
   * @param lossPercent volume lost, %
   * @param humidity relative humidity, %
   * @param neutral humidity at which the strength stands still, %
   */
  public static double strength(double abv, double lossPercent, double humidity, double neutral) {
    double k = (100 - humidity) / (100 - neutral);
    double left = 1 - lossPercent / 100;
    double ethanol = abv / 100;
    double tau = 0;
    double step = 1;
    for (int round = 0; Math.abs(step) > 1e-14; tau += step) {
      if (++round > MOST_ROUNDS) {
        throw new Refusal(General.NOT_SETTLED).with("steps", MOST_ROUNDS);
      }
      // Newton from the left on a convex fall: never oversteps, ends in a few rounds.
      double e = ethanol * Math.exp(-tau);
      double w = (1 - ethanol) * Math.exp(-k * tau);
      step = (e + w - left) / (e + k * w);
    }
    return abv * Math.exp(-tau) / left;
  }
}
