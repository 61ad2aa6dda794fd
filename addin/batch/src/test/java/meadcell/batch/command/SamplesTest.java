package meadcell.batch.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SamplesTest {
  private static final Path CHECKED_IN = Path.of("../../sample-workbooks");

  @TempDir Path folder;

  @Test
  void writesEverySampleAndNeverOverOne() throws IOException {
    assertEquals(ExitCode.OK, Run.of("samples", folder.toString()).code());
    assertEquals(names(CHECKED_IN), names(folder));
    for (String name : names(folder)) {
      assertArrayEquals(
          Files.readAllBytes(CHECKED_IN.resolve(name)), Files.readAllBytes(folder.resolve(name)));
    }
    Files.writeString(folder.resolve("old-log.xlsx"), "mine");
    assertEquals(ExitCode.NOT_WRITTEN, Run.of("samples", folder.toString()).code());
    assertEquals("mine", Files.readString(folder.resolve("old-log.xlsx")));
  }

  private static Set<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.matches(".*\\.(xlsx|ods)"))
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }
}
