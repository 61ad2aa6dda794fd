package meadcell.sulfite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import meadcell.sulfite.Sulfite.Method;
import meadcell.sulfite.Sulfite.Rule;
import org.junit.jupiter.api.Test;

class SulfiteTest {
  /** OIV-MA-AS323-04C, Table I: pKT, rows 0, 5, 10, 15 % vol, columns 20 to 40 °C. */
  private static final double[][] TABLE_ONE = {
    {1.798, 2.000, 2.219, 2.334, 2.493},
    {1.897, 2.098, 2.299, 2.397, 2.527},
    {1.997, 2.198, 2.394, 2.488, 2.606},
    {2.099, 2.301, 2.503, 2.607, 2.728},
  };

  @Test
  void theRememberedTableFollowsThePublishedOne() {
    for (int i = 0; i < TABLE_ONE.length; i++) {
      for (int j = 0; j < TABLE_ONE[i].length; j++) {
        double shift = TABLE_ONE[i][j] - MixedConstant.PK[i][j];
        assertTrue(shift > 0.0745 && shift < 0.0885, i + " " + j + ": " + shift);
      }
    }
  }

  @Property
  void freeNeededInvertsMolecular(
      @Between(min = 0.1, max = 5, decimals = 3) double molecular,
      @Between(min = 2.5, max = 5, decimals = 3) double ph,
      Method method,
      @Between(max = 15, decimals = 2) double abv,
      @Between(min = 20, max = 40, decimals = 2) double temperatureC) {
    OptionalDouble strength = OptionalDouble.of(abv);
    OptionalDouble warmth = OptionalDouble.of(temperatureC);
    double free = Sulfite.freeNeeded(molecular, ph, method, strength, warmth);
    assertEquals(molecular, Sulfite.molecular(free, ph, method, strength, warmth), 1e-12);
    assertTrue(free > Sulfite.freeNeeded(molecular, ph - 0.01, method, strength, warmth));
  }

  @Property
  void theTableRisesWithAlcoholAndWarmthAndHasNoSteps(
      @Between(max = 14.99, decimals = 2) double abv,
      @Between(min = 20, max = 39.99, decimals = 2) double temperatureC) {
    double pk = MixedConstant.at(abv, temperatureC);
    double stronger = MixedConstant.at(abv + 0.01, temperatureC);
    double warmer = MixedConstant.at(abv, temperatureC + 0.01);
    assertTrue(stronger > pk && stronger < pk + 0.001);
    assertTrue(warmer > pk && warmer < pk + 0.001);
  }

  @Property
  void declineFindsTheLawBehindItsReadings(
      @Between(min = 0.001, max = 0.1, decimals = 3) double rate,
      @Between(min = 20, max = 80, decimals = 1) double start,
      @Between(min = 0.1, max = 1, decimals = 2) double share) {
    double[] days = {45000, 45010, 45031};
    double[] free = new double[days.length];
    for (int i = 0; i < days.length; i++) {
      free[i] = start * Math.exp(-rate * (days[i] - days[0]));
    }
    double expected = days[0] - Math.log(share) / rate;
    assertEquals(expected, Sulfite.decay(days, free, start * share * (1 - 1e-12)), 1e-5);
  }

  private static void refused(Refusal.Kind kind, org.junit.jupiter.api.function.Executable call) {
    assertEquals(kind, assertThrows(Refusal.class, call).kind());
  }

  private static double oiv(double abv, double temperatureC) {
    return Sulfite.molecular(
        30, 3.4, Method.OIV, OptionalDouble.of(abv), OptionalDouble.of(temperatureC));
  }

  @Test
  void theTableIsExtrapolatedToWhatCellarsHave() {
    refused(Refusal.Kind.OUT_OF_RANGE, () -> oiv(20.01, 20));
    refused(Refusal.Kind.OUT_OF_RANGE, () -> oiv(10, -0.01));
    refused(Refusal.Kind.OUT_OF_RANGE, () -> oiv(10, 40.01));
    assertTrue(oiv(15, 40) > oiv(0, 20));
    refused(
        Refusal.Kind.INCONSISTENT,
        () ->
            Sulfite.molecular(30, 3.4, Method.OIV, OptionalDouble.of(12), OptionalDouble.empty()));
  }

  @Test
  void declineRefusesWhatHasNoAnswer() {
    double[] days = {0, 10};
    refused(
        Refusal.Kind.INCONSISTENT,
        () -> Sulfite.decay(new double[] {3, 3}, new double[] {9, 8}, 5));
    refused(Refusal.Kind.INCONSISTENT, () -> Sulfite.decay(days, new double[] {30, 20}, 31));
    refused(Refusal.Kind.NO_SOLUTION, () -> Sulfite.decay(days, new double[] {20, 30}, 10));
    refused(Refusal.Kind.NO_SOLUTION, () -> Sulfite.decay(days, new double[] {20, 20}, 10));
    refused(Refusal.Kind.NO_SOLUTION, () -> Sulfite.decay(days, new double[] {20, 19.999}, 10));
  }

  @Test
  void sorbateStopsAtTheLawsLimit() {
    assertTrue(Sulfite.sorbate(100, 300, Rule.USA) > Sulfite.sorbate(100, 200, Rule.EU));
    refused(Refusal.Kind.OUT_OF_RANGE, () -> Sulfite.sorbate(100, 300.1, Rule.USA));
    refused(Refusal.Kind.OUT_OF_RANGE, () -> Sulfite.sorbate(100, 200.1, Rule.EU));
  }
}
