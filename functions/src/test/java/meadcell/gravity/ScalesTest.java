package meadcell.gravity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class ScalesTest {

  @Property
  void brixAndGravityAreInverse(@ForAll @Scale(6) @DoubleRange(min = 0, max = 83) double brix) {
    assertEquals(brix, Gravity.toBrix(Gravity.fromBrix(brix)), 1e-11);
  }

  @Property
  void baumeAndGravityAreInverse(@ForAll @Scale(6) @DoubleRange(min = 0, max = 45) double baume) {
    assertEquals(baume, Gravity.toBaume(Gravity.fromBaume(baume)), 1e-12);
  }

  @Property
  void oechsleAndGravityAreInverse(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 449) double oechsle) {
    assertEquals(oechsle, Gravity.toOechsle(Gravity.fromOechsle(oechsle)), 1e-11);
  }

  @Property
  void brixAndIndexAreInverse(@ForAll @Scale(6) @DoubleRange(min = 0, max = 83.9) double brix) {
    assertEquals(brix, Gravity.brixFromIndex(Gravity.indexFromBrix(brix)), 1e-11);
  }

  @Property
  void allScalesRise(@ForAll @Scale(6) @DoubleRange(min = 1, max = 1.448) double gravity) {
    double more = gravity + 1e-4;
    assertTrue(Gravity.toBrix(more) > Gravity.toBrix(gravity));
    assertTrue(Gravity.toBaume(more) > Gravity.toBaume(gravity));
    assertTrue(Gravity.toOechsle(more) > Gravity.toOechsle(gravity));
    assertTrue(Gravity.sugar(more) > Gravity.sugar(gravity));
  }

  @Property
  void aRefractometerIsRightAtTwentyDegrees(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 70) double brix) {
    assertEquals(brix, Gravity.brixCorrect(brix, 20));
  }

  @Property
  void warmerAndHigherReadingsAreCorrectedUpwards(
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 69.9) double brix,
      @ForAll @Scale(6) @DoubleRange(min = 10, max = 29.9) double temperatureC) {
    double corrected = Gravity.brixCorrect(brix, temperatureC);
    assertTrue(Gravity.brixCorrect(brix, temperatureC + 0.1) > corrected);
    assertTrue(Gravity.brixCorrect(brix + 0.1, temperatureC) > corrected);
  }

  @Property
  void sugarIsDensityTimesBrix(@ForAll @Scale(6) @DoubleRange(min = 1, max = 1.45) double gravity) {
    assertEquals(
        Gravity.sugar(gravity),
        10 * Gravity.toBrix(gravity) * Gravity.density(gravity, 20, 0),
        1e-9);
  }

  @Property
  void atTwentyDegreesDensityIsGravityTimesWater(
      @ForAll @Scale(6) @DoubleRange(min = 1, max = 1.2) double gravity,
      @ForAll @Scale(6) @DoubleRange(min = 0, max = 30) double abv) {
    assertEquals(0.9982031 * gravity, Gravity.density(gravity, 20, abv), 1e-7);
  }

  @Test
  void lighterThanWaterNeedsItsAlcohol() {
    assertEquals(0.9982031 * 0.995, Gravity.density(0.995, 20, 14), 1e-7);
    Refusal refusal = assertThrows(Refusal.class, () -> Gravity.density(0.995, 20, 0));
    assertEquals(Refusal.Kind.INCONSISTENT, refusal.kind());
  }
}
