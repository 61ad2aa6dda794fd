package meadcell.batch.freeze;

import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.Calculation;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.calculation.Reads;
import meadcell.catalogue.Catalogue;

/**
 * The sheet of a workbook that keeps the formulas whose results stand in their places. Each has a
 * line, with two formulas of the sheet's own that follow the cell and what it read: wherever a
 * spreadsheet program moves rows or columns, it moves these references along, so that the line
 * tells the old place from the new one.
 */
final class FormulaSheet {
  private static final String NAME = "Meadcell formulas";
  private static final String OURS = "Formulas of this workbook that Meadcell replaced";
  private static final String FIRST_LINE =
      OURS + " by what they gave; \"meadcell thaw\" puts them back. Leave this sheet as it is.";

  private enum Column {
    SHEET(0, "Sheet", 16),
    CELL(1, "Cell", 8),
    FORMULA(2, "Formula", 50),
    ARRAY(3, "Fills", 10),
    GAVE(4, "It gave", 12),
    NOW(5, "There now", 12),
    KEY(6, "Row", 14),
    ROW(7, "Row is known by", 30),
    COLUMN(8, "Column is known by", 20),
    READS(9, "It reads", 30),
    LABELS(10, "Known by", 30),
    FOLLOWER(11, "Rows read", 10);

    /** Where old workbooks have it, too. */
    final int index;

    final String title;
    final int width;

    Column(int index, String title, int width) {
      this.index = index;
      this.title = title;
      this.width = width;
    }
  }

  private static final int TITLES = 2;

  /** The first row that a line can have. */
  static final int FIRST = TITLES + 1;

  private static final Pattern CELL = Pattern.compile("[A-Z]{1,3}[1-9][0-9]{0,6}");
  private static final Pattern ARRAY = Pattern.compile("(" + CELL + ":" + CELL + ")?");
  private static final String DAY = "yyyy-mm-dd";

  /**
   * One line.
   *
   * @param cellNow where the frozen cell is now; nothing if it was deleted
   * @param readsNow where the cells that the formula read are now
   */
  record Line(int row, Frozen frozen, List<Reads.Area> cellNow, List<Reads.Area> readsNow) {}

  private final Book book;
  private final BookSheet sheet;
  private final Calculation reading;
  private final Addresses addresses;

  private FormulaSheet(Book book, Catalogue catalogue, BookSheet sheet) {
    this.book = book;
    this.sheet = sheet;
    this.reading = new Calculation(book, catalogue, new CellSet());
    this.addresses = new Addresses(book);
  }

  /** Whether a sheet is this one, which is no part of the log. */
  public static boolean is(String sheetName) {
    return sheetName.equalsIgnoreCase(NAME);
  }

  private static Optional<BookSheet> find(Book book) {
    return book.sheets().stream().filter(s -> is(s.name())).map(s -> (BookSheet) s).findFirst();
  }

  private static boolean isOurs(BookSheet sheet) {
    return sheet.content(new Place(0, 0)).value() instanceof Value.Text head
        && head.text().startsWith(OURS);
  }

  /** The sheet, where the workbook has it. */
  static Optional<FormulaSheet> of(Book book, Catalogue catalogue) {
    Optional<BookSheet> found = find(book);
    found.ifPresent(FormulaSheet::requireOurs);
    return found.map(sheet -> new FormulaSheet(book, catalogue, sheet));
  }

  private static void requireOurs(BookSheet sheet) {
    if (!isOurs(sheet)) {
      throw refused(
          "The sheet \""
              + sheet.name()
              + "\" is someone else's, and formulas are kept on a sheet of this name; rename it"
              + " first.");
    }
  }

  static UncheckedIOException refused(String sentence) {
    return new UncheckedIOException(new FileRefused(sentence));
  }

  /** The sheet, added where the workbook has none. */
  static FormulaSheet in(Book book, Catalogue catalogue) {
    return of(book, catalogue).orElseGet(() -> new FormulaSheet(book, catalogue, added(book)));
  }

  private static BookSheet added(Book book) {
    if (book.isStructureProtected()) {
      throw refused(
          "The workbook is protected against new sheets, and one is needed to keep the formulas"
              + " on; take that protection off first.");
    }
    BookSheet sheet = book.addSheet(NAME);
    sheet.putValue(new Place(0, 0), Value.of(FIRST_LINE));
    for (Column column : Column.values()) {
      sheet.putValue(place(TITLES, column), Value.of(column.title));
      sheet.widen(column.index, column.width);
    }
    return sheet;
  }

  private int index() {
    return book.sheets().indexOf(sheet);
  }

