package meadcell.tank;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class TankTest {

  @Property
  void risesWithTheDipAndWithoutAStepAtTheCone(
      @ForAll @DoubleRange(min = 20, max = 400) double diameter,
      @ForAll @DoubleRange(min = 0, max = 100) double cone,
      @ForAll @DoubleRange(min = 0.1, max = 299) double dip) {
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
