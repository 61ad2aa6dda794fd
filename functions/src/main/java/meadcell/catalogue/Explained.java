package meadcell.catalogue;

/** An answer that can say what it rests on; {@code CELLAR.WHY} does. */
public interface Explained {
  /** {@return the numbers behind it} */
  Statement because();
}
