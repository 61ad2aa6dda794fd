package meadcell.alcohol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.density.Mixture;
import meadcell.density.RefractiveIndex;
import meadcell.gravity.Gravity;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RefractometryTest {

  private static double brix(double gravity, double abv) {
    return Gravity.brixFromIndex(RefractiveIndex.mead(gravity, abv / 100));
  }

  @Property
  void whatTheModelMakesIsFoundAgain(
      @Between(min = 0, max = 25) double abv, @Between(min = 1, max = 300) double extract) {
    double gravity = Mixture.gravity(extract, abv / 100);
    double found = Measured.fromRefractometer(brix(gravity, abv), gravity);
    assertEquals(abv, found, 1e-6);
    assertEquals(extract, Mixture.extract(gravity, found / 100), 1e-6);
  }

  @Property
  void anUnfermentedMustHasNoAlcohol(@Between(min = 1.001, max = 1.2) double gravity) {
    assertEquals(0, Measured.fromRefractometer(Gravity.toBrix(gravity), gravity), 1e-9);
  }

  @Property
  void aHigherRefractometerOrALowerHydrometerMeansMoreAlcohol(
      @Between(min = 1, max = 20) double abv, @Between(min = 10, max = 300) double extract) {
    double gravity = Mixture.gravity(extract, abv / 100);
    double brix = brix(gravity, abv);
    assertTrue(Measured.fromRefractometer(brix + 0.1, gravity) > abv);
    assertTrue(Measured.fromRefractometer(brix, gravity - 1e-4) > abv);
  }

  /** What the note says about the error of the instruments. */
  @ParameterizedTest
  @CsvSource({"8, 20", "12, 30", "14, 32", "14, 104", "12, 200", "17, 180"})
  void theNoteTellsTheError(double abv, double extract) {
    double gravity = Mixture.gravity(extract, abv / 100);
    double brix = brix(gravity, abv);
    assertEquals(0.3, Measured.fromRefractometer(brix + 0.2, gravity) - abv, 0.05);
    assertEquals(-0.3, Measured.fromRefractometer(brix - 0.2, gravity) - abv, 0.05);
    assertEquals(-0.2, Measured.fromRefractometer(brix, gravity + 0.0005) - abv, 0.05);
    String note = Cellar.catalogue().get("ALCOHOL.FROMREFRACTOMETER").declaration().note();
    assertTrue(
        note.contains("0.2 °Bx off moves it by 0.3 % vol, a hydrometer 0.0005 off by 0.2 % vol"));
  }

  @Test
  void readingsThatDoNotGoTogetherAreRefused() {
    assertThrows(Refusal.class, () -> Measured.fromRefractometer(9.9, 1.04));
    assertThrows(Refusal.class, () -> Measured.fromRefractometer(50, 1.04));
    assertThrows(Refusal.class, () -> Measured.fromRefractometer(1, 0.99), "no extract left");
  }

  // CRC Handbook of Chemistry and Physics, 102nd ed.: index of ethanol solutions by % mass
  @ParameterizedTest
  @CsvSource({"0.5, 1.3333", "5, 1.3360", "10, 1.3395", "15, 1.3432", "20, 1.3469", "30, 1.3535"})
  void ethanolAlone(double massPercent, double index) {
    double abv = WaterEthanol.byVolume(massPercent);
    double gravity = Mixture.gravity(0, abv / 100);
    assertEquals(index, RefractiveIndex.mead(gravity, abv / 100), 1e-4);
  }
}
