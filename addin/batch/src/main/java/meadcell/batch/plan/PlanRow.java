package meadcell.batch.plan;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * One line of a plan.
 *
 * @param where the plan's own sheet and cell, for messages
 * @param sheet name of a sheet, or a pattern with {@code *} and {@code ?}
 * @param result header of the column, or label of the cell, to fill
 * @param format number format of the results
 */
public record PlanRow(
    String where, String sheet, String result, PlanFormula formula, String format) {

  public boolean isFor(String sheetName) {
    String pattern =
        Pattern.quote(sheet.toLowerCase(Locale.ROOT))
            .replace("*", "\\E.*\\Q")
            .replace("?", "\\E.\\Q");
    return Pattern.matches(pattern, sheetName.toLowerCase(Locale.ROOT));
  }

  /** Whether this line and another can be for the same sheet. */
  boolean mayMeet(PlanRow other) {
    return isPattern() || other.isPattern() || sheet.equalsIgnoreCase(other.sheet);
  }

  private boolean isPattern() {
    return sheet.contains("*") || sheet.contains("?");
  }
}
