package meadcell.catalogue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;
import meadcell.formula.FormulaScanner.Kind;

/**
 * One function call with literal arguments, as check rows and examples write it: {@code
 * BLEND.ABV({100,50};{12,14};"US")}. Arguments are separated by {@code ;}; a range is written as
 * {@code {1,2;3,4}}: {@code ,} between cells, {@code ;} between rows. An empty argument is left
 * out.
 */
public final class LiteralCall {
  private final FormulaScanner tokens;
  private Kind kind;

  private final String source;
  private final String function;
  private final List<Object> arguments = new ArrayList<>();

  private LiteralCall(String source) {
    this.source = source;
    this.tokens = new FormulaScanner(source, Dialect.PLAN);
    advance();
    function = tokens.text();
    expect(Kind.FUNCTION);
    expect(Kind.OPEN);
    if (kind != Kind.CLOSE) {
      arguments.add(value());
      while (kind == Kind.SEPARATOR && tokens.is(';')) {
        advance();
        arguments.add(value());
      }
    }
    expect(Kind.CLOSE);
    if (kind != null) {
      throw unreadable();
    }
  }

  /**
   * {@return the call that is written so}
   *
   * @param source a name and its arguments in brackets
   */
  public static LiteralCall parse(String source) {
    return new LiteralCall(source);
  }

  /**
   * {@return one literal: a number, a quoted text, or a range in braces}
   *
   * @param source the literal
   */
  public static Object parseValue(String source) {
    List<Object> values = parse("X(" + source + ")").arguments;
    if (values.size() != 1 || values.get(0) == null) {
      throw new IllegalArgumentException("not one number, \"text\" or {range}: " + source);
    }
    return values.get(0);
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

  private void advance() {
    do {
      kind = tokens.next() ? tokens.kind() : null;
    } while (kind == Kind.SPACE);
  }

  private void expect(Kind expected) {
    if (kind != expected) {
      throw unreadable();
    }
    advance();
  }

  private IllegalArgumentException unreadable() {
    return new IllegalArgumentException(
        "not a call with literal arguments, from \""
            + (kind == null ? "" : source.substring(tokens.start()))
            + "\" on: "
            + source);
  }

  private Object value() {
    if (kind == Kind.ARRAY_OPEN) {
      return range();
    }
    return kind == Kind.SEPARATOR || kind == Kind.CLOSE ? null : single();
  }

  private Object[][] range() {
    List<Object[]> rows = new ArrayList<>();
    List<Object> row = new ArrayList<>();
    do {
      advance();
      boolean isBlank =
          kind == Kind.ARRAY_CELL || kind == Kind.ARRAY_ROW || kind == Kind.ARRAY_CLOSE;
      row.add(isBlank ? "" : single());
      if (kind != Kind.ARRAY_CELL) {
        rows.add(row.toArray());
        row.clear();
      }
    } while (kind == Kind.ARRAY_CELL || kind == Kind.ARRAY_ROW);
    expect(Kind.ARRAY_CLOSE);
    return rectangle(rows);
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

  /** A number or a text. */
  private Object single() {
    if (kind == Kind.TEXT) {
      String text = tokens.inside().replace("\"\"", "\"");
      advance();
      return text;
    }
    String sign = "";
    if (kind == Kind.OPERATOR && (tokens.is('-') || tokens.is('+'))) {
      sign = tokens.text();
      advance();
    }
    if (kind != Kind.NUMBER) {
      throw unreadable();
    }
    double number = Numbers.plain(sign + tokens.text()).orElseThrow(this::unreadable);
    advance();
    return number;
  }
}
