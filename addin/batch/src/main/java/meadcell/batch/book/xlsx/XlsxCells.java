package meadcell.batch.book.xlsx;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;

/** The cells of an {@code .xlsx} sheet, in little memory. Rows and columns count from 0. */
final class XlsxCells {
  /** The rectangle that one array formula fills. */
  record Array(Span span, String formula) {}

  /** The style of the cells of columns that are not there. */
  private record ColumnStyle(int first, int last, int style) {}

  /** The cells of one row, from left to right. */
  static final class Line {
    private int[] columns = new int[8];
    private XlsxCell[] cells = new XlsxCell[8];
    private int count;
    boolean isHidden;
    boolean isChanged;

    /** That of its cells that are not there. */
    int style = XlsxCell.PLAIN_STYLE;

    int count() {
      return count;
    }

    int column(int index) {
      return columns[index];
    }

    XlsxCell cell(int index) {
      return cells[index];
    }

    private int index(int column) {
      if (column < count && columns[column] == column) { // the row has no gap before it
        return column;
      }
      boolean behind = count == 0 || column > columns[count - 1];
      return behind ? -count - 1 : Arrays.binarySearch(columns, 0, count, column);
    }

    private XlsxCell cellToWrite(int column) {
      int index = index(column);
      if (index >= 0) {
        return cells[index];
      }
      int at = -index - 1;
      if (count == columns.length) {
        columns = Arrays.copyOf(columns, 2 * count);
        cells = Arrays.copyOf(cells, 2 * count);
      }
      System.arraycopy(columns, at, columns, at + 1, count - at);
      System.arraycopy(cells, at, cells, at + 1, count - at);
      columns[at] = column;
      cells[at] = new XlsxCell();
      count++;
      return cells[at];
    }
  }

  private Line[] lines = new Line[64];
  private int height;
  private final List<Array> arrays = new ArrayList<>();
  private final List<Span> merged = new ArrayList<>();
  private final List<ColumnStyle> columnStyles = new ArrayList<>();

  /** Whether the sheet's author protected it. */
  boolean isProtected;

  /** Whether there are tables with a name on it. */
  boolean hasTables;

  /** Id of the relation to the drawing with the boxes of notes, or nothing. */
  String boxes = "";

  /** One more than the last row. */
  int height() {
    return height;
  }

  /** The row, or null where it has nothing. */
  Line line(int row) {
    return row < height ? lines[row] : null;
  }

  /** The cell, or null. */
  XlsxCell cell(int row, int column) {
    Line line = line(row);
    int index = line == null ? -1 : line.index(column);
    return index < 0 ? null : line.cells[index];
  }

  Line lineToWrite(int row) {
    if (row >= lines.length) {
      lines = Arrays.copyOf(lines, Math.max(row + 1, 2 * lines.length));
    }
    height = Math.max(height, row + 1);
    if (lines[row] == null) {
      lines[row] = new Line();
    }
    return lines[row];
  }

  XlsxCell cellToWrite(int row, int column) {
    return lineToWrite(row).cellToWrite(column);
  }

  void addStyle(int firstColumn, int lastColumn, int style) {
    columnStyles.add(new ColumnStyle(firstColumn, lastColumn, style));
  }

  /** The style of a cell that is not there: its row's, or else its column's. */
  int styleAround(Place place) {
    Line line = line(place.row());
    if (line != null && line.style != XlsxCell.PLAIN_STYLE) {
      return line.style;
    }
    for (ColumnStyle columns : columnStyles) {
      if (place.column() >= columns.first && place.column() <= columns.last) {
        return columns.style;
      }
    }
    return XlsxCell.PLAIN_STYLE;
  }

  List<Array> arrays() {
    return arrays;
  }

  void addMerged(Span span) {
    merged.add(span);
  }

  /** The merged range that a cell is part of, or null. */
  Span merged(Place place) {
    for (Span span : merged) {
      if (span.contains(place)) {
        return span;
      }
    }
    return null;
  }

  /** The array formula that a cell is part of, or null. */
  Array array(Place place) {
    for (Array array : arrays) {
      if (array.span().contains(place)) {
        return array;
      }
    }
    return null;
  }
}
