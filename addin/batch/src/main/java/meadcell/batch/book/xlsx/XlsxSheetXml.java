package meadcell.batch.book.xlsx;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import org.apache.poi.ss.util.CellRangeAddress;

/**
 * The XML of one sheet (ECMA-376 part 1, 18.3.1.99), changed where cells were changed; every other
 * byte stays.
 */
final class XlsxSheetXml {
  private static final Pattern DECLARATION =
      Pattern.compile("\\A\\s*<\\?xml[^>]*?(?:encoding\\s*=\\s*[\"']([^\"']+)[\"'])?[^>]*?\\?>");
  private static final String LIKE_ESCAPED = "_(?=x[0-9A-Fa-f]{4}_)";
  private static final int BUFFER = 1 << 16;
  private static final byte[] UTF_16_BE = {(byte) 0xFE, (byte) 0xFF};
  private static final byte[] UTF_16_LE = {(byte) 0xFF, (byte) 0xFE};

  /** What stands behind the link to the drawing of notes. */
  private static final List<String> BEHIND_DRAWING =
      List.of(
          "legacyDrawingHF",
          "drawingHF",
          "picture",
          "oleObjects",
          "controls",
          "AlternateContent",
          "webPublishItems",
          "tableParts",
          "extLst");

  private final byte[] xml;
  private final XlsxCells cells;
  private final TagScanner tags;
  private final OutputStream out;
  private final StringBuilder text = new StringBuilder();
  private String prefix = "";
  private int copied;

  private XlsxSheetXml(byte[] xml, XlsxCells cells, OutputStream out) {
    this.xml = xml;
    this.cells = cells;
    this.tags = new TagScanner(xml);
    this.out = out;
  }

