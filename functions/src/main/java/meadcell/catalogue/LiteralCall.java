package meadcell.catalogue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * One function call with literal arguments, as check rows and examples write it: {@code
 * BLEND.ABV({100,50};{12,14};"US")}. Arguments are separated by {@code ;}; a range is written as
 * {@code {1,2;3,4}}: {@code ,} between cells, {@code ;} between rows. An empty argument is left
 * out.
 */
public final class LiteralCall {
  private final String source;
  private int at;

  private final String function;
  private final List<Object> arguments = new ArrayList<>();

  private LiteralCall(String source) {
    this.source = source;
    int open = source.indexOf('(');
    if (open < 0 || !source.endsWith(")")) {
      throw new IllegalArgumentException("not a call: " + source);
    }
    this.function = source.substring(0, open).trim();
    this.at = open + 1;
    if (peek() == ')') {
      return;
    }
    do {
      arguments.add(value());
    } while (source.charAt(at++) == ';');
    if (at != source.length()) {
      throw new IllegalArgumentException("unexpected text at " + at + " in " + source);
    }
  }

  public static LiteralCall parse(String source) {
    return new LiteralCall(source.trim());
  }

  /** {@return one literal: a number, a quoted text, or a range in braces} */
  public static Object parseValue(String source) {
    return parse("X(" + source + ")").arguments.get(0);
  }

  /**
   * {@return a value as a literal that {@link #parseValue} reads: ranges in braces, texts in
   * quotes}
   */
  static String literal(Object value) {
    if (value instanceof Object[][] rows) {
      return Arrays.stream(rows)
          .map(
              row ->
                  Arrays.stream(row)
                      .map(cell -> cell == null || cell.equals("") ? "" : literal(cell))
                      .collect(Collectors.joining(",")))
          .collect(Collectors.joining(";", "{", "}"));
    }
    return value instanceof Double number
        ? Numbers.text(number, 15)
        : '"' + String.valueOf(value).replace("\"", "\"\"") + '"';
  }

  /** {@return the function's name} */
  public String function() {
    return function;
  }

  /** {@return what is given, null where an argument is left out} */
  public Object[] arguments() {
    return arguments.toArray();
  }

  private char peek() {
    while (source.charAt(at) == ' ') {
      at++;
    }
    return source.charAt(at);
  }

  private Object value() {
    return switch (peek()) {
      case '{' -> range();
      case '"' -> text();
      case ';', ')' -> null;
      default -> number();
    };
  }

  private Object[][] range() {
    List<Object[]> rows = new ArrayList<>();
    List<Object> row = new ArrayList<>();
    at++;
    while (true) {
      char next = peek();
      row.add(next == ',' || next == ';' || next == '}' ? "" : next == '"' ? text() : number());
      char separator = peek();
      at++;
      if (separator != ',') {
        rows.add(row.toArray());
        row.clear();
      }
      if (separator == '}') {
        peek();
        return rectangle(rows);
      }
    }
  }

  /** A range of cells has no ragged edge: short rows end in blanks. */
  private static Object[][] rectangle(List<Object[]> rows) {
    int width = rows.stream().mapToInt(row -> row.length).max().orElseThrow();
    Object[][] cells = new Object[rows.size()][width];
    for (int i = 0; i < cells.length; i++) {
      Arrays.fill(cells[i], "");
      System.arraycopy(rows.get(i), 0, cells[i], 0, rows.get(i).length);
    }
    return cells;
  }

  private String text() {
    StringBuilder text = new StringBuilder();
    at++;
    while (true) {
      char c = source.charAt(at++);
      if (c != '"') {
        text.append(c);
      } else if (source.charAt(at) == '"') {
        text.append(source.charAt(at++));
      } else {
        peek();
        return text.toString();
      }
    }
  }

  private Double number() {
    int start = at;
    while (";,)}".indexOf(source.charAt(at)) < 0) {
      at++;
    }
    return Double.valueOf(source.substring(start, at).trim());
  }
}
