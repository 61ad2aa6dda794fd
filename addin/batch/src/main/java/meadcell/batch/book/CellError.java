package meadcell.batch.book;

/** An error in a cell, by the text a spreadsheet shows for it. */
public record CellError(String text) {
  @Override
  public String toString() {
    return text;
  }
}
