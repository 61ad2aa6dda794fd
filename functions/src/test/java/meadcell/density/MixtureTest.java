package meadcell.density;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MixtureTest {

  // computed from OIML R 22, OIV-MA-AS2-03B (d = 1.00180 (ρ wine − ρ alcohol) + 1) and ICUMSA
  // SPS-4: % vol, density of the wine in g/mL, extract in g/L
  @ParameterizedTest
  @CsvSource({
    "12, 0.9950, 32.81",
    "12, 1.0000, 45.80",
    "14, 0.9920, 30.92",
    "14, 1.0200, 103.83",
    "15, 1.0400, 159.06"
  })
  void tabarie(double volumePercent, double gramsPerMl, double extract) {
    double gravity = 1000 * gramsPerMl / EthanolWater.density(0, 20);
    assertEquals(extract, Mixture.extract(gravity, volumePercent / 100), 0.01);
  }

  @Property
  void extractInvertsGravity(
      @Between(min = -50, max = 500) double extract, @Between(min = 0, max = 0.3) double abv) {
    assertEquals(extract, Mixture.extract(Mixture.gravity(extract, abv), abv), 1e-11);
  }

  @Property
  void gravityInvertsDensity(
      @Between(min = 0.98, max = 1.2) double gravity,
      @Between(min = 0, max = 0.3) double abv,
      @Between(min = 0, max = 40) double temperatureC) {
    double density = Mixture.density(gravity, abv, temperatureC);
    double shift =
        Mixture.alcoholShift(
            EthanolWater.massFraction(abv),
            EthanolWater.polynomial(temperatureC),
            Water.bettinSpieweck(temperatureC));
    double extract = Sucrose.massFraction(density - shift, temperatureC);
    double back = Sucrose.specificGravity(extract) + EthanolWater.gravity20(abv) - 1;
    assertEquals(gravity, back, 5e-15);
  }

  @Property
  void at20ItIsGravityTimesWater(
      @Between(min = 0.98, max = 1.2) double gravity, @Between(min = 0, max = 0.3) double abv) {
    assertEquals(gravity * Water.bettinSpieweck(20), Mixture.density(gravity, abv, 20), 5e-12);
  }

  @Property
  void withoutAlcoholItIsSucrose(
      @Between(min = 0, max = 0.6) double w, @Between(min = 0, max = 40) double temperatureC) {
    double density = Sucrose.density(w, temperatureC);
    assertEquals(density, Mixture.density(Sucrose.specificGravity(w), 0, temperatureC), 1e-12);
    assertEquals(w, Sucrose.massFraction(density, temperatureC), 2e-15);
  }

  @Property
  void withoutExtractItIsEthanolWater(
      @Between(min = 0, max = 0.3) double abv, @Between(min = 0, max = 40) double temperatureC) {
    double density =
        EthanolWater.density(EthanolWater.massFraction(abv), temperatureC)
            * Water.bettinSpieweck(temperatureC)
            / EthanolWater.density(0, temperatureC);
    double gravity = EthanolWater.gravity20(abv);
    assertEquals(density, Mixture.density(gravity, abv, temperatureC), 2e-12);
  }

  @Property
  void theWatersOfTheTwoFormulasHardlyDiffer(@Between(min = 0, max = 40) double temperatureC) {
    assertEquals(Water.bettinSpieweck(temperatureC), EthanolWater.density(0, temperatureC), 0.0041);
  }

  // water is densest near 4 °C, and what is dissolved in it only lowers that
  @Property
  void warmerIsLighter(
      @Between(min = 1, max = 1.2) double gravity,
      @Between(min = 0, max = 0.3) double abv,
      @Between(min = 4, max = 40) double temperatureC) {
    assertTrue(
        Mixture.density(gravity, abv, temperatureC + 0.01)
            < Mixture.density(gravity, abv, temperatureC));
  }
}
