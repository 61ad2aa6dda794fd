package meadcell.gravity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.gravity.Instruments.Solute;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class InstrumentsTest {
  private static final OptionalDouble FROM_SCATTER = OptionalDouble.empty();

  private static void refused(String sentence, String function, Object... arguments) {
    Refusal refusal =
        assertThrows(Refusal.class, () -> Cellar.catalogue().get(function).call(arguments));
    assertEquals(sentence, refusal.getMessage());
  }

  private static Object[][] column(double... values) {
    Object[][] cells = new Object[values.length][1];
    for (int i = 0; i < values.length; i++) {
      cells[i][0] = values[i];
    }
    return cells;
  }

  /** A faultless hydrometer in a sugar solution, corrected, is the gravity of that solution. */
  @Property
  void aCheckedSolutionCorrectsToItsGravity(
      @Between(min = 0, max = 50) double percent, @Between(min = 5, max = 40) double temperatureC) {
    double shown = Instruments.solution(percent, temperatureC, Solute.SUGAR, 20);
    assertEquals(
        Gravity.fromBrix(percent),
        Gravity.correct(shown, temperatureC, 20, OptionalDouble.empty(), 0, 0),
        1e-9);
  }

  /** What was lacking at the check is lacking no more when its offset is given. */
  @Property
  void anOffsetMendsTheReadingItWasFoundAt(
      @Between(min = -0.005, max = 0.005) double lacking,
      @Between(min = 0, max = 25) double percent) {
    double due = Instruments.solution(percent, 25, Solute.SUGAR, 20);
    double read = due - lacking;
    double[] reads = {read};
    double[] dues = {due};
    double offset = Instruments.offset(reads, dues, read, OptionalDouble.of(0.0005)).offset();
    assertEquals(
        Gravity.fromBrix(percent),
        Gravity.correct(read, 25, 20, OptionalDouble.empty(), offset, 0),
        1e-9);
  }

  @Property
  void aThermometersOffsetIsAddedToTheTemperature(
      @Between(min = 10, max = 35) double temperatureC, @Between(min = -4, max = 4) double lacks) {
    assertEquals(
        Gravity.correct(1.09, temperatureC + lacks, 20, OptionalDouble.empty(), 0, 0),
        Gravity.correct(1.09, temperatureC, 20, OptionalDouble.empty(), 0, lacks));
  }

  /** The stated uncertainty is how far the offset scatters when simulated checks err by u. */
  @Test
  void theStatedUncertaintyIsTheScatterOfSimulatedChecks() {
    Random random = new Random(22);
    double[] due = {1, 1.02, 1.04, 1.06, 1.08};
    double u = 0.0004;
    double squares = 0;
    double stated = 0;
    int runs = 20_000;
    for (int i = 0; i < runs; i++) {
      double[] read = new double[due.length];
      for (int k = 0; k < read.length; k++) {
        double faultless = (due[k] - 0.001) / 0.998; // a scale of another length
        read[k] = faultless + u * random.nextGaussian();
      }
      double at = (1.07 - 0.001) / 0.998;
      double offset = Instruments.offset(read, due, at, OptionalDouble.of(1e-9)).offset();
      squares += (at + offset - 1.07) * (at + offset - 1.07) / runs;
      double known = Instruments.offset(due, due, 1.07, OptionalDouble.of(u)).u();
      stated = known;
    }
    assertEquals(1, stated / Math.sqrt(squares), 0.03);
  }

  /** A steady instrument seldom seems to drift by more than twice the stated uncertainty. */
  @Test
  void aSteadyInstrumentSeldomDrifts() {
    Random random = new Random(23);
    double[] dates = {45000, 45090, 45180, 45270, 45360, 45450, 45540, 45630, 45720, 45810};
    int drifting = 0;
    int seen = 0;
    int runs = 4000;
    for (int i = 0; i < runs; i++) {
      double[] steady = new double[dates.length];
      double[] creeping = new double[dates.length];
      for (int k = 0; k < dates.length; k++) {
        double noise = 0.0003 * random.nextGaussian();
        steady[k] = 0.001 + noise;
        creeping[k] = noise + 0.001 * (dates[k] - dates[0]) / 365.25;
      }
      drifting += drifts(dates, steady) ? 1 : 0;
      seen += drifts(dates, creeping) ? 1 : 0;
    }
    assertTrue(drifting < 0.1 * runs, drifting + " of " + runs);
    assertTrue(seen > 0.98 * runs, seen + " of " + runs);
  }

  private static boolean drifts(double[] dates, double[] offsets) {
    Instruments.Drift drift = Instruments.drift(dates, offsets, 45900, FROM_SCATTER);
    return Math.abs(drift.perYear()) > 2 * drift.uPerYear();
  }

  @Test
  void aThickStemLiftsMoreAndAlcoholLess() {
    double thin = Instruments.meniscus(1.04, 4, 14, 0) - 1.04;
    double thick = Instruments.meniscus(1.04, 6, 14, 0) - 1.04;
    double strong = Instruments.meniscus(1.04, 6, 14, 12) - 1.04;
    assertTrue(0 < thin && thin < thick && strong < thick);
    assertEquals(thick / 2, Instruments.meniscus(1.04, 6, 28, 0) - 1.04, 1e-12);
    assertTrue(Instruments.meniscus(1.04, 6, 14, 25) > 1.04);
  }

  @Test
  void refusals() {
    String salt = "A solution of salt is tabled up to 26 % mass, from 15 °C to 25 °C; it is ";
    refused(salt + "10 % mass at 25.1 °C.", "GRAVITY.SOLUTION", 10.0, 25.1, "salt");
    refused(salt + "10 % mass at 14.9 °C.", "GRAVITY.SOLUTION", 10.0, 14.9, "salt");
    refused(salt + "26.1 % mass at 20 °C.", "GRAVITY.SOLUTION", 26.1, 20.0, "salt");
    assertTrue(Instruments.solution(26, 25, Solute.SALT, 20) > 1.19);
    Cellar.catalogue().get("GRAVITY.SOLUTION").call(26.0, 59.0, "salt", 60.0, "US");
    Cellar.catalogue().get("GRAVITY.SOLUTION").call(26.0, 77.0, "salt", 60.0, "US");
    refused(
        "2 checks cannot tell how far one is off by chance: give u, the standard uncertainty of one,"
            + " or make three.",
        "GRAVITY.OFFSET",
        column(1, 1.05),
        column(1, 1.05),
        1.02);
    String exact =
        "The checks lie on one line exactly: the scale is too coarse to show how far one is off by"
            + " chance. Give u, the standard uncertainty of one.";
    refused(exact, "GRAVITY.OFFSET", column(1, 1.05, 1.1), column(1.001, 1.051, 1.101), 1.03);
    refused(exact, "GRAVITY.OFFSET", column(1, 1, 1), column(1, 1, 1), 1.0);
    refused(exact, "GRAVITY.DRIFT", column(45000, 45200, 45400), column(0, 0.001, 0.002), 45500.0);
    assertEquals(
        0.0005 / Math.sqrt(3),
        Instruments.offset(
                new double[] {1, 1.05, 1.1},
                new double[] {1.001, 1.051, 1.101},
                1.05,
                OptionalDouble.of(0.0005))
            .u(),
        1e-12);
    Cellar.catalogue()
        .get("GRAVITY.OFFSET")
        .call(column(1, 1.05, 1.1), column(1.001, 1.0511, 1.101), 1.03);
    refused(
        "at is 1.061, too far from the checks, 1 to 1.05; check the instrument nearer to it, or give"
            + " only one check.",
        "GRAVITY.OFFSET",
        column(1, 1.05),
        column(1, 1.05),
        1.061,
        0.001);
    Cellar.catalogue().get("GRAVITY.OFFSET").call(column(1, 1.05), column(1, 1.05), 1.0599, 0.001);
    refused(
        "All checks are of one day; a drift needs two days at least.",
        "GRAVITY.DRIFT",
        column(45000, 45000, 45000),
        column(0, 0, 0),
        45000.0);
    String beyond =
        "date is before the first check, or later than the last by more than all of them span; check"
            + " the instrument again.";
    refused(beyond, "GRAVITY.DRIFT", column(45000, 45100), column(0, 0), 45201.0, 0.1);
    refused(beyond, "GRAVITY.DRIFT", column(45000, 45100), column(0, 0), 44999.0, 0.1);
    Cellar.catalogue().get("GRAVITY.DRIFT").call(column(45000, 45100), column(0, 0), 45200.0, 0.1);
    refused(
        "reading with its offset is 0.979 SG; it must be 0.98 to 1.3.",
        "GRAVITY.CORRECT",
        0.981,
        20.0,
        20.0,
        null,
        -0.002);
    refused(
        "temperature with its offset is 46 °C; it must be 0 to 45.",
        "GRAVITY.CORRECT",
        1.05,
        45.0,
        20.0,
        null,
        0.0,
        1.0);
    refused(
        "brix with its offset is -0.1 °Bx; it must be 0 to 70.",
        "GRAVITY.BRIXCORRECT",
        0.0,
        20.0,
        -0.1);
  }

  @Test
  void dryMeadsAreReadOnEveryScale() {
    for (double sg : new double[] {0.98, 0.99, 0.999, 1}) {
      assertEquals(sg, Gravity.fromBrix(Gravity.toBrix(sg)), 1e-9);
      assertEquals(sg, Gravity.fromOechsle(Gravity.toOechsle(sg)), 1e-12);
      assertEquals(sg, Gravity.fromBaume(Gravity.toBaume(sg)), 1e-12);
    }
    // what a note is read as
    assertEquals(Gravity.read("-1.5 Bx"), Gravity.fromBrix(-1.5));
    assertEquals(Gravity.read("-5 Oe"), Gravity.fromOechsle(-5));
    assertEquals(Gravity.read("-1 Bé"), Gravity.fromBaume(-1));
    // a straight line through 0 and 10 °Bx, as the note says
    double perBrix = (Gravity.fromBrix(1) - 1) / 1;
    assertEquals(1 - 5 * perBrix, Gravity.fromBrix(-5), 0.0005);
    refused("brix is -5.01 °Bx; it must be -5 to 83.", "GRAVITY.FROMBRIX", -5.01);
    refused("oe is -20 °Oe; it must be -19.96 to 449.", "GRAVITY.FROMOECHSLE", -20.0);
    refused("be is -3 °Bé; it must be -2.9 to 45.", "GRAVITY.FROMBAUME", -3.0);
  }
}
