package meadcell.barrel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

class SmallCaskTest {
  private static double call(String function, Object... arguments) {
    return (Double) Cellar.catalogue().find(function).orElseThrow().call(arguments);
  }

  @Test
  void aSmallCasksStaveIsAskedFor() {
    Refusal refusal =
        assertThrows(Refusal.class, () -> call("BARREL.FROMOUTSIDE", 29.0, 36.0, 49.0));
    assertEquals(BarrelReason.STAVE_UNKNOWN, refusal.reason());
    assertEquals(30, call("BARREL.FROMOUTSIDE", 29.0, 36.0, 49.0, 2.0, 2.5), 3);
    assertEquals(225, call("BARREL.FROMOUTSIDE", 55.5, 69.0, 94.5), 2);
  }

  // the same shape at an eighth of the volume meets twice the wood for each litre
  @Test
  void oxygenGoesWithTheWoodThatALitreMeets() {
    double large = call("BARREL.OXYGEN", 180.0);
    double ratio = call("BARREL.OAKRATIO", 25.05, 31.8, 40.55);
    assertEquals(2 * large, call("BARREL.OXYGEN", 180.0, 10.0, ratio), 1e-9);
  }

  @Test
  void extractionAsksForTheFill() {
    assertEquals(
        Refusal.Kind.WRONG_COUNT,
        assertThrows(Refusal.class, () -> call("BARREL.EXTRACTION", 120.0, 90.0)).kind());
  }

  @Test
  void humidCellarsHaveAnAnswerAndStrengthFallsWithHumidity() {
    double last = 13;
    for (double humidity = 70; humidity <= 98; humidity += 2) {
      double strength = call("BARREL.STRENGTH", 13.0, 2.0, humidity);
      assertTrue(strength < last && strength > 0);
      last = strength;
    }
  }
}
