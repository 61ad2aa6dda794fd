package meadcell.panel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Exact distribution of Σ R² over the rank sums R when every order of every taster's ranks is
 * equally likely.
 *
 * <p>Taster by taster, every order is added to every set of sums reached so far. The meads are
 * interchangeable, so sets of sums are kept sorted, which leaves few. Ranks are doubled throughout,
 * so that shared places are whole numbers.
 */
final class RankSums {
  /** Most tasters counted exactly, by number of meads; beyond, the counting takes too long. */
  private static final Map<Integer, Integer> EXACT = Map.of(3, 20, 4, 12, 5, 6, 6, 3);

  private static final int REMEMBERED = 32;

  private static final Map<List<List<Integer>>, RankSums> CACHE =
      Collections.synchronizedMap(
          new LinkedHashMap<>(REMEMBERED, 0.75f, true) {
            private static final long serialVersionUID = 1;

            @Override
            protected boolean removeEldestEntry(Map.Entry<List<List<Integer>>, RankSums> eldest) {
              return size() > REMEMBERED;
            }
          });

  /** Rows with most different ranks first: ties make many sets of sums, late they do it once. */
  private static final Comparator<List<Integer>> TIES_LAST =
      Comparator.<List<Integer>>comparingInt(row -> -Set.copyOf(row).size())
          .thenComparing(List::toString);

  /** Probability of at least this Σ (2R)². */
  private final NavigableMap<Long, Double> tail;

  private RankSums(NavigableMap<Long, Double> tail) {
    this.tail = tail;
  }

  static boolean isExact(int tasters, int meads) {
    return tasters <= EXACT.getOrDefault(meads, 0);
  }

  /** {@return the distribution for tasters who gave these doubled ranks, to whichever mead} */
  static RankSums of(int[][] doubled) {
    List<List<Integer>> rows =
        Arrays.stream(doubled)
            .map(row -> Arrays.stream(row).sorted().boxed().toList())
            .sorted(TIES_LAST)
            .toList();
    RankSums known = CACHE.get(rows);
    if (known == null) {
      known = count(rows); // outside of any lock: it may take long
      CACHE.put(rows, known);
    }
    return known;
  }

  double atLeast(double[] sums) {
    return tail.get(Math.round(4 * Arrays.stream(sums).map(sum -> sum * sum).sum()));
  }

  /** The values Σ (2R)² can take, with the probability of at least each. */
  NavigableMap<Long, Double> tail() {
    return tail;
  }

  private static RankSums count(List<List<Integer>> rows) {
    Map<Long, Double> reached = Map.of(0L, 1.0);
    for (int i = 0; i < rows.size(); i++) {
      List<int[]> orders = i == 0 ? List.of(array(rows.get(0))) : orders(rows.get(i)).toList();
      boolean last = i == rows.size() - 1;
      int[] sums = new int[rows.get(i).size()];
      Map<Long, Double> next = new HashMap<>();
      for (Map.Entry<Long, Double> before : reached.entrySet()) {
        double probability = before.getValue() / orders.size();
        for (int[] order : orders) {
          add(before.getKey(), order, sums);
          next.merge(last ? squares(sums) : packed(sums), probability, Double::sum);
        }
      }
      reached = next;
    }
    NavigableMap<Long, Double> tail = new TreeMap<>(reached);
    double sum = 0;
    for (Map.Entry<Long, Double> entry : tail.descendingMap().entrySet()) {
      sum += entry.getValue();
      entry.setValue(Math.min(1, sum));
    }
    return new RankSums(tail);
  }

  private static int[] array(List<Integer> row) {
    return row.stream().mapToInt(Integer::intValue).toArray();
  }

  /** All different orders of a row. */
  private static Stream<int[]> orders(List<Integer> row) {
    if (row.isEmpty()) {
      return Stream.of(new int[0]);
    }
    return row.stream().distinct().flatMap(first -> beginningWith(first, row));
  }

  private static Stream<int[]> beginningWith(Integer first, List<Integer> row) {
    List<Integer> rest = new ArrayList<>(row);
    rest.remove(first);
    return orders(rest)
        .map(order -> IntStream.concat(IntStream.of(first), Arrays.stream(order)).toArray());
  }

  /** Sorted sums in one number: they stay below 2¹⁰, and there are at most six. */
  private static long packed(int[] sums) {
    Arrays.sort(sums);
    long packed = 0;
    for (int sum : sums) {
      packed = packed << 10 | sum;
    }
    return packed;
  }

  private static void add(long packed, int[] order, int[] sums) {
    long rest = packed;
    for (int j = order.length - 1; j >= 0; j--) {
      sums[j] = (int) (rest & 1023) + order[j];
      rest >>>= 10;
    }
  }

  private static long squares(int[] sums) {
    long squares = 0;
    for (int sum : sums) {
      squares += (long) sum * sum;
    }
    return squares;
  }
}
