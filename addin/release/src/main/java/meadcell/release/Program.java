package meadcell.release;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

/** Runs other programs; what they say is shown if they fail. */
final class Program {
  private Program() {}

  static void run(List<String> command) throws IOException, InterruptedException {
    run(command, Map.of());
  }

  static void run(List<String> command, Map<String, String> environment)
      throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().putAll(environment);
    Process process = builder.start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw new IOException(String.join(" ", command) + "\n" + said);
    }
  }
}
