package meadcell.formula;

/** The ways of writing a formula. They differ in their separators and in how cells are named. */
public enum Dialect {
  /** As Calc shows it: {@code SUM(A1;$Log.B2;{1;2|3;4})}. */
  CALC(";", ';', '|'),

  /** As Excel's files and Apache POI have it: {@code SUM(A1,Log!B2,{1,2;3,4})}. */
  EXCEL(",", ',', ';'),

  /**
   * As OpenDocument stores it behind its prefix: {@code SUM([.A1];[$Log.B2];{1;2|3;4})}
   * (OpenDocument 1.3 part 4).
   */
  OPEN_FORMULA(";", ';', '|'),

  /**
   * As people type it into plans and terminals: {@code SUM([Header];{Label};{1,2;3,4})}, with
   * {@code ;} or {@code ,} between arguments.
   */
  PLAN(";,", ',', ';');

  private final String separators;
  private final char cell;
  private final char row;

  Dialect(String separators, char cell, char row) {
    this.separators = separators;
    this.cell = cell;
    this.row = row;
  }

  boolean separates(char c) {
    return separators.indexOf(c) >= 0;
  }

  /** The sign between the cells of an array constant. */
  char cell() {
    return cell;
  }

  /** The sign between the rows of an array constant. */
  char row() {
    return row;
  }

  /**
   * {@return a token as this dialect writes it; names of cells stay as they are}
   *
   * @param token the token, of any dialect
   */
  public String written(FormulaScanner token) {
    return switch (token.kind()) {
      case SEPARATOR -> separators.substring(0, 1);
      case ARRAY_CELL -> String.valueOf(cell);
      case ARRAY_ROW -> String.valueOf(row);
      default -> token.text();
    };
  }
}
