package meadcell.calc;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import meadcell.catalogue.LiteralCall;

/** Literal calls as the office's programming interface takes formulas. */
final class Formulas {
  private Formulas() {}

  /** {@code =NAME(a;b)}: cells of a literal range go by {@code ;}, its rows by {@code |}. */
  static String of(String call) {
    LiteralCall literal = LiteralCall.parse(call);
    return of(literal.function(), literal.arguments());
  }

  static String of(String function, Object... arguments) {
    List<String> shown = new ArrayList<>();
    for (Object argument : arguments) {
      shown.add(literal(argument));
    }
    return "=" + function + "(" + String.join(";", shown) + ")";
  }

  static String literal(Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof Object[][] rows) {
      return Arrays.stream(rows)
          .map(row -> Arrays.stream(row).map(Formulas::literal).collect(Collectors.joining(";")))
          .collect(Collectors.joining("|", "{", "}"));
    }
    return value instanceof String text ? '"' + text.replace("\"", "\"\"") + '"' : "" + value;
  }
}
