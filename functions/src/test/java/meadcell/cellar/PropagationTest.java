package meadcell.cellar;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

/** The propagation against published examples; the values are those of the examples. */
class PropagationTest {
  private static Propagation of(String function, double[] values, double[] u, int[]... shared) {
    Object[] arguments = Arrays.stream(values).boxed().toArray();
    ScalarCall call = new ScalarCall(GumExamples.CATALOGUE.get("EXAMPLE." + function), arguments);
    return new Propagation(call, u, List.of(shared));
  }

  private static double u(String function, double[] values, double[] u, int[]... shared) {
    return of(function, values, u, shared).uncertainty();
  }

  // JCGM 100, H.1: first-order terms 25, 9.7, 2.9 and 16.6 nm, second-order 11.7 and 1.7: 34 nm
  @Test
  void endGauge() {
    double[] x = {50_000_623, 215, 11.5e-6, -0.1, 0, 0};
    double[] u = {25, 9.7, 2e-6 / Math.sqrt(3), 0.41, 0.58e-6, 0.029};
    assertEquals(34, u("GAUGE", x, u), 0.5);
    assertEquals(33.91, u("GAUGE", x, u), 0.01);
    double[] shares = of("GAUGE", x, u).shares();
    assertEquals(100 * 25 * 25 / (33.91 * 33.91), shares[0], 0.05);
    assertEquals(100 * 9.7 * 9.7 / (33.91 * 33.91), shares[1], 0.02);
    assertEquals(100, Arrays.stream(shares).sum(), 1e-9);
  }

  // H.2, table H.4: 0.071, 0.295 and 0.236 Ω
  @Test
  void resistanceAndReactance() {
    double[] x = {0, 0, 0};
    double[] u = {1, 1, 1};
    assertEquals(0.071, u("RESISTANCE", x, u), 0.0005);
    assertEquals(0.295, u("REACTANCE", x, u), 0.001);
    assertEquals(0.236, u("IMPEDANCE", x, u), 0.0005);
  }

  // H.3: s = 0.0035 °C; u of the intercept at 20 °C 0.0029 °C, of b(30 °C) 0.0041 °C
  @Test
  void calibrationOfAThermometer() {
    double[] b = {20, -.171, -.169, -.166, -.159, -.164, -.165, -.156, -.157, -.159, -.161, -.160};
    double[] u = new double[12];
    Arrays.fill(u, 1, 12, 0.0034976);
    assertEquals(0.00288, u("LINE", b, u), 0.000005);
    b[0] = 30;
    assertEquals(0.00414, u("LINE", b, u), 0.000005);
    // H.3.5: a systematic 0.005 °C in all of them leaves the slope and makes 0.00577 of 0.00288
    double[] systematic = new double[12];
    Arrays.fill(systematic, 1, 12, 0.005);
    double shared = u("LINE", b, systematic, IntStream.rangeClosed(1, 11).toArray());
    assertEquals(0.005, shared, 1e-9);
    assertEquals(0.00577, Math.hypot(0.00288, shared), 0.00001);
  }

  // JCGM 101, 9.3: 0.0539 by first-order terms, 0.0750 with those of the note, 0.0755 simulated
  @Test
  void massCalibration() {
    double[] x = {100_000, 1.234, 1.2, 8000, 8000};
    double[] u = {0.05, 0.02, 0.1 / Math.sqrt(3), 1000 / Math.sqrt(3), 50 / Math.sqrt(3)};
    assertEquals(0.0755, u("MASS", x, u), 0.0002);
  }

  // JCGM 101, 9.4, table 6: 50, 112 and 502, where first-order terms give 0, 100 and 500
  @Test
  void atAStationaryPoint() {
    double[] u = {0.005, 0.005};
    assertEquals(50, u("LOSS", new double[] {0, 0}, u), 1e-6);
    assertEquals(112, u("LOSS", new double[] {0.010, 0}, u), 0.5);
    assertEquals(502, u("LOSS", new double[] {0.050, 0}, u), 1);
  }

  @Test
  void aStepStaysInTheRange() {
    assertEquals(0.05, u("ROOT", new double[] {1}, new double[] {0.01}) * 10, 1e-4);
    // half of the step fits below
    assertEquals(
        0.5 / Math.sqrt(0.05) * 0.08, u("ROOT", new double[] {0.05}, new double[] {0.08}), 0.05);
    // none does: one side
    assertEquals(
        Math.sqrt(Math.sqrt(3)) / Math.sqrt(3),
        u("ROOT", new double[] {0}, new double[] {1}),
        1e-12);
  }

  @Property
  void sharesOfASharedSourceAddUp(
      @Between(min = 0.01, max = 1) double a, @Between(min = -1, max = 1) double b) {
    double[] x = {a, b};
    double[] u = {0.1, 0.2};
    double[] shares = of("LOSS", x, u, new int[] {0, 1}).shares();
    assertEquals(100, shares[0] + shares[1], 1e-6);
    assertArrayEquals(
        new double[] {100}, new double[] {Arrays.stream(of("LOSS", x, u).shares()).sum()}, 1e-6);
  }

  @Test
  void aFunctionWithoutASecondAnswerCannotTell() {
    double[] one = {1};
    Refusal refusal = assertThrows(Refusal.class, () -> u("POINT", one, one));
    assertEquals(
        "Around argument 1 the function answers nothing else, so what its uncertainty does cannot be"
            + " told.",
        refusal.getMessage());
  }

  @Test
  void anArgumentWithoutLimitsIsNotLookedFor() {
    ScalarCall call = new ScalarCall(GumExamples.CATALOGUE.get("EXAMPLE.LOSS"), 0.0, 0.0);
    Refusal refusal = assertThrows(Refusal.class, () -> new Search(call, 0, 1));
    assertEquals("a has no limits between which it could be looked for.", refusal.getMessage());
  }
}
