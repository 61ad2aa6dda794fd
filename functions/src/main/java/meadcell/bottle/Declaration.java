package meadcell.bottle;

import meadcell.catalogue.Message;

/** Why a label must or need not name sulfites. */
enum Declaration implements Message {
  SULFITES_DECLARED(
      "Total sulfur dioxide may be as high as {highest} (95 %), not below the limit of {limit}."),
  SULFITES_BELOW("Total sulfur dioxide is at most {highest} (95 %), below the limit of {limit}.");

  private final String english;

  Declaration(String english) {
    this.english = english;
  }

  @Override
  public String english() {
    return english;
  }
}
