package meadcell.bottle;

/** Where the gas in a sparkling mead came from. */
public enum Carbonation {
  /** Fermented in the closed vessel. */
  NATURAL,
  /** Put in from a cylinder. */
  ARTIFICIAL
}
