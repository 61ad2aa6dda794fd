package meadcell.batch.calculation;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.apache.poi.ss.formula.CacheAreaEval;
import org.apache.poi.ss.formula.EvaluationName;
import org.apache.poi.ss.formula.OperationEvaluationContext;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.BlankEval;
import org.apache.poi.ss.formula.eval.BoolEval;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.EvaluationException;
import org.apache.poi.ss.formula.eval.MissingArgEval;
import org.apache.poi.ss.formula.eval.NotImplementedException;
import org.apache.poi.ss.formula.eval.NumberEval;
import org.apache.poi.ss.formula.eval.OperandResolver;
import org.apache.poi.ss.formula.eval.StringEval;
import org.apache.poi.ss.formula.eval.ValueEval;
import org.apache.poi.ss.formula.functions.FreeRefFunction;
import org.apache.poi.ss.formula.ptg.Area3DPxg;
import org.apache.poi.ss.formula.ptg.AreaPtg;
import org.apache.poi.ss.formula.ptg.ArrayPtg;
import org.apache.poi.ss.formula.ptg.BoolPtg;
import org.apache.poi.ss.formula.ptg.ErrPtg;
import org.apache.poi.ss.formula.ptg.IntPtg;
import org.apache.poi.ss.formula.ptg.MissingArgPtg;
import org.apache.poi.ss.formula.ptg.NamePtg;
import org.apache.poi.ss.formula.ptg.NameXPtg;
import org.apache.poi.ss.formula.ptg.NameXPxg;
import org.apache.poi.ss.formula.ptg.NumberPtg;
import org.apache.poi.ss.formula.ptg.OperandPtg;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.ss.formula.ptg.Ref3DPxg;
import org.apache.poi.ss.formula.ptg.RefPtg;
import org.apache.poi.ss.formula.ptg.StringPtg;

/**
 * Computes one cell's formula from POI's functions, as an office combines them: a function of
 * single values is computed for every element of an array, and for one of this row or column of an
 * area. Each call must be proven.
 */
final class Evaluation {
  private static final int DEEPEST_NAME = 20;
  private static final Set<String> VOLATILE = Set.of("RAND", "RANDBETWEEN", "NOW", "TODAY");

  private final Library library;
  private final PoiFunctions ours;
  private final Unusual unusual;
  private final OperationEvaluationContext context;
  private int depth;

  Evaluation(
      Library library, PoiFunctions ours, Unusual unusual, OperationEvaluationContext context) {
    this.library = library;
    this.ours = ours;
    this.unusual = unusual;
    this.context = context;
  }

  /** The formula's value; of an array, in a plain cell, its first element. */
  ValueEval result(Formula formula, boolean isArray) {
    ValueEval value = value(formula, isArray);
    return !isArray && value instanceof AreaEval area && Shapes.isComputed(area)
        ? area.getRelativeValue(0, 0)
        : value;
  }

  /** The formula's value, of an array all of it. */
  ValueEval whole(Formula formula) {
    return value(formula, false);
  }

  private ValueEval value(Formula formula, boolean array) {
    if (formula instanceof Formula.Bracketed bracketed) {
      return value(bracketed.inner(), array);
    }
    if (formula instanceof Formula.Operand operand) {
      return operand(operand.token(), array);
    }
    Formula.Call call = (Formula.Call) formula;
    if (Formula.isBuiltIn(call.token())) {
      return call(Library.name(call.token()), call.arguments(), array);
    }
    String name = name(call.arguments().get(0));
    List<Formula> arguments = call.arguments().subList(1, call.arguments().size());
    FreeRefFunction own = ours.findFunction(name);
    if (own == null) {
      return call(name, arguments, array);
    }
    ValueEval[] values = arguments.stream().map(a -> value(a, array)).toArray(ValueEval[]::new);
    return own.evaluate(values, context);
  }

  // ---- operands ---------------------------------------------------------------------------

  private ValueEval operand(Ptg token, boolean array) {
    if (token instanceof IntPtg number) {
      return new NumberEval(number.getValue());
    }
    if (token instanceof NumberPtg number) {
      return new NumberEval(number.getValue());
    }
    if (token instanceof StringPtg text) {
      return new StringEval(text.getValue());
    }
    if (token instanceof BoolPtg truth) {
      return BoolEval.valueOf(truth.getValue());
    }
    if (token instanceof ErrPtg error) {
      return ErrorEval.valueOf(error.getErrorCode());
    }
    if (token instanceof MissingArgPtg) {
      return MissingArgEval.instance;
    }
    if (token instanceof ArrayPtg constant) {
      return context.getAreaValueEval(
          0,
          0,
          constant.getRowCount() - 1,
          constant.getColumnCount() - 1,
          constant.getTokenArrayValues());
    }
    if (token instanceof NamePtg || token instanceof NameXPxg) {
      return named(token, array);
    }
    return reference(token);
  }

