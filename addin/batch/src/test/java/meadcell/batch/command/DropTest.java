package meadcell.batch.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What happens to files that are dropped on the program's icon. */
class DropTest {
  private static final Path LOG = Path.of("../../sample-workbooks/old-log.xlsx");

  @TempDir Path folder;

  private Path log(String name) throws IOException {
    return Files.copy(LOG, folder.resolve(name));
  }

  @Test
  void theFirstTimeDraftsTheSecondFills() throws IOException {
    Path log = log("my log.xlsx");
    Run draft = Run.of("drop", log.toString());
    assertEquals(ExitCode.OK, draft.code(), draft.err());
    assertTrue(Files.exists(folder.resolve("my log-plan.xlsx")), draft.out());
    assertTrue(draft.out().contains("Look at my log-plan.xlsx"), draft.out());
    assertFalse(Files.exists(folder.resolve("filled")));
    Run fill = Run.of("drop", log.toString());
    assertEquals(ExitCode.OK, fill.code(), fill.err());
    assertTrue(Files.exists(folder.resolve("filled/my log.xlsx")), fill.out());
    assertArrayEquals(Files.readAllBytes(LOG), Files.readAllBytes(log), "the log itself");
    assertTrue(Run.of("drop", log.toString()).out().contains("(as it was)"));
  }

  @Test
  void aPlanFillsItsLogs() throws IOException {
    log("old-log.xlsx");
    log("other.xlsx");
    Path plan = folder.resolve("old-log-plan.xlsx");
    Files.copy(LOG.resolveSibling("old-log-plan.xlsx"), plan);
    assertEquals(ExitCode.OK, Run.of("drop", plan.toString()).code());
    assertTrue(Files.exists(folder.resolve("filled/old-log.xlsx")));
    assertFalse(Files.exists(folder.resolve("filled/other.xlsx")));
  }

  @Test
  void theLogsOfAFolderShareAPlan() throws IOException {
    log("2023.xlsx");
    log("2024.xlsx");
    Files.writeString(folder.resolve("notes.txt"), "no workbook");
    Files.writeString(folder.resolve(".~lock.2024.xlsx"), "an office's");
    assertEquals(ExitCode.OK, Run.of("drop", folder.toString()).code());
    assertTrue(Files.exists(folder.resolve("plan.xlsx")));
    Run fill = Run.of("drop", folder.toString());
    assertEquals(ExitCode.OK, fill.code(), fill.err());
    assertTrue(Files.exists(folder.resolve("filled/2023.xlsx")), fill.out());
    assertTrue(Files.exists(folder.resolve("filled/2024.xlsx")), fill.out());
    assertFalse(Files.exists(folder.resolve("filled/plan.xlsx")), "a plan is no log");
  }

  @Test
  void whatIsNotThereIsSaid() {
    Run run = Run.of("drop", folder.resolve("gone.xlsx").toString());
    assertEquals(ExitCode.REFUSED, run.code());
    assertTrue(run.err().contains("gone.xlsx"), run.err());
  }

  @Test
  void withoutACommandTheFirstStepsAreShown() {
    Run run = Run.of();
    assertEquals(ExitCode.OK, run.code());
    assertTrue(run.out().contains("meadcell eval \"BARREL.VOLUME(50;64;81)\""), run.out());
    assertEquals("226.732", Run.of("eval", "BARREL.VOLUME(50;64;81)").out().trim());
    assertTrue(run.out().lines().allMatch(line -> line.length() <= 100));
  }
}
