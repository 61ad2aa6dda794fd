package meadcell.batch.calculation;

import meadcell.batch.book.Value;
import meadcell.catalogue.Refusal;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.usermodel.FormulaError;

/**
 * The error a refusal becomes in a workbook. Workbook files know only these few; the sentence is
 * kept beside them.
 *
 * <table>
 * <caption>Refusals in a workbook</caption>
 * <tr><td>out of range, inconsistent, unknown name, not converged</td><td>{@code #NUM!}</td></tr>
 * <tr><td>wrong kind, wrong count of arguments</td><td>{@code #VALUE!}</td></tr>
 * <tr><td>no solution</td><td>{@code #N/A}</td></tr>
 * </table>
 */
final class SheetError {
  private SheetError() {}

  /** The nearest error that workbook files know; an office has more. */
  static int code(Value.Error error) {
    for (FormulaError known : FormulaError.values()) {
      if (known.getString().equals(error.code())) {
        return known.getCode();
      }
    }
    return FormulaError.VALUE.getCode();
  }

  static ErrorEval of(Refusal refusal) {
    return switch (refusal.kind()) {
      case OUT_OF_RANGE, INCONSISTENT, UNKNOWN_NAME, NOT_CONVERGED -> ErrorEval.NUM_ERROR;
      case WRONG_KIND, WRONG_COUNT -> ErrorEval.VALUE_INVALID;
      case NO_SOLUTION -> ErrorEval.NA;
    };
  }
}
