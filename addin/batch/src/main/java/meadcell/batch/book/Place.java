package meadcell.batch.book;

import java.util.Arrays;
import java.util.Comparator;
import org.apache.poi.ss.util.CellReference;

/**
 * A cell of a sheet; row and column count from 0.
 *
 * <p>What is looked up for each cell has its equality written by hand, here and in other records:
 * the one that Java generates takes a tenth of a long fill and a thirtieth of a short one.
 */
public record Place(int row, int column) {
  /** Down the rows, and in each from left to right. */
  public static final Comparator<Place> DOWN =
      Comparator.comparingInt(Place::row).thenComparingInt(Place::column);

  private static final String[] NAMES = new String[256];

  static {
    Arrays.setAll(NAMES, CellReference::convertNumToColString);
  }

  /** The column of a reference such as {@code C14}. */
  public static int column(String reference) {
    int column = 0;
    int at = 0;
    while (at < reference.length() && reference.charAt(at) >= 'A') {
      column = 26 * column + Character.toUpperCase(reference.charAt(at++)) - 'A' + 1;
    }
    return column - 1;
  }

  /** The cell of a reference such as {@code C14}. */
  public static Place of(String reference) {
    String plain = reference.replace("$", "").strip();
    int digits = 0;
    while (digits < plain.length() && plain.charAt(digits) >= 'A') {
      digits++;
    }
    return new Place(Integer.parseInt(plain.substring(digits)) - 1, column(plain));
  }

  /** {@code C14}. */
  public String a1() {
    return name(column) + (row + 1);
  }

  private static String name(int column) {
    return column < NAMES.length ? NAMES[column] : CellReference.convertNumToColString(column);
  }

  /** {@code $C$14}. */
  public String fixed() {
    return "$" + name(column) + "$" + (row + 1);
  }

  @Override
  public boolean equals(Object object) {
    return object instanceof Place other && row == other.row && column == other.column;
  }

  @Override
  public int hashCode() {
    return 31 * row + column;
  }

  @Override
  public String toString() {
    return a1();
  }
}
