package meadcell.samples;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The files as they are checked in, and what their cells hold. */
final class Samples {
  private Samples() {}

  static Stream<String> names() {
    return Build.BOOKS.keySet().stream();
  }

  static Path file(String name, String ending) {
    return Path.of("..", name + "." + ending).toAbsolutePath().normalize();
  }

  static XSSFWorkbook open(String name) throws IOException {
    try (InputStream in = Files.newInputStream(file(name, "xlsx"))) {
      return new XSSFWorkbook(in);
    }
  }

  /** The cell of a workbook-wide name. */
  static Cell named(Workbook book, String name) {
    CellReference at = new CellReference(book.getName(name).getRefersToFormula());
    return book.getSheet(at.getSheetName()).getRow(at.getRow()).getCell(at.getCol());
  }

  /** Number or text that a cell shows, or null: typed, or stored with its formula. */
  static Object value(Cell cell) {
    CellType type =
        cell.getCellType() == CellType.FORMULA
            ? cell.getCachedFormulaResultType()
            : cell.getCellType();
    return switch (type) {
      case NUMERIC -> cell.getNumericCellValue();
      case STRING -> cell.getStringCellValue();
      case ERROR -> "error " + cell.getErrorCellValue();
      default -> null;
    };
  }

  /** Every cell's formula, value and number format, by sheet and address. */
  static Map<String, String> cells(Workbook book) {
    Map<String, String> cells = new TreeMap<>();
    for (Sheet sheet : book) {
      for (Row row : sheet) {
        for (Cell cell : row) {
          String formula = cell.getCellType() == CellType.FORMULA ? cell.getCellFormula() : "";
          cells.put(
              sheet.getSheetName() + "!" + cell.getAddress(),
              formula + " | " + value(cell) + " | " + cell.getCellStyle().getDataFormatString());
        }
      }
    }
    return cells;
  }
}
