package meadcell.barrel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** Oxygen in headspace and liquid. */
class AirTest {
  @Property
  void warmerLiquidAndThinnerAirHoldLess(
      @ForAll @DoubleRange(min = 0, max = 39) double temperatureC,
      @ForAll @DoubleRange(min = 60, max = 109) double pressureKPa) {
    double held = AirContact.saturation(temperatureC, pressureKPa);
    assertTrue(held > AirContact.saturation(temperatureC + 1, pressureKPa));
    assertTrue(held < AirContact.saturation(temperatureC, pressureKPa + 1));
    assertTrue(
        AirContact.headspaceOxygen(1, temperatureC)
            > AirContact.headspaceOxygen(1, temperatureC + 1));
  }

  @Property
  void purgingInTwoStepsTakesAsMuchGasAsOnce(
      @ForAll @DoubleRange(min = 0.1, max = 100) double headspaceL,
      @ForAll @DoubleRange(min = 0.1, max = 10) double oxygen) {
    double halving = headspaceL * Math.log(2);
    assertEquals(
        AirContact.purge(headspaceL, oxygen),
        AirContact.purge(headspaceL, 2 * oxygen) + halving,
        1e-9 * headspaceL);
  }

  @Property
  void oxygenAddsUpOverTime(
      @ForAll @DoubleRange(min = 1, max = 400) double days,
      @ForAll @DoubleRange(min = 1, max = 40) double rate) {
    assertEquals(
        AirContact.oxygen(days + 365.25, rate), AirContact.oxygen(days, rate) + rate, 1e-9 * rate);
  }
}
