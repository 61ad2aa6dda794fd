package meadcell.batch.fill;

import java.util.List;
import java.util.Map;
import meadcell.batch.book.Place;
import meadcell.batch.plan.Header;
import meadcell.catalogue.Unit;

/**
 * A table on a sheet, rows and columns counted from 0.
 *
 * @param rows the rows that hold data, from the top
 * @param columns by the name of their header
 */
record Table(
    int headerRow,
    List<Integer> rows,
    int firstColumn,
    int lastColumn,
    Map<String, Column> columns) {

  /**
   * A column.
   *
   * @param unit the unit its header names, or null
   */
  record Column(int index, Unit unit) {}

  /** The header cell where it begins. */
  Place start() {
    return new Place(headerRow, firstColumn);
  }

  boolean spans(int column) {
    return column >= firstColumn && column <= lastColumn;
  }

  /** The last row that holds data, or the header row where none does. */
  int lastRow() {
    return rows.isEmpty() ? headerRow : rows.get(rows.size() - 1);
  }

  /** The unit that a header's second line consists of, or null. */
  static Unit unitAlone(Header line) {
    return Unit.named(line.name().replaceAll("[()\\[\\]]", "")).orElse(null);
  }
}
