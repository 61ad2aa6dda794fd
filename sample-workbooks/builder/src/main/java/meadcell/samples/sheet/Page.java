package meadcell.samples.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.UnitSystem;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint;
import org.apache.poi.ss.usermodel.DataValidationConstraint.OperatorType;
import org.apache.poi.ss.usermodel.DataValidationHelper;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PaperSize;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFConditionalFormattingRule;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFSheetConditionalFormatting;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTDxf;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTFont;

/** One sheet under construction. Blocks are laid on it, side by side or one under another. */
public final class Page {
  /** A number format for US units, and the name of the cell that switches to it. */
  private record Switched(String system, String format) {}

  /** Instead of an error box's style. */
  private static final int NO_BOX = -1;

  /** How much of a column a bold word may fill, on paper too. */
  private static final double WORD = 0.8;

  final Book book;
  final XSSFSheet sheet;
  private final int[] widths;
  private final Map<Switched, List<CellRangeAddress>> unitFormats = new LinkedHashMap<>();
  private final List<Runnable> charts = new ArrayList<>();
  private int frozenRows;
  private boolean open;
  private int sheetsOfPaper;
  private boolean veiled;
  private boolean upright;
  private int repeatedRow = -1;
  private int printedRows;
  private int printedColumns;

  Page(Book book, String title, int... widths) {
    this.book = book;
    this.sheet = book.workbook.createSheet(title);
    this.widths = widths.clone();
    for (int i = 0; i < widths.length; i++) {
      sheet.setColumnWidth(i, widths[i] * 256);
    }
    sheet.setDisplayGridlines(false);
  }

  /** The sheet's head: a title and a sentence over all columns. Gives the block below it. */
  public Block head(String title, String lead) {
    Block block = at(0, 0, widths.length).head(title, lead);
    freeze(block.row());
    return block;
  }

  /** A block with its top left corner here (counted from 0), this many columns wide. */
  public Block at(int row, int column, int columns) {
    return new Block(this, row, column, columns);
  }

  /** Keeps the rows above this one on the screen, and repeats them on paper. */
  public void freeze(int rows) {
    frozenRows = rows;
  }

  /** Leaves the whole sheet to the typist. */
  Page open() {
    open = true;
    sheet.setDisplayGridlines(true);
    sheet.setPrintGridlines(true);
    return this;
  }

  /**
   * A table that fills the sheet down to this row: its header stays, on screen and on paper. What
   * stands beside these columns would print all of its empty rows.
   */
  void frame(int firstRow, int rows, int columns) {
    printedColumns = columns;
    frozenRows = firstRow;
    repeatedRow = firstRow - 1;
    printedRows = rows;
  }

  /** Shows what its formulas give, not how. */
  public Page veiled() {
    veiled = true;
    return this;
  }

  /** Prints all of it on so many sheets of paper. */
  public Page onSheets(int most) {
    sheetsOfPaper = most;
    return this;
  }

  /** Prints it upright, however wide it is. */
  public Page upright() {
    upright = true;
    return this;
  }

  /** Prints the rows above this one only (counted from 0). */
  public void prints(int rows) {
    printedRows = rows - 1;
  }

  /** Lets a new sheet of paper begin with this row (counted from 0). */
  public void turn(int row) {
    sheet.setRowBreak(row - 1);
  }

  /** A chart, drawn when all numbers are there. */
  public void chart(Chart chart) {
    charts.add(() -> chart.draw(sheet));
  }

  int width(int column, int columns) {
    int width = 0;
    for (int c = column; c < column + columns; c++) {
      width += widths[c];
    }
    return width;
  }

  XSSFCell cell(int row, int column) {
    XSSFRow existing = sheet.getRow(row);
    XSSFRow r = existing == null ? sheet.createRow(row) : existing;
    XSSFCell cell = r.getCell(column);
    return cell == null ? r.createCell(column) : cell;
  }

  XSSFCell put(int row, int column, Look look, Field field, boolean inTable, Object value) {
    XSSFCell cell = cell(row, column);
    String format = inTable ? field.plain() : field.withUnit(UnitSystem.METRIC);
    cell.setCellStyle(book.styles.of(look, format, !field.isNumber(), veiled));
    book.fields.put(cell, field);
    if (field.isDimensional() && !(inTable && field.fine().equals(field))) {
      String us = inTable ? field.fine().plain() : field.fine().withUnit(UnitSystem.US);
      String system = book.isKeeping() && look != Look.RESULT ? "kept" : "units";
      unitFormats
          .computeIfAbsent(new Switched(system, us), f -> new ArrayList<>())
          .add(new CellRangeAddress(row, row, column, column));
    }
    if (value instanceof Number number && field.isDimensional() && !book.isKeeping()) {
      book.later(() -> Book.formula(cell, field.following(number.doubleValue())));
    } else if (value instanceof Number number) {
      cell.setCellValue(number.doubleValue());
    } else if (value instanceof java.time.LocalDate date) {
      cell.setCellValue(date);
    } else if (value instanceof String text && text.startsWith("=")) {
      book.later(() -> Book.formula(cell, text.substring(1)));
    } else if (value instanceof String text) {
      cell.setCellValue(text);
    }
    return cell;
  }

