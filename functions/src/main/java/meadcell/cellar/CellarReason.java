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
      "The columns have {first} and {other} cells; they must go row by row together."),
  NOT_ONE_NUMBER(
      Kind.OUT_OF_RANGE, "function is \"{function}\"; it must be one that gives one number."),
  TAKES_RANGES(
      Kind.OUT_OF_RANGE,
      "function is \"{function}\", which takes a range, {name}; it must be one that takes single"
          + " values."),
  NOT_CONTINUOUS(
      Kind.WRONG_KIND,
      "Argument {place} takes a text, a word or whole numbers, or holds no number; that has no standard"
          + " uncertainty and cannot be looked for."),
  UNCERTAIN_BLANK(
      Kind.INCONSISTENT,
      "Argument {place} is left out and has an uncertainty; give the value that stands for it."),
  ALL_EXACT(Kind.WRONG_KIND, "uncertainties are all blank or 0; at least one must be larger."),
  NO_STEP(
      Kind.INCONSISTENT,
      "Around argument {place} the function answers nothing else, so what its uncertainty does cannot"
          + " be told."),
  NOTHING_MOVES(
      Kind.INCONSISTENT,
      "None of the uncertainties changes the result: there is nothing to share."),
  SHARED_BY_ONE(
      Kind.OUT_OF_RANGE,
      "shared names only place {place}; give the places that one instrument read in one range, such as"
          + " {pair}."),
  SHARED_TWICE(
      Kind.INCONSISTENT, "shared names place {place} twice; one instrument read it, in one range."),
  NO_PLACE(
      Kind.OUT_OF_RANGE,
      "\"{value}\" is no place of an argument; it must be a whole number from 1 to {most}."),
  UNLIMITED(Kind.OUT_OF_RANGE, "{name} has no limits between which it could be looked for."),
  NO_SOLUTION(
      Kind.NO_SOLUTION,
      "No {name} from {lowest} to {highest} gives {result}; the function gives {least} to {most}"
          + " there."),
  JUMPS(Kind.NO_SOLUTION, "No {name} gives {result}: the result jumps past it."),
  FLAT(
      Kind.NO_SOLUTION,
      "Many values of {name} around {first} give {result}: the result goes in steps."),
  SEVERAL(
      Kind.NO_SOLUTION, "Several values of {name} give {result}, {first} and {other} among them.");

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
