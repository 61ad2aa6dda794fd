package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import meadcell.batch.book.Place;
import meadcell.batch.book.Sax;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.util.CellRangeAddress;
import org.xml.sax.Attributes;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.helpers.DefaultHandler;

/** Reads the cells of one sheet's XML (ECMA-376 part 1, 18.3.1). */
final class XlsxCellsReader extends DefaultHandler {
  private static final int ROWS = 1 << 20;
  private static final int COLUMNS = 1 << 14;

  private final boolean isDate1904;
  private final List<Value> texts;
  private final XlsxCells cells = new XlsxCells();
  private final SharedFormulas shared;
  private final StringBuilder text = new StringBuilder();
  private boolean isInside;
  private boolean isCollecting;
  private int row = -1;
  private int column;
  private XlsxCell cell;
  private String type;
  private String value;
  private String inline;
  private String formulaType;
  private String formulaArea;

  private XlsxCellsReader(SharedFormulas shared, List<Value> texts, boolean isDate1904) {
    this.shared = shared;
    this.texts = texts;
    this.isDate1904 = isDate1904;
  }

  static XlsxCells read(
      InputStream xml, SharedFormulas shared, List<Value> texts, boolean isDate1904)
      throws IOException {
    XlsxCellsReader reader = new XlsxCellsReader(shared, texts, isDate1904);
    Sax.parse(xml, reader);
    return reader.cells;
  }

  @Override
  public void startElement(String uri, String name, String qualified, Attributes attributes)
      throws SAXException {
    if (!isInside) {
      around(name, attributes);
      return;
    }
    switch (name) {
      case "row" -> {
        row =
            next(
                row, attributes.getValue("r") == null ? row + 1 : whole(attributes, "r") - 1, ROWS);
        column = -1;
        XlsxCells.Line line = cells.lineToWrite(row);
        line.isHidden = isTrue(attributes, "hidden");
        line.style = isTrue(attributes, "customFormat") ? style(attributes, "s") : line.style;
      }
      case "c" -> startCell(attributes);
      case "f" -> {
        formulaType = attributes.getValue("t") == null ? "normal" : attributes.getValue("t");
        formulaArea = attributes.getValue("ref");
        cell.shared = formulaType.equals("shared") ? whole(attributes, "si") : XlsxCell.NOT_SHARED;
        collect(true);
      }
      case "v" -> collect(true);
      case "t" -> {
        inline = inline == null ? "" : inline;
        collect(true);
      }
      case "rPh" -> isInside = false; // how to say it, not what it says
      default -> {}
    }
  }

  /** What is not a cell. */
  private void around(String name, Attributes attributes) {
    switch (name) {
      case "sheetData" -> isInside = true;
      case "col" -> {
        int style = style(attributes, "style");
        if (style != XlsxCell.PLAIN_STYLE) {
          cells.addStyle(whole(attributes, "min") - 1, whole(attributes, "max") - 1, style);
        }
      }
      case "sheetProtection" -> cells.isProtected = isTrue(attributes, "sheet");
      case "mergeCell" -> {
        if (attributes.getValue("ref") != null) {
          cells.addMerged(span(attributes.getValue("ref")));
        }
      }
      case "tablePart" -> cells.hasTables = true;
      case "legacyDrawing" -> cells.boxes = relation(attributes);
      default -> {}
    }
  }

  private static boolean isTrue(Attributes attributes, String name) {
    return "1".equals(attributes.getValue(name)) || "true".equals(attributes.getValue(name));
  }

  /** The relation that an element names; how the attribute is called, each program may choose. */
  static String relation(Attributes attributes) {
    for (int i = 0; i < attributes.getLength(); i++) {
      if (attributes.getLocalName(i).equals("id")) {
        return attributes.getValue(i);
      }
    }
    return "";
  }

  private static Span span(String range) {
    CellRangeAddress area = CellRangeAddress.valueOf(range);
    return new Span(
        new Place(area.getFirstRow(), area.getFirstColumn()),
        new Place(area.getLastRow(), area.getLastColumn()));
  }

  private void collect(boolean begin) {
    isCollecting = begin;
    text.setLength(0);
  }

  private void startCell(Attributes attributes) throws SAXException {
    String reference = null;
    String style = null;
    type = "n";
    for (int i = 0; i < attributes.getLength(); i++) { // there are many cells: no search for each
      switch (attributes.getLocalName(i)) {
        case "r" -> reference = attributes.getValue(i);
        case "s" -> style = attributes.getValue(i);
        case "t" -> type = attributes.getValue(i);
        default -> {}
      }
    }
    column = next(column, reference == null ? column + 1 : Place.column(reference), COLUMNS);
    cell = cells.cellToWrite(row, column);
    cell.isStored = true;
    cell.style = style == null ? XlsxCell.PLAIN_STYLE : Integer.parseInt(style.strip());
    value = null;
    inline = null;
    formulaType = "";
  }

  private static int style(Attributes attributes, String name) {
    return attributes.getValue(name) == null ? XlsxCell.PLAIN_STYLE : whole(attributes, name);
  }

  private static int whole(Attributes attributes, String name) {
    return Integer.parseInt(attributes.getValue(name).strip());
  }

  private static int next(int before, int index, int limit) throws SAXException {
    if (index >= limit) {
      throw new SAXException("a row or column lies outside of any sheet");
    }
    if (index <= before) {
      throw new SAXException("rows or columns stand twice or out of order");
    }
    return index;
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    if (isCollecting) {
      text.append(chars, start, length);
    }
  }

  @Override
  public void endElement(String uri, String name, String qualified) throws SAXException {
    switch (name) {
      case "sheetData" -> isInside = false;
      case "rPh" -> isInside = true;
      case "f" -> {
        if (isInside) {
          formula(text.toString());
        }
      }
      case "v" -> value = text.toString();
      case "t" -> inline = isInside ? inline + text : inline;
      case "c" -> {
        if (isInside) {
          cell.value = value();
        }
      }
      default -> {}
    }
    collect(false);
  }

  @Override
  public void error(SAXParseException e) throws SAXException {
    throw e;
  }

  private Value value() throws SAXException {
    if (type.equals("inlineStr")) {
      return inline == null ? Value.BLANK : Value.of(SharedTexts.unescaped(inline));
    }
    if (value == null || value.isEmpty() && !type.equals("str")) {
      return Value.BLANK;
    }
    return switch (type) {
      case "s" -> sharedText(Integer.parseInt(value.strip()));
      case "str" -> Value.of(SharedTexts.unescaped(value));
      case "b" -> Value.of(value.strip().equals("1") || value.strip().equals("true"));
      case "e" -> new Value.Error(value);
      case "d" -> Value.of(date(value.strip()));
      default -> Value.of(Double.parseDouble(value));
    };
  }

  private Value sharedText(int index) throws SAXException {
    if (index < 0 || index >= texts.size()) {
      throw new SAXException("a cell names a text that is not in the file");
    }
    return texts.get(index);
  }

  private double date(String iso) {
    String local = iso.endsWith("Z") ? iso.substring(0, iso.length() - 1) : iso;
    LocalDateTime time =
        local.contains("T") ? LocalDateTime.parse(local) : LocalDate.parse(local).atStartOfDay();
    return DateUtil.getExcelDate(time, isDate1904);
  }

  private void formula(String written) {
    cell.formula = written;
    if (formulaType.equals("array") && formulaArea != null) {
      cells.arrays().add(new XlsxCells.Array(span(formulaArea), written));
    } else if (cell.shared != XlsxCell.NOT_SHARED) {
      shared.read(cell, row, column);
    }
  }
}
