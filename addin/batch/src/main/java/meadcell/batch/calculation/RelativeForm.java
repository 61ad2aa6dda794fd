package meadcell.batch.calculation;

/**
 * A formula with its relative cell references written as distances, so that a formula copied down a
 * column has one form in all rows: {@code B7*$C$1} in row 7, column C, becomes {@code {0,-1}*$C$1}.
 */
public final class RelativeForm {
  private final String formula;
  private final int row;
  private final int column;
  private final StringBuilder form;
  private int at;

  private RelativeForm(String formula, int row, int column) {
    this.formula = formula;
    this.row = row;
    this.column = column;
    this.form = new StringBuilder(formula.length() + 16);
  }

  public static String of(String formula, int row, int column) {
    return new RelativeForm(formula, row, column).read();
  }

  private String read() {
    while (at < formula.length()) {
      char c = formula.charAt(at);
      if (c == '"' || c == '\'') {
        copyTo(formula.indexOf(c, at + 1) + 1);
      } else if (isWordPart(c)) {
        word();
      } else {
        form.append(c);
        at++;
      }
    }
    return form.toString();
  }

  private void copyTo(int end) {
    int stop = end <= at ? formula.length() : end;
    form.append(formula, at, stop);
    at = stop;
  }

  private static boolean isWordPart(char c) {
    return c >= 'A' && c <= 'Z'
        || c >= 'a' && c <= 'z'
        || c >= '0' && c <= '9'
        || c == '$'
        || c == '_'
        || c == '.'
        || c == '\\'
        || c > 127;
  }

  /** A name, a number or a reference; only a reference changes. */
  private void word() {
    int end = at;
    while (end < formula.length() && isWordPart(formula.charAt(end))) {
      end++;
    }
    boolean isName = end < formula.length() && "(!".indexOf(formula.charAt(end)) >= 0;
    if (isName || !reference(end)) {
      copyTo(end);
    }
  }

  /** Reads {@code $}, one to three letters, {@code $}, up to seven digits, and nothing more. */
  private boolean reference(int end) {
    int i = at;
    boolean fixedColumn = formula.charAt(i) == '$';
    i += fixedColumn ? 1 : 0;
    int there = 0;
    int letters = i;
    while (i < end && i - letters < 3 && Character.isLetter(formula.charAt(i))) {
      there = 26 * there + Character.toUpperCase(formula.charAt(i++)) - 'A' + 1;
    }
    boolean fixedRow = i < end && formula.charAt(i) == '$';
    int digits = i + (fixedRow ? 1 : 0);
    if (i == letters || digits == end || end - digits > 7 || formula.charAt(digits) == '0') {
      return false;
    }
    int line = 0;
    for (int d = digits; d < end; d++) {
      int digit = formula.charAt(d) - '0';
      if (digit < 0 || digit > 9) {
        return false;
      }
      line = 10 * line + digit;
    }
    form.append('{');
    distance(fixedRow, line - 1, row);
    form.append(',');
    distance(fixedColumn, there - 1, column);
    form.append('}');
    at = end;
    return true;
  }

  private void distance(boolean fixed, int there, int here) {
    if (fixed) {
      form.append('$').append(there);
    } else {
      form.append(there - here);
    }
  }
}
