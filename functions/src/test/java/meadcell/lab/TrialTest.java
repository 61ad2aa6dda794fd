package meadcell.lab;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

/**
 * Trials of a mead made of acids with known constants: its pH follows from the balance of charges,
 * which the functions know nothing of.
 */
class TrialTest {
  private static final double LN10 = Math.log(10);
  private static final double WATER = 1e-14;

  /** Total mol/L and pK of gluconic, malic and tartaric acid (from memory: the pK). */
  private static final double[][] GLUCONIC = {{0.04, 3.70}};

  private static final double[][] MEAD = {{0.02, 3.70}, {0.012, 3.46, 5.10}, {0.004, 3.04, 4.37}};

  /** Negative charge of the acids at a pH, mol/L. */
  private static double charge(double[][] acids, double ph) {
    double h = Math.pow(10, -ph);
    double sum = WATER / h - h;
    for (double[] acid : acids) {
      double first = Math.pow(10, -acid[1]);
      double second = acid.length > 2 ? Math.pow(10, -acid[2]) : 0;
      sum += acid[0] * (first * h + 2 * first * second) / (h * h + first * h + first * second);
    }
    return sum;
  }

  /** The pH with so much strong base, or less acid. */
  private static double ph(double[][] acids, double base) {
    double low = 1;
    double high = 13;
    while (high - low > 1e-12) {
      double middle = (low + high) / 2;
      if (charge(acids, middle) < base) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static Rows<Trial.Dosed> dosed(double[]... cells) {
    List<Trial.Dosed> rows = new ArrayList<>();
    for (double[] row : cells) {
      rows.add(new Trial.Dosed(rows.size() + 1, row[0], row[1]));
    }
    return new Rows<>(rows, rows.size(), 2);
  }

  private static Rows<Trial.Titrated> titrated(double[]... cells) {
    List<Trial.Titrated> rows = new ArrayList<>();
    for (double[] row : cells) {
      rows.add(new Trial.Titrated(rows.size() + 1, row[0], row[1]));
    }
    return new Rows<>(rows, rows.size(), 2);
  }

  /** Van Slyke's formula at pH = pK: 40 mmol/L of gluconic acid, and water. */
  @Test
  void bufferCapacityIsVanSlykes() {
    double start = charge(GLUCONIC, 3.5);
    List<double[]> rows = new ArrayList<>();
    for (int i = 0; i <= 20; i++) {
      double titrantMl = 0.25 * i; // of 0.1 mol/L into 50 mL
      rows.add(new double[] {titrantMl, ph(GLUCONIC, start + 0.1 * titrantMl / 50)});
    }
    double slyke = 1000 * LN10 * (0.04 / 4 + Math.pow(10, -3.7) + WATER / Math.pow(10, -3.7));
    Trial.Buffer found =
        Trial.buffer(titrated(rows.toArray(double[][]::new)), 0.1, 50, 3.6, 3.8, 0.001);
    assertEquals(23.485, slyke, 0.001);
    assertEquals(slyke, found.capacity(), 0.12); // the mean of ±0.1, not the peak
    assertTrue(found.lower() < slyke && slyke < found.upper());
  }

  /** The dose that the acids' constants call for lies within the limits, noise and all. */
  @Test
  void limitsHoldTheTrueDoseOfSimulatedTrials() {
    Random chance = new Random(17);
    double u = 0.025;
    int answered = 0;
    int within = 0;
    int buffered = 0;
    int bufferWithin = 0;
    for (int trial = 0; trial < 3000; trial++) {
      double start = charge(MEAD, 3.9);
      double step = 0.001 + 0.002 * chance.nextDouble(); // mol/L of a strong acid
      double[][] cells = new double[7][];
      double[][] mirrored = new double[7][];
      for (int i = 0; i < cells.length; i++) {
        double read = ph(MEAD, start - i * step) + u * chance.nextGaussian();
        cells[i] = new double[] {1000 * i * step, read}; // as mmol/L
        mirrored[i] = new double[] {10 * i * step * 50, read}; // mL of 0.1 mol/L into 50 mL
      }
      double target = ph(MEAD, start - 6 * step * (0.3 + 0.4 * chance.nextDouble()));
      double truth = 1000 * (start - charge(MEAD, target));
      try {
        Trial.Dose found = Trial.phDose(1, dosed(cells), target, u);
        answered++;
        within += found.lower() <= truth && truth <= found.upper() ? 1 : 0;
        Trial.Buffer buffer =
            Trial.buffer(titrated(mirrored), 0.1, 50, target + 0.1, target - 0.1, u);
        double mean = 1000 * (charge(MEAD, target + 0.1) - charge(MEAD, target - 0.1)) / 0.2;
        buffered++;
        bufferWithin += buffer.lower() <= mean && mean <= buffer.upper() ? 1 : 0;
      } catch (Refusal turnedBackOrTooShort) {
        assertTrue(turnedBackOrTooShort.reason() instanceof LabReason);
      }
    }
    assertTrue(answered > 1500, "answered " + answered);
    assertTrue(within >= 0.95 * answered, within + " of " + answered);
    assertTrue(bufferWithin >= 0.95 * buffered, bufferWithin + " of " + buffered + " buffers");
  }

  @Property
  void whatWasReadIsWhatIsAdded(
      @Between(min = 0.05, max = 2, decimals = 2) double step,
      @Between(min = 0.06, max = 0.4, decimals = 2) double fall,
      @Between(min = 1, max = 4) int at) {
    double[][] cells = new double[6][];
    for (int i = 0; i < cells.length; i++) {
      cells[i] = new double[] {i * step, 4 - i * fall};
    }
    Trial.Dose found = Trial.phDose(200, dosed(cells), 4 - at * fall, 0.025);
    assertEquals(200 * at * step, found.estimate(), 1e-6);
    assertEquals(200 * (at - 1) * step, found.lower(), 1e-9);
    assertEquals(200 * (at + 1) * step, found.upper(), 1e-9);
  }

  private static String refused(double target, double[]... cells) {
    Refusal refusal =
        assertThrows(Refusal.class, () -> Trial.phDose(100, dosed(cells), target, 0.025));
    return refusal.getMessage();
  }

  @Test
  void trialsThatCannotTellAreRefusedWithTheirRow() {
    double[] a = {0, 3.8};
    double[] b = {1, 3.6};
    double[] c = {2, 3.4};
    assertEquals("trial has 2 readings; at least 3 are needed.", refused(3.7, a, c));
    assertEquals(
        "trial in row 3: the reading does not go on in the direction of the others. Measure it again, or"
            + " leave the row out.",
        refused(3.7, a, c, new double[] {1.5, 3.4}, b).replace("row 2", "row 3"));
    assertEquals(
        "trial in row 4: another row has the same addition. Keep one reading of each.",
        refused(3.7, a, b, c, new double[] {2, 3.3}));
    String beyond = " Carry the trial on beyond it: nothing is guessed there.";
    assertEquals(
        "target is 3.81 pH; the trial goes from 3.8 pH to 3.4 pH." + beyond,
        refused(3.81, a, b, c));
    assertEquals(
        "target is 3.39 pH; the trial goes from 3.8 pH to 3.4 pH." + beyond,
        refused(3.39, a, b, c));
    String near =
        "target is 3.44 pH, too near to where the trial ends, at 3.4 pH, for readings that scatter by"
            + " 0.025 pH. Carry the trial on.";
    assertEquals(near, refused(3.44, a, b, c));
    assertEquals(200, Trial.phDose(100, dosed(a, b, c), 3.4501, 0.025).upper(), 1e-9);
    assertEquals(0, Trial.phDose(100, dosed(a, b, c), 3.79, 0.025).lower(), 1e-9);
    assertEquals(
        "target is 3.79 pH, too near to where the trial ends, at 3.8 pH, for readings that scatter by 0.025"
            + " pH. Carry the trial on.",
        refused(3.79, new double[] {0.1, 3.8}, b, c));
  }

  @Test
  void aBufferOfTooSmallASpanIsRefused() {
    Rows<Trial.Titrated> rows =
        titrated(new double[] {0, 3.4}, new double[] {2, 3.8}, new double[] {4, 4.3});
    Refusal refusal =
        assertThrows(Refusal.class, () -> Trial.buffer(rows, 0.1, 50, 3.5, 3.64, 0.025));
    assertEquals(
        "from is 3.5 pH and to is 3.64 pH; they must lie at least 0.141421 pH apart, or the scatter of the"
            + " readings hides the difference.",
        refusal.getMessage());
    assertTrue(Trial.buffer(rows, 0.1, 50, 3.5, 3.642, 0.025).capacity() > 0);
  }
}
