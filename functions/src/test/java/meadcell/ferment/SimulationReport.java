package meadcell.ferment;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * A table of what simulated ferments showed, in {@code target/simulations}. The system property
 * {@code meadcell.simulations} multiplies how many are simulated: 1 in the build, 20 for the full
 * series ({@code mvn -pl functions test -Dtest='*SimulationTest' -Dmeadcell.simulations=20}).
 */
final class SimulationReport {
  static final int TIMES = Integer.getInteger("meadcell.simulations", 1);
  private static final Path FOLDER = Path.of("target", "simulations");

  private final StringBuilder text = new StringBuilder();

  void line(String format, Object... values) {
    text.append(String.format(Locale.ROOT, format, values)).append('\n');
  }

  void write(String name) {
    try {
      Files.createDirectories(FOLDER);
      Files.writeString(FOLDER.resolve(name + ".txt"), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
