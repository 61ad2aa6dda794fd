package meadcell.samples.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.UnitSystem;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTTable;

/**
 * A long table to type into, one event or thing a row, alone on its sheet, which is not protected:
 * rows may be inserted, sorted, filtered. Nothing is worked out in it.
 *
 * <p>Each column has a name that formulas use. It reaches from the header to the line below the
 * last row, so that a row inserted anywhere is inside: its first value stands at 2.
 */
public final class Log {
  private static final int UNITS = 2;
  private static final int HEADER = 3;
  private static final int FIRST = 4;

  /** Of the arrow in a header, by which its table is filtered. */
  private static final int FILTER_WIDTH = 4;

  private static final String NUMBER = "No.";
  private static final Pattern NAME = Pattern.compile("\\[(\\w+)]");

  /**
   * A column: {@code list} is the name of a list to choose from, or empty; {@code lack} what a row
   * without it is told to lack, or empty.
   */
  public record Column(
      String header,
      String name,
      int width,
      Field field,
      String list,
      boolean strictly,
      String lack) {
    /** A row of which anything is typed lacks this, where it is blank. */
    public Column needed(String what) {
      return new Column(header, name, width, field, list, strictly, what);
    }

    /** Typed or not, it begins no row. */
    private boolean isBeside() {
      return name.endsWith("_note") || isNumber();
    }

    private boolean isNumber() {
      return header.equals(NUMBER);
    }
  }

  /** A column to type into. */
  public static Column typed(String header, String name, int width, Field field) {
    return new Column(header, name, width, field, "", true, "");
  }

  /** The last column, filled from 1 on: by it rows of one day keep their order, however sorted. */
  public static Column numbered(String name) {
    return typed(
        NUMBER,
        name,
        7,
        Field.between(
            Quantity.NUMBER,
            Field.AS_TYPED,
            "Among rows of one day the lowest counts first. A row between 12 and 13: 12.5.",
            0,
            1_000_000));
  }

  /** A column to choose in, from the list of this name; {@code strictly} nothing else is taken. */
  public static Column chosen(
      String header, String name, int width, String list, boolean strictly) {
    return new Column(header, name, width, Field.TEXT, list, strictly, "");
  }

  private final Page page;
  private final List<Column> columns;
  private final int rows;
  private final String lacking;
  private final String header;

  /** A sheet with room for this many rows. */
  public Log(Book book, String title, String lead, int rows, Column... columns) {
    this(book, title, lead, rows, "", columns);
  }

  /**
   * The same; {@code alsoLacking} is one more formula for what a row lacks, with {@code [name]} for
   * a column's cell in it, and {@code ROW()} that counts the header as 1.
   */
  public Log(
      Book book, String title, String lead, int rows, String alsoLacking, Column... columns) {
    this.page = book.page(title, widths(columns)).open();
    this.columns = List.of(columns);
    this.rows = rows;
    String log = columns[0].name().replaceAll("_.*", "");
    this.lacking = log + "_lacking";
    this.header = log + "_header";
    book.formulaName(header, "ROW(INDEX(" + columns[0].name() + ",1))");
    book.formulaName(log + "_lacks", lacks(alsoLacking));
    book.lacking(new Lacking(log, rows));
    book.heeding(lackingRows());
    page.at(0, 0, columns.length).shortHead(title, lead);
    book.heeding("");
    for (int c = 0; c < columns.length; c++) {
      Column column = columns[c];
      page.text(UNITS, c, 1, 1, Look.UNIT, unit(column.field()));
      page.text(HEADER, c, 1, 1, Look.HEADER, column.header());
      page.sheet.setDefaultColumnStyle(
          c, book.styles.of(Look.TYPED, column.field().plain(), !column.field().isNumber()));
      book.name(column.name(), range(c));
      for (int r = 0; r < rows && column.isNumber(); r++) {
        page.put(FIRST + r, c, Look.TYPED, column.field(), true, r + 1);
      }
    }
    for (int c = 0, next; c < columns.length; c = next) {
      next = alike(c);
      validate(c, next - 1);
    }
    page.sheet.getRow(HEADER).setHeightInPoints(18);
    page.text(FIRST + rows, remarks(), 1, 1, Look.NOTE, "More room: insert rows above this line.");
    table();
    page.mark(
        new CellRangeAddress(1, 1, 1, columns.length - 1), "COUNTIF(" + lacking + ",\"?*\")>0");
    page.mark(
        new CellRangeAddress(FIRST, FIRST + rows - 1, 0, columns.length - 1),
        "INDEX(" + lacking + ",ROW()-" + header + ")<>\"\"");
    page.frame(
        FIRST,
        FIRST + rows - 1,
        (int) List.of(columns).stream().filter(column -> !column.isNumber()).count());
  }

  private int remarks() {
    return IntStream.range(0, columns.size())
        .filter(c -> columns.get(c).name().endsWith("_note"))
        .findFirst()
        .orElseThrow();
  }

  private static int[] widths(Column... columns) {
    return List.of(columns).stream()
        .mapToInt(column -> Math.max(column.width(), column.header().length() + FILTER_WIDTH))
        .toArray();
  }

  /** Which rows lack what, the first and the last of them; blank if none does. */
  private String lackingRows() {
    return "IF(ALL=0,\"\",IF(ALL=1,\"A row below lacks something: \",ALL&\" rows below lack something: \")&\"FIRST&IF(ALL>1,\"; LAST,\"\")&\".\")"
        .replace("FIRST", inLine("MATCH(\"?*\",LACKING,0)"))
        .replace("LAST", inLine("(SUMPRODUCT(MAX((LACKING<>\"\")*ROW(LACKING)))-1)"))
        .replace("ALL", "COUNTIF(LACKING,\"?*\")")
        .replace("LACKING", lacking);
  }

