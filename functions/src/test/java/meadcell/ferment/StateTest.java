package meadcell.ferment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.UnitSystem;
import meadcell.catalogue.Verdict;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

class StateTest {
  @Test
  void aFallOfManyGramsIsNoEnd() {
    says("falling", new double[] {0, 30, 60}, new double[] {1.010, 1.004, 0.998}, 1.010);
    says("falling", new double[] {0, 7, 14, 21}, new double[] {1.006, 1.0035, 1.001, 0.998}, 0.995);
    says("falling", new double[] {0, 20, 40, 60}, new double[] {1.012, 1.005, 0.999, 0.996}, 0.996);
  }

  /** Honey that came in, or a wrong reading, is no rest, whatever end is expected. */
  @Test
  void aRiseIsNoEnd() {
    double[] weekly = {0, 7, 14, 21, 28};
    for (double expected : new double[] {1, 1.01, 1.03}) {
      says("cannot tell", weekly, new double[] {1, 1, 1, 1, 1.01}, expected);
      says("cannot tell", weekly, new double[] {1, 1, 1, 1.01, 1.01}, expected);
      says("cannot tell", weekly, new double[] {1, 1.003, 1.006, 1.009, 1.012}, expected);
    }
    // what readings scatter, and what evaporates from a cask: 0.011 a year
    says("finished", weekly, new double[] {1, 1, 1, 1, 1.002}, 1);
    double[] yearly = {0, 60, 120, 180, 240, 300, 360};
    double[] cask = {1.02, 1.0218, 1.0236, 1.0254, 1.0272, 1.029, 1.0308};
    says("finished", yearly, cask, 1.03);
  }

  @Test
  void aRiseBoundsNothing() {
    for (double[] gravities :
        new double[][] {{1, 1, 1, 1.02}, {1.01, 1.01, 1, 1.01}, {1, 1.002, 1.004, 1.006}}) {
      double[] days = {0, 14, 28, 42};
      String why =
          assertThrows(Refusal.class, () -> Prospect.remaining(days, gravities, 90, 0.0006))
              .getMessage();
      assertTrue(why.contains("rise"), why);
    }
    double[] fortnightly = {0, 14, 28};
    double rest = Prospect.remaining(fortnightly, new double[] {1, 1, 1}, 90, 0.0006).upper();
    for (double last : new double[] {1.0005, 1.001, 1.002, 1.0029}) {
      double[] gravities = {1, 1, last};
      assertEquals(rest, Prospect.remaining(fortnightly, gravities, 90, 0.0006).upper(), 1e-12);
    }
    double[] dipped = {1, 1, 1.003};
    assertThrows(Refusal.class, () -> Prospect.remaining(fortnightly, dipped, 90, 0.0006));
  }

  private static void says(String word, double[] days, double[] gravities, double expected) {
    assertEquals(word, Prospect.state(days, gravities, expected, 0.0005, 0.0001).word());
  }

  /** Whatever came before a still window, and wherever the calendar begins. */
  @Test
  void olderReadingsAndDatesChangeNothing() {
    Random random = new Random(1);
    for (int log = 0; log < 200; log++) {
      double[] days = IntStream.range(0, 12).mapToDouble(i -> 7 * i).toArray();
      double[] gravities =
          DoubleStream.of(days)
              .map(
                  day -> 1.02 - 0.0002 * random.nextDouble() * day + 0.0005 * random.nextGaussian())
              .toArray();
      String word = Prospect.state(days, gravities, 1, 0.0005, 0.0001).word();
      double[] dates = DoubleStream.of(days).map(day -> day + 46000).toArray();
      says(word, dates, gravities, 1);
      double[] latest = Arrays.copyOfRange(gravities, 8, 12);
      says(word, new double[] {0, 7, 14, 21}, latest, 1);
    }
  }

