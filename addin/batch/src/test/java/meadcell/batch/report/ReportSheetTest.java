package meadcell.batch.report;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.Place;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReportSheetTest {
  private static final String QUESTION = "1.04?";

  @TempDir Path folder;

  /** A log with a clear reading, an unusual one, and two that are none. */
  private static <W extends Workbook> W log(W book) {
    rows(
        book.createSheet("log"),
        0,
        row("SG"),
        row(1.05),
        row("1.06 sg"),
        row(QUESTION),
        row("=A4"));
    return book;
  }

  private static void ods(Path file, String... readings) throws IOException {
    StringBuilder rows = new StringBuilder();
    for (String reading : readings) {
      rows.append("<table:table-row><table:table-cell office:value-type=\"string\"><text:p>")
          .append(reading)
          .append("</text:p></table:table-cell></table:table-row>");
    }
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      part(zip, "mimetype", "application/vnd.oasis.opendocument.spreadsheet");
      part(
          zip,
          "content.xml",
          "<office:document-content"
              + " xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
              + " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\""
              + " xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\">"
              + "<office:automatic-styles/><office:body><office:spreadsheet>"
              + "<table:table table:name=\"log\">"
              + rows
              + "</table:table></office:spreadsheet></office:body></office:document-content>");
      part(
          zip,
          "meta.xml",
          "<office:document-meta xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\">"
              + "<office:meta/></office:document-meta>");
      part(zip, "META-INF/manifest.xml", "<manifest/>");
    }
  }

  private static void part(ZipOutputStream zip, String name, String text) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(text.getBytes(StandardCharsets.UTF_8));
  }

  private Run fill(Path file) throws IOException {
    XSSFWorkbook plan = new XSSFWorkbook();
    rows(plan.createSheet("Fill"), 0, row("Sheet", "Result", "Formula"));
    rows(plan.getSheet("Fill"), 1, row("*", "Brix", "GRAVITY.TOBRIX([SG])"));
    Path planFile = folder.resolve("plan.xlsx");
    if (!Files.exists(planFile)) { // POI writes the time into it
      save(plan, planFile);
    }
    return Run.of(
        "fill", file.toString(), "--plan", planFile.toString(), "--in-place", "--report-sheet");
  }

  private static Book open(Path file) throws Exception {
    return Books.open(Files.readAllBytes(file), file.toString());
  }

  private static String value(BookSheet sheet, int row, int column) {
    return sheet.content(new Place(row, column)).value().toString();
  }

  private static List<String> texts(BookSheet sheet, int row) {
    return java.util.stream.IntStream.range(0, 5).mapToObj(c -> value(sheet, row, c)).toList();
  }

  private void reportsOnce(Path file) throws Exception {
    Run run = fill(file);
    assertEquals(ExitCode.OK, run.code(), run.err());
    byte[] once = Files.readAllBytes(file);
    try (Book book = open(file)) {
      assertEquals(2, book.sheets().size());
      BookSheet sheet = book.sheets().get(1);
      assertEquals("Meadcell report", sheet.name());
      assertEquals(List.of("Sheet", "Cell", "Kind", "Text", "Sentence"), texts(sheet, 2));
      assertEquals("log", value(sheet, 3, 0));
      assertEquals("B4", value(sheet, 3, 1));
      assertEquals("left empty", value(sheet, 3, 2));
      assertTrue(value(sheet, 3, 4).contains(QUESTION));
      long remarks = run.err().lines().count();
      assertEquals(2 + remarks, sheet.lastRow(), run.err());
    }
    Run again = fill(file);
    assertTrue(again.out().contains("no change"), again.out() + again.err());
    assertArrayEquals(once, Files.readAllBytes(file));
  }

  @Test
  void xlsx() throws Exception {
    reportsOnce(save(log(new XSSFWorkbook()), folder.resolve("log.xlsx")));
  }

  @Test
  void xls() throws Exception {
    reportsOnce(save(log(new HSSFWorkbook()), folder.resolve("log.xls")));
  }

  @Test
  void ods() throws Exception {
    Path file = folder.resolve("log.ods");
    ods(file, "SG", "1.05", "1.06 sg", QUESTION);
    reportsOnce(file);
  }

  @Test
  void whatIsSettledLeavesTheReport() throws Exception {
    Path file = save(log(new XSSFWorkbook()), folder.resolve("log.xlsx"));
    fill(file);
    try (Workbook book = meadcell.batch.TestBooks.open(file)) {
      for (int row = 2; row < 5; row++) {
        book.getSheet("log").getRow(row).getCell(0).setCellValue(1.04);
      }
      book.getSheet("log").getRow(4).getCell(0).removeFormula();
      save(book, file);
    }
    Run run = fill(file);
    assertEquals(ExitCode.OK, run.code(), run.err());
    try (Book book = open(file)) {
      BookSheet sheet = book.sheets().get(1);
      assertEquals("Nothing to look at", value(sheet, 3, 0));
      for (int row = 4; row <= sheet.lastRow(); row++) {
        assertTrue(sheet.content(new Place(row, 4)).isBlank());
      }
      assertTrue(sheet.content(new Place(3, 4)).isBlank());
    }
  }

  @Test
  void anotherSheetOfThatNameIsLeftAlone() throws Exception {
    XSSFWorkbook log = log(new XSSFWorkbook());
    rows(log.createSheet("meadcell REPORT"), 0, row("mine"), row("SG"), row(1.1));
    Path file = save(log, folder.resolve("log.xlsx"));
    Run run = fill(file);
    assertTrue(run.err().contains("of someone else is there"), run.err());
    try (Book book = open(file)) {
      assertEquals(2, book.sheets().size());
      assertEquals("mine", value(book.sheets().get(1), 0, 0));
      assertTrue(book.sheets().get(1).content(new Place(2, 1)).isBlank(), "no part of the log");
    }
  }
}
