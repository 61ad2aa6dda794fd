package meadcell.calc;

import java.util.ArrayList;
import java.util.List;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;
import meadcell.formula.FormulaScanner.Kind;

/**
 * A call of one of our functions as it stands in a formula.
 *
 * @param text the whole call
 * @param arguments the text of each argument, empty where it is left out
 */
record CallText(FunctionSpec function, String text, List<String> arguments) {

  /** All calls in a formula, a nested one after the one that holds it. */
  static List<CallText> in(String formula, Catalogue catalogue) {
    List<CallText> calls = new ArrayList<>();
    FormulaScanner tokens = new FormulaScanner(formula, Dialect.CALC);
    while (tokens.next()) {
      if (tokens.kind() == Kind.FUNCTION) {
        String call = formula.substring(tokens.start());
        catalogue.find(tokens.text()).ifPresent(function -> calls.add(call(function, call)));
      }
    }
    return calls;
  }

  /** The call that a text begins with. */
  private static CallText call(FunctionSpec function, String text) {
    List<String> arguments = new ArrayList<>();
    FormulaScanner tokens = new FormulaScanner(text, Dialect.CALC);
    int depth = 0;
    int argument = 0;
    boolean isOpen = true;
    while (isOpen && tokens.next()) {
      if (tokens.kind() == Kind.OPEN && depth++ == 0) {
        argument = tokens.end();
      }
      isOpen = tokens.kind() != Kind.CLOSE || --depth > 0;
      if (!isOpen || depth == 1 && tokens.kind() == Kind.SEPARATOR) {
        arguments.add(text.substring(argument, tokens.start()).trim());
        argument = tokens.end();
      }
    }
    if (arguments.equals(List.of(""))) {
      arguments.clear();
    }
    return new CallText(function, text.substring(0, tokens.end()), arguments);
  }

  /** Whether an argument holds nothing but numbers and texts. */
  static boolean isConstant(String argument) {
    FormulaScanner tokens = new FormulaScanner(argument, Dialect.CALC);
    boolean isConstant = true;
    while (isConstant && tokens.next()) {
      isConstant =
          switch (tokens.kind()) {
            case NUMBER, TEXT, SPACE, ARRAY_OPEN, ARRAY_CELL, ARRAY_ROW, ARRAY_CLOSE -> true;
            case OPERATOR -> tokens.start() == 0;
            default -> false;
          };
    }
    return isConstant;
  }
}
