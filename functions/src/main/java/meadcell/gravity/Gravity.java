package meadcell.gravity;

import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.density.Sucrose;

/** What an instrument says, made true. */
@Family(name = "GRAVITY", about = "What an instrument says, made true.")
public final class Gravity {
  private static final String SPS4 =
      "Sucrose density: ICUMSA Methods Book SPS-4; SG is true 20/20 °C.";

  private Gravity() {}

  /** What the hydrometer would read at its calibration temperature. */
  @CellarFunction(
      summary =
          "Specific gravity that the same hydrometer would read at its calibration temperature.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "A floating glass body measures the density ρ(t) = reading · ρw(cal) · (1 − 25·10⁻⁶ (t −"
              + " cal)). The sugar content whose density at t is ρ(t) is found, with the alcohol that"
              + " original implies, and its density at the calibration temperature divided by"
              + " ρw(cal).",
      source =
          "Glass expansion 25·10⁻⁶ per °C: ISO 1768:1975. Sucrose and water: ICUMSA SPS-4 with"
              + " Bettin and Spieweck 1990. Ethanol–water: OIML R 22 (1975). Mixture: Tabarié,"
              + " OIV-MA-AS2-03B. Alcohol from original: Balling's balance.",
      example = "GRAVITY.CORRECT(1.104;29)")
  public static double correct(
      @Arg(
              name = "reading",
              help = "Specific gravity as read",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.2)
          double reading,
      @Arg(
              name = "temperature",
              help = "Temperature of the sample",
              is = Quantity.TEMPERATURE,
              from = 2,
              to = 45)
          double temperatureC,
      @Arg(
              name = "calibration",
              help = "Temperature the hydrometer is made for",
              is = Quantity.TEMPERATURE,
              from = 4,
              to = 30,
              byDefault = "20",
              byDefaultUs = "60")
          double calibrationC,
      @Arg(
              name = "original",
              help = "Original gravity, once the batch ferments; left out for an unfermented must",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1,
              to = 1.2)
          OptionalDouble original) {
    return Hydrometer.corrected(reading, temperatureC, calibrationC, original);
  }

  /** Sucrose solution of the same specific gravity. */
  @CellarFunction(
      summary = "Degrees Brix (g sucrose in 100 g) of a must of this specific gravity.",
      gives = Quantity.BRIX,
      formula = "The sucrose content w whose density at 20 °C divided by water's is SG; 100 w.",
      source = SPS4,
      example = "GRAVITY.TOBRIX(1.1)",
      note =
          "Printed tables of gravity often hold apparent gravities, weighed in air: at 20 °Bx they"
              + " are 0.0001 higher than true ones.")
  public static double toBrix(
      @Arg(
              name = "sg",
              help = "Specific gravity of the unfermented must",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1,
              to = 1.45)
          double sg) {
    return 100 * Sucrose.massFractionFromGravity(sg);
  }

  /** Specific gravity of a sucrose solution. */
  @CellarFunction(
      summary = "Specific gravity 20/20 °C of a must of these degrees Brix.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula = "Density of the sucrose solution at 20 °C divided by water's.",
      source = SPS4,
      example = "GRAVITY.FROMBRIX(24)")
  public static double fromBrix(
      @Arg(name = "brix", help = "Degrees Brix at 20 °C", is = Quantity.BRIX, from = 0, to = 83)
          double brix) {
    return Sucrose.specificGravity(brix / 100);
  }
}
