package meadcell.samples;

import com.sun.star.sheet.XCellRangeData;
import com.sun.star.sheet.XSpreadsheetDocument;
import java.nio.file.Files;
import java.nio.file.Path;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.Workbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** What an office with the extension computes, stored with the formulas of a workbook. */
final class Computed {
  private Computed() {}

  /** Opens the workbook in the office, and stores beside each formula what it shows there. */
  static void store(XSSFWorkbook book, RemoteOffice office) throws Exception {
    Path source = office.home().resolve("drafted.xlsx");
    Files.write(source, Build.xlsx(book));
    try (Workbook computed = office.open(source.toUri().toString(), true)) {
      computed.recalculate();
      for (Sheet sheet : book) {
        store(sheet, values(computed, sheet));
      }
    }
  }

  private static Object[][] values(Workbook computed, Sheet sheet) throws Exception {
    int columns = 1;
    for (Row row : sheet) {
      columns = Math.max(columns, row.getLastCellNum());
    }
    return RemoteOffice.as(
            XCellRangeData.class,
            RemoteOffice.as(
                    com.sun.star.sheet.XSpreadsheet.class,
                    RemoteOffice.as(XSpreadsheetDocument.class, computed.document())
                        .getSheets()
                        .getByName(sheet.getSheetName()))
                .getCellRangeByPosition(0, 0, columns - 1, sheet.getLastRowNum()))
        .getDataArray();
  }

  private static void store(Sheet sheet, Object[][] values) {
    for (Row row : sheet) {
      for (Cell cell : row) {
        if (cell.getCellType() == CellType.FORMULA) {
          Object value = values[cell.getRowIndex()][cell.getColumnIndex()];
          if (value instanceof Double number) {
            cell.setCellValue(number);
          } else if (value instanceof String text) {
            cell.setCellValue(text);
          } else {
            cell.setCellErrorValue(FormulaError.NA.getCode());
          }
        }
      }
    }
  }
}
