package meadcell.batch.draft;

import meadcell.batch.book.Place;
import meadcell.batch.plan.Concept;
import meadcell.catalogue.Unit;

/**
 * A column or a labelled cell that was recognised.
 *
 * @param written its header or label as it stands there
 * @param name its name, as a plan compares it
 * @param where its cells, {@code HH-22!B5} or {@code HH-22!B6:B20}
 * @param place its header or label
 * @param unit the unit it is in, or null where it has none
 * @param isUnitWritten whether the log itself says so
 * @param hasTemperature whether its notes end with the temperature of the sample
 * @param falls whether it falls as the gravity of a ferment does
 * @param different how many different values it holds
 * @param doubt what a person should look at; empty where it can mean only one thing
 */
record Input(
    Concept concept,
    String written,
    String name,
    String where,
    Place place,
    Unit unit,
    boolean isUnitWritten,
    boolean hasTemperature,
    boolean falls,
    int different,
    String doubt) {

  boolean isSure() {
    return doubt.isEmpty();
  }

  /** As a person would say where it was found. */
  String told() {
    return "\"" + written + "\" " + where + (unit == null ? "" : " in " + unit.word());
  }
}
