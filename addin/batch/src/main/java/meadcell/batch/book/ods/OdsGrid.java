package meadcell.batch.book.ods;

import static meadcell.batch.book.ods.OdsNames.TABLE;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * The rows and cells of one table. Equal neighbours are stored once with a count; a cell that is to
 * be changed is first taken out of its run.
 */
final class OdsGrid {
  private static final String ROWS = "number-rows-repeated";
  private static final String COLUMNS = "number-columns-repeated";
  private static final String DEFAULT_STYLE = "default-cell-style-name";

  private final Element table;
  private final TreeMap<Integer, Element> columns = new TreeMap<>();
  private final TreeMap<Integer, Element> rows = new TreeMap<>();
  private final Map<Element, TreeMap<Integer, Element>> cells = new HashMap<>();
  private int columnCount;
  private int rowCount;

  OdsGrid(Element table) {
    this.table = table;
    collectRows(table);
  }

  /** Rows and columns may stand in groups and headers. */
  private void collectRows(Element parent) {
    for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (OdsNames.is(node, TABLE, "table-row")) {
        rows.put(rowCount, (Element) node);
        rowCount += OdsNames.number((Element) node, TABLE, ROWS);
      } else if (OdsNames.is(node, TABLE, "table-column")) {
        columns.put(columnCount, (Element) node);
        columnCount += OdsNames.number((Element) node, TABLE, COLUMNS);
      } else if (OdsNames.is(node, TABLE, "table-column-group")
          || OdsNames.is(node, TABLE, "table-header-columns")
          || OdsNames.is(node, TABLE, "table-columns")
          || OdsNames.is(node, TABLE, "table-row-group")
          || OdsNames.is(node, TABLE, "table-header-rows")
          || OdsNames.is(node, TABLE, "table-rows")) {
        collectRows((Element) node);
      }
    }
  }

  private TreeMap<Integer, Element> cells(Element row) {
    return cells.computeIfAbsent(
        row,
        key -> {
          TreeMap<Integer, Element> found = new TreeMap<>();
          int column = 0;
          for (Node node = row.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (OdsNames.is(node, TABLE, "table-cell")
                || OdsNames.is(node, TABLE, "covered-table-cell")) {
              found.put(column, (Element) node);
              column += OdsNames.number((Element) node, TABLE, COLUMNS);
            }
          }
          return found;
        });
  }

  /** The row's element, shared with its equal neighbours, or null. */
  Element row(int row) {
    Map.Entry<Integer, Element> line = row >= rowCount ? null : rows.floorEntry(row);
    return line == null ? null : line.getValue();
  }

  /** The cell's element, shared with its equal neighbours, or null. */
  Element cell(int row, int column) {
    Element line = row(row);
    if (line == null) {
      return null;
    }
    Map.Entry<Integer, Element> cell = cells(line).floorEntry(column);
    return cell == null
            || column >= cell.getKey() + OdsNames.number(cell.getValue(), TABLE, COLUMNS)
        ? null
        : cell.getValue();
  }

  /** The style that a cell shows: its own, or else that of its row or column; or empty. */
  String style(int row, int column) {
    Map.Entry<Integer, Element> around = column >= columnCount ? null : columns.floorEntry(column);
    Element cell = cell(row, column);
    Element line = row(row);
    String style = cell == null ? "" : cell.getAttributeNS(TABLE, "style-name");
    if (style.isEmpty() && line != null) {
      style = line.getAttributeNS(TABLE, DEFAULT_STYLE);
    }
    return style.isEmpty() && around != null
        ? around.getValue().getAttributeNS(TABLE, DEFAULT_STYLE)
        : style;
  }

  /** The last row with a cell that holds something, or -1. */
  int lastRow() {
    for (Map.Entry<Integer, Element> row : rows.descendingMap().entrySet()) {
      if (lastColumn(row.getValue()) >= 0) {
        return row.getKey() + OdsNames.number(row.getValue(), TABLE, ROWS) - 1;
      }
    }
    return -1;
  }

  int lastColumn(int row) {
    Element line = row(row);
    return line == null ? -1 : lastColumn(line);
  }

  private int lastColumn(Element row) {
    for (Map.Entry<Integer, Element> cell : cells(row).descendingMap().entrySet()) {
      if (cell.getValue().hasChildNodes() || cell.getValue().hasAttributeNS(TABLE, "formula")) {
        return cell.getKey() + OdsNames.number(cell.getValue(), TABLE, COLUMNS) - 1;
      }
    }
    return -1;
  }

  /** The column's own element, split from its neighbours or created. */
  Element ownColumn(int column) {
    if (column < columnCount) {
      return split(columns, column, COLUMNS);
    }
    Map.Entry<Integer, Element> last = columns.lastEntry();
    Node behind = last == null ? table.getFirstChild() : last.getValue().getNextSibling();
    Node parent = last == null ? table : last.getValue().getParentNode();
    if (column > columnCount) {
      Element gap = create("table-column");
      OdsNames.setRepeat(gap, COLUMNS, column - columnCount);
      parent.insertBefore(gap, behind);
      columns.put(columnCount, gap);
    }
    Element own = create("table-column");
    parent.insertBefore(own, behind);
    columns.put(column, own);
    columnCount = column + 1;
    return own;
  }

  /** The cell's own element, split from its neighbours or created. */
  Element ownCell(int row, int column) {
    Element line = ownRow(row);
    TreeMap<Integer, Element> known = cells(line);
    Map.Entry<Integer, Element> last = known.lastEntry();
    int width = last == null ? 0 : last.getKey() + OdsNames.number(last.getValue(), TABLE, COLUMNS);
    if (column >= width) {
      if (column > width) {
        Element gap = create("table-cell");
        OdsNames.setRepeat(gap, COLUMNS, column - width);
        line.appendChild(gap);
        known.put(width, gap);
      }
      Element cell = create("table-cell");
      line.appendChild(cell);
      known.put(column, cell);
      return cell;
    }
    return split(known, column, COLUMNS);
  }

  private Element ownRow(int row) {
    if (row >= rowCount) {
      if (row > rowCount) {
        Element gap = create("table-row");
        OdsNames.setRepeat(gap, ROWS, row - rowCount);
        append(gap);
        rows.put(rowCount, gap);
      }
      Element line = create("table-row");
      append(line);
      rows.put(row, line);
      rowCount = row + 1;
      return line;
    }
    return split(rows, row, ROWS);
  }

  /** Other things may follow the rows of a table. */
  private void append(Element row) {
    Node last = rows.isEmpty() ? null : rows.lastEntry().getValue();
    while (last != null && last.getParentNode() != table) {
      last = last.getParentNode();
    }
    table.insertBefore(row, last == null ? null : last.getNextSibling());
  }

  private Element create(String name) {
    return table.getOwnerDocument().createElementNS(TABLE, "table:" + name);
  }

  /** Takes one element out of a run of equal ones. */
  private Element split(TreeMap<Integer, Element> runs, int index, String repeat) {
    Map.Entry<Integer, Element> run = runs.floorEntry(index);
    Element element = run.getValue();
    int start = run.getKey();
    int count = OdsNames.number(element, TABLE, repeat);
    if (count == 1) {
      return element;
    }
    int after = start + count - index - 1;
    Node parent = element.getParentNode();
    if (index > start) {
      Element before = (Element) element.cloneNode(true);
      OdsNames.setRepeat(before, repeat, index - start);
      parent.insertBefore(before, element);
      runs.put(start, before);
    }
    if (after > 0) {
      Element rest = (Element) element.cloneNode(true);
      OdsNames.setRepeat(rest, repeat, after);
      parent.insertBefore(rest, element.getNextSibling());
      runs.put(index + 1, rest);
    }
    OdsNames.setRepeat(element, repeat, 1);
    runs.put(index, element);
    return element;
  }
}
