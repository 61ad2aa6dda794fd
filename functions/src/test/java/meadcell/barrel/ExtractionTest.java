package meadcell.barrel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

/** Wood going into the mead. */
class ExtractionTest {
  private static final double[] DAYS = {14, 30, 45, 60, 90, 120, 150, 180, 240, 300};

  @Property
  void exactNotesGiveBackLimitAndHalfTime(
      @Between(min = 0.1, max = 1000) double limit, @Between(min = 5, max = 600) double halfTime) {
    double[] notes =
        Arrays.stream(DAYS)
            .map(day -> limit / 100 * WoodContact.extraction(day, halfTime, 1, 50))
            .toArray();
    WoodContact.ExtractionFit fit = WoodContact.extractionFit(DAYS, notes);
    assertEquals(limit, fit.limit(), 1e-6 * limit);
    assertEquals(halfTime, fit.halfTime(), 1e-6 * halfTime);
    assertEquals(0, fit.limitError(), 1e-6 * limit);
    assertEquals(0, fit.halfTimeError(), 1e-6 * halfTime);
  }

  /** Tastings with noise: limit and half time within two standard errors nearly always. */
  @Test
  void noisyTastingsGiveThemBackWithinTheirErrors() {
    Random noise = new Random(7);
    int logs = 400;
    int limitHits = 0;
    int halfTimeHits = 0;
    for (int log = 0; log < logs; log++) {
      double[] notes =
          Arrays.stream(DAYS)
              .map(day -> 8 * Extraction.share(day, 70) + 0.25 * noise.nextGaussian())
              .toArray();
      WoodContact.ExtractionFit fit = WoodContact.extractionFit(DAYS, notes);
      limitHits += Math.abs(fit.limit() - 8) < 2.306 * fit.limitError() ? 1 : 0;
      halfTimeHits += Math.abs(fit.halfTime() - 70) < 2.306 * fit.halfTimeError() ? 1 : 0;
    }
    // Student's 95 % with 8 degrees of freedom, less four binomial standard deviations
    assertTrue(limitHits > 0.906 * logs, "limit: " + limitHits);
    assertTrue(halfTimeHits > 0.906 * logs, "half time: " + halfTimeHits);
  }

  @Property
  void extractionRisesWithTimeAndFallsWithFills(
      @Between(min = 1, max = 600) double days,
      @Between(min = 5, max = 300) double halfTime,
      @Between(min = 1, max = 8) int fill,
      @Between(min = 5, max = 95) double depletion) {
    double now = WoodContact.extraction(days, halfTime, fill, depletion);
    assertTrue(now > 0 && now <= 100);
    assertTrue(now <= WoodContact.extraction(days * 1.1, halfTime, fill, depletion));
    assertEquals(
        now * (1 - depletion / 100),
        WoodContact.extraction(days, halfTime, fill + 1, depletion),
        1e-9 * now);
  }

  @Test
  void notesThatTellNothingAreRefused() {
    assertRefused("intensities do not level off by day 300", day -> day / 100);
    assertRefused("intensities do not rise after day 14", day -> 5);
    assertRefused("intensities do not rise after day 14", day -> 5 - day / 100);
    assertRefused("No limit and half time fit", day -> 0);
    assertEquals(
        "days has 3 notes; at least 4 are needed, on 3 days after day 0.",
        message(new double[] {10, 20, 30}, new double[] {1, 2, 2.5}));
    assertTrue(
        message(new double[] {10, 10, 10, 30}, new double[] {1, 1, 1.1, 2.5})
            .startsWith("days has 4 notes"));
    assertEquals(
        "fill is 1.5; it must be a whole number.",
        assertThrows(
                Refusal.class,
                () -> Cellar.catalogue().get("BARREL.EXTRACTION").call(10.0, 50.0, 1.5, 50.0))
            .getMessage());
  }

  private static void assertRefused(
      String sentence, java.util.function.DoubleUnaryOperator intensity) {
    String message = message(DAYS, Arrays.stream(DAYS).map(intensity).toArray());
    assertTrue(message.startsWith(sentence), message);
  }

  private static String message(double[] days, double[] intensities) {
    return assertThrows(Refusal.class, () -> WoodContact.extractionFit(days, intensities))
        .getMessage();
  }
}
