package meadcell.catalogue;

/**
 * Where in a range a value stands, counted from 1.
 *
 * @param row the row of the range
 * @param column the column of the range; 0 in a range of one column
 * @param columnName what a table's column is called; empty where it has no name
 */
public record Place(int row, int column, String columnName) {
  /**
   * {@return a row of a range of one column}
   *
   * @param row the row, from 1
   */
  public static Place row(int row) {
    return new Place(row, 0, "");
  }

  /**
   * {@return a cell of a range without names}
   *
   * @param row the row, from 1
   * @param column the column, from 1
   */
  public static Place cell(int row, int column) {
    return new Place(row, column, "");
  }

  /** The argument and this place in it, in words. */
  String of(String argument, Words words) {
    String rowText = Integer.toString(row);
    if (!columnName.isEmpty()) {
      return words.say(Phrase.IN_TABLE, "column", columnName, "row", rowText, "argument", argument);
    }
    return column == 0
        ? words.say(Phrase.IN_ROW, "argument", argument, "row", rowText)
        : words.say(
            Phrase.IN_CELL,
            "argument",
            argument,
            "row",
            rowText,
            "column",
            Integer.toString(column));
  }
}
