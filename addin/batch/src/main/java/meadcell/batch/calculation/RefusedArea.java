package meadcell.batch.calculation;

import org.apache.poi.ss.formula.TwoDEval;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.AreaEvalBase;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.ValueEval;

/**
 * The refused result of a function that gives several cells: its error in each of them. POI's INDEX
 * and its like stop at a plain error instead of passing it on.
 */
final class RefusedArea extends AreaEvalBase {
  private static final int ROWS = 64;
  private static final int COLUMNS = 16;

  private final ErrorEval error;

  RefusedArea(ErrorEval error, int row, int column) {
    super(row, column, row + ROWS - 1, column + COLUMNS - 1);
    this.error = error;
  }

  ErrorEval error() {
    return error;
  }

  @Override
  public ValueEval getRelativeValue(int row, int column) {
    return error;
  }

  @Override
  public ValueEval getRelativeValue(int sheet, int row, int column) {
    return error;
  }

  @Override
  public AreaEval offset(int firstRow, int lastRow, int firstColumn, int lastColumn) {
    return this;
  }

  @Override
  public TwoDEval getRow(int row) {
    return this;
  }

  @Override
  public TwoDEval getColumn(int column) {
    return this;
  }
}
