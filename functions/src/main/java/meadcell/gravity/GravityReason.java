package meadcell.gravity;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.WRONG_KIND;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the gravity refuse. */
enum GravityReason implements Reason {
  ABOVE_ORIGINAL(
      INCONSISTENT, "reading, corrected to {corrected}, is above the original gravity {original}."),
  LIGHTER_THAN_ALCOHOL(
      INCONSISTENT, "sg {sg} is lighter than water with {abv} of alcohol; is abv left out?"),
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
