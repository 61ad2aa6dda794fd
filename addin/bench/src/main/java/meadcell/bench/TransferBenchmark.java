package meadcell.bench;

import static meadcell.bench.Timing.print;
import static meadcell.bench.Timing.seconds;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.Workbook;

/**
 * One formula over a large log of transfers in Calc, beside the same call in Java: what is more in
 * Calc is the crossing. Best of several rounds; the first of each replays the log, the others find
 * it known.
 */
public final class TransferBenchmark {
  private static final int ROWS = 20_000;
  private static final int VESSELS = 500;
  private static final int ROUNDS = 15;
  private static final String VESSEL = "Cask 7";

  private TransferBenchmark() {}

  /** Argument: the built {@code meadcell.oxt}. */
  public static void main(String[] arguments) throws Exception {
    Object[][] log = log();
    try (RemoteOffice office = new RemoteOffice()) {
      office.install(Path.of(arguments[0]));
      office.start();
      try (Workbook ours =
              filled(office, log, "=VESSEL.HOLDS(A1:D" + ROWS + ";\"" + VESSEL + "\")");
          Workbook builtIn = filled(office, log, "=SUM(A1:D" + ROWS + ")")) {
        double first = seconds(ours::recalculate);
        double again = Double.POSITIVE_INFINITY;
        double inJava = Double.POSITIVE_INFINITY;
        double sum = Double.POSITIVE_INFINITY;
        for (int round = 0; round < ROUNDS; round++) {
          again = Math.min(again, seconds(ours::recalculate));
          sum = Math.min(sum, seconds(builtIn::recalculate));
          inJava = Math.min(inJava, seconds(() -> call(log)));
        }
        print(
            "VESSEL.HOLDS over %d × 4 cells: in Calc first %.0f ms, then %.1f; in Java %.1f;"
                + " crossing %.2f µs a cell; SUM over them %.1f ms",
            ROWS,
            1e3 * first,
            1e3 * again,
            1e3 * inJava,
            1e6 * (again - inJava) / (4 * ROWS),
            1e3 * sum);
      }
    }
  }

  private static void call(Object[][] log) {
    Cellar.catalogue().get("VESSEL.HOLDS").call(copy(log), VESSEL);
  }

  /** As from Calc: rows of their own in each call. */
  private static Object[][] copy(Object[][] log) {
    return Arrays.stream(log).map(Object[]::clone).toArray(Object[][]::new);
  }

  private static Workbook filled(RemoteOffice office, Object[][] log, String formula)
      throws Exception {
    Workbook book = office.newWorkbook();
    for (int column = 0; column < 4; column++) {
      int c = column;
      book.type(
          column, Arrays.stream(log).map(row -> String.valueOf(row[c])).toArray(String[]::new));
    }
    book.type(5, formula);
    return book;
  }

  private static Object[][] log() {
    Random random = new Random(3);
    Object[][] log = new Object[ROWS][];
    double[] litres = new double[VESSELS];
    for (int i = 0; i < ROWS; i++) {
      int from = random.nextInt(VESSELS);
      int to = random.nextInt(VESSELS);
      int day = 1 + i / 10;
      if (litres[from] < 20 || from == to || random.nextInt(5) == 0) {
        log[i] = new Object[] {"Mead " + to % 7, "Cask " + to, 225.0, (double) day};
        litres[to] += 225;
      } else if (random.nextInt(4) == 0) {
        litres[from] *= 0.99;
        log[i] = new Object[] {"gauge", "Cask " + from, litres[from], (double) day};
      } else {
        double moved = litres[from] * random.nextDouble() / 2;
        log[i] = new Object[] {"Cask " + from, "Cask " + to, moved, (double) day};
        litres[from] -= moved;
        litres[to] += moved;
      }
    }
    return log;
  }
}
