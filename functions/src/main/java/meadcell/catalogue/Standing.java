package meadcell.catalogue;

import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * How well a function is proven: how many check rows of each kind stand behind it.
 *
 * @param function its name
 * @param rows how many rows there are of each kind that occurs
 */
public record Standing(String function, Map<Evidence, Integer> rows) {
  private static final Comparator<Standing> WEAKEST_FIRST =
      Comparator.comparing(Standing::best)
          .reversed()
          .thenComparing(standing -> standing.count(Evidence.PUBLISHED))
          .thenComparing(standing -> standing.count(Evidence.WORKED))
          .thenComparing(Standing::function);

  /**
   * {@return all functions that have check rows, the weakest proven first}
   *
   * @param rows check rows
   */
  public static List<Standing> weakestFirst(List<CheckRow> rows) {
    Map<String, Map<Evidence, Integer>> found = new TreeMap<>();
    for (CheckRow row : rows) {
      found
          .computeIfAbsent(row.function(), name -> new EnumMap<>(Evidence.class))
          .merge(row.kind(), 1, Integer::sum);
    }
    return found.entrySet().stream()
        .map(entry -> new Standing(entry.getKey(), entry.getValue()))
        .sorted(WEAKEST_FIRST)
        .toList();
  }

  /** {@return the strongest kind of evidence there is} */
  public Evidence best() {
    return Collections.min(rows.keySet());
  }

  /**
   * {@return how many rows there are of a kind}
   *
   * @param kind a kind of evidence
   */
  public int count(Evidence kind) {
    return rows.getOrDefault(kind, 0);
  }

  /** {@return whether anything but practice and memory stands behind the function} */
  public boolean isProven() {
    return best().compareTo(Evidence.WORKED) <= 0;
  }
}
