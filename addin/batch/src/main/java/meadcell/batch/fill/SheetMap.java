package meadcell.batch.fill;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.plan.Header;
import meadcell.batch.plan.Names;

/** Where a sheet's headers and labels are, found by what is written, not by address. */
final class SheetMap {
  /** A typed text and the header it may be. */
  record Heading(Place place, Header header) {}

  /** More than one place fits, so none is taken. */
  static final class Ambiguous extends Exception {
    private static final long serialVersionUID = 1;

    Ambiguous(String sentence) {
      super(sentence, null, false, false);
    }
  }

  private final BookSheet sheet;
  private final Names names;
  private final TreeMap<Integer, List<Heading>> headings = new TreeMap<>();
  private final Map<Set<String>, List<Table>> known = new HashMap<>();

  SheetMap(BookSheet sheet, Names names) {
    this.sheet = sheet;
    this.names = names;
    for (int row = 0; row <= sheet.lastRow(); row++) {
      for (int column = 0; column <= sheet.lastColumn(row); column++) {
        Place place = new Place(row, column);
        String text = sheet.content(place).typedText();
        if (text != null) {
          add(place, text);
        }
      }
    }
  }

  void add(Place place, String text) {
    headings
        .computeIfAbsent(place.row(), row -> new ArrayList<>())
        .add(new Heading(place, names.read(text)));
  }

  /** A header that is known to stand in a row. */
  Heading headingInRow(String name, int row) {
    return headings.get(row).stream()
        .filter(heading -> heading.header.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException(name + " is not in row " + row));
  }

  /** All names on the sheet, for suggestions. */
  Set<String> names() {
    Set<String> names = new HashSet<>();
    headings.values().forEach(row -> row.forEach(heading -> names.add(heading.header.name())));
    return names;
  }

  // ---- tables -----------------------------------------------------------------------------

  /** The tables whose header row has all these names. */
  List<Table> tables(Set<String> needed) throws Ambiguous {
    List<Table> tables = known.get(needed);
    if (tables == null) {
      tables = findTables(needed);
      known.put(needed, tables);
    }
    return tables;
  }

  private List<Table> findTables(Set<String> needed) throws Ambiguous {
    List<Table> tables = new ArrayList<>();
    for (Map.Entry<Integer, List<Heading>> row : headings.entrySet()) {
      if (!containsAll(row.getValue(), needed)) {
        continue;
      }
      List<List<Heading>> fitting =
          runs(row.getValue()).stream().filter(run -> containsAll(run, needed)).toList();
      for (List<Heading> run : fitting.isEmpty() ? List.of(row.getValue()) : fitting) {
        tables.add(table(row.getKey(), run, needed));
      }
    }
    return tables;
  }

  private static boolean containsAll(List<Heading> row, Collection<String> needed) {
    if (row.size() < needed.size()) {
      return false; // rows of remarks, mostly
    }
    for (String name : needed) {
      if (row.stream().noneMatch(heading -> heading.header.name().equals(name))) {
        return false;
      }
    }
    return true;
  }

  /** Headers side by side without a blank cell between them. */
  private static List<List<Heading>> runs(List<Heading> row) {
    List<List<Heading>> runs = new ArrayList<>();
    int last = -2;
    for (Heading heading : row) {
      if (heading.place.column() != last + 1) {
        runs.add(new ArrayList<>());
      }
      runs.get(runs.size() - 1).add(heading);
      last = heading.place.column();
    }
    return runs;
  }

  private Table table(int headerRow, List<Heading> run, Collection<String> needed)
      throws Ambiguous {
    Map<String, Table.Column> columns = new LinkedHashMap<>();
    int firstRow = headerRow + 1;
    int lastColumn = 0;
    for (Heading heading : run) {
      String name = heading.header.name();
      Table.Column column =
          new Table.Column(heading.place.column(), heading.header.unit().orElse(null));
      if (columns.put(name, column) != null && needed.contains(name)) {
        throw new Ambiguous("the header \"" + name + "\" stands twice in row " + (headerRow + 1));
      }
      firstRow = Math.max(firstRow, sheet.mergedEnd(heading.place).row() + 1);
      lastColumn = Math.max(lastColumn, heading.place.column());
    }
    int firstColumn = run.get(0).place.column();
    while (isHeaderContinued(firstRow, firstColumn, lastColumn)) {
      for (Heading heading : headings.get(firstRow)) {
        Header second = heading.header;
        columns.replaceAll(
            (name, column) ->
                column.index() == heading.place.column() && column.unit() == null
                    ? new Table.Column(column.index(), Table.unitAlone(second))
                    : column);
      }
      firstRow++;
    }
    List<Integer> rows = dataRows(firstRow, firstColumn, lastColumn, needed);
    return new Table(headerRow, rows, firstColumn, lastColumn, columns);
  }

