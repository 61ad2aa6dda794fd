package meadcell.calc;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;

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
    int nameStart = 0;
    for (int i = 0; i < formula.length(); i++) {
      char c = formula.charAt(i);
      if (c == '"' || c == '\'') {
        i = endOfQuote(formula, i);
        nameStart = i + 1;
      } else if (c == '(') {
        Optional<FunctionSpec> function = catalogue.find(formula.substring(nameStart, i));
        if (function.isPresent()) {
          calls.add(call(function.get(), formula, nameStart, i));
        }
        nameStart = i + 1;
      } else if (!Character.isLetterOrDigit(c) && c != '.' && c != '_') {
        nameStart = i + 1;
      }
    }
    return calls;
  }

  private static CallText call(FunctionSpec function, String formula, int start, int open) {
    List<String> arguments = new ArrayList<>();
    int depth = 0;
    int argument = open + 1;
    int end = open;
    for (; end < formula.length(); end++) {
      char c = formula.charAt(end);
      if (c == '"' || c == '\'') {
        end = endOfQuote(formula, end);
      } else if (c == '(' || c == '{') {
        depth++;
      } else if (c == ')' || c == '}') {
        depth--;
      }
      if (depth == 0 || depth == 1 && c == ';') {
        arguments.add(formula.substring(argument, end).trim());
        argument = end + 1;
      }
      if (depth == 0) {
        break;
      }
    }
    if (arguments.equals(List.of(""))) {
      arguments.clear();
    }
    return new CallText(
        function, formula.substring(start, Math.min(end + 1, formula.length())), arguments);
  }

  private static int endOfQuote(String formula, int start) {
    int end = formula.indexOf(formula.charAt(start), start + 1);
    return end < 0 ? formula.length() : end;
  }
}
