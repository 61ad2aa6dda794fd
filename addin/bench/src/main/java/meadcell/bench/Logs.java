package meadcell.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Invented logs of an invented cellar, and a plan of six results for them. */
final class Logs {
  static final int FIRST_ROW = 4;
  static final int COLUMNS = 7;
  static final int RESULTS = 6;

  private static final List<String> HEADERS =
      List.of("Date", "SG", "Temp", "Dip (cm)", "pH", "Free SO2", "Remark");

  private Logs() {}

  private static void row(Sheet sheet, int index, List<?> cells) {
    Row row = sheet.createRow(index);
    for (int i = 0; i < cells.size(); i++) {
      if (cells.get(i) instanceof Number number) {
        row.createCell(i).setCellValue(number.doubleValue());
      } else {
        row.createCell(i).setCellValue((String) cells.get(i));
      }
    }
  }

  /** A cask's log with so many readings. */
  static void write(Path file, int rows) throws IOException {
    try (Workbook book = new XSSFWorkbook()) {
      Sheet sheet = book.createSheet("Log");
      CellStyle day = book.createCellStyle();
      day.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
      row(sheet, 0, List.of("Tarn Hollow, an invented cellar"));
      row(sheet, 1, List.of("OG", 1.105, "Head (cm)", 50, "Bilge (cm)", 64, "Length (cm)", 80));
      row(sheet, FIRST_ROW - 1, HEADERS);
      for (int i = 0; i < rows; i++) {
        double part = (double) i / rows;
        List<Object> cells =
            List.of(
                44000 + i,
                Math.round(1e4 * (1.1 - 0.085 * part)) / 1e4,
                14 + i % 9,
                60 - 20 * part,
                3.4 + i % 7 / 10.0,
                20 + i % 21,
                i % 10 == 0 ? "racked, " + i : "as before");
        row(sheet, FIRST_ROW + i, cells);
        sheet.getRow(FIRST_ROW + i).getCell(0).setCellStyle(day);
      }
      store(book, file);
    }
  }

  static void writePlan(Path file) throws IOException {
    try (Workbook book = new XSSFWorkbook()) {
      Sheet sheet = book.createSheet("Fill");
      row(sheet, 0, List.of("Sheet", "Result", "Formula"));
      row(sheet, 1, List.of("*", "True SG", "GRAVITY.CORRECT([SG]; [Temp])"));
      row(sheet, 2, List.of("*", "ABV", "ALCOHOL.ABV({OG}; [True SG])"));
      row(sheet, 3, List.of("*", "Brix", "GRAVITY.TOBRIX([True SG])"));
      row(
          sheet,
          4,
          List.of("*", "Contents (L)", "BARREL.CONTENTS({Head}; {Bilge}; {Length}; [Dip])"));
      row(sheet, 5, List.of("*", "Molecular", "SULFITE.MOLECULAR([Free SO2]; [pH])"));
      row(sheet, 6, List.of("*", "Fermented", "FERMENT.PROGRESS({OG}; [True SG])"));
      store(book, file);
    }
  }

  /** Makes every result of a filled log stale. */
  static void changeOriginalGravity(Path file) throws IOException {
    try (Workbook book = new XSSFWorkbook(Files.newInputStream(file))) {
      book.getSheetAt(0).getRow(1).getCell(1).setCellValue(1.11);
      store(book, file);
    }
  }

  private static void store(Workbook book, Path file) throws IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      book.write(out);
    }
  }
}
