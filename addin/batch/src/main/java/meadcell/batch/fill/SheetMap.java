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

  /** New columns, by the header cell where their table begins. */
  private final Map<Place, Map<String, Table.Column>> added = new HashMap<>();

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

  private void add(Place place, String text) {
    headings
        .computeIfAbsent(place.row(), row -> new ArrayList<>())
        .add(new Heading(place, names.read(text)));
  }

  /** Notes a new column of a table; later lines of the plan find it there. */
  void addColumn(Table table, int column, String text) {
    Header header = names.read(text);
    Table.Column result = new Table.Column(column, header.unit().orElse(null));
    added.computeIfAbsent(table.start(), start -> new HashMap<>()).put(header.name(), result);
    known.values().stream()
        .flatMap(List::stream)
        .filter(other -> other.start().equals(table.start()))
        .forEach(other -> other.columns().put(header.name(), result));
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
    boolean firstIsNeeded = needed.contains(run.get(0).header.name());
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
    List<Integer> rows = dataRows(firstRow, firstColumn, lastColumn, needed, firstIsNeeded);
    columns.putAll(added.getOrDefault(new Place(headerRow, firstColumn), Map.of()));
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
   * first column holds dates or numbers, a row that has a word there is no data: a label, a total;
   * unless that column is itself needed, and the word a reading that failed.
   */
  private List<Integer> dataRows(
      int firstRow, int first, int last, Collection<String> needed, boolean firstIsNeeded) {
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
        if (!word || !numbered || firstIsNeeded) {
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

  /**
   * The first column right of a table that is free from its header row down. Between two tables
   * side by side one blank column stays.
   */
  int freeColumn(Table table) throws Ambiguous {
    int end = Integer.MAX_VALUE;
    for (Heading heading : headings.get(table.headerRow())) {
      if (heading.place.column() > table.lastColumn()) {
        end = Math.min(end, heading.place.column() - 1);
      }
    }
    Map<String, Table.Column> own = added.getOrDefault(table.start(), Map.of());
    int column = table.lastColumn() + 1;
    while (own.values().stream().map(Table.Column::index).anyMatch(Set.of(column)::contains)
        || !isFree(table, column)) {
      column++;
    }
    if (column >= end) {
      throw new Ambiguous(
          "there is no room between this table and the next one in row "
              + (table.headerRow() + 1)
              + "; insert columns in front of "
              + new Place(table.headerRow(), end + 1));
    }
    return column;
  }

  private boolean isFree(Table table, int column) {
    for (int row = table.headerRow(); row <= table.lastRow(); row++) {
      Place place = new Place(row, column);
      if (!sheet.content(place).isBlank() || sheet.isCovered(place)) {
        return false;
      }
    }
    return true;
  }

  // ---- labels -----------------------------------------------------------------------------

  /**
   * The cell beside or below a label. For a table it is the nearest label above it, one over its
   * own columns before any other.
   *
   * @param table null for a cell that stands by itself
   */
  Place labelled(String name, Table table) throws Ambiguous {
    List<Place> found = new ArrayList<>();
    for (List<Heading> row : headings.values()) {
      for (Heading heading : row) {
        if (heading.header.name().equals(name)) {
          found.add(heading.place);
        }
      }
    }
    if (table != null) {
      found = nearest(found, table);
    }
    if (found.size() > 1) {
      throw new Ambiguous(
          "the label \"" + name + "\" stands at " + found.get(0) + " and at " + found.get(1));
    }
    return found.isEmpty() ? null : valueOf(found.get(0));
  }

  private static List<Place> nearest(List<Place> labels, Table table) {
    List<Place> above = labels.stream().filter(p -> p.row() < table.headerRow()).toList();
    List<Place> over = above.stream().filter(p -> table.spans(p.column())).toList();
    List<Place> nearer = over.isEmpty() ? above : over;
    if (nearer.isEmpty()) {
      return labels;
    }
    int row = nearer.get(nearer.size() - 1).row();
    return nearer.stream().filter(place -> place.row() == row).toList();
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
