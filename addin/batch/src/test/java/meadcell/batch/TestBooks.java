package meadcell.batch;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.ss.util.CellReference;

/** Small workbooks for tests. */
public final class TestBooks {
  private TestBooks() {}

  /** Rows of values from a row on; a text that starts with = is a formula, null is no cell. */
  public static void rows(Sheet sheet, int firstRow, Object[]... rows) {
    for (int i = 0; i < rows.length; i++) {
      for (int j = 0; j < rows[i].length; j++) {
        put(sheet, firstRow + i, j, rows[i][j]);
      }
    }
  }

  private static void put(Sheet sheet, int r, int c, Object value) {
    if (value == null) {
      return;
    }
    Row row = sheet.getRow(r) == null ? sheet.createRow(r) : sheet.getRow(r);
    Cell cell = row.createCell(c);
    if (value instanceof Number number) {
      cell.setCellValue(number.doubleValue());
    } else if (value instanceof Boolean truth) {
      cell.setCellValue(truth);
    } else if (value.toString().startsWith("=")) {
      cell.setCellFormula(value.toString().substring(1));
    } else {
      cell.setCellValue(value.toString());
    }
  }

  public static Object[] row(Object... values) {
    return values;
  }

  public static Path save(Workbook workbook, Path file) throws IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      workbook.write(out);
    }
    return file;
  }

  public static Workbook open(Path file) throws IOException {
    return WorkbookFactory.create(new ByteArrayInputStream(Files.readAllBytes(file)));
  }

  public static Cell cell(Workbook workbook, String sheet, String a1) {
    CellReference place = new CellReference(a1);
    Row row = workbook.getSheet(sheet).getRow(place.getRow());
    return row == null ? null : row.getCell(place.getCol());
  }
}
