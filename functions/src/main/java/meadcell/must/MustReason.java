package meadcell.must;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NO_SOLUTION;
import static meadcell.catalogue.Refusal.Kind.UNKNOWN_NAME;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the must refuse. */
enum MustReason implements Reason {
  UNKNOWN_FRUIT(
      UNKNOWN_NAME,
      "The fruit \"{given}\" is not known. For one that is not in the table give its °Brix or sugars,"
          + " and its refuse, 0 for juice or syrup."),
  UNKNOWN_INGREDIENT(
      UNKNOWN_NAME,
      "The ingredient \"{given}\" is not known. For one that is not in the table give its °Brix, and"
          + " its refuse, 0 for juice or syrup."),
  NO_BRIX(
      NO_SOLUTION,
      "There is no °Brix of the juice of {fruit} in the table; measure it and give it."),
  NO_SUGARS(
      NO_SOLUTION,
      "USDA's table has no sugars for {fruit}; give them, in per cent of the edible part."),
  MASS_ONLY(INCONSISTENT, "{argument}: {ingredient} takes a mass and nothing else."),
  NO_JUICE(INCONSISTENT, "{ingredient} takes no °Brix; honey has its moisture instead."),
  EVERY_MASS_0(INCONSISTENT, "recipe holds nothing: every mass is 0."),
  TOO_THICK(
      INCONSISTENT,
      "recipe is {solids} solids, above the {thickest} up to which a mixture is a must. Is the"
          + " water missing?"),
  WATER_CANNOT_RAISE(
      INCONSISTENT,
      "target is {target}, above the must's gravity {gravity}; water cannot raise it."),
  ACID_CANNOT_LOWER(
      INCONSISTENT,
      "target is {target}, below the present {present}; to lower acidity see MUST.DEACIDIFY.");

  private final Refusal.Kind kind;
  private final String english;

  MustReason(Refusal.Kind kind, String english) {
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
