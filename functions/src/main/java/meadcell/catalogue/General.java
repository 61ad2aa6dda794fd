package meadcell.catalogue;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NOT_CONVERGED;
import static meadcell.catalogue.Refusal.Kind.OUT_OF_RANGE;
import static meadcell.catalogue.Refusal.Kind.UNKNOWN_NAME;
import static meadcell.catalogue.Refusal.Kind.WRONG_COUNT;
import static meadcell.catalogue.Refusal.Kind.WRONG_KIND;

/** The reasons that every family may give. */
public enum General implements Reason {
  /** A number is out of its range. */
  OUTSIDE(OUT_OF_RANGE, "{argument} is {value}; it must be {range}."),
  /** A percentage came as a fraction of 1. */
  FRACTION(
      OUT_OF_RANGE, "{argument} is {value}; percentages are percent numbers, 12 and not 0.12."),
  /** A number is 0 where a blank cell is likelier. */
  ZERO(OUT_OF_RANGE, "{argument} is {value}; it must be other than 0."),
  /** A whole number is due. */
  NOT_WHOLE(OUT_OF_RANGE, "{argument} is {value}; it must be a whole number."),
  /** 1 or 0 is due. */
  NOT_TRUTH(OUT_OF_RANGE, "{argument} is {value}; it must be 1 or 0."),
  /** One of a few words is due. */
  NOT_A_CHOICE(OUT_OF_RANGE, "{argument} is \"{value}\"; it must be one of {choices}."),
  /** The last argument is no system of units. */
  UNITS(OUT_OF_RANGE, "units must be \"metric\" or \"US\", and the last argument."),
  /** A text stands where a number is due. */
  NUMBER_DUE(WRONG_KIND, "{argument} is the text \"{value}\"; a number is due."),
  /** What stands there is infinite or not a number. */
  NOT_A_NUMBER(WRONG_KIND, "{argument} is not a number."),
  /** A number stands where a text is due. */
  TEXT_DUE(WRONG_KIND, "{argument} is {value}; a text is due."),
  /** A cell is blank that must not be. */
  BLANK(WRONG_KIND, "{argument} is blank."),
  /** A required argument is left out. */
  MISSING(WRONG_KIND, "{argument} is missing."),
  /** A range holds nothing. */
  ONLY_BLANKS(WRONG_KIND, "{argument} has only blank cells."),
  /** Several cells stand where one is due. */
  ONE_CELL_DUE(WRONG_KIND, "{argument} takes one cell, not a range of several."),
  /** A block of cells stands where a column or row is due. */
  ONE_COLUMN_DUE(WRONG_KIND, "{argument} takes one column or one row, not a block of cells."),
  /** A table has more or fewer columns than it must. */
  WRONG_WIDTH(WRONG_KIND, "{argument} has {columns} columns; due are {names}."),
  /** Columns that go together differ in length. */
  UNEQUAL_LENGTHS(
      INCONSISTENT,
      "{argument} has {length} cells, {other} has {otherLength}; they must go row by row together."),
  /** The arithmetic left the finite numbers. */
  NOT_FINITE(INCONSISTENT, "These values together have no finite result."),
  /** A search did not settle. */
  NOT_SETTLED(NOT_CONVERGED, "The search did not settle in {steps} steps."),
  /** The only argument is one too few or too many. */
  GIVEN_ONE(WRONG_COUNT, "{function} was given 1 argument; it takes {use}."),
  /** There are too few or too many arguments. */
  GIVEN_SEVERAL(WRONG_COUNT, "{function} was given {count} arguments; it takes {use}."),
  /** No function has this name. */
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
