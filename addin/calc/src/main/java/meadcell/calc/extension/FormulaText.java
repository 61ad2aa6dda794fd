package meadcell.calc.extension;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import meadcell.catalogue.LiteralCall;

/** Literal calls as the office's files and its programming interface write them. */
public final class FormulaText {
  private FormulaText() {}

  /** {@code NAME(a;b)} of a literal call. */
  public static String of(String call) {
    LiteralCall literal = LiteralCall.parse(call);
    return of(literal.function(), literal.arguments());
  }

  /** {@code NAME(a;b)}. */
  public static String of(String function, Object... arguments) {
    List<String> shown = new ArrayList<>();
    for (Object argument : arguments) {
      shown.add(literal(argument));
    }
    return function + "(" + String.join(";", shown) + ")";
  }

  /**
   * A number, a text, nothing for what is left out, or a range: its cells go by {@code ;}, its rows
   * by {@code |}, and short rows are filled up, since the office takes no others.
   */
  public static String literal(Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof Object[][] rows) {
      int width = Arrays.stream(rows).mapToInt(row -> row.length).max().orElse(0);
      return Arrays.stream(rows)
          .map(row -> row(row, width))
          .collect(Collectors.joining("|", "{", "}"));
    }
    return value instanceof String text ? '"' + text.replace("\"", "\"\"") + '"' : "" + value;
  }

  private static String row(Object[] row, int width) {
    Object[] full = Arrays.copyOf(row, width);
    Arrays.fill(full, row.length, width, "");
    return Arrays.stream(full).map(FormulaText::literal).collect(Collectors.joining(";"));
  }
}
