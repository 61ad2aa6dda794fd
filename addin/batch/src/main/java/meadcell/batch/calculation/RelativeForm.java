package meadcell.batch.calculation;

import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;

/**
 * A formula with its relative cell references written as distances, so that a formula copied down a
 * column has one form in all rows: {@code B7*$C$1} in row 7, column C, becomes {@code {0,-1}*$C$1}.
 */
public final class RelativeForm {
  private RelativeForm() {}

  public static String of(String formula, int row, int column) {
    StringBuilder form = new StringBuilder(formula.length() + 16);
    FormulaScanner tokens = new FormulaScanner(formula, Dialect.EXCEL);
    int copied = 0;
    while (tokens.next()) {
      boolean isCell = tokens.kind() == FormulaScanner.Kind.CELL;
      if (isCell || tokens.kind() == FormulaScanner.Kind.ROW) {
        form.append(formula, copied, tokens.start()).append('{');
        distance(form, tokens.isRowFixed(), tokens.row(), row);
        if (isCell) {
          form.append(',');
          distance(form, tokens.isColumnFixed(), tokens.column(), column);
        }
        form.append('}');
        copied = tokens.end();
      }
    }
    return form.append(formula, copied, formula.length()).toString();
  }

  private static void distance(StringBuilder form, boolean fixed, int there, int here) {
    if (fixed) {
      form.append('$').append(there);
    } else {
      form.append(there - here);
    }
  }
}
