package meadcell.vessel;

import meadcell.catalogue.Message;

/** What a loss rests on. */
enum Because implements Message {
  EVAPORATES(
      "{lost} went missing over {days} days between gauge rows, {rate} a year of what it held, give or"
          + " take {doubt} (95 %). Casks lose {least} to {most} a year."),
  LEAKS(
      "{lost} went missing over {days} days between gauge rows, {rate} a year of what it held, give or"
          + " take {doubt} (95 %). No evaporation explains that, casks lose {least} to {most} a year:"
          + " look for a leak, a transfer that was not written, or a wrong dip.");

  private final String english;

  Because(String english) {
    this.english = english;
  }

  @Override
  public String english() {
    return english;
  }
}
