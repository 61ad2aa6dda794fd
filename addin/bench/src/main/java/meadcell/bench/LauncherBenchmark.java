package meadcell.bench;

import static meadcell.bench.Timing.print;
import static meadcell.bench.Timing.seconds;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The released program beside the jar and beside bare POI: the time on the clock of what people do
 * at a prompt, and the processor time of a long fill. The least of several rounds taken in turn.
 */
public final class LauncherBenchmark {
  private static final int ROUNDS = Integer.getInteger("rounds", 9);
  private static final int FEW_ROWS = 100;
  private static final int MANY_ROWS = 40_000;

  private LauncherBenchmark() {}

  /** Arguments: the built {@code meadcell.jar} and the released program. */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createTempDirectory("meadcell-bench");
    Programs programs = new Programs(Path.of(arguments[0]), folder);
    String released = arguments[1];
    Path plan = folder.resolve("plan.xlsx");
    Logs.writePlan(plan);
    Path few = folder.resolve("few.xlsx");
    Logs.write(few, FEW_ROWS);
    Path many = folder.resolve("many.xlsx");
    Logs.write(many, MANY_ROWS);
    String out = folder.resolve("out").toString();
    onTheClock(programs, "eval", List.of("eval", "BARREL.VOLUME(50;64;81)"), released);
    onTheClock(programs, "fill, " + FEW_ROWS + " rows", fill(few, plan, out), released);
    List<String> jar = programs.meadcell(fill(many, plan, out).toArray());
    List<String> bare = programs.bare(many, folder.resolve("bare.xlsx"));
    List<String> own = called(released, fill(many, plan, out));
    Usage least = Usage.least();
    Usage leastJar = Usage.least();
    Usage leastBare = Usage.least();
    for (int round = 0; round < ROUNDS; round++) {
      least = least.orLess(Usage.of(programs, own));
      leastJar = leastJar.orLess(Usage.of(programs, jar));
      leastBare = leastBare.orLess(Usage.of(programs, bare));
    }
    print(
        "fill, %d rows × %d results: released %.2f s of processor time, jar %.2f s, bare POI %.2f s;"
            + " ratio of the released to bare POI %.2f",
        MANY_ROWS,
        Logs.RESULTS,
        least.seconds(),
        leastJar.seconds(),
        leastBare.seconds(),
        least.seconds() / leastBare.seconds());
  }

  private static List<String> fill(Path log, Path plan, String out) {
    return List.of("fill", log.toString(), "--plan", plan.toString(), Programs.OUT, out);
  }

  private static List<String> called(String program, List<String> arguments) {
    List<String> command = new ArrayList<>(List.of(program));
    command.addAll(arguments);
    return command;
  }

  private static void onTheClock(
      Programs programs, String what, List<String> arguments, String released) throws Exception {
    double own = Double.MAX_VALUE;
    double jar = Double.MAX_VALUE;
    for (int round = 0; round < ROUNDS; round++) {
      own = Math.min(own, seconds(() -> programs.run(called(released, arguments))));
      jar = Math.min(jar, seconds(() -> programs.run(programs.meadcell(arguments.toArray()))));
    }
    print("%s: released %.2f s, jar %.2f s", what, own, jar);
  }
}
