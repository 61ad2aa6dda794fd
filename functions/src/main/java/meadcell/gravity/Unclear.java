package meadcell.gravity;

import meadcell.catalogue.Message;

/** Why a note is not surely one gravity. */
enum Unclear implements Message {
  NOT_ONE_NUMBER("it is not one number with at most a scale before or after it"),
  UNKNOWN_SCALE("its scale must be SG, Bx, °P, Bé or Oe"),
  OFF_SCALE("on this scale it must be {range}"),
  NO_SUCH_WARMTH("its temperature must be {range}"),
  NO_SCALE(
      "without a scale only 0.98 to 1.3 with two decimals or more, or 980 to 1300, is surely a"
          + " gravity");

  private final String english;

  Unclear(String english) {
    this.english = english;
  }

  @Override
  public String english() {
    return english;
  }
}
