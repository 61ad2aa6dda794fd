package meadcell.sulfite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import meadcell.catalogue.Refusal;
import org.junit.jupiter.api.Test;

class OutlookTest {
  private static final OptionalDouble UNTOLD = OptionalDouble.empty();

  private static Outlook.Until lasts(
      double[] days, double[] free, double limit, OptionalDouble oxygen) {
    return Outlook.lasts(days, free, limit, oxygen, 2, 2.83, 2);
  }

  /**
   * A mead whose SO₂ goes by chemistry that no line through readings knows: air comes in at a rate
   * of its own, more when the cellar is warm; some of the oxygen takes phenols instead; what is
   * free stands in equilibrium with what two carbonyls bind.
   */
  private static final class Mead {
    final double oxygenPerYear;
    private final double ratio;
    private final double summer;
    private final double weakBinder;
    private final double weakConstant;
    private final double strongBinder;
    double total;
    double day;

    Mead(Random random) {
      oxygenPerYear = 10 * Math.exp(0.35 * random.nextGaussian());
      ratio = 2 + 2 * random.nextDouble();
      summer = 0.3 * random.nextDouble();
      weakBinder = 40 * random.nextDouble();
      weakConstant = 20 + 60 * random.nextDouble();
      strongBinder = 20 * random.nextDouble();
      day = 365 * random.nextDouble();
      total = 30 + 20 * random.nextDouble() + strongBinder + weakBinder / 3;
    }

    /** mg/L, by bisection of the balance. */
    double free() {
      double low = 0;
      double high = total;
      for (int i = 0; i < 50; i++) {
        double free = (low + high) / 2;
        double bound =
            weakBinder * free / (weakConstant + free) + strongBinder * free / (0.5 + free);
        if (free + bound > total) {
          high = free;
        } else {
          low = free;
        }
      }
      return low;
    }

    void passADay() {
      double season = 1 + summer * Math.sin(2 * Math.PI * day / 365);
      total -= ratio * oxygenPerYear * season / 365.25;
      day++;
    }
  }

  /** How many of simulated meads reach the limit between the two days. */
  private static double held(int readings, int every, boolean oxygen, long seed) {
    Random random = new Random(seed);
    int held = 0;
    int told = 0;
    for (int i = 0; i < 600; i++) {
      Mead mead = new Mead(random);
      double start = mead.day;
      double[] days = new double[readings];
      double[] free = new double[readings];
      for (int r = 0; r < readings; r++) {
        days[r] = mead.day - start;
        free[r] = Math.max(1, mead.free() + 2 * random.nextGaussian());
        for (int d = 0; d < every && r < readings - 1; d++) {
          mead.passADay();
        }
      }
      double limit = 0.6 * mead.free();
      while (mead.free() > limit) {
        mead.passADay();
      }
      double truth = mead.day - start;
      try {
        OptionalDouble budget = oxygen ? OptionalDouble.of(10) : UNTOLD;
        Outlook.Until until = lasts(days, free, limit, budget);
        told++;
        held += until.earliest() <= truth && truth <= until.latest() ? 1 : 0;
      } catch (Refusal refusal) {
        assertTrue(!oxygen || refusal.getMessage().contains("years"), refusal.getMessage());
      }
    }
    assertTrue(told > 60, "told " + told);
    return held / (double) told;
  }

  @Test
  void theDaysHoldTheTruthOfSimulatedMeads() {
    double least = 0.92;
    assertTrue(held(4, 30, false, 1) > least);
    assertTrue(held(6, 30, false, 2) > least);
    assertTrue(held(3, 60, false, 3) > least);
    assertTrue(held(1, 0, true, 4) > least);
    assertTrue(held(2, 14, true, 5) > least);
    assertTrue(held(3, 60, true, 6) > least);
  }

  @Test
  void moreReadingsLeaveLessDoubt() {
    double width = Double.POSITIVE_INFINITY;
    for (int readings = 3; readings < 9; readings++) {
      double[] days = new double[readings];
      double[] free = new double[readings];
      for (int i = 0; i < readings; i++) {
        days[i] = 60 * i;
        free[i] = 40 * Math.exp(-0.004 * days[i]);
      }
      Outlook.Until until = lasts(days, free, 3, UNTOLD);
      assertEquals(Math.log(40 / 3.0) / 0.004, until.day(), 1e-6);
      assertTrue(until.latest() - until.earliest() < width);
      width = until.latest() - until.earliest();
    }
  }

  private static String refusal(double[] days, double[] free, double limit, OptionalDouble oxygen) {
    return assertThrows(Refusal.class, () -> lasts(days, free, limit, oxygen)).getMessage();
  }

  @Test
  void readingsDecideWhereTheySurelyFallAndOxygenElse() {
    OptionalDouble oxygen = OptionalDouble.of(10);
    double[] month = {0, 30};
    assertTrue(refusal(new double[] {0, 0}, new double[] {30, 31}, 20, UNTOLD).startsWith("days"));
    // 1.96 √2 · 2 mg/L is 5.54
    double[] hardly = {40, 34.6};
    assertTrue(refusal(month, hardly, 20, UNTOLD).startsWith("The readings do not surely fall"));
    assertEquals("oxygen", lasts(month, hardly, 20, oxygen).by());
    assertEquals("readings", lasts(month, new double[] {40, 33.5}, 20, oxygen).by());
    assertTrue(refusal(new double[] {0}, new double[] {20}, 20.1, oxygen).startsWith("limit is"));
    assertEquals(0, lasts(new double[] {0}, new double[] {20}, 20, oxygen).day());
    assertTrue(
        refusal(new double[] {0}, new double[] {100}, 20, OptionalDouble.of(2)).contains("years"));
  }
}
