package meadcell.bottle;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** Air and gas over the mead in a closed bottle. */
final class Headspace {
  private static final double ATMOSPHERE_KPA = 101.325;
  private static final double KELVIN = 273.15;

  /** Cubic expansion of bottle glass, per K: three times 9e-6 (from memory). */
  private static final double GLASS = 27e-6;

  /** g of CO₂ in 1 L of gas at 1 kPa and 1 K. */
  private static final double CO2_GAS = 44.009 / 8.314463;

  private Headspace() {}

  /** {@return mL that the headspace loses; below 0 what it gains} */
  static double lost(double contentMl, double fromC, double toC, double abv, double sugar) {
    double mead = contentMl * (Bottle.growth(fromC, toC, abv, sugar) - 1);
    return mead - GLASS * (toC - fromC) * contentMl;
  }

  static double gaugeKPa(
      double contentMl,
      double headspaceMl,
      double filledC,
      double temperatureC,
      double abv,
      double sugar,
      double co2,
      double corkedKPa) {
    double left =
        headspaceMl * (1 + GLASS * (temperatureC - filledC))
            - lost(contentMl, filledC, temperatureC, abv, sugar);
    if (left <= 0) {
      throw new Refusal(BottleReason.NO_HEADSPACE)
          .with("temperature", temperatureC, Quantity.TEMPERATURE)
          .with("more", -left, Quantity.MILLILITRE, 2);
    }
    double air =
        (ATMOSPHERE_KPA + corkedKPa)
            * headspaceMl
            / left
            * (temperatureC + KELVIN)
            / (filledC + KELVIN);
    double dissolvedPerKPa = CarbonDioxide.solubility(temperatureC, abv, sugar);
    double gasPerKPa = CO2_GAS / (temperatureC + KELVIN) * left / contentMl;
    return air + co2 / (dissolvedPerKPa + gasPerKPa) - ATMOSPHERE_KPA;
  }
}
