package meadcell.bottle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import meadcell.alcohol.Alcohol;
import meadcell.alcohol.Extract;
import meadcell.catalogue.Refusal;
import org.junit.jupiter.api.Test;

class WorstCaseTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static double pressure(double original, double present, double abv) {
    return WorstCase.worstPressure(original, present, abv, NONE, 1.2, 35);
  }

  /** More than what its likely sugar makes, and never less than what a laboratory's would. */
  @Test
  void itIsAnUpperLimit() {
    for (double present = 0.992; present < 1.03; present += 0.004) {
      double abv = Alcohol.abv(1.1, present, Alcohol.Method.BALANCE, NONE);
      double likely = Extract.sugarLeft(1.1, present, NONE);
      assertTrue(pressure(1.1, present, abv) > Pressure.referment(likely, abv, 1.2, 35));
    }
  }

  /** Honey that went in after the ferment is sugar, though the balance thinks of a stuck must. */
  @Test
  void sweeteningCounts() {
    double dry = Alcohol.abv(1.1, 0.995, Alcohol.Method.BALANCE, NONE);
    double sugar = Extract.dryExtract(1.02, dry) - Extract.dryExtract(0.995, dry);
    double stuck = Alcohol.abv(1.1, 1.02, Alcohol.Method.BALANCE, NONE);
    assertTrue(pressure(1.1, 1.02, dry) > pressure(1.1, 1.02, stuck));
    assertTrue(pressure(1.1, 1.02, dry) > Pressure.referment(sugar, dry, 1.2, 35));
  }

  @Test
  void aMeasuredSugarFreeExtractBringsItDown() {
    double extract = Extract.extract(1.1, 0.995);
    double known = WorstCase.worstPressure(1.1, 0.995, 13.5, OptionalDouble.of(extract), 1.2, 35);
    assertTrue(known < pressure(1.1, 0.995, 13.5));
    assertTrue(known > Pressure.referment(0, 13.5, 1.2, 35));
  }

  @Test
  void whatNoBottleBearsIsRefused() {
    Refusal refusal = assertThrows(Refusal.class, () -> pressure(1.17, 1.05, 16.5));
    assertEquals(BottleReason.BURSTS, refusal.reason());
    assertTrue(refusal.getMessage().contains("bursts"), refusal.getMessage());
    assertTrue(pressure(1.15, 1.04, 14) > 1000);
  }
}
