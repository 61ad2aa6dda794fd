package meadcell.batch.freeze;

import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
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
public final class FormulaSheet {
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
  private static final String BETWEEN_LABELS = " | ";
  private static final Pattern CELL = Pattern.compile("[A-Z]{1,3}[1-9][0-9]{0,6}");
  private static final Pattern ARRAY = Pattern.compile("(" + CELL + ":" + CELL + ")?");
  private static final String DAY = "yyyy-mm-dd";

  /** Characters; no format holds a longer formula. */
  private static final int LONGEST_FORMULA = 8000;

  /** Characters; no format holds a longer text. */
  private static final int LONGEST_TEXT = 32_000;

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

  private static UncheckedIOException refused(String sentence) {
    return new UncheckedIOException(new FileRefused(sentence));
  }

  /** The sheet, added where the workbook has none. */
  public static FormulaSheet in(Book book, Catalogue catalogue) {
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

  // ---- reading ----------------------------------------------------------------------------

  /** The formulas that are kept. */
  List<Line> lines() {
    List<Line> lines = new ArrayList<>();
    for (int row = TITLES + 1; row <= sheet.lastRow(); row++) {
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
    List<Label> labels =
        Arrays.stream(text(row, Column.LABELS).split(" *\\| *", -1)).map(Label::of).toList();
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
            labels);
    return new Line(row, frozen, followed(row, Column.NOW), followed(row, Column.FOLLOWER));
  }

  private List<Reads.Area> followed(int row, Column column) {
    return content(row, column).isFormula()
        ? reading.reads(index(), place(row, column)).areas()
        : List.of();
  }

  /** The cells of the workbook that hold what a kept formula gave. */
  CellSet frozen(List<Line> lines) {
    Map<String, Integer> sheets = new HashMap<>();
    for (int i = 0; i < book.sheets().size(); i++) {
      sheets.put(book.sheets().get(i).name(), i);
    }
    CellSet frozen = new CellSet();
    for (Line line : lines) {
      Integer there = sheets.get(line.frozen.sheet());
      if (there != null) {
        frozen.add(there, line.frozen.place());
      }
    }
    return frozen;
  }

  // ---- writing ----------------------------------------------------------------------------

  /** Whether a formula can be put back as it is, should it be replaced by what it gives. */
  public boolean canKeep(FormulaCell formula) {
    String written = formula.content().formula();
    if (written.length() > LONGEST_FORMULA
        || addresses.follower(formula.reads().areas()).length() > LONGEST_FORMULA) {
      return false;
    }
    Place trial = place(TITLES - 1, Column.NOW);
    try {
      sheet.putFormula(trial, written);
      return written.equals(sheet.content(trial).formula());
    } catch (UncheckedIOException e) {
      return false; // this format's writer does not understand what its reader gave
    } finally {
      sheet.clear(trial);
    }
  }

  /**
   * Keeps formulas that {@link #canKeep} says can be kept, with what their cells hold now.
   *
   * @return whether anything was not kept before
   */
  public boolean keep(List<FormulaCell> formulas) {
    Map<Reads.Area, Line> known = new HashMap<>();
    Map<Reads.Area, Line> moved = new HashMap<>();
    List<Line> lines = lines();
    CellSet frozen = frozen(lines);
    for (Line line : lines) {
      indexOf(line.frozen.sheet())
          .ifPresent(there -> known.put(Addresses.area(there, line.frozen.place()), line));
      line.cellNow.forEach(area -> moved.put(area, line));
    }
    formulas.forEach(frozen::add);
    Landmarks landmarks = new Landmarks(book, frozen);
    Set<Integer> taken =
        lines.stream().map(Line::row).collect(Collectors.toCollection(HashSet::new));
    boolean changed = false;
    int free = TITLES + 1;
    for (FormulaCell formula : formulas) {
      Reads.Area cell = Addresses.area(formula.sheet(), formula.place());
      Frozen wanted = frozen(formula, landmarks);
      Line before = known.get(cell);
      if (before != null && before.frozen.equals(wanted) && !isMoved(before)) {
        continue;
      }
      Line other = moved.get(cell);
      if (other != null && !other.equals(before)) {
        clear(other); // its formula is kept anew, at its new place
        taken.remove(other.row);
      }
      while (before == null && taken.contains(free)) {
        free++;
      }
      int row = before == null ? free : before.row;
      if (row >= book.mostRows()) {
        throw refused(
            "The workbook has more formulas to keep than a sheet of its format has rows; save it"
                + " as .xlsx or .ods first.");
      }
      taken.add(row);
      write(row, formula, wanted, landmarks);
      changed = true;
    }
    return changed;
  }

  private Optional<Integer> indexOf(String name) {
    for (int i = 0; i < book.sheets().size(); i++) {
      if (book.sheets().get(i).name().equals(name)) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  /** Whether rows or columns were moved since the line was written. */
  boolean isMoved(Line line) {
    Frozen frozen = line.frozen;
    List<Reads.Area> there =
        indexOf(frozen.sheet())
            .map(index -> List.of(Addresses.area(index, frozen.place())))
            .orElse(List.of());
    return !line.cellNow.equals(there) || !addresses.of(line.readsNow).equals(frozen.reads());
  }

  private Frozen frozen(FormulaCell formula, Landmarks landmarks) {
    BookSheet there = book.sheets().get(formula.sheet());
    Span array = there.array(formula.place());
    List<Reads.Area> reads = formula.reads().areas();
    Frozen frozen =
        new Frozen(
            there.name(),
            formula.place(),
            formula.content().formula(),
            array == null ? "" : array.first() + ":" + array.last(),
            there.content(formula.place()).value(),
            landmarks.row(formula.sheet(), formula.place().row()),
            landmarks.column(formula.sheet(), formula.place()),
            addresses.of(reads),
            labels(formula.sheet(), formula.place(), reads, landmarks));
    return written(frozen).length() <= LONGEST_TEXT ? frozen : withoutLabels(frozen);
  }

  private static String written(Frozen frozen) {
    return frozen.labels().stream()
        .map(Label::toString)
        .collect(Collectors.joining(BETWEEN_LABELS));
  }

  private static Frozen withoutLabels(Frozen frozen) {
    return new Frozen(
        frozen.sheet(),
        frozen.place(),
        frozen.formula(),
        frozen.array(),
        frozen.gave(),
        frozen.row(),
        frozen.column(),
        frozen.reads(),
        List.of(Label.NONE));
  }

  /** The columns that a formula reads, and the rows other than its own. */
  private static List<Label> labels(
      int sheet, Place place, List<Reads.Area> reads, Landmarks landmarks) {
    List<Label> labels = new ArrayList<>();
    for (Reads.Area area : reads) {
      Place first = new Place(area.firstRow(), area.firstColumn());
      labels.add(landmarks.column(area.sheet(), first));
      labels.add(
          area.sheet() == sheet && first.row() == place.row()
              ? Label.NONE
              : landmarks.row(area.sheet(), first.row()));
    }
    return labels.isEmpty() ? List.of(Label.NONE) : labels;
  }

  private void write(int row, FormulaCell formula, Frozen frozen, Landmarks landmarks) {
    put(row, Column.SHEET, Value.of(frozen.sheet()));
    put(row, Column.CELL, Value.of(frozen.place().a1()));
    put(row, Column.FORMULA, Value.of(frozen.formula()));
    put(row, Column.ARRAY, Value.of(frozen.array()));
    put(row, Column.GAVE, frozen.gave());
    Reads.Area cell = Addresses.area(formula.sheet(), formula.place());
    follow(row, Column.NOW, addresses.of(cell), frozen.gave());
    CellContent key = landmarks.key(formula.sheet(), formula.place().row());
    put(row, Column.KEY, key.value());
    if (key.look() == CellContent.Look.DATE) {
      sheet.copyStyle(place(row, Column.SHEET), place(row, Column.KEY), DAY);
    }
    put(row, Column.ROW, Value.of(frozen.row().toString()));
    put(row, Column.COLUMN, Value.of(frozen.column().toString()));
    put(row, Column.READS, Value.of(frozen.reads()));
    put(row, Column.LABELS, Value.of(written(frozen)));
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

  // ---- comparing --------------------------------------------------------------------------

  /**
   * Why a formula's cells are not where they were when it was frozen; nothing if they are.
   *
   * @param sheetIndex position of its sheet
   */
  Optional<String> moved(Line line, int sheetIndex, Landmarks landmarks) {
    Frozen frozen = line.frozen;
    Place place = frozen.place();
    if (isMoved(line)) {
      List<Reads.Area> cell = List.of(Addresses.area(sheetIndex, place));
      return Optional.of(
          !line.cellNow.equals(cell)
              ? whereNow("the cell " + place, line.cellNow)
              : whereNow("what " + place + " reads, " + frozen.reads() + ",", line.readsNow));
    }
    if (landmarks.isRowElsewhere(frozen.row(), sheetIndex, place.row())) {
      return Optional.of(
          "\"" + frozen.row().text() + "\" is no longer in row " + (place.row() + 1));
    }
    if (landmarks.isColumnElsewhere(frozen.column(), sheetIndex, place)) {
      return Optional.of("\"" + frozen.column().text() + "\" is no longer above " + place);
    }
    for (int i = 0; i < line.readsNow.size() && 2 * i + 1 < frozen.labels().size(); i++) {
      Reads.Area area = line.readsNow.get(i);
      Place first = new Place(area.firstRow(), area.firstColumn());
      Label column = frozen.labels().get(2 * i);
      Label row = frozen.labels().get(2 * i + 1);
      if (landmarks.isColumnElsewhere(column, area.sheet(), first)) {
        return Optional.of("\"" + column.text() + "\" is no longer above " + addresses.of(area));
      }
      if (landmarks.isRowElsewhere(row, area.sheet(), first.row())) {
        return Optional.of(
            "\"" + row.text() + "\" is no longer in the row of " + addresses.of(area));
      }
    }
    return Optional.empty();
  }

  private String whereNow(String what, List<Reads.Area> now) {
    return now.isEmpty()
        ? what + " was deleted, or is not followed any more"
        : what + " is " + addresses.of(now) + " now";
  }
}
