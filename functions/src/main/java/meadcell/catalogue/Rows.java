package meadcell.catalogue;

import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;

/**
 * A table as its records: one for each row that is not blank.
 *
 * @param <R> the record whose components are the columns
 * @param list the rows that hold something, at least one
 * @param height how many rows the table has, blank ones too
 * @param width how many columns it has
 */
public record Rows<R extends Record>(List<R> list, int height, int width) implements Iterable<R> {
  @Override
  public Iterator<R> iterator() {
    return list.iterator();
  }

  /** {@return the rows as a stream} */
  public Stream<R> stream() {
    return list.stream();
  }
}
