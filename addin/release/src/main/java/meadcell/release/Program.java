package meadcell.release;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Runs other programs; what they say is shown if they fail. */
final class Program {
  private Program() {}

  static void run(List<String> command) throws IOException, InterruptedException {
    run(command, Map.of());
  }

  static void run(List<String> command, Map<String, String> environment)
      throws IOException, InterruptedException {
    run(command, environment, Set.of(0));
  }

  /**
   * Runs a program in an environment.
   *
   * @param fine the exit codes that are no failure
   */
  static void run(List<String> command, Map<String, String> environment, Set<Integer> fine)
      throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().putAll(environment);
    Process process = builder.start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (!fine.contains(process.waitFor())) {
      throw new IOException(String.join(" ", command) + "\n" + said);
    }
  }
}
