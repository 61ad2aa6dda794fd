package meadcell.cellar;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal.Kind;

/** Why the functions about functions refuse. */
enum CellarReason implements Reason {
  NOT_ONE_VALUE(
      Kind.OUT_OF_RANGE, "function is \"{function}\"; it must be one that gives one value."),
  BLOCK(Kind.WRONG_KIND, "Each argument is one column, not a block of cells."),
  UNEQUAL_COLUMNS(
      Kind.INCONSISTENT,
      "The columns have {first} and {other} cells; they must go row by row together.");

  private final Kind kind;
  private final String english;

  CellarReason(Kind kind, String english) {
    this.kind = kind;
    this.english = english;
  }

  @Override
  public Kind kind() {
    return kind;
  }

  @Override
  public String english() {
    return english;
  }
}
