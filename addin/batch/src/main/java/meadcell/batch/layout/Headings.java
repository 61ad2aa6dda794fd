package meadcell.batch.layout;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import meadcell.batch.book.Place;
import meadcell.batch.plan.Header;
import meadcell.batch.plan.Names;

/** The texts typed on a sheet, row by row: each may be a header or a label. */
public final class Headings {
  /**
   * A typed text and the header it may be.
   *
   * @param text as it is written
   */
  public record Heading(Place place, String text, Header header) {
    public boolean has(String name) {
      return header.name().equals(name);
    }
  }

  private final TreeMap<Integer, List<Heading>> rows = new TreeMap<>();

  private final Names names;

  public Headings(Grid grid, Names names) {
    this.names = names;
    int last = grid.lastRow();
    for (int row = 0; row <= last; row++) {
      for (int column = 0; column <= grid.lastColumn(row); column++) {
        Place place = new Place(row, column);
        String text = grid.content(place).typedText();
        if (text != null) {
          rows.computeIfAbsent(row, key -> new ArrayList<>())
              .add(new Heading(place, text.strip(), names.read(text)));
        }
      }
    }
  }

  /** The rows that have any, from the top. */
  public Collection<List<Heading>> rows() {
    return rows.values();
  }

  /** Those of one row; empty where it has none. */
  public List<Heading> row(int row) {
    return rows.getOrDefault(row, List.of());
  }

  /** Whether one among some has a name, or one that the trade calls the same. */
  boolean isNamed(List<Heading> among, String name) {
    for (Heading heading : among) {
      if (heading.has(name) || names.areSynonyms(name, heading.header())) {
        return true;
      }
    }
    return false;
  }

  /** Those among some that have a name; where none has it, those that the trade calls the same. */
  List<Heading> named(Collection<Heading> among, String name) {
    List<Heading> exact = among.stream().filter(heading -> heading.has(name)).toList();
    return exact.isEmpty()
        ? among.stream().filter(heading -> names.areSynonyms(name, heading.header())).toList()
        : exact;
  }

  /** All texts on the sheet by their name, as written, from the top. */
  public Map<String, String> written() {
    Map<String, String> written = new LinkedHashMap<>();
    rows.values().forEach(row -> row.forEach(h -> written.putIfAbsent(h.header.name(), h.text)));
    return written;
  }
}
