package meadcell.density;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaterTest {

  // computed from the coefficients of Tanaka et al., Metrologia 38 (2001)
  @ParameterizedTest
  @CsvSource({
    "0, 999.8428",
    "4, 999.9749",
    "5, 999.9668",
    "10, 999.7027",
    "15, 999.1026",
    "15.555556, 999.0170",
    "20, 998.2067",
    "25, 997.0470",
    "30, 995.6488",
    "35, 994.0326",
    "40, 992.2152"
  })
  void tanaka(double temperatureC, double expected) {
    assertEquals(expected, Water.density(temperatureC), 5.1e-5);
  }

  // CRC Handbook of Chemistry and Physics, 53rd ed., p. F-4, g/cm³; an older water scale
  @ParameterizedTest
  @CsvSource({"0, 0.999841", "4, 0.999973", "10, 0.999700", "12, 0.999498", "15, 0.999099"})
  void crcHandbook(double temperatureC, double expected) {
    assertEquals(1000 * expected, Water.density(temperatureC), 0.005);
  }

  // computed from the coefficients of Bettin and Spieweck 1990
  @Test
  void bettinSpieweck() {
    assertEquals(998.2031, Water.bettinSpieweck(20), 5e-5);
  }

  // difference of the two published formulas over their common range, computed from both
  @Property
  void theTwoFormulasDifferByAKnownAmount(@Between(min = 0, max = 40) double temperatureC) {
    double difference = Water.bettinSpieweck(temperatureC) - Water.density(temperatureC);
    assertTrue(difference > -0.0039 && difference < -0.0029, () -> "difference " + difference);
  }

  @Property
  void densestNearFourDegrees(@Between(min = 0, max = 40) double temperatureC) {
    assertTrue(Water.density(temperatureC) <= Water.density(3.983035));
  }
}
