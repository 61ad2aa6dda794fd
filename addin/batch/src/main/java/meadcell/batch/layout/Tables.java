package meadcell.batch.layout;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.layout.Headings.Heading;
import meadcell.batch.plan.Header;
import meadcell.batch.plan.Names;
import meadcell.batch.plan.Vocabulary;
import meadcell.catalogue.Unit;

/** The tables of a sheet, found by what is written above their columns, not by address. */
public final class Tables {
  private static final Pattern NUMBERED = Pattern.compile(" ?#(\\d+)$");

  private final Grid grid;
  private final Names names;
  private final Headings headings;
  private final Map<Set<String>, List<Table>> known = new HashMap<>();

  /** New columns, by the header cell where their table begins. */
  private final Map<Place, Map<String, Table.Column>> added = new HashMap<>();

  public Tables(Grid grid, Names names, Headings headings) {
    this.grid = grid;
    this.names = names;
    this.headings = headings;
  }

  /** Notes a new column of a table; later lines of the plan find it there. */
  public void addColumn(Table table, int column, String text) {
    Header header = names.read(text);
    Table.Column result = new Table.Column(column, header.unit().orElse(null), header.strange());
    added.computeIfAbsent(table.start(), start -> new HashMap<>()).put(header.name(), result);
    known.values().stream()
        .flatMap(List::stream)
        .filter(other -> other.start().equals(table.start()))
        .forEach(other -> other.columns().put(header.name(), result));
  }

