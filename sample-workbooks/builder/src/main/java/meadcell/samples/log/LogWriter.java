package meadcell.samples.log;

import java.time.LocalDate;
import java.util.Date;
import java.util.Optional;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Writes sheets of a log from top to bottom. */
final class LogWriter {
  private final XSSFWorkbook workbook = new XSSFWorkbook();
  private final CellStyle title = workbook.createCellStyle();
  private final CellStyle label = workbook.createCellStyle();
  private final CellStyle header = workbook.createCellStyle();
  private final CellStyle date = workbook.createCellStyle();
  private final CellStyle wrapped = workbook.createCellStyle();
  private Sheet sheet;
  private int next;

  LogWriter() {
    Font large = workbook.createFont();
    large.setBold(true);
    large.setFontHeightInPoints((short) 14);
    title.setFont(large);
    Font bold = workbook.createFont();
    bold.setBold(true);
    label.setFont(bold);
    header.setFont(bold);
    header.setBorderBottom(BorderStyle.THIN);
    header.setFillForegroundColor(IndexedColors.LEMON_CHIFFON.getIndex());
    header.setFillPattern(FillPatternType.SOLID_FOREGROUND);
    header.setWrapText(true);
    date.setDataFormat(workbook.createDataFormat().getFormat("yyyy-mm-dd"));
    wrapped.setWrapText(true);
  }

  void sheet(String name, int... columnWidths) {
    sheet = workbook.createSheet(name);
    next = 0;
    for (int column = 0; column < columnWidths.length; column++) {
      sheet.setColumnWidth(column, columnWidths[column] * 256);
    }
  }

  void title(String text) {
    Row row = sheet.createRow(next++);
    row.createCell(0).setCellValue(text);
    row.getCell(0).setCellStyle(title);
    sheet.addMergedRegion(new CellRangeAddress(row.getRowNum(), row.getRowNum(), 0, 3));
  }

  void blank() {
    next++;
  }

  void label(String text, Object value) {
    Row row = sheet.createRow(next++);
    put(row, 0, text);
    row.getCell(0).setCellStyle(label);
    put(row, 1, value);
  }

  void header(String... texts) {
    Row row = sheet.createRow(next++);
    for (int column = 0; column < texts.length; column++) {
      put(row, column, texts[column]);
      row.getCell(column).setCellStyle(header);
    }
  }

  void row(Object... values) {
    Row row = sheet.createRow(next++);
    for (int column = 0; column < values.length; column++) {
      put(row, column, values[column]);
    }
  }

  void wrapped(int column) {
    sheet.getRow(next - 1).getCell(column).setCellStyle(wrapped);
  }

  private void put(Row row, int column, Object value) {
    if (value == null) {
      return;
    }
    Cell cell = row.createCell(column);
    if (value instanceof Double number) {
      cell.setCellValue(number);
    } else if (value instanceof LocalDate day) {
      cell.setCellValue(day);
      cell.setCellStyle(date);
    } else {
      cell.setCellValue(value.toString());
    }
  }

  /** The workbook under a title. */
  @SuppressWarnings("JavaUtilDate") // what POI asks for
  XSSFWorkbook workbook(String title) {
    var properties = workbook.getProperties().getCoreProperties();
    properties.setTitle(title);
    properties.setCreator("Meadcell");
    properties.setCreated(Optional.of(new Date(0)));
    return workbook;
  }
}
