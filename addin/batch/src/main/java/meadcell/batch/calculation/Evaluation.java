package meadcell.batch.calculation;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Supplier;
import org.apache.poi.ss.formula.OperationEvaluationContext;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.NotImplementedException;
import org.apache.poi.ss.formula.eval.ValueEval;
import org.apache.poi.ss.formula.functions.FreeRefFunction;
import org.apache.poi.ss.formula.ptg.Ptg;

/**
 * Computes one cell's formula from POI's functions, as an office combines them: a function of
 * single values is computed for every element of an array, and for one of this row or column of an
 * area. Each call must be proven.
 */
final class Evaluation {
  private static final int DEEPEST_NAME = 20;
  private static final Set<String> VOLATILE = Set.of("RAND", "RANDBETWEEN", "NOW", "TODAY");

  /** Without arguments, or always, they ask where the formula stands. */
  private static final Set<String> OF_PLACE_BY_DEFAULT = Set.of("ROW", "COLUMN");

  private static final Set<String> OF_PLACE = Set.of("CELL", "INDIRECT", "SINGLE");

  private final Library library;
  private final PoiFunctions ours;
  private final Unusual unusual;
  private final OperationEvaluationContext context;
  private final Operands operands;
  private final Elements elements;
  private final Branches branches;
  private int depth;
  private boolean hangsOnPlace;

  Evaluation(
      Library library, PoiFunctions ours, Unusual unusual, OperationEvaluationContext context) {
    this.library = library;
    this.ours = ours;
    this.unusual = unusual;
    this.context = context;
    this.operands = new Operands(context);
    this.elements = new Elements(context);
    this.branches = new Branches(this, elements);
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

  /** Whether the result may be another in another cell of the same array formula. */
  boolean hangsOnPlace() {
    return hangsOnPlace;
  }

  ValueEval value(Formula formula, boolean array) {
    if (formula instanceof Formula.Bracketed bracketed) {
      return value(bracketed.inner(), array);
    }
    if (formula instanceof Formula.Operand operand) {
      Ptg token = operand.token();
      return Operands.isName(token) ? named(token, array) : operands.value(token);
    }
    Formula.Call call = (Formula.Call) formula;
    if (Formula.isBuiltIn(call.token())) {
      return call(Library.name(call.token()), call.arguments(), array);
    }
    String name = operands.name(call.arguments().get(0));
    List<Formula> arguments = call.arguments().subList(1, call.arguments().size());
    FreeRefFunction own = ours.findFunction(name);
    if (own == null) {
      return call(name, arguments, array);
    }
    ValueEval[] values = new ValueEval[arguments.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = value(arguments.get(i), array);
    }
    return own.evaluate(values, context);
  }

  private ValueEval named(Ptg token, boolean array) {
    Formula meaning = operands.meaning(token);
    if (++depth > DEEPEST_NAME) {
      throw new Unproven("its names rest on each other too deeply.");
    }
    ValueEval value = value(meaning, array);
    depth--;
    return value;
  }

  Library library() {
    return library;
  }

  private ValueEval call(String name, List<Formula> arguments, boolean array) {
    if (VOLATILE.contains(name.toUpperCase(Locale.ROOT))) {
      throw new Unproven(name + " gives another result at every calculation.");
    }
    ValueEval chosen = branches.of(name, arguments, array);
    if (chosen != null) {
      return chosen;
    }
    Library.Entry function = library.find(name);
    if (function == null) {
      throw Unproven.unknown(name);
    }
    hangsOnPlace |=
        OF_PLACE.contains(function.name())
            || arguments.isEmpty() && OF_PLACE_BY_DEFAULT.contains(function.name());
    ValueEval[] values = new ValueEval[arguments.size()];
    for (int i = 0; i < values.length; i++) {
      char takes = function.takes(i);
      values[i] = value(arguments.get(i), array || takes == 'A');
    }
    return lifted(function, arguments, values, array);
  }

  void check(Library.Entry function, List<Formula> written, ValueEval[] values) {
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
          single[i] = Elements.element((AreaEval) values[i], cell / width, cell % width);
        }
      }
      ValueEval result = plain(function, written, single);
      results[cell] =
          result instanceof AreaEval area ? area.getRelativeValue(0, 0) : elements.single(result);
    }
    return elements.area(results, height, width);
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
}
