package meadcell.catalogue;

import java.util.Optional;

/** The two systems a function can be asked in, by its last argument. */
public enum UnitSystem {
  /** °C, L, kg, cm, m², kPa: the one that is taken where none is named. */
  METRIC("metric"),
  /** °F, US gal, lb, in, ft², psi. */
  US("US");

  private final String word;

  UnitSystem(String word) {
    this.word = word;
  }

  /** {@return the word a user types} */
  public String word() {
    return word;
  }

  /**
   * {@return the system a text names, in any case, or nothing}
   *
   * @param value what a cell holds
   */
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
