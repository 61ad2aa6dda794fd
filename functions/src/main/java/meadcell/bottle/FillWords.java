package meadcell.bottle;

import meadcell.catalogue.Message;

/** What a verdict about fills rests on. */
enum FillWords implements Message {
  FAR_SHORT(
      "{count} of {bottles} bottles lack more than twice the tolerated {tolerance} of {label}: those may"
          + " not be sold; mean {mean}, standard deviation {deviation}"),
  MANY_SHORT(
      "{count} of {bottles} bottles lack more than the tolerated {tolerance} of {label}, more than the"
          + " sampling plan accepts; mean {mean}, standard deviation {deviation}"),
  MEAN_SHORT(
      "the mean of {bottles} bottles, {mean}, is below {label} by more than chance explains (one-sided, 99.5 %);"
          + " standard deviation {deviation}"),
  MEAN_BELOW(
      "the mean of {bottles} bottles, {mean}, is below {label} but not by more than chance explains, so"
          + " that the reference test would accept; standard deviation {deviation}. More bottles, or a"
          + " fuller fill, would tell"),
  MEAN_FULL(
      "the mean of {bottles} bottles is {mean}, not below {label}; {count} lack more than the tolerated"
          + " {tolerance}; standard deviation {deviation}"),
  OUTSIDE(
      "{count} of {bottles} bottles are off {label} by more than {tolerance}; mean {mean}, standard"
          + " deviation {deviation}"),
  ONE_SIDED(
      "{count} of {bottles} bottles hold less than {label}, which is not as many over as under (95 %);"
          + " mean {mean}, standard deviation {deviation}"),
  MORE_UNDER(
      "{count} of {bottles} bottles hold less than {label}, more than hold more, but no more than chance"
          + " explains (95 %); mean {mean}, standard deviation {deviation}. More bottles, or a fuller"
          + " fill, would tell"),
  BALANCED(
      "all {bottles} bottles are within {tolerance} of {label} and {count} hold less, not more than hold"
          + " more; mean {mean}, standard deviation {deviation}"),
  FEW(
      "{bottles} bottles are too few, {count} would tell; mean {mean}, standard deviation {deviation},"
          + " tolerance {tolerance} of {label}");

  private final String english;

  FillWords(String english) {
    this.english = english;
  }

  @Override
  public String english() {
    return english;
  }
}
