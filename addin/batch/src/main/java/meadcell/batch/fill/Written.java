package meadcell.batch.fill;

import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.Reads;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.report.Report;

/**
 * A cell that a formula was put into.
 *
 * @param found how its place was found
 * @param note how its inputs were read, where that is not plain; empty otherwise
 * @param restore puts back what a person had there; null where nobody had anything
 */
record Written(
    int sheet,
    Place place,
    PlanRow row,
    String found,
    String formula,
    CellContent before,
    String note,
    Runnable restore) {

  Reads.Area area() {
    return Reads.Area.of(sheet, place);
  }

  /** Whether the formula stood there already. */
  boolean isSameFormula() {
    return isSame(formula, before.formula());
  }

  /** Some files keep no blanks between arguments. */
  static boolean isSame(String formula, String stored) {
    return stored != null && formula.replace(" ", "").equals(stored.replace(" ", ""));
  }

  Report.Change changeTo(Value after, BookSheet sheet) {
    return new Report.Change(
        sheet.name(), place, row.result(), found, formula, before.value(), after);
  }
}
