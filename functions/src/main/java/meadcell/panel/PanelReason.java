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
  ONE_DAY(INCONSISTENT, "days are all the same: one day shows no trend.");

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
