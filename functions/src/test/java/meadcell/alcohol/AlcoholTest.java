package meadcell.alcohol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.OptionalDouble;
import meadcell.alcohol.Alcohol.Method;
import meadcell.alcohol.Extract.Attenuation;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.gravity.Gravity;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AlcoholTest {
  /** OIML R 22: kg/L of pure ethanol at 20 °C. */
  private static final double ETHANOL = 0.7892391233;

  private static double abv(double original, double present) {
    return Alcohol.abv(original, present, Method.BALANCE, OptionalDouble.empty());
  }

  /** A present gravity that such a must can have, from unfermented to all but free of extract. */
  private static double present(double original, double share) {
    double lowest = 1 - 0.17 * (original - 1);
    return original - share * (original - lowest);
  }

  // Nielsen et al.: 2.0665 g extract become 1 g ethanol, 0.9565 g carbon dioxide, 0.11 g yeast
  @Property
  void massIsConserved(
      @Between(min = 1, max = 1.2) double original, @Between(min = 0, max = 1) double share) {
    double present = present(original, share);
    double ethanol = 10 * abv(original, present) * ETHANOL;
    double extract = Extract.extract(original, present);
    double lost = (0.9565 + 0.11) * ethanol;
    double must = 1000 * Gravity.density(present, 20, abv(original, present)) + lost;
    double mustExtract = must * Gravity.toBrix(original) / 100;
    assertEquals(mustExtract, extract + ethanol + lost, 1e-6);
  }

  @Property
  void gravityIsThatOfAlcoholAndExtract(
      @Between(min = 1.01, max = 1.2) double original, @Between(min = 0.01, max = 1) double share) {
    double present = present(original, share);
    assertEquals(
        Extract.extract(original, present),
        Extract.dryExtract(present, abv(original, present)),
        1e-9);
  }

  @Property
  void originalInvertsAbv(
      @Between(min = 1.01, max = 1.2) double original, @Between(min = 0.01, max = 1) double share) {
    double present = present(original, share);
    assertEquals(original, Alcohol.original(abv(original, present), present), 1e-11);
    assertEquals(abv(original, present), Alcohol.potential(original, present));
  }

  @Property
  void alcoholRisesAsGravityFalls(
      @Between(min = 1.01, max = 1.2) double original, @Between(min = 0.01, max = 1) double share) {
    double present = present(original, share);
    for (Method method : Method.values()) {
      assertTrue(
          Alcohol.abv(original, present, method, OptionalDouble.empty())
              > Alcohol.abv(original, present + 1e-5, method, OptionalDouble.empty()));
    }
  }

  @Property
  void unfermentedMustHasNoAlcohol(@Between(min = 1, max = 1.2) double original) {
    for (Method method : Method.values()) {
      assertEquals(0, Alcohol.abv(original, original, method, OptionalDouble.empty()), 1e-12);
    }
    assertEquals(Gravity.sugar(original), Extract.extract(original, original), 1e-9);
  }

  @Test
  void sweetStrongMeadsConverge() {
    assertEquals(16.56, abv(1.17, 1.05), 0.005);
    assertEquals(184.8, Extract.extract(1.17, 1.05), 0.05);
    assertTrue(abv(1.2, 1.1) > 13);
  }

  @Test
  void theNotesTellHowTheMethodsDiffer() {
    String note = Cellar.catalogue().get("ALCOHOL.ABV").declaration().note();
    for (double[] mead : new double[][] {{1.1, 0.995}, {1.17, 1.05}}) {
      for (Method method : Method.values()) {
        String value =
            String.format(
                Locale.ROOT, "%.2f", Alcohol.abv(mead[0], mead[1], method, OptionalDouble.empty()));
        assertTrue(note.contains(value), () -> value + " is not in: " + note);
      }
    }
    assertEquals(32, Extract.extract(1.1, 0.994), 0.5);
    assertEquals(1.1007, Alcohol.original(abv(1.1, 0.995) + 0.1, 0.995), 5e-5);
  }

  @Test
  void extractIsNotSugar() {
    assertEquals(30, Extract.extract(1.09, 0.994), 3);
    assertEquals(3, Extract.sugarLeft(1.09, 0.994, OptionalDouble.of(25)), 0.5);
    assertEquals(0, Extract.sugarLeft(1.08, 0.994, OptionalDouble.of(25)));
    assertEquals(0, Extract.sugarLeft(1.1, 0.994, OptionalDouble.of(35)));
  }

  @Property
  void sugarLeftIsNeverNegativeAndNeverAllOfTheExtract(
      @Between(min = 1, max = 1.2) double original, @Between(min = 0, max = 1) double share) {
    double present = present(original, share);
    double sugar = Extract.sugarLeft(original, present, OptionalDouble.of(25));
    assertTrue(sugar >= 0);
    assertEquals(sugar == 0 ? 0 : Extract.extract(original, present) - 25, sugar);
  }

  @ParameterizedTest
  @CsvSource({"1.1, 1.1021", "1, 1.05", "1.03, 0.98", "1, 0.9999"})
  void gravitiesThatCannotBothBeTrueAreRefused(double original, double present) {
    for (Method method : Method.values()) {
      Refusal refusal =
          assertThrows(
              Refusal.class, () -> Alcohol.abv(original, present, method, OptionalDouble.empty()));
      assertEquals(Refusal.Kind.INCONSISTENT, refusal.kind());
    }
    assertThrows(Refusal.class, () -> Extract.extract(original, present));
    assertThrows(Refusal.class, () -> Alcohol.potential(original, present));
    assertThrows(
        Refusal.class,
        () ->
            Uncertainty.uncertainty(
                original, present, 0, 0, OptionalDouble.of(0), OptionalDouble.empty()));
  }

  @Test
  void aGravityTooLowForItsAlcoholIsRefused() {
    assertThrows(Refusal.class, () -> Extract.dryExtract(0.98, 5));
    assertThrows(Refusal.class, () -> Alcohol.original(5, 0.98));
  }

  @Property
  void realAttenuationIsTheSmaller(
      @Between(min = 1.01, max = 1.2) double original, @Between(min = 0.01, max = 1) double share) {
    double present = present(original, share);
    double apparent = Extract.attenuation(original, present, Attenuation.APPARENT);
    double real = Extract.attenuation(original, present, Attenuation.REAL);
    assertTrue(real > 0 && real < apparent);
    assertTrue(real <= 100);
    assertEquals(0, Extract.attenuation(original, original, Attenuation.REAL), 1e-9);
    assertEquals(100, Extract.attenuation(original, 1, Attenuation.APPARENT), 1e-9);
  }

  @Property
  void massAndVolumeAreInverse(@Between(min = 0.001, max = 100) double abv) {
    assertEquals(abv, WaterEthanol.byVolume(WaterEthanol.byMass(abv)), 1e-9);
    assertTrue(WaterEthanol.byMass(abv) <= abv + 1e-9);
  }

  // OIML R 22: density of water at 20 °C
  @Property
  void aDistillateIsWaterAndEthanol(@Between(min = 0.001, max = 99.9) double abv) {
    assertEquals(abv, Measured.fromDistillate(WaterEthanol.density(abv, 20) / 0.99820123), 1e-4);
  }

  @Property
  void moreAlcoholAndMoreWarmthAreLighter(
      @Between(min = 0.1, max = 99) double abv, @Between(min = 6, max = 39) double temperatureC) {
    double density = WaterEthanol.density(abv, temperatureC);
    assertTrue(WaterEthanol.density(abv + 0.1, temperatureC) < density);
    assertTrue(WaterEthanol.density(abv, temperatureC + 0.5) < density);
  }

  @Property
  void boilingOffFindsTheAlcoholOfTheBalance(
      @Between(min = 1.01, max = 1.15) double original,
      @Between(min = 0.01, max = 1) double share) {
    double present = present(original, share);
    double residue = 1 + present - gravityOfAlcohol(abv(original, present));
    assertEquals(abv(original, present), Measured.fromBoil(present, residue), 1e-4);
  }

  private static double gravityOfAlcohol(double abv) {
    return WaterEthanol.density(abv, 20) / 0.99820123;
  }

  @Test
  void boilingOffRefusesWhatCannotBe() {
    assertEquals(0, Measured.fromBoil(1.02, 1.02), 1e-9);
    assertThrows(Refusal.class, () -> Measured.fromBoil(1.02, 1.019));
    assertThrows(Refusal.class, () -> Measured.fromBoil(1, 1.04));
    assertThrows(Refusal.class, () -> Measured.fromBoil(0.98, 1.24));
  }

  @Property
  void uncertaintyIsThatOfSmallErrors(
      @Between(min = 1.02, max = 1.2) double original,
      @Between(min = 0.05, max = 0.95) double share) {
    double present = present(original, share);
    double u = 1e-5;
    double byOriginal = (abv(original + u, present) - abv(original - u, present)) / 2;
    double byPresent = (abv(original, present + u) - abv(original, present - u)) / 2;
    assertEquals(
        Math.abs(byOriginal),
        Uncertainty.uncertainty(
            original, present, u, 0, OptionalDouble.of(0), OptionalDouble.empty()),
        1e-4 * byOriginal);
    assertEquals(
        Math.hypot(byOriginal, byPresent),
        Uncertainty.uncertainty(
            original, present, u, u, OptionalDouble.of(0), OptionalDouble.empty()),
        1e-4 * byOriginal);
    assertEquals(
        0.5,
        Uncertainty.uncertainty(
            original, present, 0, 0, OptionalDouble.of(0.5), OptionalDouble.empty()));
    assertEquals(
        Math.hypot(0.5, Math.hypot(byOriginal, byPresent)),
        Uncertainty.uncertainty(
            original, present, u, u, OptionalDouble.of(0.5), OptionalDouble.empty()),
        1e-9);
  }

  /** The first day of a log: the original gravity as read, the present one corrected. */
  @Test
  void withinTheInstrumentsUncertaintyAboveOriginalNothingHasFermented() {
    for (String call : new String[] {"ALCOHOL.ABV", "ALCOHOL.ATTENUATION", "FERMENT.PROGRESS"}) {
      FunctionSpec function = Cellar.catalogue().get(call);
      assertEquals(0, (Double) function.call(1.1, 1.1), 1e-9, call);
      assertEquals(0, (Double) function.call(1.1, 1.102), 1e-9, call);
      Refusal refusal = assertThrows(Refusal.class, () -> function.call(1.1, 1.1021), call);
      assertEquals("PRESENT_ABOVE_ORIGINAL", ((Enum<?>) refusal.reason()).name());
    }
    FunctionSpec sugar = Cellar.catalogue().get("ALCOHOL.SUGARLEFT");
    assertEquals(sugar.call(1.1, 1.1), sugar.call(1.1, 1.102));
  }
}
