package meadcell.batch.book.ods;

import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;

/**
 * Formulas as OpenDocument stores them, and in A1 notation: {@code of:=SUM([.A1:.B2];[$Log.C3])} is
 * {@code SUM(A1:B2,Log!C3)}; in array constants {@code ;} separates cells and {@code |} rows.
 */
final class OpenFormula {
  private static final String PREFIX = "of:=";

  private OpenFormula() {}

  static String toA1(String stored) {
    String formula = stored.substring(stored.indexOf('=') + 1);
    StringBuilder out = new StringBuilder(formula.length());
    FormulaScanner tokens = new FormulaScanner(formula, Dialect.OPEN_FORMULA);
    while (tokens.next()) {
      boolean isReference = tokens.kind() == FormulaScanner.Kind.BRACKETED;
      String other =
          switch (tokens.text()) {
            case "!" -> " "; // what two areas share
            case "~" -> ","; // two areas together
            default -> Dialect.EXCEL.written(tokens);
          };
      out.append(isReference ? reference(tokens.inside()) : other);
    }
    return out.toString();
  }

  /** {@code $'My log'.A1:.B2} as {@code 'My log'!A1:B2}. */
  private static String reference(String stored) {
    int colon = outsideQuotes(stored, ':');
    String first = colon < 0 ? stored : stored.substring(0, colon);
    int dot = lastDot(first);
    String sheet = first.substring(0, Math.max(0, dot));
    sheet = sheet.startsWith("$") ? sheet.substring(1) : sheet;
    String cell = first.substring(dot + 1);
    String last = colon < 0 ? "" : stored.substring(colon + 1);
    int lastDot = lastDot(last);
    String lastSheet = last.substring(last.startsWith("$") ? 1 : 0, Math.max(0, lastDot));
    String end = colon < 0 ? "" : ":" + last.substring(lastDot + 1);
    String sheets =
        lastSheet.isEmpty() || lastSheet.equals(sheet) ? sheet : sheet + ":" + lastSheet;
    return (sheets.isEmpty() ? "" : sheets + "!") + cell + end;
  }

  private static int lastDot(String reference) {
    return reference.lastIndexOf('.');
  }

  private static int outsideQuotes(String text, char wanted) {
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      quoted ^= text.charAt(i) == '\'';
      if (text.charAt(i) == wanted && !quoted) {
        return i;
      }
    }
    return -1;
  }

  /** A formula in A1 notation with references to its own sheet only. */
  static String fromA1(String formula) {
    StringBuilder out = new StringBuilder(PREFIX);
    FormulaScanner tokens = new FormulaScanner(formula, Dialect.EXCEL);
    boolean isRange = false;
    while (tokens.next()) {
      if (tokens.kind() == FormulaScanner.Kind.CELL) {
        out.append(isRange ? "." : "[.").append(tokens.text());
        isRange = !isRange && tokens.isBefore(':') && isCell(formula.substring(tokens.end() + 1));
        out.append(isRange ? "" : "]");
      } else {
        out.append(Dialect.OPEN_FORMULA.written(tokens));
      }
    }
    return out.toString();
  }

  private static boolean isCell(String rest) {
    FormulaScanner tokens = new FormulaScanner(rest, Dialect.EXCEL);
    return tokens.next() && tokens.kind() == FormulaScanner.Kind.CELL;
  }
}
