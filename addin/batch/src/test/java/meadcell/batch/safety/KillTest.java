package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import meadcell.batch.Series;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A run that is killed, at any moment of all or of its writing, leaves each workbook as it was or
 * as it should be. {@code -Dkill.count} sets how often.
 */
class KillTest {
  private static final Path SAMPLES = Path.of("../../sample-workbooks").toAbsolutePath();
  private static final int COUNT = Integer.getInteger("kill.count", Series.count(8, 4));
  private static final int FILES = 12;

  @TempDir Path folder;

  private Process start(Path work, String... destination) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), "meadcell.batch.Main"));
    command.add("fill");
    for (int i = 0; i < FILES; i++) {
      command.add(work.resolve(i + ".xlsx").toString());
    }
    command.addAll(List.of("--plan", SAMPLES.resolve("old-log-plan.xlsx").toString()));
    command.addAll(List.of(destination));
    return new ProcessBuilder(command)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private Path freshCopies(String name) throws IOException {
    Path work = Files.createDirectory(folder.resolve(name));
    for (int i = 0; i < FILES; i++) {
      Files.copy(SAMPLES.resolve("old-log.xlsx"), work.resolve(i + ".xlsx"));
    }
    return work;
  }

  @Test
  void everyWorkbookIsOldOrNew() throws Exception {
    Path whole = freshCopies("whole");
    long begin = System.nanoTime();
    start(whole, "--in-place").waitFor();
    long duration = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - begin);
    long writing =
        modified(whole.resolve(FILES - 1 + ".xlsx")) - modified(whole.resolve("0.xlsx.bak"));
    byte[] before = Files.readAllBytes(SAMPLES.resolve("old-log.xlsx"));
    byte[] after = Files.readAllBytes(whole.resolve("0.xlsx"));
    Random chance = new Random();
    Map<String, Integer> moments = new TreeMap<>();
    for (int round = 0; round < COUNT; round++) {
      Path work = freshCopies("round " + round);
      Process run = start(work, "--in-place");
      boolean isAnyMoment = round % 2 == 0;
      while (!isAnyMoment && run.isAlive() && !Files.exists(work.resolve("0.xlsx.bak"))) {
        Thread.sleep(1);
      }
      long span = isAnyMoment ? duration : writing;
      run.waitFor((long) (span * chance.nextDouble()), TimeUnit.MILLISECONDS);
      run.destroyForcibly().waitFor();
      moments.merge(moment(work, before, after), 1, Integer::sum);
    }
    System.out.println(COUNT + " runs killed: " + moments);
  }

  private static long modified(Path file) throws IOException {
    return Files.getLastModifiedTime(file).toMillis();
  }

  /** When the run was killed, to judge by the files, each of which is old or new. */
  private static String moment(Path work, byte[] before, byte[] after) throws IOException {
    int done = 0;
    int copied = 0;
    for (int i = 0; i < FILES; i++) {
      byte[] now = Files.readAllBytes(work.resolve(i + ".xlsx"));
      assertTrue(Arrays.equals(now, before) || Arrays.equals(now, after), "file " + i);
      done += Arrays.equals(now, after) ? 1 : 0;
      copied += Files.exists(work.resolve(i + ".xlsx.bak")) ? 1 : 0;
    }
    try (Stream<Path> files = Files.list(work)) {
      boolean isWriting = files.anyMatch(file -> file.toString().endsWith(".tmp"));
      return isWriting
          ? "while a file was written"
          : copied > done
              ? "while a file was copied"
              : done == 0 ? "before the first" : done == FILES ? "after the last" : "between two";
    }
  }
}
