package meadcell.batch;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Long series of cases that differ only in their data. The gate runs a fixed sample of them, {@code
 * mvn verify -Dmeadcell.long} all.
 */
public final class Series {
  /** Whether all cases run. */
  public static final boolean IS_WHOLE = System.getProperty("meadcell.long") != null;

  private Series() {}

  /** All cases, or in the gate the first and every so many after it. */
  public static <T> List<T> of(List<T> all, int every) {
    return IntStream.range(0, all.size())
        .filter(i -> IS_WHOLE || i % every == 0)
        .mapToObj(all::get)
        .toList();
  }

  /** So many cases by chance, or in the gate a part of them. */
  public static int count(int all, int every) {
    return IS_WHOLE ? all : all / every;
  }
}
