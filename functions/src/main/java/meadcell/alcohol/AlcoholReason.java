package meadcell.alcohol;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NO_SOLUTION;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the alcohol refuse. */
enum AlcoholReason implements Reason {
  PRESENT_ABOVE_ORIGINAL(INCONSISTENT, "present is {present}, above original, {original}."),
  YIELD_NOT_USED(
      INCONSISTENT, "yield is given, and the method {method} does not use it; only balance does."),
  TOO_FEW_PAIRS(INCONSISTENT, "originals has {count} values; at least {least} pairs are needed."),
  NO_YIELD_FITS(
      NO_SOLUTION,
      "No yield of {range} fits: do gravities and measured alcohol "
          + "belong to the same meads, and was no honey, sugar or fruit added on the way?"),
  NO_EXTRACT_LEFT(
      INCONSISTENT,
      "No must of the original gravity {original} can ferment to {present}: less than "
          + "no extract would be left."),
  LIGHTER_THAN_DRY(
      INCONSISTENT,
      "A gravity of {gravity} with {abv} leaves less than no extract; water with that "
          + "alcohol has {dry}."),
  LIGHTER_AFTER_BOILING(
      INCONSISTENT,
      "after is {after}, below before, {before}; without its alcohol a mead is denser."),
  BOILED_TOO_FAR(
      INCONSISTENT,
      "The gravity rises from {before} to {after}, which is more than {most}; was the "
          + "sample made up to its volume?"),
  BRIX_BELOW_GRAVITY(
      INCONSISTENT,
      "The refractometer shows {brix}, less than the {least} of gravity {gravity}; "
          + "alcohol can only make it show more."),
  TOO_MUCH_ALCOHOL(
      INCONSISTENT, "A refractometer at {brix} and a gravity of {gravity} mean more than {most}.");

  private final Refusal.Kind kind;
  private final String english;

  AlcoholReason(Refusal.Kind kind, String english) {
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
