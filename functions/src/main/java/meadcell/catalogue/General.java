package meadcell.catalogue;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NOT_CONVERGED;
import static meadcell.catalogue.Refusal.Kind.OUT_OF_RANGE;
import static meadcell.catalogue.Refusal.Kind.UNKNOWN_NAME;
import static meadcell.catalogue.Refusal.Kind.WRONG_COUNT;
import static meadcell.catalogue.Refusal.Kind.WRONG_KIND;

/** The reasons that every family may give. */
public enum General implements Reason {
  OUTSIDE(OUT_OF_RANGE, "{argument} is {value}; it must be {range}."),
  FRACTION(
      OUT_OF_RANGE, "{argument} is {value}; percentages are percent numbers, 12 and not 0.12."),
  ZERO(OUT_OF_RANGE, "{argument} is {value}; it must be other than 0."),
  NOT_WHOLE(OUT_OF_RANGE, "{argument} is {value}; it must be a whole number."),
  NOT_TRUTH(OUT_OF_RANGE, "{argument} is {value}; it must be 1 or 0."),
  NOT_A_CHOICE(OUT_OF_RANGE, "{argument} is \"{value}\"; it must be one of {choices}."),
  UNITS(OUT_OF_RANGE, "units must be \"metric\" or \"US\", and the last argument."),
  NUMBER_DUE(WRONG_KIND, "{argument} is the text \"{value}\"; a number is due."),
  NOT_A_NUMBER(WRONG_KIND, "{argument} is not a number."),
  TEXT_DUE(WRONG_KIND, "{argument} is {value}; a text is due."),
  BLANK(WRONG_KIND, "{argument} is blank."),
  MISSING(WRONG_KIND, "{argument} is missing."),
  ONLY_BLANKS(WRONG_KIND, "{argument} has only blank cells."),
  ONE_CELL_DUE(WRONG_KIND, "{argument} takes one cell, not a range of several."),
  ONE_COLUMN_DUE(WRONG_KIND, "{argument} takes one column or one row, not a block of cells."),
  WRONG_WIDTH(WRONG_KIND, "{argument} has {columns} columns; due are {names}."),
  UNEQUAL_LENGTHS(
      INCONSISTENT,
      "{argument} has {length} cells, {other} has {otherLength}; they must go row by row together."),
  NOT_FINITE(INCONSISTENT, "These values together have no finite result."),
  NOT_SETTLED(NOT_CONVERGED, "The search did not settle in {steps} steps."),
  GIVEN_ONE(WRONG_COUNT, "{function} was given 1 argument; it takes {use}."),
  GIVEN_SEVERAL(WRONG_COUNT, "{function} was given {count} arguments; it takes {use}."),
  UNKNOWN_FUNCTION(UNKNOWN_NAME, "The function \"{given}\" is not known.");

  private final Refusal.Kind kind;
  private final String english;

  General(Refusal.Kind kind, String english) {
    this.kind = kind;
    this.english = english;
  }

  @Override
  public Refusal.Kind kind() {
    return kind;
  }

  @Override
  public String english() {
    return english;
  }
}
