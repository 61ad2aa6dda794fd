package meadcell.bottle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import meadcell.bottle.Filling.Rule;
import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class FillingTest {
  private static final int LOTS = 2000;

  /** How many of simulated lots end in a word. */
  private static int lots(String word, Rule rule, double mean, double deviation, int bottles) {
    Random random = new Random(24);
    int count = 0;
    for (int i = 0; i < LOTS; i++) {
      double[] contents = new double[bottles];
      for (int k = 0; k < bottles; k++) {
        contents[k] = mean + deviation * random.nextGaussian();
      }
      count += Filling.fillCheck(contents, 750, rule).word().equals(word) ? 1 : 0;
    }
    return count;
  }

  @Test
  void goodLotsOfTheUnionAreSeldomFailedAndShortOnesMostly() {
    assertTrue(lots("fails", Rule.EU, 750, 3, 50) <= 0.01 * LOTS);
    assertTrue(lots("passes", Rule.EU, 751, 3, 50) >= 0.98 * LOTS);
    // short by one standard deviation
    assertTrue(lots("passes", Rule.EU, 747, 3, 50) == 0);
    assertTrue(lots("fails", Rule.EU, 747, 3, 50) >= 0.99 * LOTS);
    // wide spread: more than 2.5 % lack more than 15 mL
    assertTrue(lots("fails", Rule.EU, 752, 12, 50) >= 0.5 * LOTS);
  }

  @Test
  void americanLotsFailWhereTheyLieOnOneSide() {
    assertTrue(lots("fails", Rule.USA, 750, 2, 50) <= 0.05 * LOTS);
    assertTrue(lots("fails", Rule.USA, 752, 2, 50) >= 0.99 * LOTS);
    assertTrue(lots("fails", Rule.USA, 748, 2, 50) >= 0.99 * LOTS);
    assertTrue(lots("fails", Rule.USA, 750, 8, 50) >= 0.9 * LOTS);
  }

  /** A mean that lies this much below the label leaves 7 of 10 normal bottles short. */
  @Test
  void americanLotsWithSevenOfTenShortSeldomPass() {
    double short7 = 750 - 2 * 0.524401;
    assertTrue(lots("passes", Rule.USA, short7, 2, 20) <= 0.06 * LOTS);
    assertTrue(lots("passes", Rule.USA, short7, 2, 50) <= 0.01 * LOTS);
    assertTrue(lots("passes", Rule.USA, 750, 2, 20) >= 0.5 * LOTS);
  }

  @Test
  void fewBottlesCannotTell() {
    assertEquals(LOTS, lots("cannot tell", Rule.EU, 750, 1, 19));
    assertEquals(LOTS, lots("cannot tell", Rule.USA, 750, 1, 19));
    assertTrue(lots("cannot tell", Rule.USA, 750.5, 1, 20) < 0.1 * LOTS);
    double[] one = {749};
    assertEquals("cannot tell", Filling.fillCheck(one, 750, Rule.USA).word());
  }

  @Test
  void sizesOfTheRule() {
    assertEquals(9, Filling.fillTolerance(200, Rule.EU).error());
    assertEquals(9, Filling.fillTolerance(300, Rule.EU).error());
    assertEquals(15, Filling.fillTolerance(999, Rule.EU).error());
    assertEquals(4.5, Filling.fillTolerance(50, Rule.USA).error());
    // between two named sizes the smaller percentage
    assertEquals(10, Filling.fillTolerance(500, Rule.USA).error());
    Refusal refusal = assertThrows(Refusal.class, () -> Filling.fillTolerance(10_001, Rule.EU));
    assertEquals("label is 10001 mL; the rule has bottles of 5 to 10000.", refusal.getMessage());
    assertEquals(150, Filling.fillTolerance(10_000, Rule.EU).error(), 1e-9);
  }

  @Property
  void aWeighedBottleHoldsWhatWasPoured(
      @Between(min = 50, max = 5000) double ml, @Between(min = 0.98, max = 1.2) double sg) {
    double grams = ml * (sg * 0.9982012 - 0.0012) / (1 - 0.0012 / 8);
    assertEquals(ml, Filling.netContent(500 + grams, 500, sg), 5e-6 * ml);
  }

  @Test
  void aBottleLighterThanEmptyIsRefused() {
    Refusal refusal = assertThrows(Refusal.class, () -> Filling.netContent(500, 500, 1));
    assertEquals(
        "gross 500 g is not above empty 500 g: the bottle would hold nothing.",
        refusal.getMessage());
  }

  @Property
  void pressureRisesWithWarmthAndFallsWithHeadspace(
      @Between(min = 1, max = 35) double degrees, @Between(min = 8, max = 60) double headspace) {
    double now = Filling.corkPressure(750, headspace, 15, degrees, 12, 20, 1, 0);
    assertTrue(Filling.corkPressure(750, headspace, 15, degrees + 1, 12, 20, 1, 0) > now);
    if (degrees > 15.5) {
      double airNow = Filling.corkPressure(750, headspace, 15, degrees, 12, 20, 0, 0);
      assertTrue(Filling.corkPressure(750, headspace + 1, 15, degrees, 12, 20, 0, 0) < airNow);
    }
  }

  /** With a large headspace it is the gas law alone; with gas in the mead, Henry's. */
  @Test
  void limitsOfThePressure() {
    double wide = Filling.corkPressure(10, 5000, 10, 30, 12, 0, 0, 0);
    assertEquals(101.325 * (303.15 / 283.15 - 1), wide, 0.07);
    double narrow = Filling.corkPressure(10_000, 100, 20, 20, 12, 10, 2, 0);
    assertEquals(Pressure.pressure(2, 20, 12, 10) + 101.325, narrow, 2);
    assertEquals(50, Filling.corkPressure(750, 10, 20, 20, 12, 0, 0, 50), 1e-9);
  }

  @Test
  void aFullBottleIsRefused() {
    Refusal refusal =
        assertThrows(Refusal.class, () -> Filling.corkPressure(750, 2, 10, 35, 13, 20, 1, 0));
    assertEquals(
        "At 35 °C the mead needs 3.2 mL more than the headspace leaves: it pushes the cork or bursts"
            + " the bottle. Leave more headspace, or fill warmer.",
        refusal.getMessage());
    assertTrue(Filling.corkPressure(750, 5.5, 10, 35, 13, 20, 1, 0) > 300);
  }

  @Property
  void theLevelComesBack(
      @Between(min = 1, max = 39) double from, @Between(min = 1, max = 39) double to) {
    double there = Filling.fillHeight(750, 60, 19, from, to, 13, 40);
    double content = 750 * Bottle.growth(from, to, 13, 40);
    assertEquals(60, Filling.fillHeight(content, there, 19, to, from, 13, 40), 0.05);
  }

  @Test
  void anOverflowIsRefused() {
    Refusal refusal =
        assertThrows(Refusal.class, () -> Filling.fillHeight(750, 5, 18.5, 20, 35, 13, 20));
    assertEquals(
        "At 35 °C the mead would stand 8.6 mm above the brim; fill lower.", refusal.getMessage());
    assertTrue(Filling.fillHeight(750, 14, 18.5, 20, 35, 13, 20) >= 0);
  }
}
