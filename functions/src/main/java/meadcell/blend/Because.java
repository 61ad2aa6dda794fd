package meadcell.blend;

import meadcell.catalogue.Message;

/** What a carried property rests on. */
enum Because implements Message {
  CARRIED(
      "Carried from {count} analyses; each counts with what the value would rise if it were 1 more:"
          + " {parts}."),
  ANALYSIS("{slope} for \"{lot}\" of {day}, {value} (row {row} of analyses)");

  private final String english;

  Because(String english) {
    this.english = english;
  }

  @Override
  public String english() {
    return english;
  }
}
