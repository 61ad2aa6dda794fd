package meadcell.batch.book;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;

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

  /** Whether any cell of a column between two rows, both included, is in the set. */
  public boolean containsAny(int sheet, int firstRow, int lastRow, int column) {
    BitSet rows = columns.get(new Column(sheet, column));
    int next = rows == null ? -1 : rows.nextSetBit(firstRow);
    return next >= 0 && next <= lastRow;
  }

  public boolean isEmpty() {
    return columns.isEmpty();
  }

  @Override
  public boolean isLive(int sheet, int row, int column) {
    return contains(sheet, row, column);
  }
}
