package meadcell.panel;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Exact distribution of Σ R² over the rank sums R when every order of every taster's ranks is
 * equally likely.
 *
 * <p>Taster by taster, every order is added to every set of sums reached so far. The meads are
 * interchangeable, so sets of sums are kept sorted, which leaves few.
 */
final class RankSums {
  /** Most tasters counted exactly, by number of meads; beyond, the counting takes too long. */
  private static final Map<Integer, Integer> EXACT = Map.of(3, 20, 4, 12, 5, 6, 6, 3);

  private static final int REMEMBERED = 32;

  private static final Map<List<String>, RankSums> CACHE =
      new LinkedHashMap<>(REMEMBERED, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<List<String>, RankSums> eldest) {
          return size() > REMEMBERED;
        }
      };

  /** Probability of at least this Σ (2R)². */
  private final NavigableMap<Long, Double> tail;

  private RankSums(NavigableMap<Long, Double> tail) {
    this.tail = tail;
  }

  static boolean isExact(int tasters, int meads) {
    return tasters <= EXACT.getOrDefault(meads, 0);
  }

  /** The distribution for these rows of doubled ranks, in any order. */
  static RankSums of(int[][] doubled) {
    int[][] rows = Arrays.stream(doubled).map(RankSums::sorted).toArray(int[][]::new);
    List<String> key = Arrays.stream(rows).map(Arrays::toString).sorted().toList();
    synchronized (CACHE) {
      return CACHE.computeIfAbsent(key, k -> count(rows));
    }
  }

  double atLeast(double[] sums) {
    long squares = Math.round(4 * Arrays.stream(sums).map(sum -> sum * sum).sum());
    return tail.get(squares);
  }

  /** The values Σ (2R)² can take, with the probability of at least each. */
  NavigableMap<Long, Double> tail() {
    return tail;
  }

  private static RankSums count(int[][] rows) {
    Map<Long, Double> reached = Map.of(pack(rows[0]), 1.0);
    for (int i = 1; i < rows.length; i++) {
      Collection<int[]> orders = orders(rows[i]);
      double each = 1.0 / orders.size();
      Map<Long, Double> next = new HashMap<>();
      int meads = rows[i].length;
      reached.forEach(
          (packed, probability) -> {
            int[] sums = unpack(packed, meads);
            for (int[] order : orders) {
              int[] added = new int[meads];
              for (int j = 0; j < meads; j++) {
                added[j] = sums[j] + order[j];
              }
              next.merge(pack(sorted(added)), probability * each, Double::sum);
            }
          });
      reached = next;
    }
    return new RankSums(tail(reached, rows[0].length));
  }

  private static NavigableMap<Long, Double> tail(Map<Long, Double> reached, int meads) {
    NavigableMap<Long, Double> bySquares = new TreeMap<>();
    reached.forEach(
        (packed, probability) -> {
          long squares = Arrays.stream(unpack(packed, meads)).mapToLong(s -> (long) s * s).sum();
          bySquares.merge(squares, probability, Double::sum);
        });
    double sum = 0;
    for (Map.Entry<Long, Double> entry : bySquares.descendingMap().entrySet()) {
      sum += entry.getValue();
      entry.setValue(Math.min(1, sum));
    }
    return bySquares;
  }

  /** All different orders of a row. */
  private static Collection<int[]> orders(int[] row) {
    if (row.length == 1) {
      return List.of(row);
    }
    Set<Integer> firsts = Arrays.stream(row).boxed().collect(Collectors.toCollection(HashSet::new));
    return firsts.stream()
        .flatMap(first -> orders(without(row, first)).stream().map(rest -> joined(first, rest)))
        .toList();
  }

  private static int[] without(int[] row, int value) {
    int[] rest = new int[row.length - 1];
    boolean dropped = false;
    int at = 0;
    for (int element : row) {
      if (element == value && !dropped) {
        dropped = true;
      } else {
        rest[at++] = element;
      }
    }
    return rest;
  }

  private static int[] joined(int first, int[] rest) {
    int[] row = new int[rest.length + 1];
    row[0] = first;
    System.arraycopy(rest, 0, row, 1, rest.length);
    return row;
  }

  private static int[] sorted(int[] values) {
    int[] copy = values.clone();
    Arrays.sort(copy);
    return copy;
  }

  /** Doubled sums stay below 2¹⁰, and there are at most six. */
  private static long pack(int[] sums) {
    long packed = 0;
    for (int sum : sums) {
      packed = packed << 10 | sum;
    }
    return packed;
  }

  private static int[] unpack(long packed, int length) {
    int[] sums = new int[length];
    for (int j = length - 1; j >= 0; j--) {
      sums[j] = (int) (packed & 1023);
      packed >>>= 10;
    }
    return sums;
  }
}
