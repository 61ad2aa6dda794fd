package meadcell.batch.calculation;

import java.util.Arrays;
import org.apache.poi.ss.formula.EvaluationWorkbook;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.EvaluationException;

/**
 * What the area of one argument held when it was read last. In a column of formulas the next one
 * often takes the same area and a row more, and only that row is read then.
 */
final class GrowingArea {
  private record Start(
      EvaluationWorkbook workbook, int sheet, int row, int firstColumn, int lastColumn) {}

  private Start start;
  private Object[][] rows = {};

  /** The rows of an area of a workbook whose cells never change. */
  Object[][] rows(EvaluationWorkbook workbook, AreaEval area) throws EvaluationException {
    Start asked =
        new Start(
            workbook,
            area.getFirstSheetIndex(),
            area.getFirstRow(),
            area.getFirstColumn(),
            area.getLastColumn());
    int known = asked.equals(start) ? Math.min(rows.length, area.getHeight()) : 0;
    Object[][] all = Arrays.copyOf(rows, area.getHeight());
    for (int i = known; i < all.length; i++) {
      all[i] = CellValues.row(area, i);
    }
    start = asked;
    rows = all;
    return all;
  }
}
