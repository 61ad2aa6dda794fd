package meadcell.batch.book;

/**
 * What one cell holds.
 *
 * @param value of a formula, its stored result
 * @param formula formula in A1 notation with {@code ,} between arguments and no {@code =} before,
 *     or null
 * @param look how a number is shown
 */
public record CellContent(Value value, String formula, Look look) {
  public static final CellContent BLANK = new CellContent(Value.BLANK, null, Look.PLAIN);

  /** How a number is shown: what its number format says about its meaning. */
  public enum Look {
    PLAIN,
    PERCENT,
    DATE
  }

  /** Whether it is empty, or typed as blanks only. */
  public boolean isBlank() {
    return formula == null
        && (value.isBlank() || value instanceof Value.Text typed && typed.text().isBlank());
  }

  public boolean isFormula() {
    return formula != null;
  }

  /** The text typed into the cell, or null where it holds anything else. */
  public String typedText() {
    return formula == null && value instanceof Value.Text typed && !typed.text().isBlank()
        ? typed.text()
        : null;
  }
}
