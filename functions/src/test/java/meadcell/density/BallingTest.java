package meadcell.density;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.density.Balling.Fermented;
import meadcell.property.Between;
import meadcell.property.Property;
import org.apache.commons.math3.exception.NoBracketingException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BallingTest {

  private static double gravity(double massPercent) {
    return Sucrose.specificGravity(massPercent / 100);
  }

  private static double density(Fermented mead) {
    return mead.gravity() * Water.bettinSpieweck(20);
  }

  private static double alcoholMassPercent(Fermented mead) {
    return 100 * mead.abvFraction() * EthanolWater.PURE_ETHANOL_DENSITY_20 / density(mead);
  }

  private static double extractMassPercent(Fermented mead) {
    return 100 * mead.extractGramsPerLitre() / density(mead);
  }

  // Cutaia, Reid, Speers, J. Inst. Brew. 115 (2009) 318, Table III, means of mixed brews: original
  // and apparent extract, alcohol and real extract, all % by mass. Measured beers: Balling's
  // balance misses their original extract by up to 0.25.
  @ParameterizedTest
  @CsvSource({
    "14.08, 3.11, 4.72, 5.28",
    "14.54, 2.53, 5.14, 4.88",
    "17.67, 2.45, 6.56, 5.38",
    "11.34, 2.01, 3.82, 3.80",
    "12.75, 2.79, 4.21, 4.74"
  })
  void measuredBeers(double original, double apparent, double alcohol, double extract) {
    Fermented beer = Balling.fermented(gravity(original), gravity(apparent));
    assertEquals(alcohol, alcoholMassPercent(beer), 0.12);
    assertEquals(extract, extractMassPercent(beer), 0.05);
  }

  // Nielsen et al., Balling's Formula: 2.0665 g extract gives 1 g ethanol, 0.9565 g carbon dioxide
  // and 0.11 g yeast
  @Test
  void shares() {
    assertEquals(2.0665, Balling.EXTRACT_PER_ETHANOL, 1e-15);
    assertEquals(0.9565, Balling.CO2_PER_ETHANOL);
    assertEquals(0.11, Balling.YEAST_PER_ETHANOL);
  }

  // the same: OE = 100 (2.0665 A + RE)/(100 + 1.0665 A)
  @Property
  void massIsConserved(
      @Between(min = 1, max = 1.2) double original, @Between(min = 0, max = 1) double share) {
    Fermented mead = Balling.fermented(original, present(original, share));
    double a = alcoholMassPercent(mead);
    double originalExtract = 100 * (2.0665 * a + extractMassPercent(mead)) / (100 + 1.0665 * a);
    assertEquals(100 * Sucrose.massFractionFromGravity(original), originalExtract, 1e-10);
  }

  @Property
  void gravityIsThatOfTheMixture(
      @Between(min = 1, max = 1.2) double original, @Between(min = 0, max = 1) double share) {
    double present = present(original, share);
    Fermented mead = Balling.fermented(original, present);
    assertEquals(present, mead.gravity(), 1e-12);
    assertEquals(present, Mixture.gravity(mead.extractGramsPerLitre(), mead.abvFraction()), 1e-12);
  }

  @Property
  void originalGravityInvertsFermented(
      @Between(min = 1, max = 1.2) double original, @Between(min = 0, max = 1) double share) {
    double present = present(original, share);
    double abv = Balling.fermented(original, present).abvFraction();
    assertEquals(original, Balling.originalGravity(abv, present), 1e-12);
  }

  @Property
  void densityInTheCellarTellsTheSameMead(
      @Between(min = 1, max = 1.2) double original,
      @Between(min = 0, max = 1) double share,
      @Between(min = 0, max = 40) double temperatureC) {
    Fermented expected = Balling.fermented(original, present(original, share));
    double density = Mixture.density(expected.gravity(), expected.abvFraction(), temperatureC);
    Fermented mead = Balling.fermentedFromDensity(original, density, temperatureC);
    assertEquals(expected.gravity(), mead.gravity(), 1e-12);
    assertEquals(expected.abvFraction(), mead.abvFraction(), 1e-11);
    assertEquals(expected.extractGramsPerLitre(), mead.extractGramsPerLitre(), 1e-9);
  }

  @Property
  void moreAlcoholAsGravityFalls(
      @Between(min = 1.01, max = 1.2) double original, @Between(min = 0, max = 0.99) double share) {
    assertTrue(
        Balling.fermented(original, present(original, share + 0.01)).abvFraction()
            > Balling.fermented(original, present(original, share)).abvFraction());
  }

  @Property
  void unfermentedMustHasNoAlcohol(@Between(min = 1, max = 1.2) double original) {
    Fermented must = Balling.fermented(original, original);
    assertEquals(0, must.abvFraction());
    assertEquals(Sucrose.gramsPerLitre(original), must.extractGramsPerLitre(), 1e-12);
    assertEquals(0, Balling.fermented(original, Math.nextUp(original)).abvFraction());
    assertEquals(0, Balling.fermented(original, Math.nextDown(original)).abvFraction());
  }

  @Test
  void aMustThatBecameDenserThrows() {
    assertEquals(0, Balling.fermented(1.1, 1.1 + 1e-13).abvFraction());
    assertThrows(NoBracketingException.class, () -> Balling.fermented(1.1, 1.1 + 1e-11));
    assertThrows(NoBracketingException.class, () -> Balling.fermented(1.1, Double.NaN));
  }

  private static double present(double original, double share) {
    return original - share * (original - 0.98);
  }
}
