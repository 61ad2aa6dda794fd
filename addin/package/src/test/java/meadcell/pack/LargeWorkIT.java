package meadcell.pack;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import meadcell.batch.ExitCode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Large work is done by a second Java, which nobody notices. */
class LargeWorkIT {
  @TempDir Path folder;
  private Path log;
  private Path plan;

  @BeforeEach
  void write() throws Exception {
    StringBuilder csv = new StringBuilder("SG,Temp,Remark\n");
    for (int i = 0; i < 200; i++) {
      csv.append(1.1 - i / 2000.0).append(",18,").append("as before ".repeat(60)).append('\n');
    }
    log = Files.writeString(folder.resolve("log.csv"), csv);
    plan = folder.resolve("plan.xlsx");
    assertEquals(
        ExitCode.OK, PackedTool.run("draft", log.toString(), "--plan", plan.toString()).code());
  }

  @Test
  void itGivesTheSameFileAndEndsWithTheSameCode() throws Exception {
    PackedTool two = fill(List.of(), "two");
    PackedTool one = fill(List.of("-Dmeadcell.launched=true"), "one");
    assertEquals(ExitCode.OK, two.code(), two.out());
    assertEquals(one.out().replace("one", "two"), two.out());
    assertArrayEquals(
        Files.readAllBytes(folder.resolve("one/log.xlsx")),
        Files.readAllBytes(folder.resolve("two/log.xlsx")));
    assertEquals(ExitCode.USAGE, PackedTool.run("fill", log.toString()).code());
  }

  private PackedTool fill(List<String> javaOptions, String out) throws Exception {
    return PackedTool.run(javaOptions, arguments(out));
  }

  private String[] arguments(String out) {
    String target = folder.resolve(out).toString();
    return new String[] {"fill", log.toString(), "--plan", plan.toString(), "--out", target};
  }

  @Test
  void itEndsWithTheFirst() throws Exception {
    Process first = PackedTool.start(List.of(), arguments("out"));
    while (first.isAlive() && first.descendants().findAny().isEmpty()) {
      TimeUnit.MILLISECONDS.sleep(5);
    }
    ProcessHandle second = first.descendants().findAny().orElseThrow();
    first.destroy();
    second.onExit().get(1, TimeUnit.MINUTES);
    assertFalse(second.isAlive());
    assertTrue(Files.notExists(folder.resolve("out/log.xlsx")));
  }
}
