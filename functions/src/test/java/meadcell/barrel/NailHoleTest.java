package meadcell.barrel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/** Samples from a nail hole. */
class NailHoleTest {
  @Property(tries = 300)
  void theSampleHasRunWhenTheTimeIsUp(
      @Between(min = 0.2, max = 50) double headspaceL,
      @Between(min = 0.01, max = 0.98) double share,
      @Between(min = 1, max = 6) double holeMm,
      @Between(min = 5, max = 90) double depthCm,
      @Between(min = 0.98, max = 1.15) double density,
      @Between(min = 0, max = 0.9) double heldBack,
      @Between(min = 0.5, max = 0.9) double coefficient) {
    double vacuum = heldBack * NailHole.head(depthCm, density);
    double amountMl = share * Sampling.sampleMax(headspaceL, depthCm, density, vacuum);
    double seconds =
        Sampling.sampleTime(amountMl, headspaceL, holeMm, depthCm, density, vacuum, coefficient);
    double run = drawn(seconds, headspaceL, holeMm, depthCm, density, vacuum, coefficient);
    assertEquals(amountMl, run, 1e-7 * amountMl);
  }

  /** Amount that runs in a time: the flow against the growing vacuum, step by step. */
  private static double drawn(
      double seconds,
      double headspaceL,
      double holeMm,
      double depthCm,
      double density,
      double vacuum,
      double coefficient) {
    FirstOrderDifferentialEquations flow =
        new FirstOrderDifferentialEquations() {
          @Override
          public int getDimension() {
            return 1;
          }

          @Override
          public void computeDerivatives(double t, double[] amount, double[] rate) {
            double gas = (101.325 - vacuum) * headspaceL / (headspaceL + amount[0] / 1000);
            rate[0] = Sampling.sampleFlow(holeMm, depthCm, density, 101.325 - gas, coefficient);
          }
        };
    double[] amount = {0};
    new DormandPrince853Integrator(1e-12 * seconds, seconds, 1e-9, 1e-10)
        .integrate(flow, 0, amount, seconds, amount);
    return amount[0];
  }

  @Property
  void theLargestSampleLeavesNothingToDriveTheNext(
      @Between(min = 0.2, max = 50) double headspaceL,
      @Between(min = 5, max = 90) double depthCm,
      @Between(min = 0.98, max = 1.15) double density) {
    double most = Sampling.sampleMax(headspaceL, depthCm, density, 0) / 1000;
    double gas = 101.325 * headspaceL / (headspaceL + most);
    assertEquals(101.325, gas + NailHole.head(depthCm, density), 1e-9);
  }

  @Property
  void moreTakesLongerAndAVacuumHoldsBack(
      @Between(min = 1, max = 30) double amountMl,
      @Between(min = 5, max = 50) double headspaceL,
      @Between(min = 20, max = 60) double depthCm,
      @Between(min = 0, max = 0.5) double vacuum) {
    double time = Sampling.sampleTime(amountMl, headspaceL, 2.778, depthCm, 1.01, vacuum, 0.7);
    assertTrue(
        time < Sampling.sampleTime(1.1 * amountMl, headspaceL, 2.778, depthCm, 1.01, vacuum, 0.7));
    assertTrue(
        time < Sampling.sampleTime(amountMl, headspaceL, 2.778, depthCm, 1.01, vacuum + 0.1, 0.7));
    assertTrue(time > amountMl / Sampling.sampleFlow(2.778, depthCm, 1.01, vacuum, 0.7));
  }

  @Property
  void thePushIsWhatMakesAHeldBackHoleRun(
      @Between(min = 5, max = 90) double depthCm, @Between(min = 0.1, max = 15) double vacuum) {
    double push = Sampling.push(depthCm, 1.02, vacuum);
    if (push > 0) {
      assertThrows(Refusal.class, () -> Sampling.sampleFlow(2.778, depthCm, 1.02, vacuum, 0.7));
    }
    double leftVacuum = vacuum - push - 0.01;
    assertTrue(Sampling.sampleFlow(2.778, depthCm, 1.02, leftVacuum, 0.7) > 0);
  }

  @Test
  void whatWouldSuckAirOrBurstIsRefused() {
    assertRefused("nothing runs", () -> Sampling.sampleFlow(2.778, 20, 1, 1.97, 0.7));
    assertRefused("nothing runs", () -> Sampling.sampleMax(2, 20, 1, 1.97));
    double most = Sampling.sampleMax(0.5, 30, 1.01, 0);
    assertTrue(Sampling.sampleTime(most * 0.9999, 0.5, 2.778, 30, 1.01, 0, 0.7) > 0);
    assertRefused(
        "own vacuum stops the flow", () -> Sampling.sampleTime(most, 0.5, 2.778, 30, 1.01, 0, 0.7));
    double head = NailHole.head(20, 1);
    assertEquals(15, Sampling.push(20, 1, 15 + head), 1e-9);
    assertRefused("above 15 kPa a cask is not pushed", () -> Sampling.push(20, 1, 15.001 + head));
  }

  @Test
  void onlyKnownPenniesHaveNails() {
    for (Sampling.Nail kind : Sampling.Nail.values()) {
      double before = 0;
      for (int penny : new int[] {2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16}) {
        assertTrue(Sampling.nail(penny, kind) >= before);
        before = Sampling.nail(penny, kind);
      }
      assertTrue(Sampling.nail(4, kind) <= Sampling.nail(4, Sampling.Nail.COMMON));
    }
    assertRefused(
        "penny is 11; the sizes are 2, 3, 4, 5", () -> Sampling.nail(11, Sampling.Nail.BOX));
  }

  private static void assertRefused(String part, org.junit.jupiter.api.function.Executable call) {
    String message = assertThrows(Refusal.class, call).getMessage();
    assertTrue(message.contains(part), message);
  }
}