  /** The same XML in UTF-8. */
  static byte[] inUtf8(byte[] xml) throws IOException {
    Charset charset = StandardCharsets.UTF_8;
    if (startsWith(xml, UTF_16_BE) || startsWith(xml, UTF_16_LE)) {
      charset = StandardCharsets.UTF_16;
    } else {
      int length = Math.min(xml.length, 200);
      Matcher head = DECLARATION.matcher(new String(xml, 0, length, StandardCharsets.ISO_8859_1));
      if (head.find() && head.group(1) != null) {
        charset = charset(head.group(1));
      }
    }
    if (charset.equals(StandardCharsets.UTF_8) || charset.equals(StandardCharsets.US_ASCII)) {
      return xml;
    }
    String text = DECLARATION.matcher(new String(xml, charset)).replaceFirst("");
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static Charset charset(String name) throws IOException {
    try {
      return Charset.forName(name);
    } catch (IllegalArgumentException e) {
      throw FileRefused.damaged("a part is written in the unknown encoding " + name, e);
    }
  }

  private static boolean startsWith(byte[] xml, byte[] mark) {
    return xml.length > 1 && xml[0] == mark[0] && xml[1] == mark[1];
  }

  /**
   * Writes the sheet with its changed cells.
   *
   * @param widths new widths, in characters, of columns that have none
   * @param link element that links to a new drawing, or nothing
   */
  static void write(
      byte[] xml, XlsxCells cells, Map<Integer, Integer> widths, String link, OutputStream out)
      throws IOException {
    BufferedOutputStream buffered = new BufferedOutputStream(out, BUFFER);
    new XlsxSheetXml(xml, cells, buffered).write(new TreeMap<>(widths), link);
    buffered.flush();
  }

  private void write(TreeMap<Integer, Integer> widths, String newLink) throws IOException {
    String link = newLink;
    boolean isInColumns = false;
    int depth = 0;
    while (tags.next()) {
      depth -= tags.isEnd() ? 1 : 0;
      if (depth == 1 && tags.is("sheetData")) {
        prefix = tags.prefix();
        newColumns(widths);
        sheetData();
        continue;
      }
      if (depth == 1 && tags.is("dimension") && tags.isEmpty()) {
        dimension();
      } else if (depth == 2 && isInColumns && tags.is("col") && !tags.isEnd()) {
        widthsBefore(widths);
      } else if (depth == 1 && tags.is("cols")) { // controls have elements of such names, too
        isInColumns = !tags.isEnd() && !tags.isEmpty();
        if (tags.isEnd()) {
          copyTo(tags.start());
          widths.forEach(this::width);
          widths.clear();
        }
      } else if (!link.isEmpty()
          && depth == (tags.isEnd() ? 0 : 1)
          && (tags.isEnd() || BEHIND_DRAWING.stream().anyMatch(tags::is))) {
        copyTo(tags.start());
        print(link);
        link = "";
      }
      depth += tags.isEnd() || tags.isEmpty() ? 0 : 1;
    }
    copyTo(xml.length);
  }

  /** Writes what is pending, then the original's bytes. */
  private void copyTo(int end) throws IOException {
    out.write(text.toString().getBytes(StandardCharsets.UTF_8));
    text.setLength(0);
    out.write(xml, copied, end - copied);
    copied = end;
  }

  private void print(String part) {
    text.append(part);
  }

  /** Some programs read only the rectangle that a sheet says it uses. */
  private void dimension() throws IOException {
    CellRangeAddress used = CellRangeAddress.valueOf(tags.attribute("ref"));
    for (int row = 0; row < cells.height(); row++) {
      XlsxCells.Line line = cells.line(row);
      if (line != null && line.isChanged) {
        used.setFirstRow(Math.min(used.getFirstRow(), row));
        used.setLastRow(Math.max(used.getLastRow(), row));
        used.setFirstColumn(Math.min(used.getFirstColumn(), line.column(0)));
        used.setLastColumn(Math.max(used.getLastColumn(), line.column(line.count() - 1)));
      }
    }
    if (!used.equals(CellRangeAddress.valueOf(tags.attribute("ref")))) {
      copyTo(tags.start());
      print("<" + tags.prefix() + "dimension ref=\"" + used.formatAsString() + "\"/>");
      copied = tags.end();
    }
  }

  // ---- columns and links ------------------------------------------------------------------

  private void widthsBefore(TreeMap<Integer, Integer> widths) throws IOException {
    int first = Integer.parseInt(tags.attribute("min")) - 1;
    int last = Integer.parseInt(tags.attribute("max")) - 1;
    prefix = tags.prefix();
    copyTo(tags.start());
    Map<Integer, Integer> before = widths.headMap(first);
    before.forEach(this::width);
    before.clear();
    widths.subMap(first, last + 1).clear();
  }

  private void width(int column, int characters) {
    String place = " min=\"" + (column + 1) + "\" max=\"" + (column + 1) + "\"";
    print("<" + prefix + "col" + place + " width=\"" + characters + "\" customWidth=\"1\"/>");
  }

  private void newColumns(TreeMap<Integer, Integer> widths) throws IOException {
    if (!widths.isEmpty()) {
      copyTo(tags.start());
      print("<" + prefix + "cols>");
      widths.forEach(this::width);
      print("</" + prefix + "cols>");
      widths.clear();
    }
  }

  // ---- cells ------------------------------------------------------------------------------

  private void sheetData() throws IOException {
    if (tags.isEnd()) {
      return;
    }
    boolean wasEmpty = tags.isEmpty();
    if (wasEmpty) {
      copyTo(tags.end() - 2);
      print(">");
      copied = tags.end();
    }
    int next = 0;
    while (!wasEmpty && tags.next() && !tags.is("sheetData")) {
      if (tags.is("row") && !tags.isEnd()) {
        String number = tags.attribute("r");
        int row = number == null ? next : Integer.parseInt(number.strip()) - 1;
        rowsBetween(next, row);
        row(row);
        next = row + 1;
      }
    }
    if (!wasEmpty) {
      copyTo(tags.start());
    }
    rowsBetween(next, cells.height());
    if (wasEmpty) {
      print("</" + prefix + "sheetData>");
    }
  }

  /** Rows that the file does not have. */
  private void rowsBetween(int first, int end) throws IOException {
    for (int row = first; row < end; row++) {
      XlsxCells.Line line = cells.line(row);
      if (line != null && line.isChanged) {
        copyTo(Math.max(copied, tags.start())); // an empty table's only tag is replaced already
        print("<" + prefix + "row r=\"" + (row + 1) + "\">");
        newCells(row, line, 0, Integer.MAX_VALUE);
        print("</" + prefix + "row>");
      }
    }
  }

  private void row(int row) throws IOException {
    XlsxCells.Line line = cells.line(row);
    boolean isChanged = line != null && line.isChanged;
    if (tags.isEmpty()) {
      if (isChanged) {
        copyTo(tags.end() - 2);
        print(">");
        copied = tags.end();
        newCells(row, line, 0, Integer.MAX_VALUE);
        print("</" + prefix + "row>");
      }
      return;
    }
    int column = -1;
    int done = 0;
    while (tags.next() && !tags.is("row")) {
      if (tags.is("c") && !tags.isEnd() && isChanged) {
        column = column(column);
        copyTo(tags.start());
        done = newCells(row, line, done, column);
        cell(row, column);
      }
    }
    if (isChanged) {
      copyTo(tags.start());
      newCells(row, line, done, Integer.MAX_VALUE);
    }
  }

  private int column(int before) {
    String reference = tags.attribute("r");
    return reference == null ? before + 1 : Place.column(reference);
  }

  /** Writes the new cells from an index on that stand left of a column; the next index. */
  private int newCells(int row, XlsxCells.Line line, int index, int endColumn) {
    int next = index;
    for (; next < line.count() && line.column(next) < endColumn; next++) {
      XlsxCell cell = line.cell(next);
      if (cell.isChanged && !cell.isStored) {
        print(cell, row, line.column(next), "", "");
      }
    }
    return next;
  }

  /** A cell that the file has: written anew if it is changed, with its formula if that stays. */
  private void cell(int row, int column) throws IOException {
    XlsxCell cell = cells.cell(row, column);
    if (!cell.isChanged) {
      return;
    }
    String arrayMark = tags.attribute("cm");
    String formula = "";
    if (!tags.isEmpty()) {
      int formulaStart = 0;
      while (tags.next() && !tags.is("c")) {
        if (tags.is("f")) {
          formulaStart = tags.isEnd() ? formulaStart : tags.start();
          formula =
              new String(xml, formulaStart, tags.end() - formulaStart, StandardCharsets.UTF_8);
        }
      }
    }
    copied = tags.end();
    boolean keepsFormula = !cell.isFormulaChanged && !formula.isEmpty();
    String mark = keepsFormula && arrayMark != null ? " cm=\"" + arrayMark + "\"" : "";
    print(cell, row, column, mark, keepsFormula ? formula : "");
  }

  /** Writes a cell; its formula as it stood in the file, or empty. */
  private void print(XlsxCell cell, int row, int column, String mark, String storedFormula) {
    boolean isFormula = cell.formula != null;
    boolean isText = cell.value instanceof Value.Text;
    tag("c").append(" r=\"").append(new Place(row, column).a1()).append('"').append(mark);
    if (cell.style != 0) {
      text.append(" s=\"").append(cell.style).append('"');
    }
    text.append(type(cell.value, isFormula)).append('>').append(storedFormula);
    if (isFormula && storedFormula.isEmpty()) {
      tag("f").append(array(new Place(row, column))).append('>');
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
      escape(written(cell.value));
      end("v");
    }
    end("c");
  }

  private String array(Place first) {
    XlsxCells.Array array = cells.array(first);
    return array == null
        ? ""
        : " t=\"array\" ref=\"" + array.span().first() + ":" + array.span().last() + "\"";
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

  private static String written(Value value) {
    if (value instanceof Value.Truth truth) {
      return truth.isTrue() ? "1" : "0";
    }
    String text = value.toString();
    if (value instanceof Value.Number) {
      return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
    return text.contains("_x") ? text.replaceAll(LIKE_ESCAPED, "_x005F_") : text;
  }

  /** XML cannot hold control characters; the format has its own way of writing them. */
  private void escape(String content) {
    for (int i = 0; i < content.length(); i++) {
      char c = content.charAt(i);
      switch (c) {
        case '&' -> text.append("&amp;");
        case '<' -> text.append("&lt;");
        case '>' -> text.append("&gt;");
        case '\n', '\t' -> text.append(c);
        default -> {
          if (c < ' ' || c >= '\uFFFE') {
            text.append(String.format("_x%04X_", (int) c));
          } else {
            text.append(c);
          }
        }
      }
    }
  }
}
