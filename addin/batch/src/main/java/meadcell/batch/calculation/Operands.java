package meadcell.batch.calculation;

import org.apache.poi.ss.formula.EvaluationName;
import org.apache.poi.ss.formula.OperationEvaluationContext;
import org.apache.poi.ss.formula.eval.BoolEval;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.MissingArgEval;
import org.apache.poi.ss.formula.eval.NumberEval;
import org.apache.poi.ss.formula.eval.StringEval;
import org.apache.poi.ss.formula.eval.ValueEval;
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

/** The values of a formula's operands, and what its names mean. */
record Operands(OperationEvaluationContext context) {
  /** The value of a token; a reference stays one. */
  ValueEval value(Ptg token) {
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

  static boolean isName(Ptg token) {
    return token instanceof NamePtg || token instanceof NameXPxg;
  }

  /** What a name stands for. */
  Formula meaning(Ptg token) {
    EvaluationName name = definition(token);
    if (name == null || !name.hasFormula()) {
      throw new Unproven("it uses a name that is not defined in this workbook.");
    }
    if (((PoiName) name).moves()) {
      throw new Unproven("its name " + name.getNameText() + " means other cells in other cells.");
    }
    return Formula.of(name.getNameDefinition());
  }

  private EvaluationName definition(Ptg token) {
    return token instanceof NamePtg name
        ? context.getWorkbook().getName(name)
        : context.getWorkbook().getName(((NameXPxg) token).getNameName(), context.getSheetIndex());
  }

  /** The name of a function that is not built in. */
  String name(Formula function) {
    Ptg token = ((Formula.Operand) function).token();
    if (token instanceof NameXPtg name) { // in a formula outside any workbook of the user's
      return context.getWorkbook().resolveNameXText(name);
    }
    return token instanceof NamePtg name
        ? context.getWorkbook().getName(name).getNameText()
        : ((NameXPxg) token).getNameName();
  }
}
