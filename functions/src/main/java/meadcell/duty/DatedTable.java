package meadcell.duty;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Function;
import meadcell.catalogue.Refusal;

/**
 * What a law states, with the day since which it is in force; the newest stands last.
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

  private final List<R> rows;

  private DatedTable(List<R> rows) {
    this.rows = rows;
  }

  static <R extends Dated> DatedTable<R> read(String name, Function<String[], R> row) {
    try (InputStream in = DatedTable.class.getResourceAsStream("/meadcell/duty/" + name)) {
      return new DatedTable<>(
          new String(in.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .filter(line -> !line.startsWith("#"))
              .map(line -> row.apply(line.split("\t", -1)))
              .toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  List<R> all() {
    return rows;
  }

  /** {@return the rows in force on a day} */
  List<R> on(double day) {
    int newest = rows.stream().mapToInt(Dated::day).filter(first -> first <= day).max().orElse(0);
    List<R> inForce = rows.stream().filter(row -> row.day() == newest).toList();
    if (inForce.isEmpty()) {
      throw new Refusal(DutyReason.BEFORE_RATES)
          .with("day", (int) day)
          .with("first", rows.get(0).since());
    }
    R row = inForce.get(0);
    if (row.last().isPresent() && day >= row.last().getAsInt() + 1.0) {
      throw new Refusal(DutyReason.AFTER_RATES).with("day", (int) day).with("last", row.until());
    }
    return inForce;
  }
}
