package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LogsTest {
  static Stream<String> names() {
    return Build.LOGS.keySet().stream();
  }

  @ParameterizedTest
  @MethodSource("names")
  void theFileCheckedInIsTheOneThatTheCodeBuilds(String name) throws IOException {
    assertArrayEquals(
        Build.xlsx(Build.LOGS.get(name).get()), Files.readAllBytes(Samples.file(name, "xlsx")));
  }
}
