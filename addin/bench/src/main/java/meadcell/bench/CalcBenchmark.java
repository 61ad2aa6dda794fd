package meadcell.bench;

import static meadcell.bench.Timing.print;
import static meadcell.bench.Timing.seconds;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.LiteralCall;
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

  /** What is mapped: calls of one to seven numbers. */
  private static final List<String> ROWS =
      List.of(
          "GRAVITY.TOBRIX(1.05)",
          "ALCOHOL.ABV(1.104;0.998)",
          "BARREL.VOLUME(50;64;81)",
          "BARREL.HEADSPACE(50;64;81;6)",
          "BARREL.SAMPLETIME(30;2;2.778;30;1.01)",
          "BARREL.SAMPLETIME(30;2;2.778;30;1.01;0.5)",
          "BARREL.SAMPLETIME(30;2;2.778;30;1.01;0.5;0.7)");

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

  /** {@code CELLAR.MAP} over one to seven columns, beside a built-in and the function alone. */
  private static void map(RemoteOffice office) throws Exception {
    for (String call : ROWS) {
      LiteralCall literal = LiteralCall.parse(call);
      FunctionSpec function = Cellar.catalogue().get(literal.function());
      Object[] row = literal.arguments();
      int columns = row.length;
      List<String> ranges = new ArrayList<>();
      for (int column = 0; column < columns; column++) {
        ranges.add("%1$s1:%1$s%2$d".formatted((char) ('A' + column), CELLS));
      }
      try (Workbook ours = office.newWorkbook();
          Workbook builtIn = office.newWorkbook()) {
        for (int column = 0; column < columns; column++) {
          String[] cells = new String[CELLS];
          Arrays.fill(cells, row[column].toString());
          ours.type(column, cells);
          builtIn.type(column, cells);
        }
        String results = "K1:K" + CELLS;
        ours.typeArray(
            results, "=CELLAR.MAP(\"" + function.name() + "\";" + String.join(";", ranges) + ")");
        builtIn.typeArray(results, "=" + String.join("+", ranges) + "+0");
        List<Double> mapped = new ArrayList<>();
        List<Double> added = new ArrayList<>();
        List<Double> called = new ArrayList<>();
        for (int round = 0; round < ROUNDS; round++) {
          mapped.add(seconds(ours::recalculate));
          added.add(seconds(builtIn::recalculate));
          called.add(seconds(() -> callAll(function, row)));
        }
        double element = 1e6 / (CELLS * columns);
        print(
            "CELLAR.MAP of %s, %d columns: %.3f s, %.2f µs an element; a built-in's %.2f;"
                + " the function alone %.2f; beyond the function %.2f",
            function.name(),
            columns,
            best(mapped),
            best(mapped) * element,
            best(added) * element,
            best(called) * element,
            (best(mapped) - best(called)) * element);
      }
    }
  }

  private static void callAll(FunctionSpec function, Object[] row) {
    double sum = 0;
    for (int i = 0; i < CELLS; i++) {
      sum += (Double) function.call(row);
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
