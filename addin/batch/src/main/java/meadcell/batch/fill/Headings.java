package meadcell.batch.fill;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Place;
import meadcell.batch.plan.Header;
import meadcell.batch.plan.Names;

/** The texts typed on a sheet, row by row: each may be a header or a label. */
final class Headings {
  /** A typed text and the header it may be. */
  record Heading(Place place, Header header) {
    boolean has(String name) {
      return header.name().equals(name);
    }
  }

  private final TreeMap<Integer, List<Heading>> rows = new TreeMap<>();

  Headings(BookSheet sheet, Names names) {
    for (int row = 0; row <= sheet.lastRow(); row++) {
      for (int column = 0; column <= sheet.lastColumn(row); column++) {
        Place place = new Place(row, column);
        String text = sheet.content(place).typedText();
        if (text != null) {
          rows.computeIfAbsent(row, key -> new ArrayList<>())
              .add(new Heading(place, names.read(text)));
        }
      }
    }
  }

  /** The rows that have any, from the top. */
  Collection<List<Heading>> rows() {
    return rows.values();
  }

  /** Those of one row; empty where it has none. */
  List<Heading> row(int row) {
    return rows.getOrDefault(row, List.of());
  }

  /** All names on the sheet, for suggestions. */
  Set<String> names() {
    Set<String> names = new HashSet<>();
    rows.values().forEach(row -> row.forEach(heading -> names.add(heading.header.name())));
    return names;
  }
}