  /** As many readings as it says are due do tell, if they stay where they are. */
  @Test
  void whatWouldTellTells() {
    Random random = new Random(2);
    for (int log = 0; log < 200; log++) {
      int every = 1 + random.nextInt(10);
      int count = 1 + random.nextInt(3);
      double[] days = IntStream.range(0, count).mapToDouble(i -> every * i).toArray();
      double[] still = DoubleStream.of(days).map(day -> 1).toArray();
      Verdict verdict = Prospect.state(days, still, 1, 0.0005, 0.0001);
      if (!verdict.word().equals("cannot tell")) {
        continue;
      }
      int more = (Integer) verdict.because().parameter("more").orElseThrow().value();
      double within = (Double) verdict.because().parameter("days").orElseThrow().value();
      for (int due : new int[] {more - 1, more}) {
        double step = within / more;
        double[] later =
            IntStream.range(0, count + due)
                .mapToDouble(i -> i < count ? days[i] : days[count - 1] + step * (i - count + 1))
                .toArray();
        double[] on = DoubleStream.of(later).map(day -> 1).toArray();
        says(due == more ? "finished" : "cannot tell", later, on, 1);
      }
    }
  }

  @Test
  void whyGivesTheNumbersBehindTheWord() {
    assertEquals(
        "All 3 readings together leave the fall uncertain by 0.000083 SG per day at one-sided 95 %;"
            + " to tell it, 0.00006 SG per day is due. Readings still to come: 1, over 7 days.",
        why(new double[] {0, 7, 14}, new double[] {1.03, 1.03, 1.03}));
    assertEquals(
        "Too few to show a fall: 1. Readings still to come: 3, over 21 days.",
        why(new double[] {0}, new double[] {1.03}));
    assertTrue(
        why(new double[] {0, 7, 14, 21}, new double[] {1.031, 1.03, 1.031, 1.03})
            .contains("which is 6.9 g/L of sugar a month"));
    assertTrue(
        Prospect.state(new double[] {0, 7, 14, 21}, new double[] {1, 1, 1, 1}, 1, 0.0005, 0.0001)
            .because()
            .text(UnitSystem.METRIC, Words.in("de"))
            .contains("0,000053"));
    assertFalse(Cellar.why("FERMENT.PROGRESS", 1.1, 1.05).isPresent());
  }

  private static String why(double[] days, double[] gravities) {
    Object[][] column = new Object[days.length][1];
    Object[][] read = new Object[days.length][1];
    for (int i = 0; i < days.length; i++) {
      column[i][0] = days[i];
      read[i][0] = gravities[i];
    }
    return (String) Cellar.catalogue().get("CELLAR.WHY").call("FERMENT.STATE", column, read, 1.0);
  }

  @Test
  void readingsMustFollowEachOther() {
    Refusal refusal =
        assertThrows(
            Refusal.class,
            () ->
                Prospect.state(new double[] {0, 7, 7}, new double[] {1, 1, 1}, 1, 0.0005, 0.0001));
    assertEquals(FermentReason.NOT_LATER, refusal.reason());
    assertTrue(refusal.getMessage().contains("row 3"), refusal.getMessage());
  }

  @Test
  void whatMayStillFallGrowsWithTimeAndShrinksWithReadings() {
    double[] days = {0, 14, 28, 42, 56, 70, 84};
    double[] rest = {1, 1.001, 1, 1, 1.001, 1, 1};
    Prospect.Remaining year = Prospect.remaining(days, rest, 365, 0.0006);
    Prospect.Remaining quarter = Prospect.remaining(days, rest, 90, 0.0006);
    assertTrue(quarter.upper() < year.upper());
    assertEquals(year.upper() / 365, quarter.upper() / 90, 1e-12);
    Prospect.Remaining fewer =
        Prospect.remaining(Arrays.copyOf(days, 4), Arrays.copyOf(rest, 4), 90, 0.0006);
    assertTrue(quarter.upper() < fewer.upper());
    assertEquals(2310 * year.upper(), year.sugar(), 1e-12);
    Refusal refusal =
        assertThrows(
            Refusal.class,
            () -> Prospect.remaining(new double[] {0, 7}, new double[] {1, 1}, 90, 0.0006));
    assertEquals(FermentReason.TOO_FEW_READINGS, refusal.reason());
  }
}
