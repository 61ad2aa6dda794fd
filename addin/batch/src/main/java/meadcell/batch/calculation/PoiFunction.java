package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Kind;
import meadcell.catalogue.Refusal;
import org.apache.poi.ss.formula.EvaluationCell;
import org.apache.poi.ss.formula.EvaluationSheet;
import org.apache.poi.ss.formula.OperationEvaluationContext;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.EvaluationException;
import org.apache.poi.ss.formula.eval.OperandResolver;
import org.apache.poi.ss.formula.eval.ValueEval;
import org.apache.poi.ss.formula.functions.FreeRefFunction;

/**
 * One function in POI's evaluator. A range given to a required single value means this row's cell;
 * in an array formula, one call for each of its cells.
 */
final class PoiFunction implements FreeRefFunction {
  /** A sheet that tells about array formulas without making a cell for the question. */
  interface Arrays {
    boolean isInArray(int row, int column);
  }

  private final FunctionSpec spec;
  private final Consumer<PoiFunctions.Refused> onRefusal;

  /** POI asks for an array formula's result once per cell, always with the same arguments. */
  private final Map<List<Object>, ValueEval> arrayResults = new HashMap<>();

  /** By argument. */
  private final Map<Integer, GrowingArea> areas = new HashMap<>();

  PoiFunction(FunctionSpec spec, Consumer<PoiFunctions.Refused> onRefusal) {
    this.spec = spec;
    this.onRefusal = onRefusal;
  }

  void forget() {
    arrayResults.clear();
    areas.clear();
  }

  @Override
  public ValueEval evaluate(ValueEval[] args, OperationEvaluationContext ec) {
    if (!isInArray(ec)) {
      return call(intersected(args, ec), ec);
    }
    List<Object> key = key(args);
    ValueEval known = arrayResults.get(key);
    if (known == null) {
      known = arrayCall(args, ec);
      arrayResults.put(key, known);
    }
    return known;
  }

  private static boolean isInArray(OperationEvaluationContext ec) {
    EvaluationSheet sheet = ec.getWorkbook().getSheet(ec.getSheetIndex());
    if (sheet instanceof Arrays known) {
      return known.isInArray(ec.getRowIndex(), ec.getColumnIndex());
    }
    EvaluationCell cell = sheet.getCell(ec.getRowIndex(), ec.getColumnIndex());
    return cell != null && cell.isPartOfArrayFormulaGroup();
  }

  private ValueEval call(ValueEval[] args, OperationEvaluationContext ec) {
    Object[] values = new Object[args.length];
    try {
      for (int i = 0; i < args.length; i++) {
        values[i] = isRequiredText(i) ? CellValues.text(args[i]) : value(i, args[i], ec);
      }
      return CellValues.toEval(spec.call(values), ec.getRowIndex(), ec.getColumnIndex());
    } catch (EvaluationException e) {
      return e.getErrorEval();
    } catch (Refusal refusal) {
      onRefusal.accept(
          new PoiFunctions.Refused(
              ec.getSheetIndex(), ec.getRowIndex(), ec.getColumnIndex(), spec.name(), refusal));
      ErrorEval error = SheetError.of(refusal);
      return spec.result().isScalar()
          ? error
          : new RefusedArea(error, ec.getRowIndex(), ec.getColumnIndex());
    }
  }

  private Object value(int index, ValueEval arg, OperationEvaluationContext ec)
      throws EvaluationException {
    boolean standsStill = ec.getWorkbook() instanceof PoiWorkbook;
    return standsStill && arg instanceof AreaEval area && area.getFirstSheetIndex() >= 0
        ? areas.computeIfAbsent(index, i -> new GrowingArea()).rows(ec.getWorkbook(), area)
        : CellValues.fromEval(arg);
  }

  private boolean isRequiredSingle(int index) {
    return index < spec.required() && spec.args().get(index).kind().isScalar();
  }

  private boolean isRequiredText(int index) {
    return isRequiredSingle(index) && spec.args().get(index).kind() != Kind.NUMBER;
  }

  private ValueEval[] intersected(ValueEval[] args, OperationEvaluationContext ec) {
    ValueEval[] values = new ValueEval[args.length];
    for (int i = 0; i < values.length; i++) {
      boolean isMeantInPart = isRequiredSingle(i) && args[i] instanceof AreaEval;
      values[i] = isMeantInPart ? ofThisRow((AreaEval) args[i], ec) : args[i];
    }
    return values;
  }

  private static ValueEval ofThisRow(AreaEval area, OperationEvaluationContext ec) {
    try {
      return OperandResolver.chooseSingleElementFromArea(
          area, ec.getRowIndex(), ec.getColumnIndex());
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }

  private ValueEval arrayCall(ValueEval[] args, OperationEvaluationContext ec) {
    int height = 1;
    int width = 1;
    for (int i = 0; i < args.length; i++) {
      if (isRequiredSingle(i) && args[i] instanceof AreaEval area) {
        height = Math.max(height, area.getHeight());
        width = Math.max(width, area.getWidth());
      }
    }
    if (height == 1 && width == 1) {
      return call(intersected(args, ec), ec);
    }
    ValueEval[] results = new ValueEval[height * width];
    for (int i = 0; i < results.length; i++) {
      results[i] = call(element(args, i / width, i % width), ec);
    }
    return CellValues.area(results, height, width, ec.getRowIndex(), ec.getColumnIndex());
  }

  /** The arguments of one cell; a single row or column serves all. */
  private ValueEval[] element(ValueEval[] args, int row, int column) {
    ValueEval[] values = args.clone();
    for (int i = 0; i < values.length; i++) {
      if (isRequiredSingle(i) && values[i] instanceof AreaEval area) {
        int r = area.getHeight() == 1 ? 0 : row;
        int c = area.getWidth() == 1 ? 0 : column;
        boolean inside = r < area.getHeight() && c < area.getWidth();
        values[i] = inside ? area.getRelativeValue(r, c) : ErrorEval.NA;
      }
    }
    return values;
  }

  /** What the arguments are, cheaply: a range of the workbook by its place, all else by value. */
  private static List<Object> key(ValueEval[] args) {
    List<Object> key = new ArrayList<>();
    for (ValueEval arg : args) {
      if (arg instanceof AreaEval area && area.getFirstSheetIndex() >= 0) {
        key.add(area.getFirstSheetIndex());
        key.add(List.of(area.getFirstRow(), area.getFirstColumn()));
        key.add(List.of(area.getLastRow(), area.getLastColumn()));
      } else if (CellValues.shown(arg) instanceof Object[][] rows) {
        key.add(java.util.Arrays.stream(rows).map(java.util.Arrays::asList).toList());
      } else {
        key.add(List.of(arg.getClass(), CellValues.shown(arg)));
      }
    }
    return key;
  }
}
