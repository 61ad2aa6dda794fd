package meadcell.batch.calculation;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What has been shown to be computed here as an office computes it. The table {@code proven.txt} is
 * written by the test that compares the two; nobody adds to it by hand.
 */
interface Proven {
  String RESOURCE = "proven.txt";

  /** Whether every word of a call stands in the table. */
  boolean holds(List<String> words);

  /** The table. */
  Proven TABLE = table()::containsAll;

  private static Set<String> table() {
    InputStream resource = Proven.class.getResourceAsStream(RESOURCE);
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(resource, StandardCharsets.UTF_8))) {
      return reader.lines().collect(Collectors.toUnmodifiableSet());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
