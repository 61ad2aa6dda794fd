package meadcell.catalogue;

import java.util.Optional;
import java.util.OptionalDouble;

/** What an argument takes; follows from its Java type. */
public enum Kind {
  /** One number. */
  NUMBER,
  /** One text. */
  TEXT,
  /** One word of a fixed list. */
  CHOICE,
  /** A column or row of numbers. */
  NUMBERS,
  /** A column or row of texts. */
  TEXTS,
  /** A table of numbers without gaps. */
  NUMBER_TABLE,
  /** A table of numbers, texts and blanks. */
  TABLE,
  /** Everything that follows, as it comes. */
  REST;

  static Kind of(Class<?> type) {
    if (type == double.class
        || type == OptionalDouble.class
        || type == int.class
        || type == boolean.class) {
      return NUMBER;
    }
    if (type == String.class) {
      return TEXT;
    }
    if (type.isEnum()) {
      return CHOICE;
    }
    if (type == double[].class) {
      return NUMBERS;
    }
    if (type == String[].class) {
      return TEXTS;
    }
    if (type == double[][].class) {
      return NUMBER_TABLE;
    }
    if (type == Rows.class
        || type == Optional.class
        || type == Cell[][].class
        || type == Cell.class
        || type == Cell[].class) {
      return TABLE;
    }
    if (type == Object[].class) {
      return REST;
    }
    throw new IllegalStateException("no kind of argument has the type " + type);
  }

  /** {@return whether a column given here means one value per row} */
  public boolean isScalar() {
    return this == NUMBER || this == TEXT || this == CHOICE;
  }

  /** Whether values are read row by row together with the other columns of the call. */
  boolean isColumn() {
    return this == NUMBERS || this == TEXTS;
  }
}
