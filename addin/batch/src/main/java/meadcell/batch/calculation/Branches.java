package meadcell.batch.calculation;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Predicate;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.BlankEval;
import org.apache.poi.ss.formula.eval.BoolEval;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.EvaluationException;
import org.apache.poi.ss.formula.eval.MissingArgEval;
import org.apache.poi.ss.formula.eval.OperandResolver;
import org.apache.poi.ss.formula.eval.ValueEval;

/** Functions that compute only what they choose: IF, CHOOSE, IFERROR and their like. */
record Branches(Evaluation evaluation, Elements elements) {
  /** The chosen branch; null where all arguments are computed, as by other functions. */
  ValueEval of(String name, List<Formula> arguments, boolean array) {
    return switch (name.toUpperCase(Locale.ROOT)) {
      case "IF" -> choose(arguments, array);
      case "CHOOSE" -> select(arguments, array);
      case "IFERROR" -> unless("IFERROR", arguments, array, error -> true);
      case "IFNA", "_XLFN.IFNA" -> unless("IFNA", arguments, array, error -> error == ErrorEval.NA);
      default -> null;
    };
  }

  /** IF: the branch that is not taken is not computed, except of arrays. */
  private ValueEval choose(List<Formula> arguments, boolean array) {
    Library.Entry function = evaluation.library().find("IF");
    ValueEval condition = evaluation.value(arguments.get(0), array);
    Function<Boolean, ValueEval> branch =
        truth -> {
          int index = truth ? 1 : 2;
          ValueEval value =
              index < arguments.size()
                  ? evaluation.value(arguments.get(index), array)
                  : BoolEval.FALSE;
          return value == MissingArgEval.instance ? BlankEval.instance : value;
        };
    evaluation.check(function, arguments, new ValueEval[] {condition});
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
    ValueEval index = evaluation.value(arguments.get(0), array);
    if (index instanceof AreaEval area && (array || Shapes.isComputed(area))) {
      return null;
    }
    evaluation.check(evaluation.library().find("CHOOSE"), arguments, new ValueEval[] {index});
    try {
      double number = OperandResolver.coerceValueToDouble(elements.single(index));
      boolean exists = number >= 1 && number < arguments.size();
      return exists
          ? evaluation.value(arguments.get((int) number), array)
          : ErrorEval.VALUE_INVALID;
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }

  private Object truth(ValueEval condition) {
    try {
      ValueEval single = elements.single(condition);
      Boolean truth = OperandResolver.coerceValueToBoolean(single, false);
      return truth != null && truth;
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }

  /** IFERROR and its like. */
  private ValueEval unless(
      String name, List<Formula> arguments, boolean array, Predicate<ErrorEval> isMeant) {
    ValueEval value = evaluation.value(arguments.get(0), array);
    evaluation.check(evaluation.library().find(name), arguments, new ValueEval[] {value});
    boolean lifts = value instanceof AreaEval area && (array || Shapes.isComputed(area));
    if (lifts) {
      ValueEval instead = evaluation.value(arguments.get(1), array);
      return elementwise(
          (AreaEval) value,
          List.of(instead),
          cell -> cell instanceof ErrorEval error && isMeant.test(error) ? instead : cell);
    }
    ValueEval single = elements.single(value);
    return single instanceof ErrorEval error && isMeant.test(error)
        ? evaluation.value(arguments.get(1), array)
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
      ValueEval chosen = choice.apply(Elements.element(decides, i / width, i % width));
      results[i] =
          chosen instanceof AreaEval area
              ? Elements.element(area, i / width, i % width)
              : elements.single(chosen);
    }
    return elements.area(results, height, width);
  }
}