  /** The tables whose header row has all these names. */
  public List<Table> tables(Set<String> needed) throws Ambiguous {
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

  /** The table below a run of headers, known by some of their names. */
  public Table below(List<Heading> run, Set<String> known) throws Ambiguous {
    return table(run, known);
  }

  private boolean containsAll(List<Heading> row, Collection<String> needed) {
    if (row.size() < needed.size()) {
      return false; // rows of remarks, mostly
    }
    for (String name : needed) {
      if (!headings.isNamed(row, plain(name))) {
        return false;
      }
    }
    return true;
  }

  /** {@code SG} of {@code SG #2}, the second of that name. */
  private static String plain(String name) {
    return name.contains("#") ? NUMBERED.matcher(name).replaceFirst("") : name;
  }

  /** Headers side by side without a blank cell between them. */
  public static List<List<Heading>> runs(List<Heading> row) {
    List<List<Heading>> runs = new ArrayList<>();
    int last = -2;
    for (Heading heading : row) {
      if (heading.place().column() != last + 1) {
        runs.add(new ArrayList<>());
      }
      runs.get(runs.size() - 1).add(heading);
      last = heading.place().column();
    }
    return runs.stream().flatMap(run -> withoutGap(run).stream()).toList();
  }

  /** Tables side by side without a gap: their headers repeat, all in the same order. */
  private static List<List<Heading>> withoutGap(List<Heading> run) {
    List<String> names = run.stream().map(heading -> heading.header().name()).toList();
    for (int width = 2; width <= names.size() / 2; width++) {
      boolean repeats = names.size() % width == 0;
      for (int i = width; i < names.size() && repeats; i++) {
        repeats = names.get(i).equals(names.get(i - width));
      }
      if (repeats) {
        List<List<Heading>> parts = new ArrayList<>();
        for (int i = 0; i < run.size(); i += width) {
          parts.add(run.subList(i, i + width));
        }
        return parts;
      }
    }
    return List.of(run);
  }

  private Table table(List<Heading> run, Collection<String> needed) throws Ambiguous {
    int headerRow = run.get(0).place().row();
    Map<String, Table.Column> columns = new LinkedHashMap<>();
    int firstRow = headerRow + 1;
    for (Heading heading : run) {
      columns.putIfAbsent(heading.header().name(), column(heading));
      firstRow = Math.max(firstRow, grid.mergedEnd(heading.place()).row() + 1);
    }
    for (String name : needed) {
      columns.put(name, column(one(headings.named(run, plain(name)), name)));
    }
    int firstColumn = run.get(0).place().column();
    int lastColumn = run.get(run.size() - 1).place().column();
    boolean firstIsNeeded =
        needed.stream().anyMatch(name -> columns.get(name).index() == firstColumn);
    while (isHeaderContinued(firstRow, firstColumn, lastColumn)) {
      units(headings.row(firstRow), columns);
      firstRow++;
    }
    List<Integer> rows = dataRows(firstRow, firstColumn, lastColumn, needed, firstIsNeeded);
    columns.putAll(added.getOrDefault(new Place(headerRow, firstColumn), Map.of()));
    return new Table(grid, headerRow, rows, firstColumn, lastColumn, columns);
  }

  private static Table.Column column(Heading heading) {
    Header header = heading.header();
    return new Table.Column(heading.place().column(), header.unit().orElse(null), header.strange());
  }

  /** The one of a name; of several, the one whose number the name ends with. */
  private Heading one(List<Heading> found, String name) throws Ambiguous {
    Matcher numbered = NUMBERED.matcher(name);
    if (numbered.find()) {
      int number = Integer.parseInt(numbered.group(1));
      if (number >= 1 && number <= found.size()) {
        return found.get(number - 1);
      }
    }
    if (found.size() == 1) {
      return found.get(0);
    }
    Heading first = found.get(0);
    Heading second = found.get(1);
    throw new Ambiguous(
        "which is meant by \""
            + name
            + "\", \""
            + first.text()
            + "\" in "
            + grid.turn(first.place())
            + " or \""
            + second.text()
            + "\" in "
            + grid.turn(second.place())
            + "? In the plan write "
            + (first.text().equals(second.text())
                ? "[" + first.text() + " #1] or [" + first.text() + " #2]"
                : "its header as it stands there"));
  }

  /** A row of units; where one cell of it is one, or all is in brackets, the others are, too. */
  private static void units(List<Heading> row, Map<String, Table.Column> columns) {
    boolean isUnits =
        row.stream()
            .anyMatch(
                heading ->
                    Header.unitAlone(heading.text()).isPresent()
                        || heading.text().matches("[(\\[].*[)\\]]"));
    for (Heading heading : isUnits ? row : List.<Heading>of()) {
      Unit unit = Header.unitAlone(heading.text()).orElse(null);
      String strange = unit == null ? Header.strange(heading.text()) : "";
      columns.replaceAll(
          (name, column) ->
              column.index() == heading.place().column() ? column.or(unit, strange) : column);
    }
  }

  /** A row of words below the headers: units, or a second line of them. */
  private boolean isHeaderContinued(int row, int first, int last) {
    return !headings.row(row).isEmpty() && wordsOnly(row, first, last) >= 1;
  }

  /** How many words a row has in a span of columns; -1 if it also has numbers. */
  private int wordsOnly(int row, int first, int last) {
    int words = 0;
    for (int column = first; column <= last; column++) {
      CellContent content = grid.content(new Place(row, column));
      String text = content.typedText();
      if (text == null ? !content.isBlank() : !isWord(text)) {
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
    for (int row = firstRow; row <= grid.lastRow(); row++) {
      List<Heading> here = headings.row(row);
      if (!here.isEmpty()) {
        boolean sameHeaders = containsAll(here, needed);
        boolean otherTable =
            wordsOnly(row, first, last) >= 2 && (row > lastFilled + 1 || areHeaders(here));
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

  /** Whether at least two of them are headers that the trade uses. */
  private static boolean areHeaders(List<Heading> row) {
    return row.stream().filter(heading -> Vocabulary.sure(heading.header()).isPresent()).count()
        >= 2;
  }

  private boolean isWord(Place place) {
    String text = grid.content(place).typedText();
    return text != null && isWord(text);
  }

  /** Words have no digits; but for headers such as Free SO2. */
  private boolean isWord(String text) {
    return text.chars().noneMatch(Character::isDigit)
        || Vocabulary.sure(names.read(text)).isPresent();
  }

  private boolean isBlank(int row, int first, int last) {
    for (int column = first; column <= last; column++) {
      if (!grid.content(new Place(row, column)).isBlank()) {
        return false;
      }
    }
    return true;
  }

  /**
   * The first column right of a table that is free from its header row down. Between two tables
   * side by side one blank column stays.
   */
  public int freeColumn(Table table) throws Ambiguous {
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
    if (column >= grid.mostColumns()) {
      throw new Ambiguous(
          "there is no room beside the table in "
              + table.where()
              + ", because the sheet is full to its last column; delete columns that are not used");
    }
    if (column >= end) {
      throw new Ambiguous(
          "there is no room between this table and the next one in "
              + table.where()
              + "; insert "
              + (grid.isTurned() ? "rows above " : "columns in front of ")
              + table.place(table.headerRow(), end + 1));
    }
    return column;
  }

  private boolean isFree(Table table, int column) {
    for (int row = table.headerRow(); row <= table.lastRow(); row++) {
      Place place = new Place(row, column);
      if (!grid.content(place).isBlank() || grid.isCovered(place)) {
        return false;
      }
    }
    return true;
  }
}
