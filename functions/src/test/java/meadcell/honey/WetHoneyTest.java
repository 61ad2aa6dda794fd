package meadcell.honey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class WetHoneyTest {

  // the table's last steps are 0.0074 and 0.0077 for 1 %; other tables differ by up to 0.004
  @Test
  void goesOnWhereTheTableEnds() {
    assertEquals(1.3950 - 2 * 0.0077, HoneyDensity.kilogramsPerLitre(23) / 0.9982, 0.004);
    double last = HoneyDensity.kilogramsPerLitre(20.9);
    for (double moisture = 21; moisture <= 25; moisture += 0.1) {
      double wetter = HoneyDensity.kilogramsPerLitre(Math.min(25, moisture));
      assertTrue(wetter < last && wetter > last - 0.001);
      last = wetter;
    }
  }
}
