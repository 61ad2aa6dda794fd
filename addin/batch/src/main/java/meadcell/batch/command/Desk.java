package meadcell.batch.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** For people without a shell: shows files in the programs they belong to, and waits. */
final class Desk {
  private Desk() {}

  /** Opens files as a double click does; where that is not possible, the text has said all. */
  static void open(List<Path> files) {
    for (Path file : files) {
      List<String> command = new ArrayList<>(opener());
      command.add(file.toString());
      try {
        if (Files.exists(file)) {
          new ProcessBuilder(command)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
        }
      } catch (IOException e) {
        return; // no desktop: its path stands in the text
      }
    }
  }

  private static List<String> opener() {
    String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    if (system.contains("windows")) {
      return List.of("rundll32", "url.dll,FileProtocolHandler");
    }
    return List.of(system.contains("mac") ? "open" : "xdg-open");
  }

  static void waitForEnter(PrintWriter out) throws IOException {
    out.println("Press Enter to close this window.");
    out.flush();
    int read = System.in.read();
    while (read >= 0 && read != '\n') {
      read = System.in.read();
    }
  }
}
