package meadcell.batch.calculation;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/** What has been shown to be computed here as an office computes it. */
interface Proven {
  /**
   * Whether a call is proven.
   *
   * @param key the same for calls with the same words; or null
   * @param words what the call is like
   */
  boolean holds(String key, Supplier<List<String>> words);

  /** By the table. */
  Proven TABLE = new Table();

  /**
   * The table {@code proven.txt}: a call is proven if each of its words stands in it. It is written
   * by the test that compares this tool with an office; nobody adds to it by hand.
   */
  final class Table implements Proven {
    static final String RESOURCE = "proven.txt";

    private final Set<String> known = ConcurrentHashMap.newKeySet();

    /** Read when first asked: a call of ours asks nothing. */
    private static final class Lines {
      static final Set<String> ALL = read();
    }

    private static Set<String> read() {
      InputStream resource = Proven.class.getResourceAsStream(RESOURCE);
      try (BufferedReader reader =
          new BufferedReader(new InputStreamReader(resource, StandardCharsets.UTF_8))) {
        return reader.lines().collect(Collectors.toUnmodifiableSet());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    Set<String> words() {
      return Lines.ALL;
    }

    @Override
    public boolean holds(String key, Supplier<List<String>> words) {
      if (key != null && known.contains(key)) {
        return true;
      }
      boolean holds = words().containsAll(words.get());
      if (holds && key != null) {
        known.add(key);
      }
      return holds;
    }
  }
}
