package meadcell.batch.fill;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meadcell.batch.book.Book;
import meadcell.batch.plan.PlanRow;

/**
 * Where the lines of a plan found their places.
 *
 * @param written the cells that hold their formulas, in the order of the plan
 * @param found the lines that found any
 * @param missing why a line found none
 */
public record Placement(List<Written> written, Set<PlanRow> found, Map<PlanRow, Missing> missing) {
  /**
   * Why a line found no place.
   *
   * @param isNear whether the sentence names something near
   */
  public record Missing(String sentence, boolean isNear) {
    /** The better of two explanations: one that names something near, else the first. */
    public Missing or(Missing other) {
      return other.isNear ? other : this;
    }
  }

  private static final int MOST_NAMED = 12;

  static final Placement NOWHERE = new Placement(List.of(), Set.of(), Map.of());

  /** The same, and lines that need look no further. */
  Placement having(Collection<PlanRow> rows) {
    return and(new Placement(List.of(), Set.copyOf(rows), Map.of()));
  }

  /** Of two sheets. */
  Placement and(Placement next) {
    Map<PlanRow, Missing> all = new LinkedHashMap<>(missing);
    next.missing.forEach((row, why) -> all.merge(row, why, Missing::or));
    return new Placement(
        Stream.concat(written.stream(), next.written.stream()).toList(),
        Stream.concat(found.stream(), next.found.stream()).collect(Collectors.toSet()),
        all);
  }

  /** Why a line of the plan found no place in this workbook. */
  public Missing whyMissing(PlanRow row, Book book) {
    return missing.containsKey(row) ? missing.get(row) : noSheet(row, book);
  }

  private static Missing noSheet(PlanRow row, Book book) {
    String there =
        book.sheets().stream()
            .map(sheet -> "\"" + sheet.name() + "\"")
            .limit(MOST_NAMED)
            .collect(Collectors.joining(", "));
    return new Missing(
        "no sheet has the name \"" + row.sheet() + "\". There is: " + there + ".", false);
  }
}
