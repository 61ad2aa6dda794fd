package meadcell.measured;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A table that other people measured; where it comes from stands on its first lines. */
public final class MeasuredTable {
  private MeasuredTable() {}

  /** {@return its rows, without the lines that start with #} */
  public static List<String[]> rows(String name) {
    try (InputStream in = MeasuredTable.class.getResourceAsStream(name + ".csv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split(",", -1))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
