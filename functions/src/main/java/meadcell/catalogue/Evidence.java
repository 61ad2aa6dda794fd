package meadcell.catalogue;

import java.util.Locale;

/** What kind of evidence a check row is; the strongest first. */
public enum Evidence {
  /** A number printed by someone else, at a place that can be found again. */
  PUBLISHED,
  /** By hand, or by an independent library, from a published formula; the row says which. */
  WORKED,
  /** A rule of the trade without a source. */
  PRACTICE,
  /** A number or constant that was recalled, not read. */
  MEMORY;

  /** {@return the word in the column {@code kind} of the check rows} */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  static Evidence of(String word) {
    for (Evidence evidence : values()) {
      if (evidence.word().equals(word)) {
        return evidence;
      }
    }
    throw new IllegalArgumentException("no kind of evidence: " + word);
  }
}
