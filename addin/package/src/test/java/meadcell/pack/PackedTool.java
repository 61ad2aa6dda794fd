package meadcell.pack;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** One run of the packed batch tool, as people start it. */
record PackedTool(int code, String out) {
  static Path jar() {
    return Path.of(System.getProperty("meadcell.jar"));
  }

  /** What it wrote includes its problems. */
  static PackedTool run(String... args) throws IOException, InterruptedException {
    return run(List.of(), args);
  }

  /** The same, with options for Java. */
  static PackedTool run(List<String> javaOptions, String... args)
      throws IOException, InterruptedException {
    Process run = start(javaOptions, args);
    String out = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new PackedTool(run.waitFor(), out);
  }

  static Process start(List<String> javaOptions, String... args) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(javaOptions);
    command.addAll(List.of("-jar", jar().toString()));
    command.addAll(List.of(args));
    return new ProcessBuilder(command).redirectErrorStream(true).start();
  }
}
