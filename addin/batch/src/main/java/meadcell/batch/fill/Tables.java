package meadcell.batch.fill;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.fill.Headings.Heading;
import meadcell.batch.plan.Header;
import meadcell.batch.plan.Names;

/** The tables of a sheet, found by what is written above their columns, not by address. */
final class Tables {
  private final BookSheet sheet;
  private final Names names;
  private final Headings headings;
  private final Map<Set<String>, List<Table>> known = new HashMap<>();

  /** New columns, by the header cell where their table begins. */
  private final Map<Place, Map<String, Table.Column>> added = new HashMap<>();

  Tables(BookSheet sheet, Names names, Headings headings) {
    this.sheet = sheet;
    this.names = names;
    this.headings = headings;
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
    for (List<Heading> row : headings.rows()) {
      if (!containsAll(row, needed)) {
        continue;
      }
      List<List<Heading>> fitting =
          runs(row).stream().filter(run -> containsAll(run, needed)).toList();
      for (List<Heading> run : fitting.isEmpty() ? List.of(row) : fitting) {
        tables.add(table(run, needed));
      }
    }
    return tables;
  }

  private static boolean containsAll(List<Heading> row, Collection<String> needed) {
    if (row.size() < needed.size()) {
      return false; // rows of remarks, mostly
    }
    for (String name : needed) {
      if (row.stream().noneMatch(heading -> heading.has(name))) {
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
      if (heading.place().column() != last + 1) {
        runs.add(new ArrayList<>());
      }
      runs.get(runs.size() - 1).add(heading);
      last = heading.place().column();
    }
    return runs;
  }

  private Table table(List<Heading> run, Collection<String> needed) throws Ambiguous {
    int headerRow = run.get(0).place().row();
    Map<String, Table.Column> columns = new LinkedHashMap<>();
    int firstRow = headerRow + 1;
    int lastColumn = 0;
    for (Heading heading : run) {
      String name = heading.header().name();
      Table.Column column =
          new Table.Column(heading.place().column(), heading.header().unit().orElse(null));
      if (columns.put(name, column) != null && needed.contains(name)) {
        throw new Ambiguous("the header \"" + name + "\" stands twice in row " + (headerRow + 1));
      }
      firstRow = Math.max(firstRow, sheet.mergedEnd(heading.place()).row() + 1);
      lastColumn = Math.max(lastColumn, heading.place().column());
    }
    int firstColumn = run.get(0).place().column();
    boolean firstIsNeeded = needed.contains(run.get(0).header().name());
    while (isHeaderContinued(firstRow, firstColumn, lastColumn)) {
      for (Heading heading : headings.row(firstRow)) {
        Header second = heading.header();
        columns.replaceAll(
            (name, column) ->
                column.index() == heading.place().column() && column.unit() == null
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
    return !headings.row(row).isEmpty() && wordsOnly(row, first, last) >= 1;
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
      List<Heading> here = headings.row(row);
      if (!here.isEmpty()) {
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
    for (Heading heading : headings.row(table.headerRow())) {
      if (heading.place().column() > table.lastColumn()) {
        end = Math.min(end, heading.place().column() - 1);
      }
    }
    Map<String, Table.Column> own = added.getOrDefault(table.start(), Map.of());
    int column = table.lastColumn() + 1;
    while (own.values().stream().map(Table.Column::index).anyMatch(Set.of(column)::contains)
        || !isFree(table, column)) {
      column++;
    }
    if (column >= sheet.mostColumns()) {
      throw new Ambiguous(
          "there is no room right of the table in row "
              + (table.headerRow() + 1)
              + ", because the sheet is full to its last column; delete columns that are not used");
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
}
