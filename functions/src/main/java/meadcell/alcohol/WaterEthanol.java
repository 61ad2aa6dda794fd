package meadcell.alcohol;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.density.EthanolWater;

/** Mixtures of water and ethanol. */
@Family(name = "ALCOHOL")
public final class WaterEthanol {
  @Arg(name = "abv", help = "Alcohol", is = Quantity.PERCENT_VOL, from = 1, to = 100)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Abv {}

  private WaterEthanol() {}

  /**
   * {@return percent by mass from percent by volume, % mass}
   *
   * @param abv alcohol, % vol
   */
  @CellarFunction(
      summary = "Percent by mass of a water–ethanol mixture from its percent by volume.",
      gives = Quantity.PERCENT_MASS,
      formula = "The p for which p ρ(p) / ρ(pure ethanol) is the volume fraction at 20 °C.",
      source = Shared.R22,
      example = "ALCOHOL.BYMASS(14)",
      note = "In a mead the extract adds mass: there it is 0.7907 × % vol / gravity.")
  public static double byMass(@Abv double abv) {
    return 100 * EthanolWater.massFraction(abv / 100);
  }

  /**
   * {@return percent by volume from percent by mass, % vol}
   *
   * @param abw alcohol, % mass
   */
  @CellarFunction(
      summary = "Percent by volume of a water–ethanol mixture from its percent by mass.",
      gives = Quantity.PERCENT_VOL,
      formula = "p ρ(p) / ρ(pure ethanol) at 20 °C.",
      source = Shared.R22,
      example = "ALCOHOL.BYVOLUME(40)")
  public static double byVolume(
      @Arg(name = "abw", help = "Alcohol", is = Quantity.PERCENT_MASS, from = 1, to = 100)
          double abw) {
    return 100 * EthanolWater.volumeFraction(abw / 100);
  }

  /**
   * {@return density of a water–ethanol mixture, kg/L}
   *
   * @param abv alcohol, % vol
   * @param temperatureC temperature, °C
   */
  @CellarFunction(
      summary = "Density of a water–ethanol mixture, such as a spirit, at a temperature.",
      gives = Quantity.DENSITY,
      formula = "General formula of OIML R 22; the alcohol by volume is at 20 °C.",
      source = Shared.R22,
      example = "ALCOHOL.DENSITY(40;15)",
      note = "In vacuo; weights in air are 0.1 % less. For mead: GRAVITY.DENSITY.")
  public static double density(
      @Abv double abv,
      @Arg(
              name = "temperature",
              help = "Temperature",
              is = Quantity.TEMPERATURE,
              from = -20,
              to = 40,
              zeroIsBlank = true)
          double temperatureC) {
    return EthanolWater.density(EthanolWater.massFraction(abv / 100), temperatureC) / 1000;
  }
}
