package meadcell.samples.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTDxf;

/** One sheet under construction. Blocks are laid on it, side by side or one under another. */
public final class Page {
  final Book book;
  final XSSFSheet sheet;
  private final int[] widths;
  private final Map<String, List<CellRangeAddress>> unitFormats = new LinkedHashMap<>();
  private final List<Runnable> charts = new ArrayList<>();
  private int frozenRows;

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
    cell.setCellStyle(book.styles.of(look, format, !field.isNumber()));
    book.fields.put(cell, field);
    if (!inTable && field.isDimensional()) {
      unitFormats
          .computeIfAbsent(field.withUnit(UnitSystem.US), f -> new ArrayList<>())
          .add(new CellRangeAddress(row, row, column, column));
    }
    if (value instanceof Number number && field.isDimensional()) {
      book.later(() -> cell.setCellFormula(field.following(number.doubleValue())));
    } else if (value instanceof Number number) {
      cell.setCellValue(number.doubleValue());
    } else if (value instanceof java.time.LocalDate date) {
      cell.setCellValue(date);
    } else if (value instanceof String text && text.startsWith("=")) {
      book.later(() -> cell.setCellFormula(text.substring(1)));
    } else if (value instanceof String text) {
      cell.setCellValue(text);
    }
    return cell;
  }

  XSSFCell text(int row, int column, int rows, int columns, Look look, String text) {
    for (int r = row; r < row + rows; r++) {
      for (int c = column; c < column + columns; c++) {
        cell(r, c).setCellStyle(book.styles.of(look, "General", true));
      }
    }
    if (rows * columns > 1) {
      sheet.addMergedRegion(
          new CellRangeAddress(row, row + rows - 1, column, column + columns - 1));
    }
    XSSFCell cell = cell(row, column);
    if (text.startsWith("=")) {
      book.later(() -> cell.setCellFormula(text.substring(1)));
    } else {
      cell.setCellValue(text);
    }
    return cell;
  }

  /** Says at the cell what it takes, and holds the typist to it. */
  void validate(Field field, String title, CellRangeAddress where) {
    DataValidationHelper helper = sheet.getDataValidationHelper();
    DataValidationConstraint constraint;
    String message = field.help();
    if (!field.words().isEmpty()) {
      constraint = helper.createExplicitListConstraint(field.words().toArray(String[]::new));
      message = message.isEmpty() ? "One of: " + String.join(", ", field.words()) + "." : message;
    } else if (Double.isFinite(field.from()) && Double.isFinite(field.to())) {
      constraint =
          helper.createDecimalConstraint(
              OperatorType.BETWEEN, field.following(field.from()), field.following(field.to()));
    } else if (Double.isFinite(field.from())) {
      constraint =
          helper.createDecimalConstraint(
              OperatorType.GREATER_OR_EQUAL, field.following(field.from()), null);
    } else if (field.quantity() == meadcell.catalogue.Quantity.DATE) {
      constraint =
          helper.createDateConstraint(
              OperatorType.GREATER_OR_EQUAL, "DATE(1990,1,1)", null, "yyyy-mm-dd");
      message = "A date.";
    } else {
      return;
    }
    guard(constraint, title, message, where);
  }

  /** Says at the cell what it takes, and takes anything. */
  void prompt(String title, String message, CellRangeAddress where) {
    guard(sheet.getDataValidationHelper().createCustomConstraint("TRUE"), title, message, where);
  }

  private void guard(
      DataValidationConstraint constraint, String title, String message, CellRangeAddress where) {
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
    validation.setShowPromptBox(true);
    validation.createPromptBox(shortened(title, 32), shortened(message, 250));
    validation.setShowErrorBox(true);
    validation.createErrorBox("Please check", shortened(title + ": " + message, 220));
    sheet.addValidationData(validation);
  }

  private static String shortened(String text, int most) {
    return text.length() <= most ? text : text.substring(0, most - 1) + "…";
  }

  void finish() {
    charts.forEach(Runnable::run);
    unitFormats.forEach(this::switchFormat);
    int lastRow = Math.max(sheet.getLastRowNum(), Chart.lastRow(sheet));
    book.workbook.setPrintArea(
        book.workbook.getSheetIndex(sheet), 0, widths.length - 1, 0, lastRow);
    sheet.createFreezePane(0, frozenRows);
    sheet.setRepeatingRows(new CellRangeAddress(0, frozenRows - 1, -1, -1));
    sheet.setFitToPage(true);
    sheet.getPrintSetup().setPaperSize(PaperSize.A4_PAPER);
    sheet.getPrintSetup().setLandscape(width(0, widths.length) > 125);
    sheet.getPrintSetup().setFitWidth((short) 1);
    sheet.getPrintSetup().setFitHeight((short) 0);
    sheet.setHorizontallyCenter(true);
    for (PageMargin margin : List.of(PageMargin.LEFT, PageMargin.RIGHT)) {
      sheet.setMargin(margin, 0.5);
    }
    sheet.getFooter().setLeft("Tarn Hollow is invented");
    sheet.getFooter().setCenter("&A");
    sheet.getFooter().setRight("&P / &N");
    sheet.enableLocking();
    sheet.lockFormatColumns(false);
    sheet.lockFormatRows(false);
  }

  /** Number formats cannot ask a cell for the unit; a condition on the switch can. */
  private void switchFormat(String format, List<CellRangeAddress> cells) {
    CTDxf change = CTDxf.Factory.newInstance();
    change.addNewNumFmt().setFormatCode(format);
    change.getNumFmt().setNumFmtId(book.workbook.createDataFormat().getFormat(format));
    int id = book.workbook.getStylesSource().putDxf(change) - 1;
    XSSFConditionalFormattingRule rule =
        sheet.getSheetConditionalFormatting().createConditionalFormattingRule("units=\"US\"");
    int index =
        sheet
            .getSheetConditionalFormatting()
            .addConditionalFormatting(cells.toArray(CellRangeAddress[]::new), rule);
    sheet.getCTWorksheet().getConditionalFormattingArray(index).getCfRuleArray(0).setDxfId(id);
  }
}
