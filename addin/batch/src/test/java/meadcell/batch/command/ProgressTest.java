package meadcell.batch.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class ProgressTest {
  @Test
  void oneLineCountsAndEnds() {
    ByteArrayOutputStream shown = new ByteArrayOutputStream();
    try (Progress progress =
        new Progress(new PrintStream(shown, true, StandardCharsets.UTF_8), "fill", 2)) {
      progress.step();
      progress.step();
    }
    assertEquals(
        "\rfill: 0 of 2\rfill: 1 of 2\rfill: 2 of 2" + System.lineSeparator(),
        shown.toString(StandardCharsets.UTF_8));
  }
}
