package meadcell.batch.plan;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Other spellings of headers and labels. */
public final class Names {
  private final Map<String, String> canonical = new HashMap<>();

  /** Texts repeat: the same remark in a thousand rows. Shared between threads. */
  private final Map<String, Header> read = new ConcurrentHashMap<>();

  private final Map<String, Optional<Concept>> concepts = new ConcurrentHashMap<>();

  void add(String header, String otherSpelling) {
    canonical.put(Header.of(otherSpelling).name(), Header.of(header).name());
  }

  /** The header with the one name that all its spellings share. */
  public Header read(String text) {
    return read.computeIfAbsent(
        text,
        key -> {
          Header header = Header.of(key);
          return new Header(
              canonical.getOrDefault(header.name(), header.name()),
              header.unit(),
              header.strange());
        });
  }

  /** Whether the trade writes one for the other. */
  public boolean areSynonyms(String name, Header header) {
    Optional<Concept> meant =
        concepts.computeIfAbsent(name, key -> Vocabulary.sure(Header.of(key)));
    return meant.isPresent() && Vocabulary.sure(header).equals(meant);
  }
}
