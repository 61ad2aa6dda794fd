package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;

/**
 * Formulas with their relative cell references written as distances, so that a formula copied down
 * a column has one form in all rows: {@code B7*$C$1} in row 7, column C, becomes {@code
 * {0,-1}*$C$1}. Such a copy is known by the last formula of its column, and not taken apart again.
 */
public final class RelativeForms {
  private final Map<Integer, Copied> last = new HashMap<>();

  public String of(String formula, int row, int column) {
    Copied copied = last.get(column);
    if (copied == null || !copied.isAlso(formula, row)) {
      copied = Copied.of(formula, row, column);
      last.put(column, copied);
    }
    return copied.form;
  }

  /**
   * A form, and how to know its formula in another row of the same column.
   *
   * @param between what stands before each relative row, and behind the last
   * @param distances how far down each relative row is
   */
  private record Copied(String form, List<String> between, List<Integer> distances) {

    static Copied of(String formula, int row, int column) {
      StringBuilder form = new StringBuilder(formula.length() + 16);
      List<String> between = new ArrayList<>();
      List<Integer> distances = new ArrayList<>();
      FormulaScanner tokens = new FormulaScanner(formula, Dialect.EXCEL);
      int copied = 0;
      int known = 0;
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
          if (!tokens.isRowFixed()) {
            int digits = Integer.toString(tokens.row() + 1).length();
            between.add(formula.substring(known, copied - digits));
            distances.add(tokens.row() - row);
            known = copied;
          }
        }
      }
      between.add(formula.substring(known));
      return new Copied(
          form.append(formula, copied, formula.length()).toString(), between, distances);
    }

    private static void distance(StringBuilder form, boolean fixed, int there, int here) {
      if (fixed) {
        form.append('$').append(there);
      } else {
        form.append(there - here);
      }
    }

    boolean isAlso(String formula, int row) {
      int at = 0;
      for (int i = 0; i < distances.size(); i++) {
        int number = at + between.get(i).length();
        int end = endOfNumber(formula, number, row + distances.get(i) + 1);
        if (end < 0 || !formula.startsWith(between.get(i), at)) {
          return false;
        }
        at = end;
      }
      String rest = between.get(distances.size());
      return formula.length() - at == rest.length() && formula.startsWith(rest, at);
    }

    /** Where a number ends, written without zeros before it; -1 if it does not stand there. */
    private static int endOfNumber(String formula, int start, int number) {
      int at = start;
      int read = 0;
      while (at < formula.length() && isDigit(formula.charAt(at)) && read < number) {
        read = 10 * read + formula.charAt(at++) - '0';
      }
      return read == number && at > start && formula.charAt(start) != '0' ? at : -1;
    }

    private static boolean isDigit(char c) {
      return c >= '0' && c <= '9';
    }
  }
}