  private static Place place(int row, Column column) {
    return new Place(row, column.index);
  }

  private CellContent content(int row, Column column) {
    return sheet.content(place(row, column));
  }

  private String text(int row, Column column) {
    return content(row, column).value().toString();
  }

  /** The formulas that are kept. */
  List<Line> lines() {
    List<Line> lines = new ArrayList<>();
    for (int row = FIRST; row <= sheet.lastRow(); row++) {
      if (!content(row, Column.SHEET).isBlank()) {
        lines.add(line(row));
      }
    }
    return lines;
  }

  private Line line(int row) {
    String cell = text(row, Column.CELL);
    String array = text(row, Column.ARRAY);
    if (!CELL.matcher(cell).matches() || !ARRAY.matcher(array).matches()) {
      throw refused(
          "Line "
              + (row + 1)
              + " of the sheet \""
              + sheet.name()
              + "\" was changed and does not name a cell any more; put it back first.");
    }
    Frozen frozen =
        new Frozen(
            text(row, Column.SHEET),
            Place.of(cell),
            text(row, Column.FORMULA),
            array,
            content(row, Column.GAVE).value(),
            Label.of(text(row, Column.ROW)),
            Label.of(text(row, Column.COLUMN)),
            text(row, Column.READS),
            Label.all(text(row, Column.LABELS)));
    return new Line(row, frozen, followed(row, Column.NOW), followed(row, Column.FOLLOWER));
  }

  private List<Reads.Area> followed(int row, Column column) {
    return content(row, column).isFormula()
        ? reading.reads(index(), place(row, column)).areas()
        : List.of();
  }

  /** The cells of the workbook that hold what a kept formula gave. */
  CellSet frozen(List<Line> lines) {
    CellSet frozen = new CellSet();
    for (Line line : lines) {
      addresses
          .sheet(line.frozen.sheet())
          .ifPresent(there -> frozen.add(there, line.frozen.place()));
    }
    return frozen;
  }

  /** Whether the workbook's format can hold a formula as it is written. */
  boolean holds(String formula) {
    Place trial = place(TITLES - 1, Column.NOW);
    try {
      sheet.putFormula(trial, formula);
      return formula.equals(sheet.content(trial).formula());
    } catch (UncheckedIOException e) {
      return false; // this format's writer does not understand what its reader gave
    } finally {
      sheet.clear(trial);
    }
  }

  /**
   * Writes a line.
   *
   * @param key what the cell's row is called
   */
  void write(int row, FormulaCell formula, Frozen frozen, CellContent key) {
    put(row, Column.SHEET, Value.of(frozen.sheet()));
    put(row, Column.CELL, Value.of(frozen.place().a1()));
    put(row, Column.FORMULA, Value.of(frozen.formula()));
    put(row, Column.ARRAY, Value.of(frozen.array()));
    put(row, Column.GAVE, frozen.gave());
    Reads.Area cell = Addresses.area(formula.sheet(), formula.place());
    follow(row, Column.NOW, addresses.of(cell), frozen.gave());
    put(row, Column.KEY, key.value());
    if (key.look() == CellContent.Look.DATE) {
      sheet.copyStyle(place(row, Column.SHEET), place(row, Column.KEY), DAY);
    }
    put(row, Column.ROW, Value.of(frozen.row().toString()));
    put(row, Column.COLUMN, Value.of(frozen.column().toString()));
    put(row, Column.READS, Value.of(frozen.reads()));
    put(row, Column.LABELS, Value.of(Label.written(frozen.labels())));
    List<Reads.Area> reads = formula.reads().areas();
    if (!reads.isEmpty()) {
      long rows = reads.stream().mapToLong(area -> area.lastRow() - area.firstRow() + 1L).sum();
      follow(row, Column.FOLLOWER, addresses.follower(reads), Value.of((double) rows));
    } else {
      put(row, Column.FOLLOWER, Value.BLANK);
    }
  }

  private void follow(int row, Column column, String formula, Value shown) {
    sheet.putFormula(place(row, column), formula);
    sheet.putValue(place(row, column), shown);
  }

  private void put(int row, Column column, Value value) {
    Place place = place(row, column);
    CellContent before = sheet.content(place);
    if (before.isFormula() || !before.value().equals(value)) {
      if (!before.isBlank() || before.isFormula()) {
        sheet.clear(place);
      }
      if (!value.toString().isEmpty()) {
        sheet.putValue(place, value);
      }
    }
  }

  /** Forgets a formula. */
  void clear(Line line) {
    for (Column column : Column.values()) {
      put(line.row, column, Value.BLANK);
    }
  }
}
