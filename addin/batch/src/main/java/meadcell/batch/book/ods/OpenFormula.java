package meadcell.batch.book.ods;

import java.util.regex.Pattern;

/**
 * Formulas as OpenDocument stores them, and in A1 notation: {@code of:=SUM([.A1:.B2];[$Log.C3])} is
 * {@code SUM(A1:B2,Log!C3)}; in array constants {@code ;} separates cells and {@code |} rows.
 */
final class OpenFormula {
  private static final String PREFIX = "of:=";
  private static final Pattern CELL = Pattern.compile("\\$?[A-Za-z]{1,3}\\$?[1-9][0-9]{0,6}");

  private OpenFormula() {}

  static String toA1(String stored) {
    String formula = stored.substring(stored.indexOf('=') + 1);
    StringBuilder out = new StringBuilder(formula.length());
    boolean text = false;
    int braces = 0;
    for (int i = 0; i < formula.length(); i++) {
      char c = formula.charAt(i);
      if (c == '"') {
        text = !text;
      }
      if (text || c == '"') {
        out.append(c);
      } else if (c == '[') {
        int close = closing(formula, i);
        out.append(reference(formula.substring(i + 1, close)));
        i = close;
      } else if (c == ';') {
        out.append(',');
      } else if (c == '|' && braces > 0) {
        out.append(';');
      } else {
        braces += c == '{' ? 1 : c == '}' ? -1 : 0;
        out.append(c);
      }
    }
    return out.toString();
  }

  /** The bracket that ends a reference; sheet names in quotes may hold brackets themselves. */
  private static int closing(String formula, int open) {
    boolean quoted = false;
    for (int i = open + 1; i < formula.length(); i++) {
      char c = formula.charAt(i);
      quoted ^= c == '\'';
      if (c == ']' && !quoted) {
        return i;
      }
    }
    return formula.length() - 1;
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
    String end = colon < 0 ? "" : ":" + last.substring(lastDot(last) + 1);
    return (sheet.isEmpty() ? "" : sheet + "!") + cell + end;
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
    int braces = 0;
    int at = 0;
    while (at < formula.length()) {
      char c = formula.charAt(at);
      if (c == '"') {
        int end = formula.indexOf('"', at + 1) + 1;
        int stop = end == 0 ? formula.length() : end;
        out.append(formula, at, stop);
        at = stop;
      } else if (isWordPart(c)) {
        at = word(formula, at, out);
      } else {
        braces += c == '{' ? 1 : c == '}' ? -1 : 0;
        out.append(c == ',' ? ';' : c == ';' && braces > 0 ? '|' : c);
        at++;
      }
    }
    return out.toString();
  }

  private static int word(String formula, int at, StringBuilder out) {
    int end = at;
    while (end < formula.length() && isWordPart(formula.charAt(end))) {
      end++;
    }
    String word = formula.substring(at, end);
    boolean isCell = CELL.matcher(word).matches();
    boolean isCall = end < formula.length() && formula.charAt(end) == '(';
    if (!isCell || isCall) {
      out.append(word);
      return end;
    }
    out.append("[.").append(word);
    if (end < formula.length() && formula.charAt(end) == ':') {
      int last = end + 1;
      while (last < formula.length() && isWordPart(formula.charAt(last))) {
        last++;
      }
      out.append(":.").append(formula, end + 1, last);
      end = last;
    }
    out.append(']');
    return end;
  }

  private static boolean isWordPart(char c) {
    return Character.isLetterOrDigit(c) || c == '$' || c == '_' || c == '.';
  }
}
