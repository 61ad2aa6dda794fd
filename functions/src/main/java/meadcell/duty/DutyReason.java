package meadcell.duty;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.OUT_OF_RANGE;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the duty refuse. */
enum DutyReason implements Reason {
  BEFORE_RATES(
      OUT_OF_RANGE,
      "day is {day}; the rates known here begin on {first}. Take the rate from the law of that"
          + " day and use DUTY.OWNRATE."),
  AFTER_RATES(
      OUT_OF_RANGE,
      "day is {day}; the rates known here end on {last}. Take the rate from the authority and"
          + " use DUTY.OWNRATE."),
  NOT_WINE(
      OUT_OF_RANGE, "abv is {abv}; above {most} the law taxes distilled spirits, by another rule."),
  NO_RELIEF(
      INCONSISTENT,
      "abv is {abv}; draught and small producer reliefs are for drinks below {below} only."),
  RELIEF_ABOVE_RATE(INCONSISTENT, "relief is {relief}, more than the rate of {rate}."),
  NOT_IN_BAND(
      INCONSISTENT,
      "start is {start}; it must be less than production, {production}: take the band that production"
          + " falls in.");

  private final Refusal.Kind kind;
  private final String english;

  DutyReason(Refusal.Kind kind, String english) {
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
