package meadcell.catalogue;

/**
 * A text that the library says, as a constant: its English template, in which <code>{name}</code>
 * marks the place of a value. Other languages translate the template, see {@link Words}.
 *
 * <p>Implemented by enums: one for what every function says, and a small one beside each family.
 */
public interface Message {
  /** {@return the constant's name; an enum has it} */
  String name();

  /** {@return the English template} */
  String english();

  /**
   * {@return the key under which other languages translate it: {@code
   * BARREL.reason.SURFACE_IN_BUNG}}
   */
  default String key() {
    return Words.section(getClass()) + ".say." + name();
  }
}
