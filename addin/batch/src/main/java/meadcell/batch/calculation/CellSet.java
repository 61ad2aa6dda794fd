package meadcell.batch.calculation;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import meadcell.batch.book.Place;

/** A set of cells of one workbook, small for long columns. */
public final class CellSet implements Live {
  private record Column(int sheet, int column) {
    @Override
    public boolean equals(Object object) {
      return object instanceof Column other && sheet == other.sheet && column == other.column;
    }

    @Override
    public int hashCode() {
      return 31 * sheet + column;
    }
  }

  private final Map<Column, BitSet> columns = new HashMap<>();

  public void add(int sheet, int row, int column) {
    columns.computeIfAbsent(new Column(sheet, column), key -> new BitSet()).set(row);
  }

  public void add(FormulaCell formula) {
    add(formula.sheet(), formula.place());
  }

  public void add(int sheet, Place place) {
    add(sheet, place.row(), place.column());
  }

  public boolean contains(FormulaCell formula) {
    return contains(formula.sheet(), formula.place().row(), formula.place().column());
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
