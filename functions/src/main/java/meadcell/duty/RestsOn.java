package meadcell.duty;

import meadcell.catalogue.Message;

/** What a duty rests on. */
enum RestsOn implements Message {
  US_RATE(
      "Class \"{class}\": {rate} a wine gallon, in force since {since}, text of November 2024; {gallons}"
          + " wine gallons to the nearest tenth, {before} of the year before them."),
  UK_RATE(
      "{rate} a litre of pure alcohol, in force since {since}; {alcohol} L of it, by a strength of {abv}.");

  private final String english;

  RestsOn(String english) {
    this.english = english;
  }

  @Override
  public String english() {
    return english;
  }
}
