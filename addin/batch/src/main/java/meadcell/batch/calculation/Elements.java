package meadcell.batch.calculation;

import org.apache.poi.ss.formula.CacheAreaEval;
import org.apache.poi.ss.formula.OperationEvaluationContext;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.EvaluationException;
import org.apache.poi.ss.formula.eval.OperandResolver;
import org.apache.poi.ss.formula.eval.ValueEval;

/** Arrays, element by element, as seen from the cell that is computed. */
record Elements(OperationEvaluationContext context) {
  /** An element of an array, whose one row or column is repeated. */
  static ValueEval element(AreaEval area, int row, int column) {
    int r = area.getHeight() == 1 ? 0 : row;
    int c = area.getWidth() == 1 ? 0 : column;
    boolean inside = r < area.getHeight() && c < area.getWidth();
    return inside ? area.getRelativeValue(r, c) : ErrorEval.NA;
  }

  /** An array that was computed. */
  ValueEval area(ValueEval[] cells, int height, int width) {
    int row = context.getRowIndex();
    int column = context.getColumnIndex();
    return new CacheAreaEval(row, column, row + height - 1, column + width - 1, cells);
  }

  /** One value, of an area that of this row or column. */
  ValueEval single(ValueEval value) {
    try {
      return OperandResolver.getSingleValue(value, context.getRowIndex(), context.getColumnIndex());
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }
}
