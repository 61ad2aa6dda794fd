package meadcell.batch.book.xlsx;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import meadcell.batch.book.Place;
import org.apache.poi.ss.util.CellRangeAddress;

/**
 * The XML of one sheet (ECMA-376 part 1, 18.3.1.99), changed where cells were changed; every other
 * byte stays.
 */
final class XlsxSheetXml {
  private static final int BUFFER = 1 << 16;

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
        int column = line.column(next);
        new CellXml(text, prefix).append(cell, row, column, "", "", array(row, column));
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
    new CellXml(text, prefix)
        .append(cell, row, column, mark, keepsFormula ? formula : "", array(row, column));
  }

  private XlsxCells.Array array(int row, int column) {
    return cells.arrays().isEmpty() ? null : cells.array(new Place(row, column));
  }
}
