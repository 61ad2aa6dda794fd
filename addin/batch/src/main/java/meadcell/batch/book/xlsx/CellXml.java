package meadcell.batch.book.xlsx;

import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;

/**
 * Writes cells as XML (ECMA-376 part 1, 18.3.1.4).
 *
 * @param prefix of the elements' names, with its colon, or nothing
 */
record CellXml(StringBuilder text, String prefix) {
  private static final String LIKE_ESCAPED = "_(?=x[0-9A-Fa-f]{4}_)";

  /**
   * Appends a cell.
   *
   * @param storedFormula its formula as it stood in the file, or empty
   * @param array the array formula that it begins, or null
   */
  void append(
      XlsxCell cell,
      int row,
      int column,
      String mark,
      String storedFormula,
      XlsxCells.Array array) {
    boolean isFormula = cell.formula != null;
    boolean isText = cell.value instanceof Value.Text;
    tag("c").append(" r=\"").append(new Place(row, column).a1()).append('"').append(mark);
    if (cell.style != 0) {
      text.append(" s=\"").append(cell.style).append('"');
    }
    text.append(type(cell.value, isFormula)).append('>').append(storedFormula);
    if (isFormula && storedFormula.isEmpty()) {
      tag("f").append(array == null ? "" : attributes(array.span())).append('>');
      escape(cell.formula);
      end("f");
    }
    if (isText && !isFormula) {
      tag("is").append('>');
      tag("t").append(" xml:space=\"preserve\">");
      escape(written(cell.value));
      end("t");
      end("is");
    } else if (!cell.value.isBlank()) {
      tag("v").append(isText ? " xml:space=\"preserve\">" : ">");
      if (cell.value instanceof Value.Number) {
        number(cell.value.toString());
      } else {
        escape(written(cell.value));
      }
      end("v");
    }
    end("c");
  }

  private static String attributes(Span array) {
    return " t=\"array\" ref=\"" + array.first() + ":" + array.last() + "\"";
  }

  private StringBuilder tag(String name) {
    return text.append('<').append(prefix).append(name);
  }

  private void end(String name) {
    text.append("</").append(prefix).append(name).append('>');
  }

  private static String type(Value value, boolean isFormula) {
    if (value instanceof Value.Text) {
      return isFormula ? " t=\"str\"" : " t=\"inlineStr\"";
    }
    return value instanceof Value.Truth ? " t=\"b\"" : value.isError() ? " t=\"e\"" : "";
  }

  private void number(String digits) {
    text.append(digits, 0, digits.endsWith(".0") ? digits.length() - 2 : digits.length());
  }

  private static String written(Value value) {
    if (value instanceof Value.Truth truth) {
      return truth.isTrue() ? "1" : "0";
    }
    String text = value.toString();
    return text.contains("_x") ? text.replaceAll(LIKE_ESCAPED, "_x005F_") : text;
  }

  private void escape(String content) {
    int copied = 0;
    for (int i = 0; i < content.length(); i++) {
      String escaped = escaped(content.charAt(i));
      if (escaped != null) {
        text.append(content, copied, i).append(escaped);
        copied = i + 1;
      }
    }
    text.append(content, copied, content.length());
  }

  /** XML cannot hold control characters; the format has its own way of writing them. */
  private static String escaped(char c) {
    return switch (c) {
      case '&' -> "&amp;";
      case '<' -> "&lt;";
      case '>' -> "&gt;";
      case '\n', '\t' -> null;
      default -> c < ' ' || c >= '\uFFFE' ? String.format("_x%04X_", (int) c) : null;
    };
  }
}
