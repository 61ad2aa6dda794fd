package meadcell.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * The least that any program over POI does to fill a log: read the workbook, set cells to
 * constants, write it. Arguments: the log, the target, the first row and column, how many columns.
 */
public final class BarePoi {
  private BarePoi() {}

  public static void main(String[] arguments) throws IOException {
    int firstRow = Integer.parseInt(arguments[2]);
    int firstColumn = Integer.parseInt(arguments[3]);
    int columns = Integer.parseInt(arguments[4]);
    try (InputStream in = Files.newInputStream(Path.of(arguments[0]));
        XSSFWorkbook workbook = new XSSFWorkbook(in);
        OutputStream out = Files.newOutputStream(Path.of(arguments[1]))) {
      Sheet sheet = workbook.getSheetAt(0);
      for (int r = firstRow; r <= sheet.getLastRowNum(); r++) {
        Row row = sheet.getRow(r);
        for (int c = firstColumn; c < firstColumn + columns; c++) {
          Cell cell = row.createCell(c);
          cell.setCellStyle(row.getCell(firstColumn - 1).getCellStyle());
          cell.setCellValue(r + c / 10.0);
        }
      }
      workbook.write(out);
    }
  }
}
