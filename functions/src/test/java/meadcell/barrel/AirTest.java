package meadcell.barrel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.property.Between;
import meadcell.property.Property;

/** Oxygen in headspace and liquid. */
class AirTest {
  @Property
  void warmerLiquidAndThinnerAirHoldLess(
      @Between(min = 0, max = 39) double temperatureC,
      @Between(min = 60, max = 109) double pressureKPa) {
    double held = AirContact.saturation(temperatureC, pressureKPa);
    assertTrue(held > AirContact.saturation(temperatureC + 1, pressureKPa));
    assertTrue(held < AirContact.saturation(temperatureC, pressureKPa + 1));
    assertTrue(
        AirContact.headspaceOxygen(1, temperatureC)
            > AirContact.headspaceOxygen(1, temperatureC + 1));
  }

  @Property
  void purgingInTwoStepsTakesAsMuchGasAsOnce(
      @Between(min = 0.1, max = 100) double headspaceL,
      @Between(min = 0.1, max = 10) double oxygen) {
    double halving = headspaceL * Math.log(2);
    assertEquals(
        AirContact.purge(headspaceL, oxygen),
        AirContact.purge(headspaceL, 2 * oxygen) + halving,
        1e-9 * headspaceL);
  }

  @Property
  void oxygenAddsUpOverTime(
      @Between(min = 1, max = 400) double days, @Between(min = 1, max = 40) double rate) {
    assertEquals(
        AirContact.oxygen(days + 365.25, rate, 1),
        AirContact.oxygen(days, rate, 1) + rate,
        1e-9 * rate);
  }
}
