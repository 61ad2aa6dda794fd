package meadcell.ferment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ForecastTest {
  private static final double[] DAYS = {0, 2, 4, 6, 8, 10, 12};
  private static final double[] FALL = {1.1, 1.094, 1.079, 1.053, 1.028, 1.013, 1.007};

  private static final Set<Reason> NO_END_YET =
      Set.of(FermentReason.NO_CURVE, FermentReason.END_OPEN);

  // T. Carlson 1913, growth of yeast by the hour, in R. Pearl, Quarterly Review of Biology
  // 2:532–548 (1927), turned into a fall
  private static final double[] YEAST =
      DoubleStream.of(
              9.6, 18.3, 29.0, 47.2, 71.1, 119.1, 174.6, 257.3, 350.7, 441.0, 513.3, 559.7, 594.8,
              629.4, 640.8, 651.1, 655.9, 659.6, 661.8)
          .map(amount -> 1.11 - amount / 1e4)
          .toArray();

  /** Pearl's logistic fit to all of it ends at 665, from memory; ours of four programs at 663. */
  private static final double YEAST_END = 1.0436;

  @Test
  void measuredYeastEndsWithinTheLimitsOfItsFirstHours() {
    int answered = 0;
    for (int count = 9; count <= YEAST.length; count++) {
      double[] hours = IntStream.range(0, count).asDoubleStream().toArray();
      try {
        Prospect.Forecast forecast = Prospect.forecast(hours, Arrays.copyOf(YEAST, count), 0.001);
        assertTrue(
            forecast.lower() <= YEAST_END && YEAST_END <= forecast.upper(),
            () -> hours.length + ": " + forecast);
        answered++;
      } catch (Refusal open) {
        assertTrue(NO_END_YET.contains(open.reason()), open.getMessage());
      }
    }
    assertTrue(answered >= 6, "answered " + answered);
  }

  @Test
  void endsAtOrBelowTheLastReading() {
    Prospect.Forecast forecast =
        Prospect.forecast(
            new double[] {0, 2, 4, 7, 10, 14, 21, 28},
            new double[] {1.1, 1.09, 1.07, 1.045, 1.03, 1.02, 1.012, 1.008},
            0.001);
    assertTrue(forecast.terminal() <= 1.008);
    assertTrue(forecast.day() > 28);
  }

  @Test
  void comesNearerItsEndWithTheTolerance() {
    Prospect.Forecast forecast = Prospect.forecast(DAYS, FALL, 0.001);
    assertTrue(Prospect.forecast(DAYS, FALL, 0.0005).day() > forecast.day());
    assertTrue(forecast.terminal() < 1.007);
    assertTrue(forecast.day() > 12);
  }

  @Test
  void doesNotDependOnTheCalendar() {
    double[] dates = DoubleStream.of(DAYS).map(day -> day + 46000).toArray();
    Prospect.Forecast plain = Prospect.forecast(DAYS, FALL, 0.001);
    Prospect.Forecast dated = Prospect.forecast(dates, FALL, 0.001);
    assertEquals(plain.terminal(), dated.terminal(), 1e-12);
    assertEquals(plain.day() + 46000, dated.day(), 1e-6);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.5, 1, 2, 5})
  void theCurveIsFoundAgainFromItsOwnPoints(double skew) {
    double[] times = IntStream.range(0, 15).asDoubleStream().toArray();
    double[] values =
        DoubleStream.of(times)
            .map(time -> 3 + 90 * Math.pow(1 + skew * Math.pow(time / 5, 2.5), -1 / skew))
            .toArray();
    FallingCurve curve = FallingCurve.fit(skew, times, values).orElseThrow();
    assertEquals(3, curve.end(), 1e-5);
    assertEquals(90, curve.drop(), 1e-5);
    assertEquals(values[7], curve.value(7), 1e-6);
    assertEquals(7, curve.timeAt(curve.value(7) - curve.end()), 1e-6);
    double steepest = 0;
    for (double time = 0.001; time < 20; time += 0.001) {
      steepest = Math.max(steepest, (curve.value(time) - curve.value(time + 0.001)) / 0.001);
    }
    assertEquals(steepest, curve.steepestFall(), 1e-3);
  }

  @Test
  void noMustEndsBelowItsDryGravity() {
    for (double original = 1.03; original < 1.2; original += 0.01) {
      DryEnd dry = DryEnd.of(original);
      assertTrue(dry.lowest() >= 0.98 && dry.lowest() < dry.likely(), original + " " + dry);
      assertTrue(dry.likely() < dry.highest() && dry.highest() < 1.003, original + " " + dry);
    }
  }

  @Test
  void refusesWhatHasNoEndYet() {
    refuses(FermentReason.TOO_FEW_READINGS, days(0, 2, 4, 6), 1.1, 1.08, 1.05, 1.03);
    refuses(FermentReason.FALLS_TOO_LITTLE, days(0, 1, 2, 3, 4), 1.03, 1.03, 1.031, 1.03, 1.03);
    refuses(FermentReason.FALLS_TOO_LITTLE, days(0, 1, 2, 3, 4), 1.03, 1.04, 1.05, 1.06, 1.07);
    refuses(FermentReason.NO_CURVE, days(0, 1, 2, 3, 4, 5), 1.1, 1.098, 1.094, 1.088, 1.079, 1.067);
    refuses(FermentReason.END_OPEN, days(0, 3, 6, 9, 14), 1.095, 1.08, 1.05, 1.036, 1.022);
    refuses(FermentReason.NOT_LATER, days(0, 2, 2, 6, 8), 1.1, 1.08, 1.05, 1.03, 1.02);
  }

  @Test
  void refusesWhatNoCurveFits() {
    // fell, stood three weeks in the cold, fell on
    refuses(
        FermentReason.NO_CURVE,
        days(0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 30, 33),
        1.1,
        1.09,
        1.075,
        1.06,
        1.06,
        1.06,
        1.06,
        1.06,
        1.05,
        1.035,
        1.02,
        1.01);
  }

  private static double[] days(double... days) {
    return days;
  }

  private static void refuses(FermentReason why, double[] days, double... gravities) {
    Refusal refusal = assertThrows(Refusal.class, () -> Prospect.forecast(days, gravities, 0.001));
    assertEquals(why, refusal.reason(), refusal.getMessage());
  }
}