  /** A row of words below the headers: units, or a second line of them. */
  private boolean isHeaderContinued(int row, int first, int last) {
    return headings.containsKey(row) && wordsOnly(row, first, last) >= 1;
  }

  /** How many words a row has in a span of columns; -1 if it also has numbers. */
  private int wordsOnly(int row, int first, int last) {
    int words = 0;
    for (int column = first; column <= last; column++) {
      CellContent content = sheet.content(new Place(row, column));
      String text = content.typedText();
      if (text == null ? !content.isBlank() : text.chars().anyMatch(Character::isDigit)) {
        return -1;
      }
      words += text == null ? 0 : 1;
    }
    return words;
  }

  /**
   * A table goes on over blank rows, until another header row or the end of the sheet. Where its
   * first column holds dates or numbers, a row that has a word there is no data: a label, a total.
   */
  private List<Integer> dataRows(int firstRow, int first, int last, Collection<String> needed) {
    List<Integer> rows = new ArrayList<>();
    int lastFilled = firstRow - 1;
    boolean numbered = false;
    for (int row = firstRow; row <= sheet.lastRow(); row++) {
      List<Heading> here = headings.get(row);
      if (here != null) {
        boolean sameHeaders = containsAll(here, needed);
        boolean otherTable = row > lastFilled + 1 && wordsOnly(row, first, last) >= 2;
        if (sameHeaders || otherTable) {
          return rows;
        }
      }
      if (!isBlank(row, first, last)) {
        lastFilled = row;
        boolean word = isWord(new Place(row, first));
        numbered = rows.isEmpty() ? !word : numbered;
        if (!word || !numbered) {
          rows.add(row);
        }
      }
    }
    return rows;
  }

  private boolean isWord(Place place) {
    String text = sheet.content(place).typedText();
    return text != null && text.chars().noneMatch(Character::isDigit);
  }

  private boolean isBlank(int row, int first, int last) {
    for (int column = first; column <= last; column++) {
      if (!sheet.content(new Place(row, column)).isBlank()) {
        return false;
      }
    }
    return true;
  }

  /** The first column right of a table that is free from its header row down. */
  int freeColumn(Table table) {
    int column = table.lastColumn() + 1;
    while (!isFree(table, column)) {
      column++;
    }
    return column;
  }

  private boolean isFree(Table table, int column) {
    for (int row = table.headerRow(); row <= table.lastRow(); row++) {
      if (!sheet.content(new Place(row, column)).isBlank()) {
        return false;
      }
    }
    return true;
  }

  // ---- labels -----------------------------------------------------------------------------

  /** The cell beside or below a label; the nearest label above {@code belowRow} wins. */
  Place labelled(String name, int belowRow) throws Ambiguous {
    List<Place> found = new ArrayList<>();
    for (List<Heading> row : headings.values()) {
      for (Heading heading : row) {
        if (heading.header.name().equals(name)) {
          found.add(heading.place);
        }
      }
    }
    List<Place> above = found.stream().filter(place -> place.row() < belowRow).toList();
    if (!above.isEmpty()) {
      found = above.subList(above.size() - 1, above.size());
    }
    if (found.size() > 1) {
      throw new Ambiguous(
          "the label \"" + name + "\" stands at " + found.get(0) + " and at " + found.get(1));
    }
    return found.isEmpty() ? null : valueOf(found.get(0));
  }

  /** The unit written in a label whose value is at a place. */
  Header labelOf(String name, Place value) {
    for (List<Heading> row : headings.values()) {
      for (Heading heading : row) {
        if (heading.header.name().equals(name) && valueOf(heading.place).equals(value)) {
          return heading.header;
        }
      }
    }
    return Header.of(name);
  }

  private Place valueOf(Place label) {
    Place end = sheet.mergedEnd(label);
    Place beside = new Place(label.row(), end.column() + 1);
    Place below = new Place(end.row() + 1, label.column());
    return !holdsValue(beside) && holdsValue(below) ? below : beside;
  }

  private boolean holdsValue(Place place) {
    CellContent content = sheet.content(place);
    String text = content.typedText();
    return text == null ? !content.isBlank() : text.chars().anyMatch(Character::isDigit);
  }
}
