package meadcell.bench;

import static meadcell.bench.Timing.print;
import static meadcell.bench.Timing.seconds;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import meadcell.catalogue.FunctionSpec;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.Workbook;

/**
 * Our functions in Calc beside plain Java functions of the same signature, in one office and one
 * run. Every figure is the best of several rounds, taken in turn: what else runs on the machine
 * only adds.
 */
public final class CalcBenchmark {
  private static final int CELLS = 20_000;
  private static final int MANY_CELLS = 50_000;
  private static final int ROUNDS = 15;

  private CalcBenchmark() {}

  /** Argument: the built {@code meadcell.oxt}. */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createTempDirectory("meadcell-plain");
    try (RemoteOffice office = new RemoteOffice()) {
      office.install(Path.of(arguments[0]));
      office.install(PlainExtension.write(folder));
      office.start();
      compare(office, "=GRAVITY.TOBRIX(A1)", "=PLAIN.ONE(A1)");
      compare(office, "=BARREL.VOLUME(50;64;80+A1)", "=PLAIN.FOUR(50;64;80+A1)");
      map(office);
      many(office);
    }
  }

  private static void compare(RemoteOffice office, String ours, String plain) throws Exception {
    try (Workbook first = filled(office, ours, CELLS);
        Workbook second = filled(office, plain, CELLS)) {
      List<Double> oursTimes = new ArrayList<>();
      List<Double> plainTimes = new ArrayList<>();
      for (int round = 0; round < ROUNDS; round++) {
        oursTimes.add(seconds(first::recalculate));
        plainTimes.add(seconds(second::recalculate));
      }
      double our = 1e6 * best(oursTimes) / CELLS;
      double other = 1e6 * best(plainTimes) / CELLS;
      print("%s %.1f µs a cell, %s %.1f, ratio %.2f", ours, our, plain, other, our / other);
    }
  }

  /** Musts in the first column, each a little heavier than the last, a formula of it beside. */
  private static Workbook filled(RemoteOffice office, String formula, int rows) throws Exception {
    Workbook book = office.newWorkbook();
    book.type(0, "1.02", "=A1+0.1/" + rows);
    book.fillDown("A2:A" + rows);
    book.type(1, formula);
    book.fillDown("B1:B" + rows);
    return book;
  }

  private static void map(RemoteOffice office) throws Exception {
    FunctionSpec function = Cellar.catalogue().get("GRAVITY.TOBRIX");
    String column = "A1:A" + CELLS;
    try (Workbook ours = filled(office, "", CELLS);
        Workbook plain = filled(office, "", CELLS);
        Workbook builtIn = filled(office, "", CELLS)) {
      String results = "B1:B" + CELLS;
      ours.typeArray(results, "=CELLAR.MAP(\"" + function.name() + "\";" + column + ")");
      plain.typeArray(results, "=PLAIN.COLUMN(" + column + ")");
      builtIn.typeArray(results, "=2*" + column);
      List<Double> mapped = new ArrayList<>();
      List<Double> passed = new ArrayList<>();
      List<Double> doubled = new ArrayList<>();
      List<Double> called = new ArrayList<>();
      for (int round = 0; round < ROUNDS; round++) {
        mapped.add(seconds(ours::recalculate));
        passed.add(seconds(plain::recalculate));
        doubled.add(seconds(builtIn::recalculate));
        called.add(seconds(() -> callAll(function)));
      }
      double calc = 1e6 * best(doubled) / CELLS;
      double map = 1e6 * best(mapped) / CELLS - calc;
      double pass = 1e6 * best(passed) / CELLS - calc;
      double call = 1e6 * best(called) / CELLS;
      print(
          "CELLAR.MAP %.2f µs an element beyond a built-in's %.2f; a plain Java column %.2f;"
              + " the function alone %.2f",
          map, calc, pass, call);
    }
  }

  private static void callAll(FunctionSpec function) {
    double sum = 0;
    for (int i = 0; i < CELLS; i++) {
      sum += (Double) function.call(1.02 + 0.1 * i / CELLS);
    }
    if (Double.isNaN(sum)) {
      throw new IllegalStateException("no sum"); // keeps the loop from being optimised away
    }
  }

  private static void many(RemoteOffice office) throws Exception {
    Path file = office.home().resolve("many.ods");
    try (Workbook book = filled(office, "=GRAVITY.TOBRIX(A1)", MANY_CELLS)) {
      double recalculate = seconds(book::recalculate);
      double store = seconds(() -> book.store(file, "calc8"));
      double load =
          seconds(
              () -> {
                try (Workbook again = office.open(file.toUri().toString(), true)) {
                  again.rows();
                }
              });
      print(
          "%d formula cells: recalculate %.1f s, save %.1f s, load with recalculation %.1f s",
          MANY_CELLS, recalculate, store, load);
    }
  }

  private static double best(List<Double> times) {
    return Collections.min(times);
  }
}
