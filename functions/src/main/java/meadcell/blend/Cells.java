package meadcell.blend;

import java.util.Arrays;
import java.util.Objects;
import meadcell.catalogue.Refusal;

/** Reading single cells of a table, where {@code where} says in a sentence which one it is. */
final class Cells {
  private Cells() {}

  static boolean isBlank(Object[] row) {
    return Arrays.stream(row).allMatch(Objects::isNull);
  }

  static double number(Object cell, String where) {
    if (cell instanceof Double value && Double.isFinite(value)) {
      return value;
    }
    if (cell == null) {
      throw Refusal.wrongKind(where + " is blank.");
    }
    throw Refusal.wrongKind(where + " is \"" + cell + "\"; a number is due.");
  }

  /** A name; one that is a number is written without a fraction where it has none. */
  static String name(Object cell, String where) {
    if (cell instanceof String text) {
      return text.trim();
    }
    if (cell == null) {
      throw Refusal.wrongKind(where + " is blank.");
    }
    double value = number(cell, where);
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }

  static double notBelow0(Object cell, String where) {
    double value = number(cell, where);
    if (value < 0) {
      throw Refusal.outOfRange(where + " is below 0.");
    }
    return value;
  }
}
