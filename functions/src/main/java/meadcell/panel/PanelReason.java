package meadcell.panel;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NO_SOLUTION;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the panel refuse. */
enum PanelReason implements Reason {
  BELOW_GUESSING(
      NO_SOLUTION,
      "correctPercent is {correct}, less than the {guess} that guessing gives: there is"
          + " no d′."),
  TOO_FEW_TASTERS(
      NO_SOLUTION,
      "Even {tasters} right answers of {tasters} tasters do not reach alpha = {alpha}: "
          + "ask more tasters."),
  MORE_RIGHT_THAN_TASTERS(INCONSISTENT, "correct is {correct}, more than the {tasters} tasters."),
  TOO_FEW_RANKS(
      INCONSISTENT,
      "ranks has {tasters} tasters (rows) and {meads} meads (columns); it must have at "
          + "least 2 and 3. For two meads use PANEL.PAIRED."),
  ALL_RANKED_ALIKE(INCONSISTENT, "ranks tell nothing: every taster ranked all meads the same."),
  NOT_AN_ORDER(
      INCONSISTENT,
      "{argument} do not order {meads} meads: each needs 1 to {meads}, ties the mean of"
          + " the places they share (RANK.AVG gives it)."),
  TOO_FEW_SCORES(INCONSISTENT, "{argument}: only {given} tasted; at least {least} are needed."),
  ONE_DAY(INCONSISTENT, "days are all the same: one day shows no trend."),
  TOO_MANY_GLASSES(
      NO_SOLUTION,
      "There are {codes} codes for {glasses} glasses: ask for a part of the tasters at a time, with"
          + " another seed, and codes are unique within each part."),
  MORE_RIGHT_THAN_ANSWERS(
      INCONSISTENT, "{argument}: correct is {correct}, more than the {answers} answers."),
  NOT_REPLICATED(
      INCONSISTENT,
      "tasters has {given} tasters; at least 2 are needed, and one of them with 2 or more answers."
          + " Where each gave one answer, use PANEL.TRIANGLE or its like."),
  NOTHING_VARIES(
      NO_SOLUTION,
      "Nobody was right more often than by guessing, or nobody was ever wrong: how tasters differ"
          + " does not show. PANEL.TRIANGLE and its like, for all answers together, says whether"
          + " there is a difference."),
  TOO_FINE(
      INCONSISTENT,
      "{argument} are too many or too finely divided to count every draw; at most 3 decimals."
          + " PANEL.SCORE takes them."),
  SCORED_ALIKE(
      INCONSISTENT, "{argument} are all the same: how far their mean is uncertain does not show."),
  REPEATED_ALIKE(
      INCONSISTENT,
      "first and second are the same in every row: the scale is too coarse to show how well the"
          + " taster repeats.");

  private final Refusal.Kind kind;
  private final String english;

  PanelReason(Refusal.Kind kind, String english) {
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
