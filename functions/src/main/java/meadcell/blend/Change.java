package meadcell.blend;

import meadcell.catalogue.Message;

/** How a target of a blend must give way. */
enum Change implements Message {
  MINIMUM("property {property}: minimum {given} must fall by {by}"),
  MAXIMUM("property {property}: maximum {given} must rise by {by}");

  private final String english;

  Change(String english) {
    this.english = english;
  }

  @Override
  public String english() {
    return english;
  }
}
