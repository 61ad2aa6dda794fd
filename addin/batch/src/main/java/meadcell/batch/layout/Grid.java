package meadcell.batch.layout;

import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;

/**
 * A sheet as tables are looked for on it: as it is, or turned, so that what stands across in rows
 * reads down in columns. Places of a turned grid are not those of the sheet.
 */
public record Grid(BookSheet sheet, boolean isTurned) {
  /** A table that lies across has few rows; longer sheets are lists. */
  private static final int MOST_ROWS = 200;

  /** As many as the sheets of every format have. */
  private static final int MOST_TURNED = 65536;

  /** Whether a sheet may hold a table that lies across. */
  public static boolean mayTurn(BookSheet sheet) {
    return sheet.lastRow() < MOST_ROWS;
  }

  /** The sheet's place of one of the grid's, and the other way round. */
  public Place turn(Place place) {
    return isTurned ? new Place(/* row= */ place.column(), /* column= */ place.row()) : place;
  }

  CellContent content(Place place) {
    return sheet.content(turn(place));
  }

  boolean isCovered(Place place) {
    return sheet.isCovered(turn(place));
  }

  Place mergedEnd(Place place) {
    return turn(sheet.mergedEnd(turn(place)));
  }

  int lastRow() {
    if (!isTurned) {
      return sheet.lastRow();
    }
    int last = -1;
    for (int row = 0; row <= sheet.lastRow(); row++) {
      last = Math.max(last, sheet.lastColumn(row));
    }
    return last;
  }

  int lastColumn(int row) {
    return isTurned ? sheet.lastRow() : sheet.lastColumn(row);
  }

  int mostColumns() {
    return isTurned ? MOST_TURNED : sheet.mostColumns();
  }
}
