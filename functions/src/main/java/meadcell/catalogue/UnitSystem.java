package meadcell.catalogue;

import java.util.Optional;

/** The two systems a function can be asked in, by its last argument. */
public enum UnitSystem {
  METRIC("metric"),
  US("US");

  private final String word;

  UnitSystem(String word) {
    this.word = word;
  }

  /** {@return the word a user types} */
  public String word() {
    return word;
  }

  /** {@return the system a text names, in any case, or nothing} */
  public static Optional<UnitSystem> named(Object value) {
    if (value instanceof String text) {
      for (UnitSystem system : values()) {
        if (system.word.equalsIgnoreCase(text.trim())) {
          return Optional.of(system);
        }
      }
    }
    return Optional.empty();
  }
}
