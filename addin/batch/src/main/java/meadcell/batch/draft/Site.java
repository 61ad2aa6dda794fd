package meadcell.batch.draft;

import java.util.Collection;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Stream;
import meadcell.batch.plan.Concept;

/**
 * A table of a log with the labels that serve it, or the labels of a sheet by themselves.
 *
 * @param columns what its columns hold; empty where there is no table
 * @param labels what the labelled cells hold
 */
record Site(String log, String sheet, Map<Concept, Input> columns, Map<Concept, Input> labels) {
  static Map<Concept, Input> byConcept(Collection<Input> inputs) {
    Map<Concept, Input> map = new EnumMap<>(Concept.class);
    inputs.forEach(input -> map.put(input.concept(), input));
    return map;
  }

  boolean isTable() {
    return !columns.isEmpty();
  }

  /** Whether a column says that the rows are of several batches or barrels. */
  boolean isOfSeveral() {
    return Stream.of(Concept.BATCH, Concept.VESSEL)
        .map(columns::get)
        .anyMatch(column -> column != null && column.different() > 1);
  }

  Stream<Input> all() {
    return Stream.concat(columns.values().stream(), labels.values().stream());
  }
}
