package meadcell.batch.calculation;

import meadcell.catalogue.Numbers;
import meadcell.catalogue.Refusal;
import org.apache.poi.ss.formula.CacheAreaEval;
import org.apache.poi.ss.formula.TwoDEval;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.BlankEval;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.EvaluationException;
import org.apache.poi.ss.formula.eval.MissingArgEval;
import org.apache.poi.ss.formula.eval.NumberEval;
import org.apache.poi.ss.formula.eval.NumericValueEval;
import org.apache.poi.ss.formula.eval.RefEval;
import org.apache.poi.ss.formula.eval.StringEval;
import org.apache.poi.ss.formula.eval.ValueEval;

/**
 * POI's values as the catalogue takes them, and back. A blank single cell is 0, a blank in a range
 * an empty text, TRUE is 1: as Calc hands them to its add-ins.
 */
final class CellValues {
  private CellValues() {}

  /** {@code Double}, {@code String}, rows of them, or null for an argument left out. */
  static Object fromEval(ValueEval eval) throws EvaluationException {
    if (eval instanceof MissingArgEval) {
      return null;
    }
    if (eval instanceof TwoDEval range) {
      Object[][] rows = new Object[range.getHeight()][];
      for (int i = 0; i < rows.length; i++) {
        rows[i] = row(range, i);
      }
      return rows;
    }
    return single(
        eval instanceof RefEval ref ? ref.getInnerValueEval(ref.getFirstSheetIndex()) : eval);
  }

  static Object[] row(TwoDEval range, int row) throws EvaluationException {
    Object[] cells = new Object[range.getWidth()];
    for (int j = 0; j < cells.length; j++) {
      ValueEval cell = range.getValue(row, j);
      cells[j] = cell instanceof BlankEval ? "" : single(cell);
    }
    return cells;
  }

  /** For a required text: a blank is empty, a number its digits, as Calc does. */
  static Object text(ValueEval eval) throws EvaluationException {
    ValueEval one =
        eval instanceof RefEval ref ? ref.getInnerValueEval(ref.getFirstSheetIndex()) : eval;
    if (one instanceof BlankEval) {
      return "";
    }
    Object value = fromEval(eval);
    return value instanceof Double number ? Numbers.text(number, 15) : value;
  }

  private static Object single(ValueEval eval) throws EvaluationException {
    if (eval instanceof ErrorEval error) {
      throw new EvaluationException(error);
    }
    if (eval instanceof NumericValueEval number) {
      return number.getNumberValue();
    }
    if (eval instanceof StringEval text) {
      return text.getStringValue();
    }
    if (eval instanceof BlankEval || eval instanceof MissingArgEval) {
      return 0.0;
    }
    throw new EvaluationException(ErrorEval.VALUE_INVALID);
  }

  /**
   * A result; rows become an area whose first cell is the calling one, so that a plain cell shows
   * the first element.
   */
  static ValueEval toEval(Object value, int row, int column) {
    if (value instanceof Object[][] rows) {
      int width = rows.length == 0 ? 0 : rows[0].length;
      if (width == 0) {
        return BlankEval.instance;
      }
      ValueEval[] cells = new ValueEval[rows.length * width];
      for (int i = 0; i < cells.length; i++) {
        cells[i] = single(rows[i / width][i % width]);
      }
      return area(cells, rows.length, width, row, column);
    }
    return single(value);
  }

  static ValueEval area(ValueEval[] cells, int height, int width, int row, int column) {
    return new CacheAreaEval(row, column, row + height - 1, column + width - 1, cells);
  }

  private static ValueEval single(Object value) {
    if (value instanceof Double number) {
      return new NumberEval(number);
    }
    if (value instanceof String text) {
      return new StringEval(text);
    }
    if (value instanceof Refusal refusal) {
      return SheetError.of(refusal);
    }
    return BlankEval.instance;
  }

  /** What a person sees of an evaluated area or value: errors inside an area as their own text. */
  static Object shown(ValueEval eval) {
    if (eval instanceof AreaEval area) {
      Object[][] rows = new Object[area.getHeight()][area.getWidth()];
      for (int i = 0; i < rows.length; i++) {
        for (int j = 0; j < rows[i].length; j++) {
          ValueEval cell = area.getRelativeValue(i, j);
          rows[i][j] = cell instanceof BlankEval ? "" : shown(cell);
        }
      }
      return rows;
    }
    if (eval instanceof RefEval ref) {
      return shown(ref.getInnerValueEval(ref.getFirstSheetIndex()));
    }
    if (eval instanceof ErrorEval error) {
      return error.getErrorString();
    }
    return eval instanceof NumericValueEval number
        ? (Object) number.getNumberValue()
        : eval instanceof StringEval text ? text.getStringValue() : 0.0;
  }
}
