package meadcell.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SecondJavaTest {
  @TempDir Path folder;

  @Test
  void workIsAsLargeAsTheFilesItNames() throws IOException {
    String log = Files.write(folder.resolve("log.xlsx"), new byte[70]).toString();
    String plan = Files.write(folder.resolve("plan.xlsx"), new byte[30]).toString();
    assertEquals(
        100, SecondJava.bytes("fill", log, "--plan", plan, "--out", folder.toString(), "none"));
  }

  @Test
  void aNameThatCannotBePassedOnKeepsTheWorkHere() throws IOException {
    String log = Files.write(folder.resolve("log.xlsx"), new byte[70]).toString();
    assertEquals(0, SecondJava.bytes(log, "a\0b"));
  }

  @Test
  void whatIsNotAJarWorksHere() {
    assertTrue(SecondJava.run(new String[] {"fill"}).isEmpty());
  }
}
