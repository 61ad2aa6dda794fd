package meadcell.barrel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

/** Loss, headspace and strength while the barrel lies. */
class LossTest {
  @Property
  void aSteadyLogGivesBackItsRate(
      @Between(min = 0.1, max = 20) double rate,
      @Between(min = 20, max = 600) double capacityL,
      @Between(min = 1, max = 200) double first,
      @Between(min = 1, max = 200) double second) {
    double[] days = {100, 100 + first, 100 + first + second};
    double[] topups = {
      capacityL / 30,
      Losses.headspaceAfter(capacityL, rate, first, 0),
      Losses.headspaceAfter(capacityL, rate, second, 0)
    };
    Losses.LossRate found = Losses.lossRate(days, topups, capacityL);
    assertEquals(rate, found.loss(), 1e-9 * rate);
    assertEquals(0, found.standardError(), 1e-6 * rate);
  }

  /** Logs with noise: the standard error must say how far off the rate is. */
  @Test
  void theStandardErrorTellsTheScatter() {
    Random noise = new Random(20);
    double squares = 0;
    int logs = 2000;
    for (int log = 0; log < logs; log++) {
      double[] days = new double[13];
      double[] topups = new double[13];
      for (int i = 1; i < days.length; i++) {
        int interval = 20 + noise.nextInt(30);
        days[i] = days[i - 1] + interval;
        topups[i] =
            Losses.headspaceAfter(225, 4, interval, 0)
                + 0.02 * Math.sqrt(interval) * noise.nextGaussian();
      }
      Losses.LossRate found = Losses.lossRate(days, topups, 225);
      double error = (found.loss() - 4) / found.standardError();
      squares += error * error;
    }
    // Student with 11 degrees of freedom: variance 11/9
    assertEquals(11 / 9.0, squares / logs, 0.12);
  }

  @Property
  void daysToTopInvertsHeadspaceAfter(
      @Between(min = 20, max = 600) double capacityL,
      @Between(min = 0.1, max = 20) double rate,
      @Between(min = 0, max = 5) double startL,
      @Between(min = 1, max = 300) double days) {
    double limitL = Losses.headspaceAfter(capacityL, rate, days, startL);
    assertEquals(days, Losses.daysToTop(capacityL, rate, limitL, startL), 1e-6 * days);
  }

  @Test
  void logsAndHeadspacesThatCannotBeAreRefused() {
    assertRefused(
        "days has 2 toppings; at least 3 are needed, the first of which only starts the count.",
        () -> Losses.lossRate(new double[] {0, 30}, new double[] {4, 1}, 225));
    assertRefused(
        "days in row 3 is 30, not after the day before it.",
        () -> Losses.lossRate(new double[] {0, 30, 30}, new double[] {4, 1, 1}, 225));
    assertRefused(
        "The headspace would be 230 L, more than capacity, 225 L.",
        () -> Losses.headspaceAfter(225, 40, 365.25, 140));
    assertRefused(
        "limit is 226 L, more than capacity, 225 L.", () -> Losses.daysToTop(225, 4, 226, 0));
    assertRefused(
        "start is 226 L, more than capacity, 225 L.", () -> Losses.daysToTop(225, 4, 2, 226));
  }

  private static void assertRefused(
      String sentence, org.junit.jupiter.api.function.Executable call) {
    assertEquals(sentence, assertThrows(Refusal.class, call).getMessage());
  }

  @Property
  void strengthRisesInDryAirFallsInHumidAndStandsStillAtNeutral(
      @Between(min = 3, max = 70) double abv,
      @Between(min = 0.5, max = 40) double loss,
      @Between(min = 50, max = 80) double neutral,
      @Between(min = 0.5, max = 5) double away) {
    assertEquals(abv, Losses.strength(abv, loss, neutral, neutral), 1e-9);
    assertTrue(Losses.strength(abv, loss, neutral - away, neutral) > abv);
    assertTrue(Losses.strength(abv, loss, neutral + away, neutral) < abv);
  }

  @Property
  void losingInTwoStepsIsLosingOnce(
      @Between(min = 3, max = 70) double abv,
      @Between(min = 0.5, max = 30) double first,
      @Between(min = 0.5, max = 30) double second,
      @Between(min = 40, max = 85) double humidity) {
    double both = 100 * (1 - (1 - first / 100) * (1 - second / 100));
    assertEquals(
        Losses.strength(abv, both, humidity, 67),
        Losses.strength(Losses.strength(abv, first, humidity, 67), second, humidity, 67),
        1e-9);
  }
}