  private ValueEval reference(Ptg token) {
    if (token instanceof RefPtg ref) {
      return context.getRefEval(ref.getRow(), ref.getColumn());
    }
    if (token instanceof AreaPtg area) {
      return context.getAreaEval(
          area.getFirstRow(), area.getFirstColumn(), area.getLastRow(), area.getLastColumn());
    }
    if (token instanceof Ref3DPxg ref) {
      return context.getRef3DEval(ref);
    }
    if (token instanceof Area3DPxg area) {
      return context.getArea3DEval(area);
    }
    if (token instanceof OperandPtg) { // what is left are references to deleted cells
      return ErrorEval.REF_INVALID;
    }
    throw new Unproven("it holds something that is not read here.");
  }

  private EvaluationName definition(Ptg token) {
    return token instanceof NamePtg name
        ? context.getWorkbook().getName(name)
        : context.getWorkbook().getName(((NameXPxg) token).getNameName(), context.getSheetIndex());
  }

  private ValueEval named(Ptg token, boolean array) {
    EvaluationName name = definition(token);
    if (name == null || !name.hasFormula()) {
      throw new Unproven("it uses a name that is not defined in this workbook.");
    }
    if (((PoiName) name).moves()) {
      throw new Unproven("its name " + name.getNameText() + " means other cells in other cells.");
    }
    if (++depth > DEEPEST_NAME) {
      throw new Unproven("its names rest on each other too deeply.");
    }
    ValueEval value = value(Formula.of(name.getNameDefinition()), array);
    depth--;
    return value;
  }

  private String name(Formula function) {
    Ptg token = ((Formula.Operand) function).token();
    if (token instanceof NameXPtg name) { // in a formula outside any workbook of the user's
      return context.getWorkbook().resolveNameXText(name);
    }
    return token instanceof NamePtg name
        ? context.getWorkbook().getName(name).getNameText()
        : ((NameXPxg) token).getNameName();
  }

  // ---- calls ------------------------------------------------------------------------------

  private ValueEval call(String name, List<Formula> arguments, boolean array) {
    if (VOLATILE.contains(name.toUpperCase(Locale.ROOT))) {
      throw new Unproven(name + " gives another result at every calculation.");
    }
    ValueEval chosen =
        switch (name.toUpperCase(Locale.ROOT)) {
          case "IF" -> choose(arguments, array);
          case "CHOOSE" -> select(arguments, array);
          case "IFERROR" -> unless("IFERROR", arguments, array, error -> true);
          case "IFNA", "_XLFN.IFNA" ->
              unless("IFNA", arguments, array, error -> error == ErrorEval.NA);
          default -> null;
        };
    if (chosen != null) {
      return chosen;
    }
    Library.Entry function = library.find(name);
    if (function == null) {
      throw Unproven.unknown(name);
    }
    ValueEval[] values = new ValueEval[arguments.size()];
    for (int i = 0; i < values.length; i++) {
      char takes = function.takes(i);
      values[i] = value(arguments.get(i), array || takes == 'A');
    }
    return lifted(function, arguments, values, array);
  }

  private void check(Library.Entry function, List<Formula> written, ValueEval[] values) {
    unusual.check(function, values, context.getWorkbook());
    require(
        function,
        Shapes.key(function, values),
        () -> Shapes.of(function, written, values, context.getWorkbook()));
  }

  private void require(Library.Entry function, String key, Supplier<List<String>> words) {
    if (!ours.proven().holds(key, words)) {
      String name = function.isOperator() ? "\"" + function.sign() + "\"" : function.name();
      throw new Unproven(name + " is not known to give the same here as in a spreadsheet program.");
    }
  }

  /** One call for each element of the arrays that stand where single values are taken. */
  private ValueEval lifted(
      Library.Entry function, List<Formula> written, ValueEval[] values, boolean array) {
    int height = 1;
    int width = 1;
    boolean lifts = false;
    for (int i = 0; i < values.length; i++) {
      if (isLifted(function, i, values[i], array)) {
        AreaEval area = (AreaEval) values[i];
        Formula formula = written.get(i);
        int index = i;
        require(function, null, () -> Shapes.each(function, index, values.length, formula, area));
        lifts = true;
        height = Math.max(height, area.getHeight());
        width = Math.max(width, area.getWidth());
      }
    }
    if (!lifts) {
      return plain(function, written, values);
    }
    for (int i = 0; i < values.length; i++) {
      if (isLifted(function, i, values[i], array) && isShort((AreaEval) values[i], height, width)) {
        require(function, null, () -> Shapes.unevenEach(function));
      }
    }
    ValueEval[] results = new ValueEval[height * width];
    for (int cell = 0; cell < results.length; cell++) {
      ValueEval[] single = values.clone();
      for (int i = 0; i < values.length; i++) {
        if (isLifted(function, i, values[i], array)) {
          single[i] = element((AreaEval) values[i], cell / width, cell % width);
        }
      }
      ValueEval result = plain(function, written, single);
      results[cell] =
          result instanceof AreaEval area ? area.getRelativeValue(0, 0) : single(result);
    }
    return area(results, height, width);
  }

  /** Whether an array neither fills a result nor is one row or column that is repeated. */
  private static boolean isShort(AreaEval area, int height, int width) {
    return area.getHeight() != 1 && area.getHeight() != height
        || area.getWidth() != 1 && area.getWidth() != width;
  }

