package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** The ODF Toolkit's validator, in a process of its own: it brings another XML parser. */
final class OdfValidator {
  private static final Path JAR = Path.of("target/validators/odfvalidator.jar");
  private static final long MINUTES = 10;

  private OdfValidator() {}

  /** What is wrong in each of some files; of one without errors, an empty list. */
  static Map<Path, List<String>> errors(List<Path> files, Path folder) throws Exception {
    Path java = Path.of(System.getProperty("java.home"), "bin", "java");
    List<String> command =
        new ArrayList<>(List.of(java.toString(), "-jar", JAR.toString(), "-e", "-v"));
    files.forEach(file -> command.add(file.toAbsolutePath().toString()));
    File log = folder.resolve("validator.log").toFile();
    Process validator =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log).start();
    try {
      assertTrue(validator.waitFor(MINUTES, TimeUnit.MINUTES), "the validator does not end");
    } finally {
      validator.destroyForcibly();
    }
    Map<Path, List<String>> errors = new HashMap<>();
    List<String> lines = Files.readAllLines(log.toPath());
    for (Path file : files) {
      String start = file.toAbsolutePath().toString();
      List<String> own = lines.stream().filter(line -> line.startsWith(start)).toList();
      assertTrue(!own.isEmpty(), () -> file + " was not looked at: " + lines);
      errors.put(
          file,
          own.stream()
              .filter(line -> line.contains("Error:"))
              .map(line -> line.substring(start.length()).replaceAll("\\[[0-9,]+\\]", ""))
              .map(line -> line.replace(start, ""))
              .toList());
    }
    return errors;
  }
}
