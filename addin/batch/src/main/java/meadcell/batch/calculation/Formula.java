package meadcell.batch.calculation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.formula.ptg.AbstractFunctionPtg;
import org.apache.poi.ss.formula.ptg.AttrPtg;
import org.apache.poi.ss.formula.ptg.ControlPtg;
import org.apache.poi.ss.formula.ptg.MemAreaPtg;
import org.apache.poi.ss.formula.ptg.MemErrPtg;
import org.apache.poi.ss.formula.ptg.MemFuncPtg;
import org.apache.poi.ss.formula.ptg.OperationPtg;
import org.apache.poi.ss.formula.ptg.ParenthesisPtg;
import org.apache.poi.ss.formula.ptg.PowerPtg;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.ss.formula.ptg.UnaryMinusPtg;
import org.apache.poi.ss.formula.ptg.UnaryPlusPtg;

/**
 * A formula as a tree. POI reads {@code -2^2} as {@code -(2^2)}; here a sign binds tighter than
 * {@code ^}, as in every spreadsheet program.
 */
sealed interface Formula {
  /** A number, text, reference, name or array constant. */
  record Operand(Ptg token) implements Formula {}

  /** What stands in brackets. */
  record Bracketed(Formula inner) implements Formula {}

  /** A function or an operator with its arguments; an add-in's name is its first argument. */
  record Call(OperationPtg token, List<Formula> arguments) implements Formula {}

  static Formula of(Ptg[] tokens) {
    Deque<Formula> stack = new ArrayDeque<>();
    for (Ptg token : tokens) {
      if (token instanceof ParenthesisPtg) {
        stack.push(new Bracketed(stack.pop()));
      } else if (token instanceof AttrPtg attribute && attribute.isSum()) {
        stack.push(new Call(org.apache.poi.ss.formula.ptg.FuncVarPtg.SUM, List.of(stack.pop())));
      } else if (token instanceof OperationPtg operation && !isNote(token)) {
        stack.push(call(operation, stack));
      } else if (!(token instanceof ControlPtg) && !isNote(token)) {
        stack.push(new Operand(token));
      }
    }
    if (stack.size() != 1) {
      throw new FormulaParseException("it is not one expression");
    }
    return stack.pop();
  }

  private static boolean isNote(Ptg token) {
    return token instanceof MemFuncPtg || token instanceof MemAreaPtg || token instanceof MemErrPtg;
  }

  private static Formula call(OperationPtg token, Deque<Formula> stack) {
    List<Formula> arguments = new ArrayList<>();
    for (int i = 0; i < token.getNumberOfOperands(); i++) {
      arguments.add(0, stack.pop());
    }
    if (token instanceof UnaryMinusPtg || token instanceof UnaryPlusPtg) {
      return signed(token, arguments.get(0));
    }
    return token instanceof PowerPtg
        ? power(arguments.get(0), arguments.get(1))
        : new Call(token, arguments);
  }

  private static boolean isPower(Formula formula) {
    return formula instanceof Call call && call.token instanceof PowerPtg;
  }

  /** The sign belongs to the base of the first power. */
  private static Formula signed(OperationPtg sign, Formula formula) {
    if (!isPower(formula)) {
      return new Call(sign, List.of(formula));
    }
    Call power = (Call) formula;
    return new Call(
        power.token, List.of(signed(sign, power.arguments.get(0)), power.arguments.get(1)));
  }

  /** {@code a^-b^c} is {@code (a^-b)^c}. */
  private static Formula power(Formula base, Formula exponent) {
    if (!isPower(exponent)) {
      return new Call(PowerPtg.instance, List.of(base, exponent));
    }
    List<Formula> inner = ((Call) exponent).arguments;
    return new Call(PowerPtg.instance, List.of(power(base, inner.get(0)), inner.get(1)));
  }

  /** Whether the call is of one of the spreadsheet's own functions or operators. */
  static boolean isBuiltIn(OperationPtg token) {
    return !(token instanceof AbstractFunctionPtg function) || function.getFunctionIndex() != 255;
  }
}
