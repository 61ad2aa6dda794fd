package meadcell.batch.plan;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import meadcell.catalogue.Unit;

/**
 * Other spellings of headers and labels. Where the header is written with a unit, a spelling
 * without one is in that unit.
 */
public final class Names {
  private final Map<String, Header> canonical = new HashMap<>();

  /** Texts repeat: the same remark in a thousand rows. Shared between threads. */
  private final Map<String, Header> read = new ConcurrentHashMap<>();

  private final Map<String, Optional<Concept>> concepts = new ConcurrentHashMap<>();

  void add(String header, String otherSpelling) {
    canonical.put(Header.of(otherSpelling).name(), Header.of(header));
  }

  /** The header with the one name that all its spellings share. */
  public Header read(String text) {
    return read.computeIfAbsent(
        text,
        key -> {
          Header header = Header.of(key);
          Header meant = canonical.get(header.name());
          Header named =
              meant == null
                  ? header
                  : new Header(meant.name(), header.unit().or(meant::unit), header.strange());
          Optional<Unit> unit =
              named.unit().or(() -> Vocabulary.meaning(header).map(Vocabulary.Meaning::unit));
          return new Header(named.name(), unit, named.strange());
        });
  }

  /** Whether the trade writes one for the other. */
  public boolean areSynonyms(String name, Header header) {
    Optional<Concept> meant =
        concepts.computeIfAbsent(name, key -> Vocabulary.sure(Header.of(key)));
    return meant.isPresent() && Vocabulary.sure(header).equals(meant);
  }
}
