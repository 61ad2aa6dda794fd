package meadcell.duty;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/**
 * What a law states, with the day since which it is in force.
 *
 * @param <R> a row
 */
final class DatedTable<R extends DatedTable.Dated> {
  /** A row that is in force since a day. */
  interface Dated {
    /** {@return the first day on which it is in force, counted as spreadsheets count} */
    int day();

    /** {@return that day as a date} */
    String since();

    /** {@return the last day on which it is known to be in force; none where it has no end} */
    default OptionalInt last() {
      return OptionalInt.empty();
    }

    /** {@return that day as a date} */
    default String until() {
      return "";
    }
  }

  /** By the day since which they are in force. */
  private final NavigableMap<Integer, List<R>> rows;

  private DatedTable(NavigableMap<Integer, List<R>> rows) {
    this.rows = rows;
  }

  static <R extends Dated> DatedTable<R> read(String name, Function<String[], R> row) {
    try (InputStream in = DatedTable.class.getResourceAsStream("/meadcell/duty/" + name)) {
      return new DatedTable<>(
          new String(in.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .filter(line -> !line.startsWith("#"))
              .map(line -> row.apply(line.split("\t", -1)))
              .collect(Collectors.groupingBy(Dated::day, TreeMap::new, Collectors.toList())));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** {@return the rows in force on a day} */
  List<R> on(double day) {
    Map.Entry<Integer, List<R>> newest = rows.floorEntry((int) day);
    if (newest == null) {
      throw new Refusal(DutyReason.BEFORE_RATES)
          .with("day", (int) day, Quantity.DATE)
          .with("first", rows.firstEntry().getValue().get(0).since());
    }
    R row = newest.getValue().get(0);
    if (row.last().isPresent() && (int) day > row.last().getAsInt()) {
      throw new Refusal(DutyReason.AFTER_RATES)
          .with("day", (int) day, Quantity.DATE)
          .with("last", row.until());
    }
    return newest.getValue();
  }

  /** {@return the first row in force on a day that fits} */
  R on(double day, Predicate<R> fits) {
    for (R row : on(day)) {
      if (fits.test(row)) {
        return row;
      }
    }
    throw new IllegalStateException("the table of " + rows.floorKey((int) day) + " is not whole");
  }
}
