package meadcell.batch.layout;

import java.util.List;
import java.util.Map;
import meadcell.batch.book.Place;
import meadcell.catalogue.Unit;

/**
 * A table on a grid, rows and columns counted from 0.
 *
 * @param rows the rows that hold data, from the top
 * @param columns by the name of their header
 */
public record Table(
    Grid grid,
    int headerRow,
    List<Integer> rows,
    int firstColumn,
    int lastColumn,
    Map<String, Column> columns) {

  /**
   * A column.
   *
   * @param unit the unit its header, or the row below it, names, or null
   * @param strange what stands there for a unit and is none that is known; empty otherwise
   */
  public record Column(int index, Unit unit, String strange) {
    /** The same with what a row below the header says, where the header says nothing. */
    Column or(Unit below, String strangeBelow) {
      return unit == null && strange.isEmpty() ? new Column(index, below, strangeBelow) : this;
    }
  }

  /** The sheet's cell of a row and a column of the grid. */
  public Place place(int row, int column) {
    return grid.turn(new Place(row, column));
  }

  /** The header cell where it begins, on the grid. */
  Place start() {
    return new Place(headerRow, firstColumn);
  }

  /** The first row of the sheet that it takes. */
  int top() {
    return grid.isTurned() ? firstColumn : headerRow;
  }

  /** Whether it stands over a column of the sheet. */
  boolean spans(int column) {
    return grid.isTurned()
        ? column >= headerRow && column <= lastRow()
        : column >= firstColumn && column <= lastColumn;
  }

  /** The last row that holds data, or the header row where none does. */
  public int lastRow() {
    return rows.isEmpty() ? headerRow : rows.get(rows.size() - 1);
  }

  /** {@code row 5}, or {@code column A} of one that lies across. */
  public String where() {
    String header = place(headerRow, firstColumn).a1();
    return grid.isTurned()
        ? "column " + header.replaceAll("\\d", "")
        : "row " + header.replaceAll("\\D", "");
  }
}
