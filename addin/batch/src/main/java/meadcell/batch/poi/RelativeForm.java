package meadcell.batch.poi;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.util.CellReference;

/**
 * A formula with its relative cell references written as distances, so that a formula copied down a
 * column has one form in all rows: {@code B7*$C$1} in row 7, column C, becomes {@code {0,-1}*$C$1}.
 */
public final class RelativeForm {
  /** Texts, quoted sheet names and longer names are matched first, so that they stay whole. */
  private static final Pattern TOKEN =
      Pattern.compile(
          "\"[^\"]*\"|'[^']*'"
              + "|(?<![A-Za-z0-9_.$\\\\])(\\$?)([A-Za-z]{1,3})(\\$?)([1-9][0-9]{0,6})"
              + "(?![A-Za-z0-9_.(!])"
              + "|[A-Za-z_\\\\][A-Za-z0-9_.]*");

  private RelativeForm() {}

  public static String of(String formula, int row, int column) {
    Matcher token = TOKEN.matcher(formula);
    StringBuilder form = new StringBuilder(formula.length() + 16);
    int from = 0;
    while (token.find()) {
      if (token.group(4) != null) {
        form.append(formula, from, token.start()).append('{');
        int r = Integer.parseInt(token.group(4)) - 1;
        form.append(token.group(3).isEmpty() ? r - row : "$" + r).append(',');
        int c = CellReference.convertColStringToIndex(token.group(2));
        form.append(token.group(1).isEmpty() ? c - column : "$" + c).append('}');
        from = token.end();
      }
    }
    return form.append(formula, from, formula.length()).toString();
  }
}
