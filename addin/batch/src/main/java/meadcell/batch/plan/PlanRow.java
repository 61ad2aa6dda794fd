package meadcell.batch.plan;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * One line of a plan.
 *
 * @param where the plan's own sheet and cell, for messages
 * @param workbook name of a workbook's file, or a pattern; empty for all
 * @param sheet name of a sheet, or a pattern with {@code *} and {@code ?}
 * @param result header of the column, or label of the cell, to fill
 * @param format number format of the results
 */
public record PlanRow(
    String where,
    String workbook,
    String sheet,
    String result,
    PlanFormula formula,
    String format) {

  @Override
  public boolean equals(Object object) {
    return object instanceof PlanRow other
        && where.equals(other.where)
        && workbook.equals(other.workbook)
        && sheet.equals(other.sheet)
        && result.equals(other.result)
        && formula.equals(other.formula)
        && format.equals(other.format);
  }

  @Override
  public int hashCode() {
    return 31 * where.hashCode() + result.hashCode();
  }

  public boolean isFor(String sheetName) {
    return fits(sheet, sheetName);
  }

  boolean isForWorkbook(String name) {
    return workbook.isEmpty() || fits(workbook, name);
  }

  private static boolean fits(String written, String name) {
    String pattern =
        Pattern.quote(written.toLowerCase(Locale.ROOT))
            .replace("*", "\\E.*\\Q")
            .replace("?", "\\E.\\Q");
    return Pattern.matches(pattern, name.toLowerCase(Locale.ROOT));
  }

  /** Whether this line and another can be for the same sheet. */
  boolean mayMeet(PlanRow other) {
    boolean areApart =
        !workbook.isEmpty() && !other.workbook.isEmpty() && !workbook.equals(other.workbook);
    return !areApart && (isPattern() || other.isPattern() || sheet.equalsIgnoreCase(other.sheet));
  }

  private boolean isPattern() {
    return sheet.contains("*") || sheet.contains("?");
  }
}
