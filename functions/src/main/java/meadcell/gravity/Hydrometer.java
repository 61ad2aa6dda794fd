package meadcell.gravity;

import java.util.OptionalDouble;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Balling;
import meadcell.density.Mixture;
import meadcell.density.Sucrose;

/** A glass hydrometer afloat in a must or mead that is warmer or colder than its calibration. */
final class Hydrometer {
  /** Cubic expansion of hydrometer glass, per °C (ISO 1768:1975). */
  private static final double GLASS = 25e-6;

  /**
   * A reading so little above the original gravity is reading noise (common practice, no source).
   */
  private static final double READING_NOISE = 0.002;

  private Hydrometer() {}

  static double corrected(
      double reading, double temperatureC, double calibrationC, OptionalDouble original) {
    double water = Sucrose.density(0, calibrationC);
    double density = reading * water * (1 - GLASS * (temperatureC - calibrationC));
    double sugar = Sucrose.massFraction(density, temperatureC);
    double unfermented = Sucrose.specificGravity(sugar);
    if (original.isEmpty() || unfermented >= original.getAsDouble()) {
      original.ifPresent(o -> refuseAbove(unfermented, o));
      return Sucrose.density(sugar, calibrationC) / water;
    }
    Balling.Fermented mead =
        Balling.fermentedFromDensity(original.getAsDouble(), density, temperatureC);
    return Mixture.density(mead.gravity(), mead.abvFraction(), calibrationC) / water;
  }

  /** {@return what a faultless one shows in a liquid of that density, kg/m³} */
  static double shown(double density, double temperatureC, double calibrationC) {
    return density
        / (Sucrose.density(0, calibrationC) * (1 - GLASS * (temperatureC - calibrationC)));
  }

  private static void refuseAbove(double gravity, double original) {
    if (gravity > original + READING_NOISE) {
      throw new Refusal(GravityReason.ABOVE_ORIGINAL)
          .with("corrected", gravity, Quantity.SPECIFIC_GRAVITY, 5)
          .with("original", original, Quantity.SPECIFIC_GRAVITY);
    }
  }
}