  XSSFCell text(int row, int column, int rows, int columns, Look look, String text) {
    if (look == Look.HEADER) {
      refuseBrokenWords(text, width(column, columns));
    }
    for (int r = row; r < row + rows; r++) {
      for (int c = column; c < column + columns; c++) {
        cell(r, c).setCellStyle(book.styles.of(look, "General", true, veiled));
      }
    }
    if (rows * columns > 1) {
      sheet.addMergedRegion(
          new CellRangeAddress(row, row + rows - 1, column, column + columns - 1));
    }
    XSSFCell cell = cell(row, column);
    if (text.startsWith("=")) {
      book.later(() -> Book.formula(cell, text.substring(1)));
    } else {
      cell.setCellValue(text);
    }
    return cell;
  }

  /** A word of a header that is wider than its column would be broken in two. */
  private static void refuseBrokenWords(String header, int width) {
    for (String word : header.split(" ")) {
      if (word.length() > WORD * width) {
        throw new IllegalArgumentException(
            "\"" + word + "\" is too wide for a column of " + width + " characters");
      }
    }
  }

  /** Says at the cell what it takes, and holds the typist to it. */
  void validate(Field field, String title, CellRangeAddress where) {
    DataValidationHelper helper = sheet.getDataValidationHelper();
    if (!field.words().isEmpty()) {
      String words = book.oneOf + " " + String.join(", ", field.words()) + ".";
      guard(
          helper.createExplicitListConstraint(field.words().toArray(String[]::new)),
          title,
          field.help().isEmpty() ? words : field.help(),
          where);
    } else if (field.quantity() == Quantity.DATE) {
      ask(
          open
              ? helper.createDateConstraint(
                  OperatorType.BETWEEN, "DATE(1990,1,1)", "TODAY()+1", "yyyy-mm-dd")
              : helper.createDateConstraint(
                  OperatorType.GREATER_OR_EQUAL, "DATE(1990,1,1)", null, "yyyy-mm-dd"),
          title,
          "",
          open ? "A day not after today, such as 2026-03-04." : "A day such as 2026-03-04.",
          where);
    } else if (field.isNumber()) {
      ask(number(helper, field), title, field.help(), NUMBER + notBelow(field), where);
    }
  }

  private static final String NUMBER =
      "A number without its unit, with the decimal mark of your spreadsheet";

  private static String notBelow(Field field) {
    return field.from() >= 0 ? ", not below 0." : ".";
  }

  private DataValidationConstraint number(DataValidationHelper helper, Field field) {
    return helper.createDecimalConstraint(
        OperatorType.BETWEEN, limit(field, field.from()), limit(field, field.to()));
  }

  private String limit(Field field, double metric) {
    if (Double.isInfinite(metric)) {
      return metric < 0 ? "-1E+99" : "1E+99";
    }
    return book.isKeeping() ? field.kept(metric) : field.following(metric);
  }

  /** Asks whether what it does not expect shall stay: an office takes no formula for a number. */
  private void ask(
      DataValidationConstraint constraint,
      String title,
      String help,
      String kind,
      CellRangeAddress where) {
    guard(
        constraint,
        title,
        help.isEmpty() ? kind : help,
        title + ": " + kind + (help.isEmpty() ? "" : " " + help) + KEEP,
        DataValidation.ErrorStyle.WARNING,
        where);
  }

  private static final String KEEP = "\nIs it a formula? Choose OK, and it stays.";

  /** Offers the values of a list, whose name this is. */
  void offer(String list, String title, String message, boolean strictly, CellRangeAddress where) {
    guard(
        sheet.getDataValidationHelper().createFormulaListConstraint(list),
        title,
        message,
        title + ": " + message,
        strictly ? DataValidation.ErrorStyle.STOP : DataValidation.ErrorStyle.WARNING,
        where);
  }

  /**
   * Says at the cell what it takes, and takes anything. An office asks no formula whether it is
   * valid, but refuses it wherever a cell may answer with an error box.
   */
  void prompt(String title, String message, CellRangeAddress where) {
    guard(
        sheet.getDataValidationHelper().createCustomConstraint("TRUE"),
        title,
        message,
        "",
        NO_BOX,
        where);
  }

  private void guard(
      DataValidationConstraint constraint, String title, String message, CellRangeAddress where) {
    guard(
        constraint, title, message, title + ": " + message, DataValidation.ErrorStyle.STOP, where);
  }

