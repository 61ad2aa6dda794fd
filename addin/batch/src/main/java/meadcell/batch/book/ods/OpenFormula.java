package meadcell.batch.book.ods;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;

/**
 * Formulas as OpenDocument stores them, and in A1 notation: {@code of:=SUM([.A1:.B2];[$Log.C3])} is
 * {@code SUM(A1:B2,Log!C3)}; in array constants {@code ;} separates cells and {@code |} rows.
 */
final class OpenFormula {
  private static final String PREFIX = "of:=";
  private static final String SHEET = "('(?:[^']|'')*'|[\\p{L}\\p{N}_.]+)";
  private static final String CELL = "\\$?[A-Za-z]{1,3}\\$?[0-9]{1,7}";
  private static final String COLUMN = "\\$?[A-Za-z]{1,3}";
  private static final String ROW = "\\$?[0-9]{1,7}";

  /**
   * A cell, or a range of cells, columns or rows, on its own sheet, another, or a range of them.
   */
  private static final Pattern REFERENCE =
      Pattern.compile(
          "(?:%s(?::%s)?!)?(?:(%s)(?::(%s))?|(%s):(%s)|(%s):(%s))(?![\\p{L}\\p{N}_.(!])"
              .formatted(SHEET, SHEET, CELL, CELL, COLUMN, COLUMN, ROW, ROW));

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

  /** A formula in A1 notation. */
  static String fromA1(String formula) {
    StringBuilder out = new StringBuilder(PREFIX);
    FormulaScanner tokens = new FormulaScanner(formula, Dialect.EXCEL);
    Matcher reference = REFERENCE.matcher(formula);
    int done = 0;
    while (tokens.next()) {
      boolean isReference =
          switch (tokens.kind()) {
            case CELL, NAME, QUOTED, ROW -> true;
            default -> false;
          };
      if (tokens.start() < done) {
        continue; // a part of what was written already
      }
      if (isReference && reference.region(tokens.start(), formula.length()).lookingAt()) {
        out.append('[').append(stored(reference)).append(']');
        done = reference.end();
      } else {
        out.append(Dialect.OPEN_FORMULA.written(tokens));
      }
    }
    return out.toString();
  }

  /** {@code 'My log'!A1:B2} as {@code $'My log'.A1:.B2}. */
  private static String stored(Matcher reference) {
    int first = 3;
    while (reference.group(first) == null) {
      first += 2;
    }
    String last = reference.group(first + 1);
    return sheet(reference.group(1))
        + "."
        + reference.group(first)
        + (last == null ? "" : ":" + sheet(reference.group(2)) + "." + last);
  }

  private static String sheet(String name) {
    return name == null ? "" : "$" + name;
  }
}
