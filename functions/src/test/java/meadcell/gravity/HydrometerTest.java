package meadcell.gravity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.OptionalDouble;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.density.Sucrose;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HydrometerTest {
  private static final OptionalDouble UNFERMENTED = OptionalDouble.empty();
  private static final FunctionSpec CORRECT = Cellar.catalogue().get("GRAVITY.CORRECT");
  private static final double SIXTY_FAHRENHEIT = (60 - 32) / 1.8;

  private static double fahrenheit(double celsius) {
    return 1.8 * celsius + 32;
  }

  @Property
  void atTheCalibrationTemperatureNothingChanges(
      @Between(min = 0.98, max = 1.2) double reading,
      @Between(min = 4, max = 30) double calibrationC) {
    assertEquals(
        reading, Gravity.correct(reading, calibrationC, calibrationC, UNFERMENTED, 0, 0), 1e-12);
  }

  @Property
  void atTheCalibrationTemperatureNothingChangesInAFermentEither(
      @Between(min = 0, max = 1) double share,
      @Between(min = 1.03, max = 1.2) double original,
      @Between(min = 4, max = 30) double calibrationC) {
    double reading = original - 0.002 - share * (original - 0.99);
    assertEquals(
        reading,
        Gravity.correct(reading, calibrationC, calibrationC, OptionalDouble.of(original), 0, 0),
        1e-12);
  }

  @Property
  void metricAndUsAgree(
      @Between(min = 0.99, max = 1.05) double reading,
      @Between(min = 3, max = 44) double temperatureC,
      @Between(min = 5, max = 29) double calibrationC,
      @Between(min = 1.08, max = 1.2) double original) {
    double metric = (Double) CORRECT.call(reading, temperatureC, calibrationC, original);
    double us =
        (Double)
            CORRECT.call(
                reading, fahrenheit(temperatureC), fahrenheit(calibrationC), original, "US");
    assertEquals(metric, us, 1e-13);
  }

  @Test
  void theDefaultCalibrationFollowsTheUnits() {
    assertEquals(
        Gravity.correct(1.08, 30, SIXTY_FAHRENHEIT, UNFERMENTED, 0, 0),
        (Double) CORRECT.call(1.08, 86.0, "US"),
        1e-13);
    assertEquals(
        Gravity.correct(1.08, 30, 20, UNFERMENTED, 0, 0), (Double) CORRECT.call(1.08, 30.0), 1e-13);
  }

  @Property
  void higherReadingsAreHigherGravities(
      @Between(min = 0.98, max = 1.19) double reading,
      @Between(min = 2, max = 45) double temperatureC) {
    assertTrue(
        Gravity.correct(reading + 1e-4, temperatureC, 20, UNFERMENTED, 0, 0)
            > Gravity.correct(reading, temperatureC, 20, UNFERMENTED, 0, 0));
  }

  @Property
  void higherReadingsAreHigherGravitiesInAFerment(
      @Between(min = 0.985, max = 1.12) double reading,
      @Between(min = 2, max = 45) double temperatureC) {
    OptionalDouble original = OptionalDouble.of(1.15);
    assertTrue(
        Gravity.correct(reading + 1e-4, temperatureC, 20, original, 0, 0)
            > Gravity.correct(reading, temperatureC, 20, original, 0, 0));
  }

  // Liquids lighten as they warm, water only above 4 °C; glass lightens its own reading a little.
  @Property
  void warmerSamplesAreCorrectedUpwards(
      @Between(min = 0.98, max = 1.2) double reading,
      @Between(min = 8, max = 44) double temperatureC) {
    assertTrue(
        Gravity.correct(reading, temperatureC + 0.5, 20, UNFERMENTED, 0, 0)
            > Gravity.correct(reading, temperatureC, 20, UNFERMENTED, 0, 0));
  }

  @Property
  void sweetOrFermentingSamplesFromTwoDegreesOn(
      @Between(min = 1.05, max = 1.2) double sweet,
      @Between(min = 0.99, max = 1.1) double fermenting,
      @Between(min = 2, max = 44) double temperatureC) {
    assertTrue(
        Gravity.correct(sweet, temperatureC + 0.5, 20, UNFERMENTED, 0, 0)
            > Gravity.correct(sweet, temperatureC, 20, UNFERMENTED, 0, 0));
    OptionalDouble original = OptionalDouble.of(1.12);
    assertTrue(
        Gravity.correct(fermenting, temperatureC + 0.5, 20, original, 0, 0)
            > Gravity.correct(fermenting, temperatureC, 20, original, 0, 0));
  }

  @Property
  void theOriginalGravityMattersLittleNearIt(
      @Between(min = 1.02, max = 1.2) double original,
      @Between(min = 2, max = 45) double temperatureC) {
    double start = Gravity.correct(original - 0.01, temperatureC, 20, UNFERMENTED, 0, 0);
    assertEquals(
        start,
        Gravity.correct(original - 0.01, temperatureC, 20, OptionalDouble.of(start + 1e-9), 0, 0),
        1e-8);
  }

  @Test
  void aReadingAboveTheOriginalGravityIsNoiseOrARefusal() {
    OptionalDouble original = OptionalDouble.of(1.1);
    assertEquals(1.1015, Gravity.correct(1.1015, 20, 20, original, 0, 0), 1e-12);
    Refusal refusal =
        assertThrows(Refusal.class, () -> Gravity.correct(1.1025, 20, 20, original, 0, 0));
    assertEquals(Refusal.Kind.INCONSISTENT, refusal.kind());
  }

  /** The note prints how far the rule of thumb lies off; here it is worked out. */
  @ParameterizedTest
  @ValueSource(ints = {10, 30, 40})
  void theNoteTellsTheRuleOfThumbsError(int temperatureC) {
    StringBuilder errors = new StringBuilder("at " + temperatureC + " °C");
    for (double reading : new double[] {1, 1.08, 1.15}) {
      double rule = reading * cubic(fahrenheit(temperatureC)) / cubic(fahrenheit(20));
      double error = rule - Gravity.correct(reading, temperatureC, 20, UNFERMENTED, 0, 0);
      errors.append(String.format(Locale.ROOT, " %+.4f", error));
      if (temperatureC == 10) {
        errors.append(String.format(Locale.ROOT, " for %.3f", reading));
      }
      errors.append(',');
    }
    String expected = errors.substring(0, errors.length() - 1);
    String note = CORRECT.declaration().note();
    assertTrue(note.contains(expected), () -> expected + " is not in: " + note);
  }

  // from memory: the usual cubic in °F
  private static double cubic(double f) {
    return 1.00130346 - 1.34722124e-4 * f + 2.04052596e-6 * f * f - 2.32820948e-9 * f * f * f;
  }

  @ParameterizedTest
  @CsvSource({"1.05, 0.0002", "1.1, 0.0005", "1.15, 0.0007", "1.2, 0.0008"})
  void theSixtyDegreeScaleShowsMore(double gravity, double more) {
    double sugar = Sucrose.massFractionFromGravity(gravity);
    double sixty = Sucrose.density(sugar, SIXTY_FAHRENHEIT) / Sucrose.density(0, SIXTY_FAHRENHEIT);
    assertEquals(more, sixty - gravity, 5e-5);
    String note = CORRECT.declaration().note();
    if (gravity != 1.15) {
      assertTrue(note.contains(String.format(Locale.ROOT, "%.4f more", more)), note);
    }
  }
}
