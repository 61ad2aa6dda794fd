package meadcell.batch.calculation;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import meadcell.batch.book.Book;

/** A set of cells of one workbook, small for long columns. */
public final class CellSet implements Book.Live {
  private record Column(int sheet, int column) {}

  private final Map<Column, BitSet> columns = new HashMap<>();

  public void add(int sheet, int row, int column) {
    columns.computeIfAbsent(new Column(sheet, column), key -> new BitSet()).set(row);
  }

  public boolean contains(int sheet, int row, int column) {
    BitSet rows = columns.get(new Column(sheet, column));
    return rows != null && rows.get(row);
  }

  public boolean isEmpty() {
    return columns.isEmpty();
  }

  @Override
  public boolean isLive(int sheet, int row, int column) {
    return contains(sheet, row, column);
  }
}
