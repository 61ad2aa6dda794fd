package meadcell.samples.sheet;

import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.Hyperlink;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;

/** A part of a sheet that grows downwards: label, value, note; headings, notes, tables. */
public final class Block {
  private final Page page;
  private final int column;
  private final int columns;
  private int labelColumns = 1;
  private int row;

  Block(Page page, int row, int column, int columns) {
    this.page = page;
    this.row = row;
    this.column = column;
    this.columns = columns;
  }

  /** Lets labels run over this many columns; the value stands in the next one. */
  public Block labels(int labelColumns) {
    this.labelColumns = labelColumns;
    return this;
  }

  boolean isKeeping() {
    return page.book.isKeeping();
  }

  /** The next free row, counted from 0. */
  public int row() {
    return row;
  }

  public Block skip(int rows) {
    row += rows;
    return this;
  }

  Block head(String title, String lead) {
    page.text(row, column, 1, columns, Look.TITLE, title).getRow().setHeightInPoints(27);
    row++;
    int rows = rows(lead, page.width(column, columns), Look.LEAD);
    page.text(row, column, rows, columns, Look.LEAD, page.book.leading(lead));
    row += rows;
    return this;
  }

  /**
   * The same in two rows, however long the second is. The first column is frozen: an office leaves
   * half of a changed text as it was that stands on both sides of that line.
   */
  void shortHead(String title, String lead) {
    page.text(row, column, 1, columns, Look.TITLE, title).getRow().setHeightInPoints(27);
    float lines = rows(lead, page.width(column + 1, columns - 1), Look.LEAD);
    page.text(row + 1, column + 1, 1, columns - 1, Look.LEAD, page.book.leading(lead))
        .getRow()
        .setHeightInPoints(13.5f * lines + 1);
    row += 2;
  }

  public Block heading(String text) {
    row++;
    page.text(row++, column, 1, columns, Look.HEADING, text);
    return this;
  }

  public Block note(String text) {
    return lines(Look.NOTE, text);
  }

  /** Words to be read before anything is typed. */
  public Block story(String text) {
    return lines(Look.STORY, text);
  }

  /** Words on safety or law. */
  public Block warning(String text) {
    return lines(Look.WARNING, text);
  }

  /** A warning that a formula gives or leaves blank, over the whole width. */
  public Block alarm(String formula, int rows, String name) {
    page.book.name(name, page.text(row, column, rows, columns, Look.ALARM, "=" + formula));
    row += rows;
    return this;
  }

  /** A sentence worked out by a formula, over the whole width. */
  public Block verdict(String formula, int rows) {
    return verdict(formula, rows, "");
  }

  /** The same, under a name. */
  public Block verdict(String formula, int rows, String name) {
    XSSFCell cell = page.text(row, column, rows, columns, Look.VERDICT, "=" + formula);
    if (!name.isEmpty()) {
      page.book.name(name, cell);
    }
    row += rows;
    return this;
  }

  private Block lines(Look look, String text) {
    int rows = rows(text, page.width(column, columns), look);
    page.text(row, column, rows, columns, look, text);
    row += rows;
    return this;
  }

  /** How many lines a text needs; a character of text is a little narrower than a digit. */
  private static int rows(String text, int width, Look look) {
    double perLine = width * 10.9 / look.points;
    int rows = 0;
    for (String line : text.split("\n")) {
      rows += (int) Math.max(1, Math.ceil(line.length() / perLine));
    }
    return rows;
  }

  /**
   * Lines written as text. {@code label | name | field | value | note}: typed, or worked out where
   * the value begins with {@code =}; name and note may be left out. {@code # heading}, {@code .
   * note}, {@code ! warning}, {@code ? rows | name | formula} of a verdict.
   *
   * @see Field#of(String, String)
   */
  public Block form(String text) {
    text.lines().filter(line -> !line.isBlank()).forEach(this::formLine);
    return this;
  }

  private void formLine(String line) {
    String rest = line.substring(1).trim();
    switch (line.charAt(0)) {
      case '#' -> heading(rest);
      case '.' -> note(rest);
      case '!' -> warning(rest);
      case '?' -> {
        String[] parts = cells(rest);
        verdict(parts[2], Integer.parseInt(parts[0]), parts[1]);
      }
      default -> {
        String[] parts = cells(line);
        String note = parts.length > 4 ? parts[4] : "";
        Field field = Field.of(parts[2], note);
        if (parts[3].startsWith("=")) {
          result(parts[0], field, parts[3].substring(1), parts[1], note);
        } else {
          input(parts[0], field, field.parse(parts[3]), parts[1], note);
        }
      }
    }
  }

  private static String[] cells(String line) {
    return line.trim().split("\\s*\\|\\s*");
  }

  /**
   * A cell to type into, with the value of the demonstration; a name for formulas; a note. Name and
   * note may be empty.
   */
  public Block input(String label, Field field, Object demo, String name, String note) {
    XSSFCell cell = line(Look.INPUT, label, field, demo, name, note);
    page.validate(
        field,
        label,
        new CellRangeAddress(
            cell.getRowIndex(), cell.getRowIndex(), cell.getColumnIndex(), cell.getColumnIndex()));
    return this;
  }

