package meadcell.samples.sheet;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import meadcell.catalogue.UnitSystem;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;

/**
 * A table: header, unit line, rows. A computed column is written once, with {@code [Header]} for
 * this row's cell under that header, {@code [ABOVE Header]} for the cells above it ({@code [ABOVE]}
 * in its own column) and {@code #} for the row's number; its cells stay empty while one of those
 * under a header is.
 */
public final class Table {
  private static final Pattern HEADER = Pattern.compile("\\[([^\\]]+)]");
  private static final Pattern NUMBER = Pattern.compile("#");

  /** One column. */
  public record Column(String header, Field field, String formula, boolean always, String list) {
    boolean isInput() {
      return formula == null;
    }
  }

  /** A column to type into. */
  public static Column in(String header, Field field) {
    return new Column(header, field, null, false, "");
  }

  /** A column to choose in, from the list of this name. */
  public static Column choose(String header, String list) {
    return new Column(header, Field.TEXT, null, false, list);
  }

  /** A computed column. */
  public static Column out(String header, Field field, String formula) {
    return new Column(header, field, formula, false, "");
  }

  /** A computed column whose formula itself cares for blank cells. */
  public static Column always(String header, Field field, String formula) {
    return new Column(header, field, formula, true, "");
  }

  private final Page page;
  private final int header;
  private final int top;
  private final int left;
  private final int rows;
  private final boolean arrays;
  private final List<Column> columns;

  Table(Page page, int row, int left, int rows, boolean arrays, Column... columns) {
    this.arrays = arrays;
    this.page = page;
    this.header = row;
    boolean units = Arrays.stream(columns).anyMatch(column -> !unit(column.field()).isEmpty());
    this.top = row + (units ? 2 : 1);
    this.left = left;
    this.rows = rows;
    this.columns = List.of(columns);
    int lines = 1;
    for (int c = 0; c < columns.length; c++) {
      page.text(row, left + c, 1, 1, Look.HEADER, columns[c].header());
      if (units) {
        String system = page.book.isKeeping() && columns[c].isInput() ? "kept" : "units";
        page.text(
            row + 1,
            left + c,
            1,
            1,
            Look.UNIT,
            unit(columns[c].field()).replace("units=", system + "="));
      }
      lines = Math.max(lines, lines(columns[c].header(), page.width(left + c, 1)));
      writeColumn(c, columns[c]);
    }
    if (lines > 1) {
      page.sheet.getRow(row).setHeightInPoints(13.5f * lines + 3);
    }
  }

  private static int lines(String header, int width) {
    int lines = 1;
    int used = 0;
    for (String word : header.split(" ")) {
      if (used > 0 && used + word.length() > width * 0.92) {
        lines++;
        used = 0;
      }
      used += word.length() + 1;
    }
    return lines;
  }

  private static String unit(Field field) {
    String metric = field.unit(UnitSystem.METRIC);
    return field.isDimensional()
        ? "=IF(units=\"US\",\"" + field.unit(UnitSystem.US) + "\",\"" + metric + "\")"
        : metric;
  }

  private void writeColumn(int c, Column column) {
    for (int r = top; r < top + rows; r++) {
      boolean array = arrays && !column.isInput();
      Object value = column.isInput() || array ? null : "=" + formula(column, r);
      page.put(
          r, left + c, column.isInput() ? Look.INPUT : Look.RESULT, column.field(), true, value);
      if (array) {
        page.array(r, left + c, formula(column, r));
      }
    }
    if (column.isInput()) {
      CellRangeAddress cells = new CellRangeAddress(top, top + rows - 1, left + c, left + c);
      if (column.list().isEmpty()) {
        page.validate(column.field(), column.header(), cells);
      } else {
        page.offer(column.list(), column.header(), "Choose from the list.", true, cells);
      }
    }
  }

  /** A column's cells from the header down to the row before. */
  private String above(int row, int c) {
    return new AreaReference(
            new CellReference(header, c, true, true),
            new CellReference(row - 1, c, false, true),
            SpreadsheetVersion.EXCEL2007)
        .formatAsString();
  }

  private String formula(Column column, int row) {
    Set<String> cells = new LinkedHashSet<>();
    String formula =
        HEADER
            .matcher(column.formula())
            .replaceAll(
                match -> {
                  if (match.group(1).startsWith("ABOVE")) {
                    String of = match.group(1).substring("ABOVE".length()).trim();
                    int c = of.isEmpty() ? columns.indexOf(column) : index(of);
                    return Matcher.quoteReplacement(above(row, left + c));
                  }
                  String cell = cell(match, row);
                  cells.add(cell + "=\"\"");
                  return Matcher.quoteReplacement(cell);
                });
    formula = NUMBER.matcher(formula).replaceAll(Integer.toString(row - top + 1));
    if (column.always() || cells.isEmpty()) {
      return formula;
    }
    String blank =
        cells.size() == 1
            ? cells.iterator().next()
            : cells.stream().collect(Collectors.joining(",", "OR(", ")"));
    return "IF(" + blank + ",\"\"," + formula + ")";
  }

  private String cell(MatchResult match, int row) {
    return new CellReference(row, left + index(match.group(1)), false, true).formatAsString();
  }

  private int index(String header) {
    for (int c = 0; c < columns.size(); c++) {
      if (columns.get(c).header().equals(header)) {
        return c;
      }
    }
    throw new IllegalArgumentException("no column " + header);
  }

  /**
   * Demonstration values: a line for each row, {@code |} between the columns to type into. What is
   * left out stays blank.
   */
  public Table fill(String demo) {
    List<Integer> inputs =
        IntStream.range(0, columns.size()).filter(c -> columns.get(c).isInput()).boxed().toList();
    int row = top;
    for (String line : demo.lines().toList()) {
      String[] cells = line.split("\\|");
      for (int i = 0; i < cells.length; i++) {
        if (!cells[i].isBlank()) {
          Field field = columns.get(inputs.get(i)).field();
          page.put(
              row, left + inputs.get(i), Look.INPUT, field, true, field.parse(cells[i].trim()));
        }
      }
      row++;
    }
    return this;
  }

  /** The row below the table, counted from 0. */
  int bottom() {
    return top + rows;
  }

  /** First row with values, counted from 0. */
  public int top() {
    return top;
  }

  /** A column's cells, for formulas on the same sheet. */
  public String range(String header) {
    return area(header, header).formatAsString(null, true);
  }

  /** Gives a column a name that formulas on any sheet can use. */
  public Table name(String header, String name) {
    return nameBlock(header, header, name);
  }

  /** Gives the cells from one column to another a name. */
  public Table nameBlock(String from, String to, String name) {
    page.book.name(name, area(from, to).formatAsString(page.sheet.getSheetName(), true));
    return this;
  }

  /** The cells from one column to another. */
  public String block(String from, String to) {
    return area(from, to).formatAsString(null, true);
  }

  /** One cell; rows count from 1. */
  public String at(String header, int row) {
    return new CellReference(top + row - 1, left + index(header), true, true).formatAsString();
  }

  CellReference header(String header) {
    return new CellReference(
        page.sheet.getSheetName(), this.header, left + index(header), true, true);
  }

  CellRangeAddress area(String from, String to) {
    return new CellRangeAddress(top, top + rows - 1, left + index(from), left + index(to));
  }
}
