package meadcell.batch.book.ods;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.TestBooks;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Packages;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.cellar.Cellar;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OdsBookTest {
  private static final String HEAD =
      "<office:document-content"
          + " xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
          + " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\""
          + " xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\""
          + " xmlns:style=\"urn:oasis:names:tc:opendocument:xmlns:style:1.0\""
          + " xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
          + " xmlns:calcext=\"urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0\">"
          + "<office:automatic-styles/><office:body><office:spreadsheet>";
  private static final String TAIL =
      "</office:spreadsheet></office:body></office:document-content>";
  private static final String META =
      "<office:document-meta xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\">"
          + "<office:meta/></office:document-meta>";

  @TempDir Path folder;

  private static String number(double value) {
    return "<table:table-cell office:value-type=\"float\" office:value=\""
        + value
        + "\">"
        + "<text:p>"
        + value
        + "</text:p></table:table-cell>";
  }

  private static String text(String text) {
    return "<table:table-cell office:value-type=\"string\"><text:p>"
        + text
        + "</text:p></table:table-cell>";
  }

  private static byte[] ods(String tables) throws Exception {
    Map<String, String> parts = new LinkedHashMap<>();
    parts.put("mimetype", "application/vnd.oasis.opendocument.spreadsheet");
    parts.put("content.xml", HEAD + tables + TAIL);
    parts.put("meta.xml", META);
    parts.put("Pictures/cellar.png", "not really a picture");
    parts.put("META-INF/manifest.xml", "<manifest/>");
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, String> part : parts.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
      }
    }
    return bytes.toByteArray();
  }

  private static Book open(byte[] bytes) throws FileRefused {
    return Books.open(bytes, "log.ods");
  }

  private static byte[] saved(Book book) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    book.write(out);
    return out.toByteArray();
  }

  @Test
  void readsEveryKindOfValue() throws Exception {
    Book book =
        open(
            ods(
                "<table:table table:name=\"a\"><table:table-row>"
                    + number(1.5)
                    + text("1.085 sg")
                    + "<table:table-cell office:value-type=\"percentage\" office:value=\"0.172\"/>"
                    + "<table:table-cell office:value-type=\"date\" office:date-value=\"2022-10-03\"/>"
                    + "<table:table-cell office:value-type=\"boolean\" office:boolean-value=\"true\"/>"
                    + "<table:table-cell table:formula=\"of:=[.A1]*2\" office:value-type=\"float\""
                    + " office:value=\"3\"><text:p>3</text:p></table:table-cell>"
                    + "<table:table-cell office:value-type=\"string\""
                    + " calcext:value-type=\"error\"><text:p>#N/A</text:p></table:table-cell>"
                    + "</table:table-row></table:table>"));
    BookSheet sheet = book.sheets().get(0);
    assertEquals(Value.of(1.5), sheet.content(new Place(0, 0)).value());
    assertEquals("1.085 sg", sheet.content(new Place(0, 1)).typedText());
    assertEquals(CellContent.Look.PERCENT, sheet.content(new Place(0, 2)).look());
    assertEquals(Value.of(44837), sheet.content(new Place(0, 3)).value());
    assertEquals(Value.of(true), sheet.content(new Place(0, 4)).value());
    assertEquals("A1*2", sheet.content(new Place(0, 5)).formula());
    assertEquals(new Value.Error("#N/A"), sheet.content(new Place(0, 6)).value());
    assertEquals(CellContent.BLANK, sheet.content(new Place(7, 9)));
  }

  @Test
  void changingOneOfManyEqualCellsLeavesTheOthers() throws Exception {
    Book book =
        open(
            ods(
                "<table:table table:name=\"a\">"
                    + "<table:table-row table:number-rows-repeated=\"10\">"
                    + number(1)
                        .replace("table-cell ", "table-cell table:number-columns-repeated=\"5\" ")
                    + "</table:table-row></table:table>"));
    book.sheets().get(0).putValue(new Place(4, 2), Value.of(7));
    book.sheets().get(0).putValue(new Place(12, 8), Value.of(8));
    BookSheet again = open(saved(book)).sheets().get(0);
    for (int row = 0; row < 10; row++) {
      for (int column = 0; column < 5; column++) {
        Value expected = Value.of(row == 4 && column == 2 ? 7 : 1);
        assertEquals(expected, again.content(new Place(row, column)).value(), row + "," + column);
      }
    }
    assertEquals(Value.of(8), again.content(new Place(12, 8)).value());
    assertEquals(12, again.lastRow());
  }

  @Test
  void fillsLikeAnyOtherWorkbookAndLeavesOtherPartsAlone() throws Exception {
    String row = "<table:table-row>";
    byte[] before =
        ods(
            "<table:table table:name=\"HH-22\">"
                + row
                + text("OG")
                + number(1.1)
                + "</table:table-row>"
                + "<table:table-row/>"
                + row
                + text("SG")
                + text("Temp (°C)")
                + "</table:table-row>"
                + row
                + number(1.05)
                + number(18)
                + "</table:table-row>"
                + row
                + text("1.04?")
                + number(18)
                + "</table:table-row>"
                + "</table:table>");
    Path log = folder.resolve("log.ods");
    Files.write(log, before);
    XSSFWorkbook plan = new XSSFWorkbook();
    TestBooks.rows(
        plan.createSheet("Fill"),
        0,
        TestBooks.row("Sheet", "Result", "Formula", "Format"),
        TestBooks.row("*", "True SG", "GRAVITY.CORRECT([SG]; [Temp]; ; {OG})", "0.000"));
    Path planFile = TestBooks.save(plan, folder.resolve("plan.xlsx"));
    String[] fill = {"fill", log.toString(), "--plan", planFile.toString(), "--in-place"};
    Run run = Run.of(fill);
    assertEquals(ExitCode.OK, run.code(), run.err());
    byte[] after = Files.readAllBytes(log);
    BookSheet sheet = open(after).sheets().get(0);
    CellContent result = sheet.content(new Place(3, 2));
    assertEquals("GRAVITY.CORRECT(A4, B4, , $B$1)", result.formula());
    Object expected = Cellar.catalogue().get("GRAVITY.CORRECT").call(1.05, 18.0, null, 1.1);
    assertEquals(Value.of((Double) expected), result.value());
    assertTrue(sheet.content(new Place(4, 2)).isBlank());
    assertTrue(sheet.note(new Place(4, 2)).orElseThrow().text().contains("1.04?"));
    Map<String, byte[]> partsBefore = Packages.parts(before);
    Map<String, byte[]> partsAfter = Packages.parts(after);
    assertEquals(partsBefore.keySet(), partsAfter.keySet());
    for (String part : new String[] {"mimetype", "Pictures/cellar.png", "META-INF/manifest.xml"}) {
      assertArrayEquals(partsBefore.get(part), partsAfter.get(part), part);
    }
    assertTrue(Run.of(fill).out().contains("no change"));
    assertArrayEquals(after, Files.readAllBytes(log));
  }
}
