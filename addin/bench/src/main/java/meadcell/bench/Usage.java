package meadcell.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What a command takes, the processes it starts included: processor time, and peak memory. */
record Usage(double seconds, long megabytes) {
  static final Path TIME = Path.of("/usr/bin/time");

  static Usage least() {
    return new Usage(Double.MAX_VALUE, Long.MAX_VALUE);
  }

  static Usage of(Programs programs, List<String> command)
      throws IOException, InterruptedException {
    Path figures = programs.folder().resolve("usage.txt");
    List<String> timed =
        new ArrayList<>(List.of(TIME.toString(), "-f", "%U %S %M", "-o", figures.toString()));
    timed.addAll(command);
    programs.run(timed);
    String[] parts = Files.readString(figures).strip().split(" ");
    return new Usage(
        Double.parseDouble(parts[0]) + Double.parseDouble(parts[1]),
        Long.parseLong(parts[2]) / 1024);
  }

  Usage orLess(Usage other) {
    return new Usage(Math.min(seconds, other.seconds), Math.min(megabytes, other.megabytes));
  }
}