  private void guard(
      DataValidationConstraint constraint,
      String title,
      String message,
      String error,
      int style,
      CellRangeAddress where) {
    DataValidation validation =
        sheet
            .getDataValidationHelper()
            .createValidation(
                constraint,
                new CellRangeAddressList(
                    where.getFirstRow(),
                    where.getLastRow(),
                    where.getFirstColumn(),
                    where.getLastColumn()));
    validation.setEmptyCellAllowed(true);
    validation.setSuppressDropDownArrow(true);
    if (!message.isEmpty()) {
      validation.setShowPromptBox(true);
      validation.createPromptBox(shortened(title, 32), shortened(message, 250));
    }
    validation.setShowErrorBox(style != NO_BOX);
    validation.setErrorStyle(Math.max(style, DataValidation.ErrorStyle.STOP));
    validation.createErrorBox(book.check, shortened(error, 250));
    sheet.addValidationData(validation);
  }

  private static String shortened(String text, int most) {
    return text.length() <= most ? text : text.substring(0, most - 1) + "…";
  }

  void finish() {
    charts.forEach(Runnable::run);
    unitFormats.forEach(this::switchFormat);
    int lastRow =
        printedRows > 0 ? printedRows : Math.max(sheet.getLastRowNum(), Chart.lastRow(sheet));
    int lastColumn = (open ? printedColumns : widths.length) - 1;
    book.workbook.setPrintArea(book.workbook.getSheetIndex(sheet), 0, lastColumn, 0, lastRow);
    sheet.createFreezePane(open ? 1 : 0, frozenRows);
    if (repeatedRow >= 0) {
      sheet.setRepeatingRows(new CellRangeAddress(repeatedRow, repeatedRow, -1, -1));
    }
    sheet.setFitToPage(true);
    sheet.getPrintSetup().setFitWidth((short) 1);
    sheet.getPrintSetup().setFitHeight((short) sheetsOfPaper);
    sheet.setHorizontallyCenter(true);
    paper(!upright && width(0, widths.length) > 125);
    sheet.getFooter().setLeft("&F");
    sheet.getFooter().setCenter("&A");
    sheet.getFooter().setRight("&P / &N");
    if (!open) {
      sheet.enableLocking();
      sheet.lockFormatColumns(false);
      sheet.lockFormatRows(false);
    }
  }

  /**
   * A4, with margins on its long side that leave a whole page of it on US Letter too, which is 0.69
   * in shorter.
   */
  private void paper(boolean landscape) {
    sheet.getPrintSetup().setPaperSize(PaperSize.A4_PAPER);
    sheet.getPrintSetup().setLandscape(landscape);
    double side = landscape ? 0.85 : 0.5;
    sheet.setMargin(PageMargin.LEFT, side);
    sheet.setMargin(PageMargin.RIGHT, side);
    sheet.setMargin(PageMargin.TOP, landscape ? 0.5 : 0.85);
    sheet.setMargin(PageMargin.BOTTOM, landscape ? 0.75 : 1.0);
    sheet.setMargin(PageMargin.FOOTER, landscape ? 0.35 : 0.6);
  }

  /** A formula that goes through whole columns, in one cell. */
  void array(int row, int column, String formula) {
    book.later(
        () ->
            sheet.setArrayFormula(
                Book.prefixed(formula), new CellRangeAddress(row, row, column, column)));
  }

  /** A formula over several cells at once (counted from 0). */
  public void array(
      int row, int column, int rows, int columns, Look look, Field[] fields, String formula) {
    for (int r = row; r < row + rows; r++) {
      for (int c = 0; c < columns; c++) {
        put(r, column + c, look, fields[c], true, null);
      }
    }
    CellRangeAddress cells =
        new CellRangeAddress(row, row + rows - 1, column, column + columns - 1);
    book.later(() -> sheet.setArrayFormula(Book.prefixed(formula), cells));
  }

  /** Has cells stand out where a condition holds; words elsewhere say why. */
  void mark(CellRangeAddress cells, String condition) {
    CTDxf look = CTDxf.Factory.newInstance();
    CTFont font = look.addNewFont();
    font.addNewB();
    font.addNewI();
    font.addNewColor().setRgb(Styles.color(Look.WARNING.ink).getARGB());
    look.addNewFill()
        .addNewPatternFill()
        .addNewBgColor()
        .setRgb(Styles.color(Look.WARNING.fill).getARGB());
    when(condition, look, cells);
  }

  /** Number formats cannot ask a cell for the unit; a condition on the switch can. */
  private void switchFormat(Switched to, List<CellRangeAddress> cells) {
    String format = to.format();
    CTDxf look = CTDxf.Factory.newInstance();
    look.addNewNumFmt().setFormatCode(format);
    look.getNumFmt().setNumFmtId(book.workbook.createDataFormat().getFormat(format));
    when(to.system() + "=\"US\"", look, cells.toArray(CellRangeAddress[]::new));
  }

  private void when(String condition, CTDxf look, CellRangeAddress... cells) {
    int id = book.workbook.getStylesSource().putDxf(look) - 1;
    XSSFSheetConditionalFormatting all = sheet.getSheetConditionalFormatting();
    XSSFConditionalFormattingRule rule = all.createConditionalFormattingRule(condition);
    int index = all.addConditionalFormatting(cells, rule);
    sheet.getCTWorksheet().getConditionalFormattingArray(index).getCfRuleArray(0).setDxfId(id);
  }
}
