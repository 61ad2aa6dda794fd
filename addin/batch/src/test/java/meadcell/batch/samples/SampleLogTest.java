package meadcell.batch.samples;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The checked-in samples are what this code builds; {@code -Dsamples.write} builds them anew. */
class SampleLogTest {
  private static final Path SAMPLES = Path.of("../../sample-workbooks");

  private interface Builder {
    void write(Path file) throws IOException;
  }

  @TempDir Path folder;

  @Test
  void oldLog() throws IOException {
    compare("old-log.xlsx", OldLog::write);
  }

  @Test
  void oldLogPlan() throws IOException {
    compare("old-log-plan.xlsx", OldLogPlan::write);
  }

  private void compare(String name, Builder builder) throws IOException {
    Path checkedIn = SAMPLES.resolve(name);
    if (System.getProperty("samples.write") != null) {
      builder.write(checkedIn);
    }
    Path built = folder.resolve(name);
    builder.write(built);
    assertArrayEquals(Files.readAllBytes(built), Files.readAllBytes(checkedIn));
  }
}
