package meadcell.batch.book;

import java.util.Optional;

/** One sheet of a workbook. Rows and columns count from 0. */
public interface BookSheet {
  /** A note beside a cell. */
  record Note(String author, String text) {}

  String name();

  /** Whether its author protected the sheet against changes. */
  boolean isProtected();

  /** The last row that holds anything, or -1. */
  int lastRow();

  /** The last column of a row that holds anything, or -1. */
  int lastColumn(int row);

  CellContent content(Place place);

  /** The last cell of the merged range that holds the cell, or the cell itself. */
  Place mergedEnd(Place place);

  boolean isHidden(int row);

  /** The cells of the array formula that the cell is part of, or null. */
  Span array(Place place);

  /** Whether a merged range shows another cell in its place. */
  boolean isCovered(Place place);

  /** Puts a formula without a result. */
  void putFormula(Place place, String formula);

  /** Puts one formula without results that fills several cells. */
  void putArray(Span span, String formula);

  /** Puts a plain value, or the stored result of the cell's formula. */
  void putValue(Place place, Value value);

  /** Leaves the value of a formula, or of the array formula that the cell is part of, in place. */
  void freeze(Place place);

  /** Empties the cell but keeps its style. */
  void clear(Place place);

  /** What puts a cell back as it is now, with its formula, value and style. */
  Runnable keep(Place place);

  /** How many columns a sheet of this format can have. */
  int mostColumns();

  /**
   * Gives a cell without a style of its own the style of another, and a number format; the number
   * format alone to one whose style has none.
   *
   * @param format number format, or empty to keep the other cell's
   */
  void copyStyle(Place from, Place to, String format);

  /** Gives a column that has no width of its own one that holds so many characters. */
  void widen(int column, int characters);

  /** Whether notes can be put at its cells without harm to anything else. */
  default boolean canHoldNotes() {
    return true;
  }

  Optional<Note> note(Place place);

  void putNote(Place place, Note note);

  void removeNote(Place place);
}
