package meadcell.batch.book.ods;

import static meadcell.batch.book.ods.OdsNames.CALC;
import static meadcell.batch.book.ods.OdsNames.OFFICE;
import static meadcell.batch.book.ods.OdsNames.TEXT;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.Figures;
import meadcell.batch.book.Value;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** The values of cells' elements (OpenDocument 1.3 part 3, 19.385 and 19.387). */
final class OdsValues {
  private static final Pattern SEVERAL_BLANKS = Pattern.compile("^ +| {2,}| +$");
  private static final double SECONDS_PER_DAY = 86400;
  private static final List<String> ATTRIBUTES =
      List.of("value-type", "value", "date-value", "time-value", "boolean-value", "string-value");

  private OdsValues() {}

  /**
   * What a cell holds.
   *
   * @param type its value type
   * @param nullDate the day with the number 0
   */
  static Value read(Element cell, String type, LocalDate nullDate) {
    if (cell.getAttributeNS(CALC, "value-type").equals("error")) {
      return new Value.Error(text(cell));
    }
    return switch (type) {
      case "float", "percentage", "currency" ->
          Value.of(Double.parseDouble(cell.getAttributeNS(OFFICE, "value")));
      case "date" -> Value.of(dayNumber(cell.getAttributeNS(OFFICE, "date-value"), nullDate));
      case "time" ->
          Value.of(
              Duration.parse(cell.getAttributeNS(OFFICE, "time-value")).toSeconds()
                  / SECONDS_PER_DAY);
      case "boolean" -> Value.of(cell.getAttributeNS(OFFICE, "boolean-value").equals("true"));
      case "string" ->
          Value.of(
              cell.hasAttributeNS(OFFICE, "string-value")
                  ? cell.getAttributeNS(OFFICE, "string-value")
                  : text(cell));
      default -> // a formula that gave no text
          cell.getLastChild() == null ? Value.BLANK : Value.of(text(cell));
    };
  }

  private static double dayNumber(String date, LocalDate nullDate) {
    LocalDateTime time =
        date.contains("T") ? LocalDateTime.parse(date) : LocalDate.parse(date).atStartOfDay();
    return ChronoUnit.SECONDS.between(nullDate.atStartOfDay(), time) / SECONDS_PER_DAY;
  }

  /** The paragraphs of a cell, without those of its note. */
  static String text(Element cell) {
    List<String> paragraphs = new ArrayList<>();
    for (Node node = cell.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (OdsNames.is(node, TEXT, "p")) {
        paragraphs.add(characters(node));
      }
    }
    return String.join("\n", paragraphs);
  }

  /** Blanks in a row, tabulators and line ends are elements (OpenDocument 1.3 part 3, 6.1.2). */
  private static String characters(Node paragraph) {
    StringBuilder text = new StringBuilder();
    for (Node node = paragraph.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (OdsNames.is(node, TEXT, "s")) {
        text.append(" ".repeat(OdsNames.number((Element) node, TEXT, "c")));
      } else if (OdsNames.is(node, TEXT, "tab")) {
        text.append('\t');
      } else if (OdsNames.is(node, TEXT, "line-break")) {
        text.append('\n');
      } else {
        text.append(node instanceof Element ? characters(node) : node.getTextContent());
      }
    }
    return text.toString();
  }

  static void write(Element cell, Value value) {
    remove(cell);
    if (value instanceof Value.Number plain) {
      String figures = Figures.of(plain.number());
      type(cell, "float", "float");
      cell.setAttributeNS(OFFICE, "office:value", figures);
      paragraph(cell, figures);
    } else if (value instanceof Value.Truth truth) {
      type(cell, "boolean", "boolean");
      cell.setAttributeNS(OFFICE, "office:boolean-value", String.valueOf(truth.isTrue()));
      paragraph(cell, truth.toString());
    } else if (value instanceof Value.Error error) {
      type(cell, "string", "error");
      cell.setAttributeNS(OFFICE, "office:string-value", "");
      paragraph(cell, error.code());
    } else if (value instanceof Value.Text text) {
      type(cell, "string", "string");
      paragraph(cell, text.text());
    }
  }

  private static void type(Element cell, String office, String calc) {
    cell.setAttributeNS(OFFICE, "office:value-type", office);
    cell.setAttributeNS(CALC, "calcext:value-type", calc);
  }

  static void paragraph(Element parent, String text) {
    Element paragraph = parent.getOwnerDocument().createElementNS(TEXT, "text:p");
    Matcher blanks = SEVERAL_BLANKS.matcher(text);
    int copied = 0;
    while (blanks.find()) {
      append(paragraph, text.substring(copied, blanks.start()));
      Element element = parent.getOwnerDocument().createElementNS(TEXT, "text:s");
      element.setAttributeNS(TEXT, "text:c", String.valueOf(blanks.end() - blanks.start()));
      paragraph.appendChild(element);
      copied = blanks.end();
    }
    append(paragraph, text.substring(copied));
    parent.appendChild(paragraph);
  }

  private static void append(Element paragraph, String text) {
    paragraph.appendChild(paragraph.getOwnerDocument().createTextNode(text));
  }

  static void remove(Element cell) {
    ATTRIBUTES.forEach(name -> cell.removeAttributeNS(OFFICE, name));
    cell.removeAttributeNS(CALC, "value-type");
    for (Node node = cell.getFirstChild(); node != null; ) {
      Node next = node.getNextSibling();
      if (OdsNames.is(node, TEXT, "p")) {
        cell.removeChild(node);
      }
      node = next;
    }
  }
}
