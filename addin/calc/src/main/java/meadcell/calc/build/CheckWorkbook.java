package meadcell.calc.build;

import static meadcell.calc.build.Xml.with;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import javax.xml.stream.XMLStreamException;
import meadcell.catalogue.CheckRow;
import meadcell.catalogue.LiteralCall;

/**
 * A spreadsheet that recalculates every published number: one row each with what the cell gives,
 * what was published, the tolerance and a verdict; one cell on top is true if all verdicts are.
 */
final class CheckWorkbook {
  /** Rows above the first check: the verdict over all, and the headings. */
  private static final int HEAD = 2;

  private static final List<String> HEADINGS =
      List.of("Call", "Gives", "Published", "Tolerance", "Holds", "Source", "Where");

  private final Xml xml;
  private int row = HEAD;

  private CheckWorkbook(Xml xml) {
    this.xml = xml;
  }

  static byte[] write(List<CheckRow> rows) {
    int cells = rows.stream().mapToInt(row -> width(row.expected())).sum();
    return Xml.document(
        xml ->
            xml.element(
                "office:document",
                with(
                    "xmlns:office", "urn:oasis:names:tc:opendocument:xmlns:office:1.0",
                    "xmlns:table", "urn:oasis:names:tc:opendocument:xmlns:table:1.0",
                    "xmlns:text", "urn:oasis:names:tc:opendocument:xmlns:text:1.0",
                    "xmlns:of", "urn:oasis:names:tc:opendocument:xmlns:of:1.2",
                    "office:version", "1.3",
                    "office:mimetype", "application/vnd.oasis.opendocument.spreadsheet"),
                () ->
                    xml.element(
                        "office:body",
                        with(),
                        () ->
                            xml.element(
                                "office:spreadsheet",
                                with(),
                                () ->
                                    xml.element(
                                        "table:table",
                                        with("table:name", "Checks"),
                                        () -> new CheckWorkbook(xml).table(rows, cells))))));
  }

  private static int width(Object expected) {
    return expected instanceof Object[][] cells
        ? Arrays.stream(cells).mapToInt(row -> row.length).sum()
        : 1;
  }

  private void table(List<CheckRow> rows, int cells) throws XMLStreamException {
    row(
        () -> {
          text("All published numbers are met:");
          formula("of:=AND([.E" + (HEAD + 1) + ":.E" + (HEAD + cells) + "])");
        });
    row(
        () -> {
          for (String heading : HEADINGS) {
            text(heading);
          }
        });
    for (CheckRow check : rows) {
      String call = formula(LiteralCall.parse(check.call()));
      if (check.expected() instanceof Object[][] expected) {
        for (int i = 0; i < expected.length; i++) {
          for (int j = 0; j < expected[i].length; j++) {
            String element = "INDEX(" + call + ";" + (i + 1) + ";" + (j + 1) + ")";
            check(check, element, expected[i][j]);
          }
        }
      } else {
        check(check, call, check.expected());
      }
    }
  }

  private void check(CheckRow check, String call, Object expected) throws XMLStreamException {
    row++;
    row(
        () -> {
          text(check.call());
          formula("of:=" + call);
          if (expected instanceof Double number) {
            number(number);
            number(check.tolerance());
            formula("of:=ABS([.B%1$d]-[.C%1$d])<=[.D%1$d]".formatted(row));
          } else {
            text((String) expected);
            number(check.tolerance());
            formula("of:=EXACT([.B%1$d];[.C%1$d])".formatted(row));
          }
          text(check.source());
          text(check.where());
        });
  }

  /** The call as the file format writes it: {@code ;} between cells, {@code |} between rows. */
  private static String formula(LiteralCall call) {
    return call.function()
        + Arrays.stream(call.arguments())
            .map(CheckWorkbook::literal)
            .collect(Collectors.joining(";", "(", ")"));
  }

  private static String literal(Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof Object[][] rows) {
      return Arrays.stream(rows)
          .map(
              row ->
                  Arrays.stream(row).map(CheckWorkbook::literal).collect(Collectors.joining(";")))
          .collect(Collectors.joining("|", "{", "}"));
    }
    return value instanceof String text ? '"' + text.replace("\"", "\"\"") + '"' : "" + value;
  }

  private void row(Xml.Content cells) throws XMLStreamException {
    xml.element("table:table-row", with(), cells);
  }

  private void text(String text) throws XMLStreamException {
    xml.element(
        "table:table-cell",
        with("office:value-type", "string"),
        () -> xml.text("text:p", with(), text));
  }

  private void number(double value) throws XMLStreamException {
    xml.empty("table:table-cell", "office:value-type", "float", "office:value", "" + value);
  }

  private void formula(String formula) throws XMLStreamException {
    xml.empty("table:table-cell", "table:formula", formula);
  }
}
