package meadcell.batch.fill;

import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.report.Report;

/**
 * Writes the cells of one sheet, but none that a person filled.
 *
 * @param overwrite whether those, too
 */
record Cells(BookSheet sheet, int index, OwnCells own, Report report, boolean overwrite) {

  /**
   * Puts a formula where it may stand; null where it may not.
   *
   * @param like the cell that it is to look like
   */
  Written put(PlanRow row, Place place, Place like, String formula, String note, String found) {
    CellContent before = sheet.content(place);
    boolean same = Written.isSame(formula, before.formula());
    boolean isOurs = before.isBlank() || own.isOwn(sheet, place, before);
    boolean free = isOurs || same || overwrite;
    Span array = sheet.array(place);
    boolean isPartOfMore = array != null && !array.first().equals(array.last());
    if (!free || isPartOfMore) {
      return null;
    }
    Runnable restore = isOurs ? null : sheet.keep(place);
    if (!same) {
      sheet.putFormula(place, formula);
      sheet.copyStyle(like, place, row.format());
    }
    return new Written(index, place, row, found, formula, before, note, restore);
  }

  /** Empties a cell of ours; false where it holds something else. */
  boolean clearOwn(PlanRow row, Place place, String found) {
    CellContent before = sheet.content(place);
    if (before.isBlank()) {
      return true;
    }
    if (!own.isOwn(sheet, place, before)) {
      return false;
    }
    report.changed(
        new Report.Change(
            sheet.name(), place, row.result(), found, "", before.value(), Value.BLANK));
    sheet.clear(place);
    return true;
  }

  void leaveEmpty(Place place, String sentence) {
    remark(Report.Code.LEFT_EMPTY, place.a1(), sentence);
    report.notes().mark(sheet, place, sentence);
  }

  void unmark(Place place) {
    report.notes().unmark(sheet, place);
  }

  void remark(Report.Code code, String cell, String sentence) {
    report.remark(code, sheet.name(), cell, "", sentence);
  }
}
