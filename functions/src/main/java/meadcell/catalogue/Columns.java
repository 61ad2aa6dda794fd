package meadcell.catalogue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Columns that go row by row together: rows blank in all are skipped, blank in some refused. */
final class Columns {
  private final List<ArgSpec> args = new ArrayList<>();
  private final int[] positions;

  Columns(List<ArgSpec> all) {
    positions = IntStream.range(0, all.size()).filter(i -> all.get(i).kind().isColumn()).toArray();
    for (int position : positions) {
      args.add(all.get(position));
    }
  }

  boolean isEmpty() {
    return args.isEmpty();
  }

  /** Reads the columns among the given arguments into their places among the values. */
  void read(Object[] given, Object[] values, UnitSystem system) {
    Object[][] columns = columns(given);
    for (int c = 0; c < columns.length; c++) {
      if (columns[c].length != columns[0].length) {
        throw new Refusal(General.UNEQUAL_LENGTHS)
            .about(args.get(0).name())
            .with("length", columns[0].length)
            .with("other", args.get(c).name())
            .with("otherLength", columns[c].length);
      }
    }
    int[] rows = fullRows(given, columns);
    for (int c = 0; c < columns.length; c++) {
      Object[] full = new Object[rows.length];
      for (int k = 0; k < full.length; k++) {
        full[k] = columns[c][rows[k] - 1];
      }
      Object raw = given[positions[c]];
      values[positions[c]] =
          args.get(c).reader.values(full, k -> CellReader.place(raw, rows[k]), system);
    }
  }

  private Object[][] columns(Object[] given) {
    Object[][] columns = new Object[positions.length][];
    for (int c = 0; c < columns.length; c++) {
      columns[c] = args.get(c).reader.column(given[positions[c]]);
    }
    return columns;
  }

  /** {@return where in a column's range the value stands that the function counts as so manieth} */
  Place place(Object[] given, int position, int count) {
    return CellReader.place(given[position], fullRows(given, columns(given))[count - 1]);
  }

  /** {@return a result for each row that was read, with blanks beside the rows that were not} */
  Object[][] beside(Object[] given, Object[][] results) {
    int[] rows = fullRows(given, columns(given));
    if (results.length != rows.length || rows[rows.length - 1] == rows.length) {
      return results;
    }
    Object[][] all = new Object[rows[rows.length - 1]][];
    Arrays.fill(all, new Object[] {""});
    for (int k = 0; k < rows.length; k++) {
      all[rows[k] - 1] = results[k];
    }
    return all;
  }

  /** The rows that no column leaves blank, counted from 1. */
  private int[] fullRows(Object[] given, Object[][] columns) {
    int[] rows = new int[columns[0].length];
    int kept = 0;
    for (int row = 0; row < rows.length; row++) {
      int blanks = 0;
      int blankColumn = 0;
      for (int c = 0; c < columns.length; c++) {
        if (columns[c][row] == null) {
          blanks++;
          blankColumn = c;
        }
      }
      if (blanks == 0) {
        rows[kept++] = row + 1;
      } else if (blanks < columns.length) {
        Object raw = given[positions[blankColumn]];
        throw args.get(blankColumn).reader.blank(CellReader.place(raw, row + 1));
      }
    }
    if (kept == 0) {
      throw new Refusal(General.ONLY_BLANKS).about(args.get(0).name());
    }
    return Arrays.copyOf(rows, kept);
  }
}
