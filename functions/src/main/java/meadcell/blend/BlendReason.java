package meadcell.blend;

import static meadcell.catalogue.Refusal.Kind.INCONSISTENT;
import static meadcell.catalogue.Refusal.Kind.NOT_CONVERGED;
import static meadcell.catalogue.Refusal.Kind.NO_SOLUTION;
import static meadcell.catalogue.Refusal.Kind.UNKNOWN_NAME;
import static meadcell.catalogue.Refusal.Kind.WRONG_KIND;

import meadcell.catalogue.Reason;
import meadcell.catalogue.Refusal;

/** Why functions of the blend refuse. */
enum BlendReason implements Reason {
  BOTH_ALIKE(INCONSISTENT, "first and second are both {first}; shares make no difference."),
  TARGET_NOT_BETWEEN(
      INCONSISTENT,
      "target is {target}; it must lie between first, {first}, and second, {second}."),
  ALL_0(INCONSISTENT, "volumes are all 0."),
  SPIRIT_CANNOT_REACH(
      INCONSISTENT,
      "target is {target}; it must be at least abv, {abv}, and below spirit, {spirit}."),
  WATER_CANNOT_RAISE(INCONSISTENT, "target is {target}, above abv, {abv}; water only lowers it."),
  HONEY_CANNOT_LOWER(
      INCONSISTENT, "target is {target}, below gravity, {gravity}; honey only raises it."),
  LIGHTER_THAN_DRY(INCONSISTENT, "gravity is {gravity}; with {abv} it cannot be below {dry}."),

  STOCK_TOO_NARROW(
      INCONSISTENT,
      "stock needs three columns or more: available, cost, and a column per property."),
  TARGETS_SHAPE(
      INCONSISTENT,
      "targets must have two rows, minimum and maximum, and a column for each of the {count}"
          + " properties in stock; it has {rows} rows and {columns} columns."),
  NOTHING_AVAILABLE(WRONG_KIND, "stock has no lot of which anything is available."),
  MINIMUM_ABOVE_MAXIMUM(
      INCONSISTENT, "minimum of property {property} is {minimum}, above its maximum, {maximum}."),
  TOO_LITTLE(NO_SOLUTION, "The lots together hold only {share} of volume."),
  NO_RANGE(
      INCONSISTENT,
      "closest needs a property with both a minimum and a maximum: it aims at their middle."),
  BY_A_HAIR(NOT_CONVERGED, "The targets are met or missed by a hair; widen them a little."),
  NO_BLEND(
      NO_SOLUTION,
      "No blend of these lots meets the targets. The least that must give way: {changes}."),
  LIMITS_NOT_KEPT(NOT_CONVERGED, "The plan found does not keep the limits; change them a little."),

  PH_NOT_CARRIED(
      INCONSISTENT,
      "{property} does not mix by volume and is not carried: blend a sample and measure it."),
  FREE_SULFITE_NOT_CARRIED(
      INCONSISTENT,
      "{property} binds and is used up, so it is not carried: measure it, follow it with"
          + " SULFITE.DECAY, or carry total SO2."),
  GRAVITY_NOT_CARRIED(
      INCONSISTENT,
      "{property} is not carried: carry strength and sugar, or mix gravities with BLEND.GRAVITY."),
  NOT_CONSERVED(INCONSISTENT, "{property} is not conserved, so it is not carried: measure it."),
  NO_SUCH_PROPERTY(UNKNOWN_NAME, "analyses have no property \"{given}\"."),
  ZERO_WITHOUT_UNCERTAINTY(
      INCONSISTENT,
      "{argument} is 0 and its uncertainty is blank; a share of nothing would make it exact. Write as"
          + " uncertainty the least that the analysis can show."),
  NOT_IN_TRANSFERS(
      UNKNOWN_NAME, "Row {row} of {table} is of \"{given}\", which is not in transfers."),
  VESSEL_TWICE(
      INCONSISTENT,
      "Row {row} of vessels is of \"{vessel}\", as an earlier one is; a vessel has one row."),
  ANALYSIS_OF_EMPTY(
      INCONSISTENT,
      "Row {row} of analyses is of \"{lot}\", which holds nothing by then, as far as transfers say."),
  NOT_ANALYSED(
      NO_SOLUTION,
      "The {property} is not known: analyses have none of \"{liquid}\" by the day it came in, and no"
          + " later one of the vessel."),
  ADDED(
      NO_SOLUTION,
      "The {property} is not known: what was added to \"{vessel}\" on {day} (row {row} of additions)"
          + " changed it, and it was not measured on a later day since."),
  FERMENTABLE_CAME(
      NO_SOLUTION,
      "The {property} is not known: \"{liquid}\", which may ferment as far as analyses say, came into"
          + " \"{vessel}\" on {day}, and {property} was not measured there since. If it cannot ferment,"
          + " add its strength or sugar to analyses."),
  CHANGED_BETWEEN(
      NO_SOLUTION,
      "The {property} is not known: in \"{vessel}\" it went from {before} to {after} between {since}"
          + " and {day} as in a ferment, so it cannot be carried through those days."),
  STILL_CHANGES(
      NO_SOLUTION,
      "The {property} is not known: in \"{vessel}\" it still changed, from {before} to {after} by {day},"
          + " as in a ferment. Measure until it stands still, or sugar is at most {dry}.");

  private final Refusal.Kind kind;
  private final String english;

  BlendReason(Refusal.Kind kind, String english) {
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
