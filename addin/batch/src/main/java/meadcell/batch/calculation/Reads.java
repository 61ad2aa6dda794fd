package meadcell.batch.calculation;

import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import meadcell.batch.book.Place;

/**
 * What a formula reads.
 *
 * @param areas the cells it reads
 * @param anything whether it may read cells that it does not name, such as through INDIRECT
 * @param functions names of the functions that are not the spreadsheet's own, as written
 * @param usual names of the others that it calls
 * @param problem why the formula cannot be computed here; empty if it can be read. The areas of
 *     such a formula are only what its text shows.
 */
public record Reads(
    List<Area> areas, boolean anything, Set<String> functions, Set<String> usual, String problem) {
  /** A rectangle of one sheet; all bounds are included and count from 0. */
  public record Area(int sheet, int firstRow, int lastRow, int firstColumn, int lastColumn) {
    /** One cell. */
    public static Area of(int sheet, Place place) {
      return new Area(sheet, place.row(), place.row(), place.column(), place.column());
    }

    public boolean contains(int otherSheet, int row, int column) {
      return sheet == otherSheet
          && row >= firstRow
          && row <= lastRow
          && column >= firstColumn
          && column <= lastColumn;
    }

    public long size() {
      return (lastRow - firstRow + 1L) * (lastColumn - firstColumn + 1L);
    }
  }

  public Reads {
    areas = List.copyOf(areas);
    functions = ordered(functions);
    usual = ordered(usual);
  }

  /** Messages name the first of them. */
  private static Set<String> ordered(Set<String> names) {
    return Collections.unmodifiableSet(new TreeSet<>(names));
  }

  /** The same of a formula whose cells nobody asks for. */
  public Reads withoutAreas() {
    return new Reads(List.of(), anything, functions, usual, problem);
  }

  public boolean canBeRead() {
    return problem.isEmpty();
  }
}
