package meadcell.ferment;

import meadcell.catalogue.Message;

/** What a verdict of FERMENT.STATE rests on, and what would tell where the readings do not. */
enum Because implements Message {
  FALLS(
      "The latest {readings} readings fall by {fall}, one-sided 95 % limits {least} and {most}:"
          + " above 0."),
  STILL(
      "The latest {readings} readings fall by {fall}, one-sided 95 % limits {least} and {most}: below"
          + " minFall, {minFall}, which is {sugar} of sugar a month. On the last day their line"
          + " stands at {level}; up to {expected} counts as the end expected, give or take"
          + " {giveOrTake}. See FERMENT.REMAINING before bottling."),
  RISES(
      "The latest {readings} readings rise, to {last}, by more than readings scatter: whether something"
          + " ferments meanwhile does not show. Did something sweet come in? Then read on from there. Is"
          + " one wrong, or not corrected for its temperature?"),
  UNDECIDED(
      "The latest {readings} readings fall by {fall}, one-sided 95 % limits {least} and {most}:"
          + " neither above 0 nor below minFall, {minFall}, for certain. One more reading in {days} can"
          + " tell."),
  TOO_SHORT(
      "All {readings} readings together leave the fall uncertain by {halfWidth} at one-sided 95 %; to"
          + " tell it, {narrow} is due. Readings still to come: {more}, over {days}."),
  TOO_FEW("Too few to show a fall: {readings}. Readings still to come: {more}, over {days}.");

  private final String english;

  Because(String english) {
    this.english = english;
  }

  @Override
  public String english() {
    return english;
  }
}
