package meadcell.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What one office needs for itself: a temporary folder with its user profile, its log and the files
 * it works on. The folder goes when this is closed.
 */
public final class Session implements AutoCloseable {
  /** One value of the profile: where it lies, its name and what it is. */
  public record Setting(String path, String name, Object value) {
    private String item() {
      return "<item oor:path=\"/org.openoffice.%s\"><prop oor:name=\"%s\" oor:op=\"fuse\"><value>%s</value></prop></item>"
          .formatted(path, name, value);
    }
  }

  private static final String SETTINGS =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <oor:items xmlns:oor="http://openoffice.org/2001/registry">
      %s
      </oor:items>
      """;

  private final Path home;

  /** A session whose folder's name begins with these words. */
  public Session(String prefix) throws IOException {
    home = Files.createTempDirectory(prefix);
  }

  /** The folder. */
  public Path home() {
    return home;
  }

  /** Whether a document that is loaded is computed anew or keeps the numbers it was stored with. */
  public static List<Setting> recalculation(boolean always) {
    int mode = always ? 0 : 1;
    return List.of(
        new Setting("Office.Calc/Formula/Load", "OOXMLRecalcMode", mode),
        new Setting("Office.Calc/Formula/Load", "ODFRecalcMode", mode));
  }

  /** Writes the profile's settings, in place of those it had. */
  public void set(List<Setting> settings) throws IOException {
    Path user = Files.createDirectories(home.resolve("profile/user"));
    Files.writeString(
        user.resolve("registrymodifications.xcu"),
        SETTINGS.formatted(settings.stream().map(Setting::item).collect(Collectors.joining("\n"))));
  }

  /** The argument that has an office use this profile. */
  public String profile() {
    return "-env:UserInstallation=" + home.resolve("profile").toUri();
  }

  /** A command that writes into the log. */
  public ProcessBuilder command(List<String> line) {
    return new ProcessBuilder(line)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.appendTo(home.resolve("log").toFile()));
  }

  /** What the commands wrote. */
  public String log() throws IOException {
    return Files.readString(home.resolve("log"));
  }

  /** Ends an office with the processes that its start script began. */
  public static void end(Process process) {
    List<ProcessHandle> begun = process.descendants().toList();
    process.destroyForcibly();
    begun.forEach(ProcessHandle::destroyForcibly);
    process.onExit().join();
    begun.forEach(child -> child.onExit().join());
  }

  @Override
  public void close() throws IOException {
    if (!Files.exists(home)) {
      return;
    }
    try (Stream<Path> files = Files.walk(home)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    }
  }
}
