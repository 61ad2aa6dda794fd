package meadcell.samples.sheet;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/**
 * A hidden sheet of columns that pages rest on. {@code [header]} in a formula is this row's cell of
 * a column of the same group; {@code ROW()} counts the header as 1, as the names of a log do.
 */
public final class Workings {
  private static final Pattern CELL = Pattern.compile("\\[(\\w+)]");
  private static final Pattern LOGGED = Pattern.compile("\\{(\\w+)}");

  /** Of the rows that cells of a column without content have, which nothing depends on. */
  private static final String BLANK = "$AZ$";

  private final Book book;
  private final XSSFSheet sheet;
  private final String title;
  private final Map<String, Integer> columns = new LinkedHashMap<>();
  private final int rows;

  public Workings(Book book, String title) {
    this(book, title, 0);
  }

  /** Room for this many rows of a log. */
  public Workings(Book book, String title, int rows) {
    this.book = book;
    this.title = title;
    this.rows = rows;
    sheet = book.workbook.createSheet(title);
    book.later(() -> book.workbook.setSheetHidden(book.workbook.getSheetIndex(sheet), true));
    sheet.enableLocking();
  }

  /** A column of formulas below its header, which is also its name. */
  public Workings column(String header, int rows, String formula) {
    int column = add(header, rows);
    for (int r = 1; r <= rows; r++) {
      int row = r;
      XSSFCell cell = cell(r, column);
      book.later(
          () -> {
            // POI looks at each formula at length: the first is enough
            if (row == 1) {
              Book.formula(cell, inRow(formula, row));
            } else {
              cell.getCTCell().addNewF().setStringValue(Book.prefixed(inRow(formula, row)));
            }
          });
    }
    return this;
  }

  /** The same, each formula going through whole columns. */
  public Workings arrays(String header, int rows, String formula) {
    int column = add(header, rows);
    for (int r = 1; r <= rows; r++) {
      int row = r;
      CellRangeAddress cell = new CellRangeAddress(r, r, column, column);
      book.later(() -> sheet.setArrayFormula(Book.prefixed(inRow(formula, row)), cell));
    }
    return this;
  }

  /**
   * A column beside a log, row by row, by one formula: {@code {name}} is the log's column, {@code
   * [header]} one of these, {@code [ROW]} the number of each row. Blank where the log has no more.
   */
  public Workings following(String header, String formula) {
    int column = add(header, rows);
    CellRangeAddress cells = new CellRangeAddress(1, rows, column, column);
    book.later(() -> sheet.setArrayFormula(Book.prefixed(beside(formula)), cells));
    return this;
  }

  private String beside(String formula) {
    String numbers = "ROW(%s1:%s%d)".formatted(BLANK, BLANK, rows);
    Matcher log = LOGGED.matcher(formula);
    if (!log.find()) {
      throw new IllegalArgumentException(formula + " follows no log");
    }
    String body =
        CELL.matcher(
                LOGGED
                    .matcher(formula.replace("[ROW]", numbers + "+1"))
                    .replaceAll("INDEX($1,2):INDEX($1,ROWS($1))"))
            .replaceAll(
                m ->
                    Matcher.quoteReplacement(
                        new CellRangeAddress(1, rows, at(m.group(1)), at(m.group(1)))
                            .formatAsString(null, true)));
    return "IF(" + numbers + ">=ROWS(" + log.group(1) + "),\"\"," + body + ")";
  }

  /** A column of words, whose name leaves the header out. */
  public Workings words(String name, String... words) {
    int column = columns.size();
    columns.put(name, column);
    cell(0, column).setCellValue(name);
    for (int i = 0; i < words.length; i++) {
      cell(i + 1, column).setCellValue(words[i]);
    }
    return block(name, name, name, words.length);
  }

  private String inRow(String formula, int row) {
    return CELL.matcher(formula)
        .replaceAll(
            m ->
                Matcher.quoteReplacement(
                    new CellReference(row, at(m.group(1)), false, true).formatAsString()));
  }

  /** One formula for all cells of a few columns. */
  public Workings array(int rows, String formula, String... headers) {
    int first = columns.size();
    for (String header : headers) {
      add(header, rows);
      for (int r = 1; r <= rows; r++) {
        cell(r, at(header));
      }
    }
    CellRangeAddress cells = new CellRangeAddress(1, rows, first, columns.size() - 1);
    book.later(() -> sheet.setArrayFormula(Book.prefixed(formula), cells));
    return this;
  }

  private int add(String header, int rows) {
    int column = columns.size();
    if (columns.put(header, column) != null) {
      throw new IllegalArgumentException("two columns " + header);
    }
    cell(0, column).setCellValue(header);
    book.name(header, block(header, header, 0, rows));
    return column;
  }

  /** A name for the cells of several columns side by side, without their headers. */
  public Workings block(String name, String from, String to, int rows) {
    book.name(name, block(from, to, 1, rows));
    return this;
  }

  /** The same, of columns beside a log. */
  public Workings block(String name, String from, String to) {
    return block(name, from, to, rows);
  }

  /** A single cell is no range: in the formula of a list, a range meets the row of the asker. */
  private String block(String from, String to, int first, int last) {
    String start =
        "'" + title + "'!" + new CellReference(first, at(from), true, true).formatAsString();
    return first == last && from.equals(to)
        ? start
        : start + ":" + new CellReference(last, at(to), true, true).formatAsString();
  }

  private int at(String header) {
    Integer column = columns.get(header);
    if (column == null) {
      throw new IllegalArgumentException("no column " + header);
    }
    return column;
  }

  private XSSFCell cell(int row, int column) {
    var r = sheet.getRow(row) == null ? sheet.createRow(row) : sheet.getRow(row);
    return r.getCell(column) == null ? r.createCell(column) : r.getCell(column);
  }
}
