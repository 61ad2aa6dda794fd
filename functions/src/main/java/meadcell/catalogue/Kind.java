package meadcell.catalogue;

/** What an argument takes; follows from the Java type of the parameter. */
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

  /** Whether a column given here means one value per row. */
  public boolean isScalar() {
    return this == NUMBER || this == TEXT || this == CHOICE;
  }

  /** Whether values are read row by row together with the other columns of the call. */
  boolean isColumn() {
    return this == NUMBERS || this == TEXTS;
  }
}
