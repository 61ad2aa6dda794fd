package meadcell.bottle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.apache.commons.math3.analysis.integration.SimpsonIntegrator;
import org.junit.jupiter.api.Test;

class HeatingTest {
  @Property
  void aRampIsTheIntegralOfItsRate(
      @Between(min = 20, max = 70) double from,
      @Between(min = 20, max = 70) double to,
      @Between(min = 0.1, max = 60) double minutes,
      @Between(min = 3, max = 15) double z) {
    double expected =
        new SimpsonIntegrator(1e-10, 1e-13, 8, 64)
            .integrate(
                5_000_000,
                t -> Math.pow(10, (from + (to - from) * t / minutes - 60) / z),
                0,
                minutes);
    double[] times = {0, minutes};
    double[] degrees = {from, to};
    double got = Heating.pasteurUnits(times, degrees, z, 60);
    assertEquals(expected, got, 1e-6 * expected + 1e-12);
  }

  @Property
  void aReadingOnTheStraightLineChangesNothing(
      @Between(min = 30, max = 65) double from, @Between(min = 30, max = 65) double to) {
    double[] two = {0, 10};
    double[] ends = {from, to};
    double[] three = {0, 4, 10};
    double[] between = {from, from + 0.4 * (to - from), to};
    double whole = Heating.pasteurUnits(two, ends, 7, 60);
    assertEquals(whole, Heating.pasteurUnits(three, between, 7, 60), 1e-9 * whole);
  }

  /**
   * Newton's law: after a time at the first temperature it falls towards the end. The integral by
   * the power series of the exponential integral, all of whose terms are positive.
   */
  private static double cooled(double from, double end, double rate, double minutes, double z) {
    double perKelvin = Math.log(10) / z;
    double size = perKelvin * (from - end);
    double sum = minutes;
    double term = 1;
    for (int n = 1; n < 400; n++) {
      term *= size / n;
      sum += term * -Math.expm1(-n * rate * minutes) / (n * rate);
    }
    return sum * Math.exp(perKelvin * (end - 60));
  }

  @Property
  void fewReadingsOfACoolingGiveWhatItKills(
      @Between(min = 55, max = 75) double from,
      @Between(min = 0, max = 45) double end,
      @Between(min = 0.02, max = 0.5) double rate,
      @Between(min = 1, max = 10) double step,
      @Between(min = 4, max = 15) double z) {
    double[] times = {0, step, 2.5 * step, 3.5 * step};
    double[] degrees =
        Arrays.stream(times).map(t -> end + (from - end) * Math.exp(-rate * t)).toArray();
    double expected = cooled(from, end, rate, 3.5 * step, z);
    assertEquals(expected, Heating.pasteurUnits(times, degrees, z, 60), 1e-6 * expected);
    double straight = 0;
    for (int i = 0; i < 3; i++) {
      double[] ends = {times[i], times[i + 1]};
      double[] both = {degrees[i], degrees[i + 1]};
      straight += Heating.pasteurUnits(ends, both, z, 60);
    }
    assertTrue(straight > expected, "straight lines give " + straight + " for " + expected);
  }

  /** It begins to cool between two readings, and thermometers show tenths. */
  @Property
  void aCoolingThatBeginsLaterIsNotOverstated(
      @Between(min = 58, max = 70) double from,
      @Between(min = 5, max = 40) double end,
      @Between(min = 0.03, max = 0.4) double rate,
      @Between(max = 5) double late) {
    double[] times = {0, 5, 10, 15, 20};
    double[] degrees =
        Arrays.stream(times)
            .map(t -> end + (from - end) * Math.exp(-rate * Math.max(0, t - late)))
            .toArray();
    double truth = late * Math.pow(10, (from - 60) / 7) + cooled(from, end, rate, 20 - late, 7);
    double told = Heating.pasteurUnits(times, degrees, 7, 60);
    assertTrue(told <= truth * (1 + 1e-6), told + " for " + truth);
  }

  @Property
  void holdingForTheTimeGivesTheUnits(
      @Between(min = 1, max = 500) double units, @Between(min = 45, max = 80) double degrees) {
    double[] times = {0, Heating.pasteurMinutes(units, degrees, 7, 60)};
    double[] held = {degrees, degrees};
    assertEquals(units, Heating.pasteurUnits(times, held, 7, 60), 1e-9 * units);
  }

  @Test
  void killIsUnitsByD() {
    double[] times = {0, 5, 25};
    double[] degrees = {40, 61, 62};
    double units = Heating.pasteurUnits(times, degrees, 5, 60);
    assertEquals(units / 0.8, Heating.logKill(times, degrees, 0.8, 60, 5), 1e-12);
  }

  @Test
  void aLogGoesForward() {
    double[] degrees = {60, 60};
    double[] still = {5, 5};
    Refusal refusal =
        assertThrows(Refusal.class, () -> Heating.pasteurUnits(still, degrees, 7, 60));
    assertEquals(
        "minutes in row 2 is not after the row before: a log of temperatures goes forward in time.",
        refusal.getMessage());
    double[] one = {5};
    refusal = assertThrows(Refusal.class, () -> Heating.pasteurUnits(one, one, 7, 60));
    assertEquals("A log of temperatures needs two rows at least.", refusal.getMessage());
    double[] forward = {5, 5.01};
    assertTrue(Heating.pasteurUnits(forward, degrees, 7, 60) > 0);
  }
}
