package meadcell.batch.book;

import org.apache.poi.ss.util.CellReference;

/** A cell of a sheet; row and column count from 0. */
public record Place(int row, int column) {
  /** {@code C14}. */
  public String a1() {
    return CellReference.convertNumToColString(column) + (row + 1);
  }

  /** {@code $C$14}. */
  public String fixed() {
    return "$" + CellReference.convertNumToColString(column) + "$" + (row + 1);
  }

  @Override
  public String toString() {
    return a1();
  }
}
