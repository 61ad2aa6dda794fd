package meadcell.ferment;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Refusal.Kind;

/** Why functions of the ferment refuse. */
enum FermentReason implements Reason {
  FINAL_NOT_BELOW_ORIGINAL(
      Kind.INCONSISTENT, "final is {final}; it must be below original, {original}."),
  TOO_MUCH_HONEY(
      Kind.INCONSISTENT,
      "honey is too much for volume: together they had the gravity {gravity}; at most {most} is a"
          + " must. Are they swapped?"),
  TOO_MUCH_ADDED(
      Kind.INCONSISTENT,
      "The mass of {ingredient} is too much for volume: together they had the gravity {gravity}; at"
          + " most {most} is a must. Are they swapped?"),
  SPIRIT(
      Kind.INCONSISTENT,
      "{ingredient} brings alcohol that no yeast has made; see BLEND.FORTIFY for it."),
  NOT_LATER(
      Kind.INCONSISTENT,
      "{argument} is {day}, after {before}; each reading must be later than the one before."),
  TOO_FEW_READINGS(Kind.INCONSISTENT, "days has {count} readings; at least {least} are due."),
  RISES(
      Kind.INCONSISTENT,
      "The latest {readings} readings rise, to {last}, by more than readings scatter: what may still"
          + " ferment does not show. Did something sweet come in? Then give three readings at least from"
          + " after it. Is one wrong, or not corrected for its temperature?"),
  FALLS_TOO_LITTLE(
      Kind.INCONSISTENT, "gravities fall by {fall} from first to last; at least {least} is due."),
  NO_CURVE(
      Kind.NO_SOLUTION,
      "No curve with an end fits these readings: the fall has not slowed down yet, or it was uneven (a"
          + " cold spell, a feeding, a straight fall), or they are not corrected or not from the start"
          + " on."),
  ENDS_ABOVE(
      Kind.NO_SOLUTION,
      "The curve through the readings ends at {end}, above the last of them, {last}: the ferment has"
          + " changed its pace. Read on."),
  END_OPEN(
      Kind.NO_SOLUTION,
      "The readings do not show an end yet: it may lie between {lower} and {upper}. Read on until the"
          + " fall slows down."),
  DEADLY(
      Kind.OUT_OF_RANGE,
      "gasPerHour, room and airChanges make {gas} of carbon dioxide even if well mixed. From {limit}"
          + " it is immediately dangerous to life (NIOSH): keep out, ventilate low down, measure.");

  private final Refusal.Kind kind;
  private final String english;

  FermentReason(Refusal.Kind kind, String english) {
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
