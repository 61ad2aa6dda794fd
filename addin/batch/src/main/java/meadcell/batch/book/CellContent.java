package meadcell.batch.book;

/**
 * What one cell holds.
 *
 * @param value {@code Double}, {@code String}, {@code Boolean}, {@link CellError}, or null for a
 *     blank; of a formula, its stored result
 * @param formula formula in A1 notation with {@code ,} between arguments and no {@code =} before,
 *     or null
 * @param look how a number is shown
 */
public record CellContent(Object value, String formula, Look look) {
  public static final CellContent BLANK = new CellContent(null, null, Look.PLAIN);

  /** How a number is shown: what its number format says about its meaning. */
  public enum Look {
    PLAIN,
    PERCENT,
    DATE
  }

  public boolean isBlank() {
    return formula == null && (value == null || value instanceof String text && text.isBlank());
  }

  public boolean isFormula() {
    return formula != null;
  }

  /** The text typed into the cell, or null where it holds anything else. */
  public String typedText() {
    return formula == null && value instanceof String text && !text.isBlank() ? text : null;
  }
}