  /** A cell to choose in, from the list of this name. */
  public Block choose(String label, String list, String demo, String name, String note) {
    XSSFCell cell = line(Look.INPUT, label, Field.TEXT, demo, name, note);
    page.offer(
        list,
        label,
        "Choose from the list.",
        true,
        CellRangeAddress.valueOf(cell.getAddress().formatAsString()));
    return this;
  }

  /** A cell to type an answer into, right or wrong. */
  public Block prompted(String label, Field field, String name, String message) {
    XSSFCell cell = line(Look.INPUT, label, field, null, name, "");
    page.prompt(
        label,
        message,
        new CellRangeAddress(
            cell.getRowIndex(), cell.getRowIndex(), cell.getColumnIndex(), cell.getColumnIndex()));
    return this;
  }

  /** A value that stays as it is. */
  public Block fixed(String label, Field field, Object value, String name) {
    line(Look.RESULT, label, field, value, name, "");
    return this;
  }

  /** A computed cell, likewise. */
  public Block result(String label, Field field, String formula, String name, String note) {
    line(Look.RESULT, label, field, "=" + formula, name, note);
    return this;
  }

  private XSSFCell line(
      Look look, String label, Field field, Object value, String name, String note) {
    int valueColumn = column + labelColumns;
    int noteColumns = columns - labelColumns - 1;
    boolean noted = !note.isEmpty();
    if (noted && noteColumns < 1) {
      throw new IllegalArgumentException("no room for a note beside " + label);
    }
    int rows =
        Math.max(
            rows(label, page.width(column, labelColumns), Look.LABEL),
            noted ? rows(note, page.width(valueColumn + 1, noteColumns), Look.NOTE) : 1);
    page.text(row, column, rows, labelColumns, Look.LABEL, label);
    XSSFCell cell = page.put(row, valueColumn, look, field, false, value);
    if (noted) {
      page.text(row, valueColumn + 1, rows, noteColumns, Look.NOTE, note);
    }
    if (!name.isEmpty()) {
      page.book.name(name, cell, field, look);
    }
    row += rows;
    return cell;
  }

  /** One cell of a line: typed where it has a demonstration value, else computed. */
  public record Entry(Field field, Object demo, String formula, String name, String prompt) {
    public static Entry typed(Field field, Object demo, String name) {
      return new Entry(field, demo, null, name, "");
    }

    /** Takes anything, and says this beside the cell. */
    public static Entry prompted(Field field, String name, String message) {
      return new Entry(field, null, null, name, message);
    }

    public static Entry worked(Field field, String formula, String name) {
      return new Entry(field, null, "=" + formula, name, "");
    }
  }

  /** Headers side by side, the first over the labels; null leaves a place free. */
  public Block headers(String... headers) {
    for (int i = 0; i < headers.length; i++) {
      if (headers[i] == null) {
        continue;
      }
      page.text(
          row,
          i == 0 ? column : column + labelColumns + i - 1,
          1,
          i == 0 ? labelColumns : 1,
          Look.HEADER,
          headers[i]);
    }
    row++;
    return this;
  }

  /** A label and several cells side by side; null leaves a place free. */
  public Block line(String label, Entry... entries) {
    page.text(row, column, 1, labelColumns, Look.LABEL, label);
    for (int i = 0; i < entries.length; i++) {
      Entry entry = entries[i];
      if (entry == null) {
        continue;
      }
      boolean typed = entry.formula() == null;
      XSSFCell cell =
          page.put(
              row,
              column + labelColumns + i,
              typed ? Look.INPUT : Look.RESULT,
              entry.field(),
              false,
              typed ? entry.demo() : entry.formula());
      CellRangeAddress here =
          new CellRangeAddress(row, row, cell.getColumnIndex(), cell.getColumnIndex());
      if (!entry.prompt().isEmpty()) {
        page.prompt(label, entry.prompt(), here);
      } else if (typed) {
        page.validate(entry.field(), label, here);
      }
      if (!entry.name().isEmpty()) {
        page.book.name(entry.name(), cell, entry.field(), typed ? Look.INPUT : Look.RESULT);
      }
    }
    row++;
    return this;
  }

  /** A table with room for this many rows. */
  public Table table(int rows, Table.Column... columns) {
    Table table = new Table(page, row, column, rows, false, columns);
    row = table.bottom();
    return table;
  }

  /** The same, whose formulas go through whole columns of other tables. */
  public Table arrayTable(int rows, Table.Column... columns) {
    Table table = new Table(page, row, column, rows, true, columns);
    row = table.bottom();
    return table;
  }

  /**
   * One formula for as many columns as fields, over some rows; what it does not fill is an error.
   */
  public Block array(int rows, String formula, Field... fields) {
    page.array(row, column, rows, fields.length, Look.RESULT, fields, formula);
    row += rows;
    return this;
  }

  /** A line that leads to another sheet. */
  public Block link(String sheet, String note) {
    XSSFCell cell = page.text(row, column, 1, 1, Look.LABEL, sheet);
    Hyperlink link = page.book.workbook.getCreationHelper().createHyperlink(HyperlinkType.DOCUMENT);
    link.setAddress("'" + sheet + "'!A1");
    cell.setHyperlink(link);
    page.text(row++, column + 1, 1, columns - 1, Look.NOTE, note);
    return this;
  }
}
