package meadcell.calc.extension;

import static meadcell.calc.extension.Xml.with;

import javax.xml.stream.XMLStreamException;

/** Writes a spreadsheet as one XML file that the office opens. */
final class Sheets {
  static final String PLAIN = "plain";
  static final String HEADING = "heading";
  static final String TITLE = "title";
  static final String NARROW = "narrow";
  static final String WIDE = "wide";

  /** A row that begins a new page when printed. */
  static final String NEW_PAGE = "new-page";

  private static final String SAME_PAGE = "same-page";

  private final Xml xml;

  private Sheets(Xml xml) {
    this.xml = xml;
  }

  /** What to write into the spreadsheet. */
  interface Content {
    void write(Sheets sheets) throws XMLStreamException;
  }

  static byte[] write(Content content) {
    return Xml.document(
        xml ->
            xml.element(
                "office:document",
                with(
                    "xmlns:office", "urn:oasis:names:tc:opendocument:xmlns:office:1.0",
                    "xmlns:table", "urn:oasis:names:tc:opendocument:xmlns:table:1.0",
                    "xmlns:text", "urn:oasis:names:tc:opendocument:xmlns:text:1.0",
                    "xmlns:style", "urn:oasis:names:tc:opendocument:xmlns:style:1.0",
                    "xmlns:fo", "urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0",
                    "xmlns:xlink", "http://www.w3.org/1999/xlink",
                    "xmlns:of", "urn:oasis:names:tc:opendocument:xmlns:of:1.2",
                    "office:version", "1.3",
                    "office:mimetype", "application/vnd.oasis.opendocument.spreadsheet"),
                () -> {
                  styles(xml);
                  xml.element(
                      "office:body",
                      with(),
                      () ->
                          xml.element(
                              "office:spreadsheet", with(), () -> content.write(new Sheets(xml))));
                }));
  }

  private static void styles(Xml xml) throws XMLStreamException {
    xml.element(
        "office:automatic-styles",
        with(),
        () -> {
          column(xml, NARROW, "6.2cm");
          column(xml, WIDE, "10.7cm");
          row(xml, SAME_PAGE, "auto");
          row(xml, NEW_PAGE, "page");
          cell(xml, PLAIN, "10pt", "normal");
          cell(xml, HEADING, "10pt", "bold");
          cell(xml, TITLE, "14pt", "bold");
        });
  }

  private static void column(Xml xml, String name, String width) throws XMLStreamException {
    xml.element(
        "style:style",
        with("style:name", name, "style:family", "table-column"),
        () -> xml.empty("style:table-column-properties", "style:column-width", width));
  }

  private static void row(Xml xml, String name, String before) throws XMLStreamException {
    xml.element(
        "style:style",
        with("style:name", name, "style:family", "table-row"),
        () ->
            xml.empty(
                "style:table-row-properties",
                "style:use-optimal-row-height",
                "true",
                "fo:break-before",
                before));
  }

  private static void cell(Xml xml, String name, String size, String weight)
      throws XMLStreamException {
    xml.element(
        "style:style",
        with("style:name", name, "style:family", "table-cell"),
        () -> {
          xml.empty(
              "style:table-cell-properties",
              "fo:wrap-option",
              name.equals(TITLE) ? "no-wrap" : "wrap",
              "style:vertical-align",
              "top");
          xml.empty("style:text-properties", "fo:font-size", size, "fo:font-weight", weight);
        });
  }

  /** A sheet whose columns have these styles. */
  void sheet(String name, String[] columns, Xml.Content rows) throws XMLStreamException {
    xml.element(
        "table:table",
        with("table:name", name),
        () -> {
          for (String column : columns) {
            xml.empty("table:table-column", "table:style-name", column);
          }
          rows.write();
        });
  }

  void row(Xml.Content cells) throws XMLStreamException {
    row(SAME_PAGE, cells);
  }

  void row(String style, Xml.Content cells) throws XMLStreamException {
    xml.element("table:table-row", with("table:style-name", style), cells);
  }

  void text(String style, String text) throws XMLStreamException {
    xml.element(
        "table:table-cell",
        with("table:style-name", style, "office:value-type", "string"),
        () -> xml.text("text:p", with(), text));
  }

  /** A text that leads to a place in the same spreadsheet. */
  void link(String text, String place) throws XMLStreamException {
    xml.element(
        "table:table-cell",
        with("table:style-name", PLAIN, "office:value-type", "string"),
        () ->
            xml.text(
                "text:p", "text:a", with("xlink:href", "#" + place, "xlink:type", "simple"), text));
  }

  void number(double value) throws XMLStreamException {
    xml.empty("table:table-cell", "office:value-type", "float", "office:value", "" + value);
  }

  void formula(String formula) throws XMLStreamException {
    xml.empty("table:table-cell", "table:formula", formula);
  }
}
