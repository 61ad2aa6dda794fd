package meadcell.bench;

import static meadcell.bench.Timing.print;
import static meadcell.bench.Timing.seconds;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.Workbook;

/**
 * The batch tool beside a bare POI program and beside a headless office, each in processes of their
 * own, in one run. Times are the best of several rounds taken in turn; memory is the smallest heap
 * that suffices, and where GNU time is installed, what a process took at most.
 */
public final class BatchBenchmark {
  private static final int ROWS = 10_000;
  private static final int MANY_ROWS = 40_000;
  private static final int ROUNDS = 7;
  private static final int FILES = Integer.getInteger("files", 1000);
  private static final int ROWS_A_FILE = 100;
  private static final int HEAP_STEP_MB = 4;

  private final Programs programs;
  private final Path extension;
  private final Path folder;
  private final Path plan;

  private BatchBenchmark(Path jar, Path extension) throws IOException {
    this.extension = extension;
    folder = Files.createTempDirectory("meadcell-bench");
    // an office started by root runs as another user, who reads here
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    programs = new Programs(jar, folder);
    plan = folder.resolve("plan.xlsx");
    Logs.writePlan(plan);
  }

  /** Arguments: the built {@code meadcell.jar} and {@code meadcell.oxt}. */
  public static void main(String[] arguments) throws Exception {
    BatchBenchmark benchmark = new BatchBenchmark(Path.of(arguments[0]), Path.of(arguments[1]));
    benchmark.oneLongLog();
    benchmark.oneVeryLongLog();
    benchmark.manyLogs();
  }

  private void oneVeryLongLog() throws Exception {
    Path log = folder.resolve("longer.xlsx");
    Logs.write(log, MANY_ROWS);
    List<String> fill =
        programs.meadcell("fill", log, "--plan", plan, Programs.OUT, folder.resolve("out"));
    List<String> bare = programs.bare(log, folder.resolve("bare.xlsx"));
    if (Files.notExists(Usage.TIME)) {
      print("processor time and peak memory: not measured, %s is not installed", Usage.TIME);
      return;
    }
    Usage our = Usage.least();
    Usage other = Usage.least();
    for (int round = 0; round < ROUNDS; round++) {
      our = our.orLess(Usage.of(programs, fill));
      other = other.orLess(Usage.of(programs, bare));
    }
    print(
        "fill, %d rows × %d results: %.2f s of processor time, bare POI %.2f s, ratio %.2f;"
            + " at most %d MB, bare POI %d MB, ratio %.2f",
        MANY_ROWS,
        Logs.RESULTS,
        our.seconds(),
        other.seconds(),
        our.seconds() / other.seconds(),
        our.megabytes(),
        other.megabytes(),
        (double) our.megabytes() / other.megabytes());
  }

  private void oneLongLog() throws Exception {
    Path log = folder.resolve("long.xlsx");
    Logs.write(log, ROWS);
    List<String> fill =
        programs.meadcell("fill", log, "--plan", plan, Programs.OUT, folder.resolve("out"));
    List<String> bare = programs.bare(log, folder.resolve("bare.xlsx"));
    List<Double> ours = new ArrayList<>();
    List<Double> others = new ArrayList<>();
    for (int round = 0; round < ROUNDS; round++) {
      ours.add(seconds(() -> programs.run(fill)));
      others.add(seconds(() -> programs.run(bare)));
    }
    double our = Collections.min(ours);
    double other = Collections.min(others);
    print(
        "fill, %d rows × %d results: %.2f s, bare POI %.2f s, ratio %.2f",
        ROWS, Logs.RESULTS, our, other, our / other);
    int heap = smallestHeap(fill);
    int otherHeap = smallestHeap(bare);
    print(
        "smallest heap: %d MB, bare POI %d MB, ratio %.2f",
        heap, otherHeap, (double) heap / otherHeap);
  }

  private int smallestHeap(List<String> command) throws Exception {
    int enough = 1024;
    int tooSmall = 0;
    while (enough - tooSmall > HEAP_STEP_MB) {
      int heap = (enough + tooSmall) / 2;
      List<String> limited = new ArrayList<>(command);
      limited.add(1, "-Xmx" + heap + "m");
      if (programs.start(limited).waitFor() == 0) {
        enough = heap;
      } else {
        tooSmall = heap;
      }
    }
    return enough;
  }

  private void manyLogs() throws Exception {
    Path logs = Files.createDirectory(folder.resolve("logs"));
    List<Path> files = names(logs);
    for (Path file : files) {
      Logs.write(file, ROWS_A_FILE);
    }
    Path filled = folder.resolve("filled");
    List<String> fill = programs.meadcell("fill", "--plan", plan, Programs.OUT, filled);
    files.forEach(file -> fill.add(file.toString()));
    double one = seconds(() -> programs.run(fill));
    fill.addAll(List.of("--jobs", "2"));
    double two = seconds(() -> programs.run(fill));
    print(
        "fill, %d logs of %d rows: %.1f s; with --jobs 2 %.1f s, ratio %.2f",
        FILES, ROWS_A_FILE, one, two, two / one);
    for (Path file : names(filled)) {
      Logs.changeOriginalGravity(file);
    }
    List<String> recalc = programs.meadcell("recalc", Programs.OUT, folder.resolve("recalculated"));
    names(filled).forEach(file -> recalc.add(file.toString()));
    double ours = seconds(() -> programs.run(recalc));
    recalc.addAll(List.of("--jobs", "2"));
    double oursByTwo = seconds(() -> programs.run(recalc));
    double office = office(names(filled));
    print(
        "recalc, the same logs: %.1f s, with --jobs 2 %.1f s; a headless office with the extension"
            + " %.1f s, %.1f and %.1f times as long",
        ours, oursByTwo, office, office / ours, office / oursByTwo);
  }

  private static List<Path> names(Path folder) {
    return IntStream.range(0, FILES).mapToObj(i -> folder.resolve(i + ".xlsx")).toList();
  }

  private double office(List<Path> files) throws Exception {
    try (RemoteOffice office = new RemoteOffice()) {
      office.install(extension);
      office.start();
      Path target = office.home().resolve("recalculated.xlsx");
      return seconds(
          () -> {
            for (Path file : files) {
              try (Workbook book = office.open(file.toUri().toString(), true)) {
                book.store(target, "Calc MS Excel 2007 XML");
              }
            }
          });
    }
  }
}
