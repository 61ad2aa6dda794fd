package meadcell.catalogue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.module.ModuleDescriptor.Version;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * A number that a later version gives differently, from {@code /meadcell/changes.tsv}.
 *
 * @param function the function's name
 * @param version the first version that gives the new number
 * @param call an example
 * @param was what the example gave before, as text
 * @param is what it gives since
 * @param why the reason
 */
public record ChangedNumber(
    String function, String version, String call, String was, String is, String why) {
  private static final String FILE = "/meadcell/changes.tsv";
  private static final List<ChangedNumber> ALL = read();

  /** {@return all changes} */
  public static List<ChangedNumber> all() {
    return ALL;
  }

  /**
   * {@return whether a version gave the old number}
   *
   * @param older a version; empty for one from before versions were written into workbooks
   */
  public boolean isAfter(String older) {
    return older.isEmpty() || Version.parse(version).compareTo(Version.parse(older)) > 0;
  }

  @Override
  public String toString() {
    return "since version " + version + ": " + call + " was " + was + ", is " + is + "; " + why;
  }

  private static List<ChangedNumber> read() {
    try (InputStream in = ChangedNumber.class.getResourceAsStream(FILE)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(ChangedNumber::parse)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static ChangedNumber parse(String line) {
    String[] cells = line.split("\t", -1);
    if (cells.length != 6) {
      throw new IllegalStateException(FILE + ": not six columns: " + line);
    }
    return new ChangedNumber(cells[0], cells[1], cells[2], cells[3], cells[4], cells[5]);
  }
}
