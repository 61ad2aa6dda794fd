package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A run that is killed leaves each workbook as it was or as it should be. {@code -Dkill.count} sets
 * how often.
 */
class KillTest {
  private static final Path SAMPLES = Path.of("../../sample-workbooks").toAbsolutePath();
  private static final int COUNT = Integer.getInteger("kill.count", 3);
  private static final int FILES = 20;

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
    byte[] before = Files.readAllBytes(SAMPLES.resolve("old-log.xlsx"));
    byte[] after = Files.readAllBytes(whole.resolve("0.xlsx"));
    Random chance = new Random();
    int halfway = 0;
    for (int round = 0; round < COUNT; round++) {
      Path work = freshCopies("round " + round);
      Process run = start(work, "--in-place");
      run.waitFor((long) (duration * (0.3 + 0.7 * chance.nextDouble())), TimeUnit.MILLISECONDS);
      run.destroyForcibly().waitFor();
      int done = 0;
      for (int i = 0; i < FILES; i++) {
        byte[] now = Files.readAllBytes(work.resolve(i + ".xlsx"));
        assertTrue(Arrays.equals(now, before) || Arrays.equals(now, after), "file " + i);
        done += Arrays.equals(now, after) ? 1 : 0;
      }
      halfway += done > 0 && done < FILES ? 1 : 0;
    }
    System.out.println(COUNT + " runs killed, " + halfway + " of them between two files");
  }
}
