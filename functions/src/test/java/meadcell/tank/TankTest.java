package meadcell.tank;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class TankTest {

  @Property
  void risesWithTheDipAndWithoutAStepAtTheCone(
      @Between(min = 20, max = 400) double diameter,
      @Between(min = 0, max = 100) double cone,
      @Between(min = 0.1, max = 299) double dip) {
    double height = 300;
    double contents = Tank.contents(diameter, height, cone, dip);
    assertTrue(Tank.contents(diameter, height, cone, dip + 0.5) > contents);
    double brim = Tank.contents(diameter, height, cone, cone + height);
    assertEquals(Math.PI / 4e3 * diameter * diameter * (height + cone / 3), brim, 1e-9 * brim);
  }

  @Test
  void refusesMoreThanItHolds() {
    Tank.contents(100, 150, 40, 190);
    assertThrows(Refusal.class, () -> Tank.contents(100, 150, 40, 190.1));
  }
}
