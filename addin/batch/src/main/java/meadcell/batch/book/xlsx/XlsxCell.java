package meadcell.batch.book.xlsx;

import meadcell.batch.book.Value;

/** A cell of an {@code .xlsx} sheet. */
final class XlsxCell {
  /** The shared formula that none is part of. */
  static final int NOT_SHARED = -1;

  /** The style of a cell to which nobody gave one. */
  static final int PLAIN_STYLE = 0;

  /** Makes it what another one is. */
  void set(XlsxCell other) {
    style = other.style;
    value = other.value;
    formula = other.formula;
    shared = other.shared;
    isFirstOfShared = other.isFirstOfShared;
    isFormulaUnclear = other.isFormulaUnclear;
    isChanged = other.isChanged;
    isFormulaChanged = other.isFormulaChanged;
    isStored = other.isStored;
  }

  int style;
  Value value = Value.BLANK;
  String formula;

  /** Number of the formula that is stored once, in its first cell, for several. */
  int shared = NOT_SHARED;

  /** Whether it is that first cell. */
  boolean isFirstOfShared;

  /** Whether POI could not read the shared formula, so that this cell's own is not known. */
  boolean isFormulaUnclear;

  /** Whether the cell is to be written anew. */
  boolean isChanged;

  /** Whether its formula, too, is another. */
  boolean isFormulaChanged;

  /** Whether the file already has it. */
  boolean isStored;
}
