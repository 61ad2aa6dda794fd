package meadcell.samples.sheet;

import java.util.Map;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.EvaluationException;
import org.apache.poi.ss.formula.eval.NumberEval;
import org.apache.poi.ss.formula.eval.OperandResolver;
import org.apache.poi.ss.formula.functions.FreeRefFunction;
import org.apache.poi.ss.formula.udf.UDFFinder;

/**
 * ERRORTYPE as Calc has it: the number of an error. Here only errors that the file format has can
 * be told apart; Calc has more.
 */
final class OfficeErrors implements UDFFinder {
  private static final String NAME = "_xlfn.ORG.OPENOFFICE.ERRORTYPE";
  private static final Map<ErrorEval, Integer> CODES =
      Map.of(
          ErrorEval.NUM_ERROR, 502,
          ErrorEval.VALUE_INVALID, 519,
          ErrorEval.REF_INVALID, 524,
          ErrorEval.NAME_INVALID, 525,
          ErrorEval.DIV_ZERO, 532,
          ErrorEval.NA, 32767);

  @Override
  public FreeRefFunction findFunction(String name) {
    return NAME.equals(name)
        ? (arguments, context) -> {
          try {
            OperandResolver.getSingleValue(
                arguments[0], context.getRowIndex(), context.getColumnIndex());
            return ErrorEval.NA;
          } catch (EvaluationException e) {
            return new NumberEval(CODES.getOrDefault(e.getErrorEval(), 508));
          }
        }
        : null;
  }
}