  private String inLine(String at) {
    return "in line \"&(AT+HEADER)&\", \"&INDEX(LACKING,AT)"
        .replace("AT", at)
        .replace("HEADER", header);
  }

  /** A log for which workings are to say, row by row, what {@code log_lacks} finds. */
  public record Lacking(String log, int rows) {}

  /** What a row still lacks, in the words of a cell of the workings in the row of its number. */
  private String lacks(String also) {
    List<String> parts = new ArrayList<>();
    StringBuilder typed = new StringBuilder();
    for (Column c : columns) {
      typed.append(c.isBeside() ? "" : "," + cell(c.name()));
      String blank = cell(c.name()) + "=\"\"";
      String unknown =
          c.field().isNumber()
              ? "IF(ISNUMBER(%s),\"\",\", a %s that is no text\")"
                  .formatted(cell(c.name()), c.lack())
              : c.list().isEmpty() || !c.strictly()
                  ? "\"\""
                  : "IF(ISNUMBER(MATCH(%s,%s,0)),\"\",\", unknown %s\")"
                      .formatted(cell(c.name()), c.list(), c.lack());
      if (!c.lack().isEmpty()) {
        parts.add("IF(%s,\", no %s\",%s)".formatted(blank, c.lack(), unknown));
      }
    }
    if (!also.isEmpty()) {
      Matcher name = NAME.matcher(also);
      parts.add(name.replaceAll(m -> Matcher.quoteReplacement(cell(m.group(1)))));
    }
    return "IF(ROW()>=ROWS(%s),\"\",IF(COUNTA(%s)=0,\"\",IFERROR(MID(%s,3,99),\"a cell without an error\")))"
        .formatted(columns.get(0).name(), typed.substring(1), String.join("&", parts));
  }

  /** The cell of a column; a reference from sheet to sheet would lose rows that are inserted. */
  private static String cell(String name) {
    return "INDEX(" + name + ",ROW())";
  }

  /** The column after those side by side that take the same: an office reads each rule anew. */
  private int alike(int first) {
    int next = first + 1;
    while (columns.get(first).list().isEmpty()
        && next < columns.size()
        && columns.get(next).list().isEmpty()
        && columns.get(next).field().equals(columns.get(first).field())) {
      next++;
    }
    return next;
  }

  private void validate(int first, int last) {
    Column column = columns.get(first);
    CellRangeAddress where = new CellRangeAddress(FIRST, FIRST + rows - 1, first, last);
    if (column.list().isEmpty()) {
      String title =
          columns.subList(first, last + 1).stream()
              .map(Column::header)
              .collect(Collectors.joining(", "));
      page.validate(column.field(), title, where);
    } else {
      page.offer(
          column.list(),
          column.header(),
          "Choose from the list"
              + (column.strictly() ? "." : ", or type another name.")
              + REGISTER.getOrDefault(column.list(), ""),
          column.strictly(),
          where);
    }
  }

  private static final Map<String, String> REGISTER =
      Map.of(
          "vessel_list", " Not there? Type it into Vessels first.",
          "target_list", " Not there? Type it into Vessels first.",
          "source_list", " Not there? Type it into Vessels or Lots first.");

  private static String unit(Field field) {
    String metric = field.unit(UnitSystem.METRIC);
    return field.isDimensional()
        ? "=IF(kept=\"US\",\"" + field.unit(UnitSystem.US) + "\",\"" + metric + "\")"
        : metric;
  }

  private String range(int column) {
    return range(column, HEADER, FIRST + rows);
  }

  private String range(int column, int first, int last) {
    return new AreaReference(
            new CellReference(page.sheet.getSheetName(), first, column, true, true),
            new CellReference(page.sheet.getSheetName(), last, column, true, true),
            org.apache.poi.ss.SpreadsheetVersion.EXCEL2007)
        .formatAsString();
  }

  private void table() {
    XSSFTable table =
        page.sheet.createTable(
            new AreaReference(
                new CellReference(HEADER, 0),
                new CellReference(FIRST + rows - 1, columns.size() - 1),
                org.apache.poi.ss.SpreadsheetVersion.EXCEL2007));
    String name =
        page.sheet.getSheetName().toLowerCase(java.util.Locale.ROOT).replace(' ', '_') + "_table";
    table.setName(name);
    table.setDisplayName(name);
    CTTable xml = table.getCTTable();
    xml.addNewAutoFilter().setRef(xml.getRef());
  }

  private static final Pattern CELLS = Pattern.compile("\\s*\\|\\s*");

  /** Rows of the demonstration: a line for each, {@code |} between the columns. */
  public Log fill(String demo) {
    int row = FIRST;
    for (String line : demo.lines().filter(l -> !l.isBlank()).toList()) {
      String[] cells = CELLS.split(line.trim(), -1);
      for (int c = 0; c < columns.size(); c++) {
        if (columns.get(c).isNumber()) {
          continue;
        }
        String text = c < cells.length ? cells[c] : "";
        Field field = columns.get(c).field();
        page.put(row, c, Look.TYPED, field, true, text.isEmpty() ? null : field.parse(text));
      }
      row++;
    }
    return this;
  }
}
