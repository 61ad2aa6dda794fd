package meadcell.calc;

import com.sun.star.uno.Any;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.ResultSpec;

/** Values as the office passes them, to and from the catalogue's. */
final class CellValues {
  private CellValues() {}

  /** Arguments for a function: nothing for what was left out, the rest one after another. */
  static Object[] fromOffice(FunctionSpec function, Object[] arguments) {
    Object[] values = arguments;
    if (function.isVariadic()) {
      int fixed = arguments.length - 1;
      Object[] rest = (Object[]) arguments[fixed];
      values = new Object[fixed + rest.length];
      System.arraycopy(arguments, 0, values, 0, fixed);
      System.arraycopy(rest, 0, values, fixed, rest.length);
    }
    for (int i = 0; i < values.length; i++) {
      values[i] = fromOffice(values[i]);
    }
    return values;
  }

  private static Object fromOffice(Object value) {
    if (value instanceof Double || value instanceof String) {
      return value;
    }
    if (value instanceof Any any) {
      return any.getObject() == null ? null : fromOffice(any.getObject());
    }
    if (value instanceof Object[][] rows) {
      for (Object[] row : rows) {
        for (int i = 0; i < row.length; i++) {
          row[i] = fromOffice(row[i]);
        }
      }
      return rows;
    }
    if (value instanceof Boolean yes) {
      return yes ? 1.0 : 0.0;
    }
    if (value instanceof Number number) {
      return number.doubleValue();
    }
    return value;
  }

  /** A result, shaped as the function's interface says. */
  static Object toOffice(FunctionSpec function, Object result) {
    if (result instanceof Object[][] rows) {
      return cells(rows, function.result().shape() == ResultSpec.Shape.ANY);
    }
    return isTable(function.result().shape()) ? new Object[][] {{result}} : result;
  }

  /** Whether a result of this shape is declared as rows of cells. */
  static boolean isTable(ResultSpec.Shape shape) {
    return switch (shape) {
      case ROW, COLUMN, TABLE -> true;
      case NUMBER, TEXT, ANY -> false;
    };
  }

  /** Rows of cells; as plain numbers where all are numbers and the type allows it, for speed. */
  private static Object cells(Object[][] rows, boolean mayBePlain) {
    boolean plain = mayBePlain;
    for (Object[] row : rows) {
      for (int i = 0; i < row.length; i++) {
        if (row[i] instanceof Refusal refusal) {
          row[i] = CellError.of(refusal).value();
        } else if (row[i] == null) {
          row[i] = "";
        }
        plain &= row[i] instanceof Double;
      }
    }
    return plain ? numbers(rows) : rows;
  }

  private static double[][] numbers(Object[][] rows) {
    double[][] numbers = new double[rows.length][];
    for (int i = 0; i < rows.length; i++) {
      numbers[i] = new double[rows[i].length];
      for (int j = 0; j < numbers[i].length; j++) {
        numbers[i][j] = (Double) rows[i][j];
      }
    }
    return numbers;
  }
}
