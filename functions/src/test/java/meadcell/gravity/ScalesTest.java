package meadcell.gravity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class ScalesTest {

  @Property
  void brixAndGravityAreInverse(@Between(min = 0, max = 83) double brix) {
    assertEquals(brix, Gravity.toBrix(Gravity.fromBrix(brix)), 1e-11);
  }

  @Property
  void baumeAndGravityAreInverse(@Between(min = 0, max = 45) double baume) {
    assertEquals(baume, Gravity.toBaume(Gravity.fromBaume(baume)), 1e-12);
  }

  @Property
  void oechsleAndGravityAreInverse(@Between(min = 0, max = 449) double oechsle) {
    assertEquals(oechsle, Gravity.toOechsle(Gravity.fromOechsle(oechsle)), 1e-11);
  }

  @Property
  void brixAndIndexAreInverse(@Between(min = 0, max = 83.9) double brix) {
    assertEquals(brix, Gravity.brixFromIndex(Gravity.indexFromBrix(brix)), 1e-11);
  }

  @Property
  void allScalesRise(@Between(min = 1, max = 1.448) double gravity) {
    double more = gravity + 1e-4;
    assertTrue(Gravity.toBrix(more) > Gravity.toBrix(gravity));
    assertTrue(Gravity.toBaume(more) > Gravity.toBaume(gravity));
    assertTrue(Gravity.toOechsle(more) > Gravity.toOechsle(gravity));
    assertTrue(Gravity.sugar(more) > Gravity.sugar(gravity));
  }

  @Property
  void aRefractometerIsRightAtTwentyDegrees(@Between(min = 0, max = 70) double brix) {
    assertEquals(brix, Gravity.brixCorrect(brix, 20, 0, 0));
  }

  @Property
  void warmerAndHigherReadingsAreCorrectedUpwards(
      @Between(min = 0, max = 69.9) double brix,
      @Between(min = 10, max = 29.9) double temperatureC) {
    double corrected = Gravity.brixCorrect(brix, temperatureC, 0, 0);
    assertTrue(Gravity.brixCorrect(brix, temperatureC + 0.1, 0, 0) > corrected);
    assertTrue(Gravity.brixCorrect(brix + 0.1, temperatureC, 0, 0) > corrected);
  }

  @Property
  void sugarIsDensityTimesBrix(@Between(min = 1, max = 1.45) double gravity) {
    assertEquals(
        Gravity.sugar(gravity),
        10 * Gravity.toBrix(gravity) * Gravity.density(gravity, 20, 0),
        1e-9);
  }

  @Property
  void atTwentyDegreesDensityIsGravityTimesWater(
      @Between(min = 1, max = 1.2) double gravity, @Between(min = 0, max = 30) double abv) {
    assertEquals(0.9982031 * gravity, Gravity.density(gravity, 20, abv), 1e-7);
  }

  @Test
  void lighterThanWaterNeedsItsAlcohol() {
    assertEquals(0.9982031 * 0.995, Gravity.density(0.995, 20, 14), 1e-7);
    Refusal refusal = assertThrows(Refusal.class, () -> Gravity.density(0.995, 20, 0));
    assertEquals(Refusal.Kind.INCONSISTENT, refusal.kind());
  }
}