  private static boolean isLifted(
      Library.Entry function, int index, ValueEval value, boolean array) {
    return function.takes(index) == 'V'
        && value instanceof AreaEval area
        && (array || Shapes.isComputed(area));
  }

  private ValueEval plain(Library.Entry function, List<Formula> written, ValueEval[] values) {
    check(function, written, values);
    try {
      return function.body().call(values, context);
    } catch (NotImplementedException e) {
      throw Unproven.unknown(function.name());
    } catch (IllegalArgumentException
        | IllegalStateException
        | ClassCastException
        | IndexOutOfBoundsException
        | NullPointerException
        | ArithmeticException
        | UnsupportedOperationException e) {
      throw new Unproven(function.name() + " cannot be computed from such input here.");
    }
  }

  private static ValueEval element(AreaEval area, int row, int column) {
    int r = area.getHeight() == 1 ? 0 : row;
    int c = area.getWidth() == 1 ? 0 : column;
    boolean inside = r < area.getHeight() && c < area.getWidth();
    return inside ? area.getRelativeValue(r, c) : ErrorEval.NA;
  }

  private ValueEval area(ValueEval[] cells, int height, int width) {
    int row = context.getRowIndex();
    int column = context.getColumnIndex();
    return new CacheAreaEval(row, column, row + height - 1, column + width - 1, cells);
  }

  private ValueEval single(ValueEval value) {
    try {
      return OperandResolver.getSingleValue(value, context.getRowIndex(), context.getColumnIndex());
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }

  // ---- branches ---------------------------------------------------------------------------

  /** IF: the branch that is not taken is not computed, except of arrays. */
  private ValueEval choose(List<Formula> arguments, boolean array) {
    Library.Entry function = library.find("IF");
    ValueEval condition = value(arguments.get(0), array);
    Function<Boolean, ValueEval> branch =
        truth -> {
          int index = truth ? 1 : 2;
          ValueEval value =
              index < arguments.size() ? value(arguments.get(index), array) : BoolEval.FALSE;
          return value == MissingArgEval.instance ? BlankEval.instance : value;
        };
    check(function, arguments, new ValueEval[] {condition});
    boolean lifts = condition instanceof AreaEval area && (array || Shapes.isComputed(area));
    if (!lifts) {
      Object truth = truth(condition);
      return truth instanceof ErrorEval error ? error : branch.apply((Boolean) truth);
    }
    ValueEval yes = branch.apply(true);
    ValueEval no = branch.apply(false);
    return elementwise(
        (AreaEval) condition,
        List.of(yes, no),
        cell -> {
          Object truth = truth(cell);
          return truth instanceof ErrorEval error ? error : (Boolean) truth ? yes : no;
        });
  }

  /** CHOOSE: only what is chosen is computed; null where it chooses several. */
  private ValueEval select(List<Formula> arguments, boolean array) {
    ValueEval index = value(arguments.get(0), array);
    if (index instanceof AreaEval area && (array || Shapes.isComputed(area))) {
      return null;
    }
    check(library.find("CHOOSE"), arguments, new ValueEval[] {index});
    try {
      double number = OperandResolver.coerceValueToDouble(single(index));
      boolean exists = number >= 1 && number < arguments.size();
      return exists ? value(arguments.get((int) number), array) : ErrorEval.VALUE_INVALID;
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }

  private Object truth(ValueEval condition) {
    try {
      ValueEval single =
          OperandResolver.getSingleValue(
              condition, context.getRowIndex(), context.getColumnIndex());
      Boolean truth = OperandResolver.coerceValueToBoolean(single, false);
      return truth != null && truth;
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }

  /** IFERROR and its like. */
  private ValueEval unless(
      String name, List<Formula> arguments, boolean array, Predicate<ErrorEval> isMeant) {
    ValueEval value = value(arguments.get(0), array);
    check(library.find(name), arguments, new ValueEval[] {value});
    boolean lifts = value instanceof AreaEval area && (array || Shapes.isComputed(area));
    if (lifts) {
      ValueEval instead = value(arguments.get(1), array);
      return elementwise(
          (AreaEval) value,
          List.of(instead),
          cell -> cell instanceof ErrorEval error && isMeant.test(error) ? instead : cell);
    }
    ValueEval single = single(value);
    return single instanceof ErrorEval error && isMeant.test(error)
        ? value(arguments.get(1), array)
        : single;
  }

  private ValueEval elementwise(
      AreaEval decides, List<ValueEval> others, Function<ValueEval, ValueEval> choice) {
    int height = decides.getHeight();
    int width = decides.getWidth();
    for (ValueEval other : others) {
      if (other instanceof AreaEval area) {
        height = Math.max(height, area.getHeight());
        width = Math.max(width, area.getWidth());
      }
    }
    ValueEval[] results = new ValueEval[height * width];
    for (int i = 0; i < results.length; i++) {
      ValueEval chosen = choice.apply(element(decides, i / width, i % width));
      results[i] =
          chosen instanceof AreaEval area ? element(area, i / width, i % width) : single(chosen);
    }
    return area(results, height, width);
  }
}
