package meadcell.samples;

import com.sun.star.beans.PropertyValue;
import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XNameAccess;
import com.sun.star.sheet.FormulaResult;
import com.sun.star.sheet.XCalculatable;
import com.sun.star.sheet.XCellRangeData;
import com.sun.star.sheet.XCellRangesQuery;
import com.sun.star.sheet.XNamedRange;
import com.sun.star.sheet.XSheetCellCursor;
import com.sun.star.sheet.XSpreadsheet;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.sheet.XUsedAreaCursor;
import com.sun.star.table.TableSortField;
import com.sun.star.table.XCell;
import com.sun.star.util.XProtectable;
import com.sun.star.util.XSortable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A copy of the cellar book in a real office, as it ships: pages protected. */
final class CellarFile implements AutoCloseable {
  /** The protected sheets that a reader sees. */
  static final List<String> PAGES = new ArrayList<>();

  /** Logs and registers, with how many columns to type into, rows, and columns in all. */
  static final Map<String, int[]> LOGS = new LinkedHashMap<>();

  static {
    try (XSSFWorkbook built = Samples.open("cellar-book")) {
      for (int i = 0; i < built.getNumberOfSheets(); i++) {
        XSSFSheet sheet = built.getSheetAt(i);
        if (!sheet.getTables().isEmpty()) {
          XSSFTable table = sheet.getTables().get(0);
          LOGS.put(
              sheet.getSheetName(),
              new int[] {typed(table), table.getDataRowCount(), table.getColumnCount()});
        } else if (!built.isSheetHidden(i)) {
          PAGES.add(sheet.getSheetName());
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static final Pattern CELL = Pattern.compile("\\$('[^']+'|\\w+)\\.(\\$\\w+\\$\\d+)");

  /** Its columns but for numbers, which are there before anything is typed. */
  private static int typed(XSSFTable table) {
    int columns = table.getColumnCount();
    return columns - (table.getColumns().get(columns - 1).getName().equals("No.") ? 1 : 0);
  }

  /** First row of a log, counted from 0. */
  static final int FIRST = 4;

  private final Workbook book;
  private final Map<String, Integer> next = new HashMap<>();

  private CellarFile(Workbook book) {
    this.book = book;
  }

  static CellarFile open(String copyAs) throws Exception {
    RemoteOffice office = TestOffice.get();
    Path copy = office.home().resolve(copyAs + ".ods");
    Files.copy(Samples.file("cellar-book", "ods"), copy, StandardCopyOption.REPLACE_EXISTING);
    Files.setPosixFilePermissions(copy, PosixFilePermissions.fromString("rw-rw-rw-"));
    return open(copy);
  }

  /** Stores a copy under another name. */
  Path savedAs(String name) throws Exception {
    Path copy = TestOffice.get().home().resolve(name + ".ods");
    book.store(copy, "calc8");
    return copy;
  }

  static CellarFile open(Path file) throws Exception {
    return new CellarFile(TestOffice.get().open(file.toUri().toString(), true));
  }

  static double serial(LocalDate day) {
    return day.toEpochDay() + 25569;
  }

  /** Lets the office work out nothing until {@link #recalculate()}. */
  CellarFile waiting() {
    calculation().enableAutomaticCalculation(false);
    return this;
  }

  /** Works out what has changed. */
  CellarFile resume() {
    calculation().enableAutomaticCalculation(true);
    return this;
  }

  /** Works out everything anew. */
  CellarFile recalculate() {
    resume();
    book.recalculate();
    return this;
  }

  private XCalculatable calculation() {
    return RemoteOffice.as(XCalculatable.class, book.document());
  }

  /** As a person does who begins a cellar of their own: select the rows, Del. */
  void empty(String log) throws Exception {
    int[] size = LOGS.get(log);
    Object[][] nothing = new Object[size[1]][size[0]];
    for (Object[] row : nothing) {
      Arrays.fill(row, "");
    }
    data(log, FIRST, size[0], size[1]).setDataArray(nothing);
    next.put(log, FIRST);
  }

  void emptyAllLogs() throws Exception {
    for (String log : LOGS.keySet()) {
      empty(log);
    }
  }

  /** Types cell by cell into the next free row of a log; null stays blank. Gives the row typed. */
  int type(String log, Object... cells) throws Exception {
    int row = freeRow(log);
    next.put(log, row + 1);
    for (int c = 0; c < cells.length; c++) {
      typeInto(log, row, c, cells[c]);
    }
    return row + 1;
  }

  /** The row below the last typed one, counted from 0 on the sheet. */
  int freeRow(String log) throws Exception {
    if (!next.containsKey(log)) {
      Object[][] rows = rows(log, LOGS.get(log)[1]);
      int last = rows.length;
      while (last > 0 && Arrays.stream(rows[last - 1]).allMatch(""::equals)) {
        last--;
      }
      next.put(log, FIRST + last);
    }
    return next.get(log);
  }

  /** Types into one cell of a log, counted from 0 on the sheet. */
  void typeInto(String log, int row, int column, Object cell) throws Exception {
    if (cell != null) {
      put(sheet(log).getCellByPosition(column, row), cell);
    }
  }

  /** Puts many rows into a log at once, from its first row on; null stays blank. */
  void fill(String log, List<Object[]> rows) throws Exception {
    int columns = LOGS.get(log)[0];
    Object[][] cells = new Object[rows.size()][columns];
    for (int r = 0; r < cells.length; r++) {
      for (int c = 0; c < columns; c++) {
        Object value = c < rows.get(r).length ? rows.get(r)[c] : null;
        cells[r][c] = value == null ? "" : value instanceof String ? value : number(value);
      }
    }
    if (cells.length > 0) {
      data(log, FIRST, columns, cells.length).setDataArray(cells);
    }
    next.put(log, FIRST + cells.length);
  }

  /** What a log's typed rows hold. */
  Object[][] rows(String log, int rows) throws Exception {
    return data(log, FIRST, LOGS.get(log)[0], rows).getDataArray();
  }

  void clear(String log, int row) throws Exception {
    int columns = LOGS.get(log)[0];
    Object[][] nothing = new Object[1][columns];
    Arrays.fill(nothing[0], "");
    data(log, row, columns, 1).setDataArray(nothing);
  }

  private XCellRangeData data(String log, int row, int columns, int rows) throws Exception {
    return RemoteOffice.as(
        XCellRangeData.class,
        sheet(log).getCellRangeByPosition(0, row, columns - 1, row + rows - 1));
  }

  /** Sorts the rows of a log as Data, Sort does, by a column counted from 0. */
  void sort(String log, int column, boolean ascending) throws Exception {
    int[] size = LOGS.get(log);
    TableSortField by = new TableSortField();
    by.Field = column;
    by.IsAscending = ascending;
    RemoteOffice.as(
            XSortable.class,
            sheet(log).getCellRangeByPosition(0, FIRST, size[2] - 1, FIRST + size[1] - 1))
        .sort(
            new PropertyValue[] {
              RemoteOffice.property("SortFields", new TableSortField[] {by}),
              RemoteOffice.property("ContainsHeader", false)
            });
  }

  private static void put(XCell cell, Object value) {
    if (value instanceof String text) {
      cell.setFormula(text);
    } else {
      cell.setValue(number(value));
    }
  }

  private static double number(Object value) {
    return value instanceof LocalDate day ? serial(day) : ((Number) value).doubleValue();
  }

  /** Types into the cell of a name; null empties it. */
  CellarFile set(String name, Object value) throws Exception {
    put(named(name), value == null ? "" : value);
    return this;
  }

  double number(String name) throws Exception {
    return named(name).getValue();
  }

  String text(String name) throws Exception {
    return RemoteOffice.as(com.sun.star.text.XText.class, named(name)).getString();
  }

  XCell named(String name) throws Exception {
    String[] place = place(name).split("!");
    return sheet(place[0]).getCellRangeByName(place[1]).getCellByPosition(0, 0);
  }

  /** Sheet and address of a name, such as {@code Today!B3}. */
  String place(String name) throws Exception {
    Object names =
        RemoteOffice.as(XPropertySet.class, book.document()).getPropertyValue("NamedRanges");
    String content =
        RemoteOffice.as(
                XNamedRange.class, RemoteOffice.as(XNameAccess.class, names).getByName(name))
            .getContent();
    // of a typed cell with a unit the name is a formula, whose first cell is meant
    Matcher cell = CELL.matcher(content);
    if (!cell.find()) {
      throw new AssertionError(name + " is " + content);
    }
    return cell.group(1).replace("'", "") + "!" + cell.group(2).replace("$", "");
  }

  XSpreadsheet sheet(String name) throws Exception {
    return RemoteOffice.as(
        XSpreadsheet.class,
        RemoteOffice.as(XSpreadsheetDocument.class, book.document()).getSheets().getByName(name));
  }

  boolean isProtected(String sheet) throws Exception {
    return RemoteOffice.as(XProtectable.class, sheet(sheet)).isProtected();
  }

  /** What a page shows: numbers, texts, null where there is an error. */
  Object[][] page(String page) throws Exception {
    XSpreadsheet sheet = sheet(page);
    XSheetCellCursor used = sheet.createCursor();
    RemoteOffice.as(XUsedAreaCursor.class, used).gotoEndOfUsedArea(true);
    return RemoteOffice.as(XCellRangeData.class, used).getDataArray();
  }

  /** Rows below two headers side by side, down to the first whose first cell is blank. */
  List<Object[]> below(String page, String header, String next) throws Exception {
    Object[][] cells = page(page);
    for (int r = 0; r < cells.length; r++) {
      for (int c = 0; c + 1 < cells[r].length; c++) {
        if (header.equals(cells[r][c]) && next.equals(cells[r][c + 1])) {
          return below(cells, r + 1, c);
        }
      }
    }
    throw new AssertionError("no " + header + " on " + page);
  }

  private static List<Object[]> below(Object[][] cells, int row, int column) {
    List<Object[]> rows = new ArrayList<>();
    int r = row;
    boolean units = cells[r][column].equals("") && r + 1 < cells.length;
    for (r += units ? 1 : 0; r < cells.length && !"".equals(cells[r][column]); r++) {
      rows.add(Arrays.copyOfRange(cells[r], column, cells[r].length));
    }
    return rows;
  }

  /** The value beside a label; "" if it is blank. */
  Object beside(String page, String label) throws Exception {
    for (Object[] row : page(page)) {
      for (int c = 0; c + 1 < row.length; c++) {
        if (label.equals(row[c])) {
          return row[c + 1];
        }
      }
    }
    throw new AssertionError("no " + label + " on " + page);
  }

  /** Every cell of the pages that shows an error. */
  List<String> errors() throws Exception {
    return errors(PAGES);
  }

  List<String> errors(List<String> pages) throws Exception {
    List<String> errors = new ArrayList<>();
    for (String page : pages) {
      String found =
          RemoteOffice.as(XCellRangesQuery.class, sheet(page))
              .queryFormulaCells((short) FormulaResult.ERROR)
              .getRangeAddressesAsString();
      if (!found.isEmpty()) {
        errors.add(found);
      }
    }
    return errors;
  }

  @Override
  public void close() throws com.sun.star.uno.Exception {
    book.close();
  }
}
