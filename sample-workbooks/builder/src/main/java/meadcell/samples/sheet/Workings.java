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
  private final Map<String, Integer> columns;
  private final String log;
  private final int rows;
  private final String complete;

  public Workings(Book book, String title) {
    this.book = book;
    this.title = title;
    columns = new LinkedHashMap<>();
    log = "";
    rows = 0;
    complete = "";
    sheet = book.workbook.createSheet(title);
    book.later(() -> book.workbook.setSheetHidden(book.workbook.getSheetIndex(sheet), true));
    sheet.enableLocking();
  }

  /**
   * Further columns of the same sheet, beside a log that has room for this many rows. Their names
   * reach from the header to the last row in which column {@code complete} has something; all of
   * that is named {@code log_complete}.
   */
  public Workings beside(String log, int rows, String complete) {
    return new Workings(this, log, rows, complete);
  }

  private Workings(Workings other, String log, int rows, String complete) {
    book = other.book;
    title = other.title;
    sheet = other.sheet;
    columns = other.columns;
    this.log = log;
    this.rows = rows;
    this.complete = complete;
    String last = log + "_last";
    column(last, 1, "MAX(1,SUMPRODUCT(MAX((#<>\"\")*ROW(#)))-1)".replace("#", log + "_complete"));
    block(log + "_used", last, last, 1);
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
   * [header]} one of these, {@code [ROW]} the number of each row. Blank where the log has no more,
   * or the formula no answer.
   */
  public Workings following(String header, String formula) {
    int column = column(header);
    String all = block(header, header, 0, rows);
    if (header.equals(complete)) {
      book.name(log + "_complete", all);
    }
    book.formulaName(
        header,
        "INDEX(CELLS,1):INDEX(CELLS,1+MAX(LOG_used))".replace("CELLS", all).replace("LOG", log));
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
                    .matcher(formula.replace("[ROW]", "(" + numbers + "+1)"))
                    .replaceAll("INDEX($1,2):INDEX($1,ROWS($1))"))
            .replaceAll(
                m ->
                    Matcher.quoteReplacement(
                        new CellRangeAddress(1, rows, at(m.group(1)), at(m.group(1)))
                            .formatAsString(null, true)));
    // in an IF of its branches, an office would work the whole column out for each row
    return "IFERROR(IF(" + numbers + ">=ROWS(" + log.group(1) + "),\"\"," + body + "),\"\")";
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
    int column = column(header);
    book.name(header, block(header, header, 0, rows));
    return column;
  }

  private int column(String header) {
    int column = columns.size();
    if (columns.put(header, column) != null) {
      throw new IllegalArgumentException("two columns " + header);
    }
    cell(0, column).setCellValue(header);
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
