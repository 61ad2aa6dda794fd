package meadcell.batch.plan;

import java.util.HashMap;
import java.util.Map;

/** Other spellings of headers and labels. */
public final class Names {
  private final Map<String, String> canonical = new HashMap<>();

  void add(String header, String otherSpelling) {
    canonical.put(Header.of(otherSpelling).name(), Header.of(header).name());
  }

  /** The header with the one name that all its spellings share. */
  public Header read(String text) {
    Header header = Header.of(text);
    return new Header(canonical.getOrDefault(header.name(), header.name()), header.unit());
  }
}
