package meadcell.honey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import meadcell.density.Sucrose;
import meadcell.density.Water;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class HoneyTest {

  @Property
  void neededInvertsGravity(
      @Between(min = 1.0001, max = 1.29) double gravity,
      @Between(min = 0.1, max = 10000) double volumeL,
      @Between(min = 10, max = 30) double moisture) {
    double massKg = Honey.needed(volumeL, gravity, moisture);
    assertEquals(gravity, Honey.gravity(volumeL, massKg, moisture), 1e-12);
  }

  @Property
  void honeyAndItsWaterWeighTheMust(
      @Between(min = 1.002, max = 1.3) double gravity,
      @Between(min = 0.1, max = 10000) double massKg,
      @Between(min = 10, max = 30) double moisture) {
    double waterKg = Honey.water(massKg, gravity, moisture) * Water.density(20) / 1000;
    double mustL =
        (massKg + waterKg) / (Sucrose.density(Sucrose.massFractionFromGravity(gravity), 20) / 1000);
    assertEquals(massKg, Honey.needed(mustL, gravity, moisture), massKg * 1e-12);
  }

  @Property
  void wetterHoneyIsLighterAndWeaker(@Between(min = 13, max = 20.9) double moisture) {
    double wetter = moisture + 0.1;
    assertTrue(Honey.density(wetter) < Honey.density(moisture));
    assertTrue(Honey.volume(1, wetter) > Honey.volume(1, moisture));
    assertTrue(Honey.yield(wetter) < Honey.yield(moisture));
    assertTrue(Honey.gravity(100, 30, wetter) < Honey.gravity(100, 30, moisture));
    assertTrue(Honey.sugar(1, wetter, 94) < Honey.sugar(1, moisture, 94));
  }

  @Property
  void moistureFallsAsTheIndexRises(
      @Between(min = 1.476, max = 1.5) double index,
      @Between(min = 15, max = 21) double temperatureC) {
    double moisture = Honey.moisture(index, temperatureC);
    assertTrue(Honey.moisture(index + 0.0001, temperatureC) < moisture);
    assertEquals(moisture, Honey.moisture(index + 0.00023, temperatureC - 1), 1e-9);
  }

  @Test
  void yieldIsAlmostTheSameForWeakAndStrongMusts() {
    double yield = Honey.yield(17.2);
    assertEquals(1.005, 50 / Honey.needed(1, 1.05, 17.2) / yield, 0.001);
    assertEquals(0.995, 150 / Honey.needed(1, 1.15, 17.2) / yield, 0.001);
  }

  @Test
  void refusals() {
    assertThrows(Refusal.class, () -> Honey.gravity(32, 100, 17.2));
    assertThrows(Refusal.class, () -> Honey.moisture(1.468, 20));
    assertThrows(Refusal.class, () -> Honey.moisture(1.507, 20));
    assertThrows(Refusal.class, () -> Honey.acceptable(20, 79, 2, Honey.Kind.BLOSSOM));
  }
}
