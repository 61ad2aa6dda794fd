package meadcell.gravity;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.OUT_OF_RANGE;
import static meadcell.catalogue.Refusal.Kind.WRONG_KIND;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the gravity refuse. */
enum GravityReason implements Reason {
  ABOVE_ORIGINAL(
      INCONSISTENT, "reading, corrected to {corrected}, is above the original gravity {original}."),
  LIGHTER_THAN_ALCOHOL(
      INCONSISTENT, "sg {sg} is lighter than water with {abv} of alcohol; is abv left out?"),
  OUTSIDE_WITH_OFFSET(OUT_OF_RANGE, "{name} with its offset is {value}; it must be {range}."),
  SALT_BEYOND_TABLE(
      OUT_OF_RANGE,
      "A solution of salt is tabled up to {most}, from {coldest} to {warmest}; it is {percent} at"
          + " {temperature}."),
  UNCERTAINTY_DUE(
      INCONSISTENT,
      "{checks} checks cannot tell how far one is off by chance: give u, the standard uncertainty of one,"
          + " or make three."),
  CHECKS_EXACT(
      INCONSISTENT,
      "The checks lie on one line exactly: the scale is too coarse to show how far one is off by chance."
          + " Give u, the standard uncertainty of one."),
  BEYOND_CHECKS(
      INCONSISTENT,
      "{name} is {value}, too far from the checks, {least} to {most}; check the instrument nearer to it,"
          + " or give only one check."),
  BEFORE_CHECKS(
      INCONSISTENT,
      "date is before the first check, or later than the last by more than all of them"
          + " span; check the instrument again."),
  ONE_DAY(INCONSISTENT, "All checks are of one day; a drift needs two days at least."),
  NO_TEMPERATURE(WRONG_KIND, "text is \"{text}\"; it ends with no temperature in C or F."),
  UNCLEAR_NOTE(WRONG_KIND, "text is \"{text}\"; {why}.");

  private final Refusal.Kind kind;
  private final String english;

  GravityReason(Refusal.Kind kind, String english) {
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
