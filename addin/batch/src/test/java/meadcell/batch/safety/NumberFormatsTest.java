package meadcell.batch.safety;

import static meadcell.batch.TestBooks.cell;
import static meadcell.batch.TestBooks.open;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Results get a number format where nobody chose one: without it, offices may not show them. */
class NumberFormatsTest {
  @TempDir Path folder;

  static Stream<Supplier<Workbook>> books() {
    return Stream.of(XSSFWorkbook::new, HSSFWorkbook::new);
  }

  @ParameterizedTest
  @MethodSource("books")
  void whatAPersonChoseStays(Supplier<Workbook> books) throws IOException {
    Workbook book = Scene.log(books.get());
    Sheet log = book.getSheet(Scene.SHEET);
    log.getRow(3).createCell(3).setCellValue("True SG");
    CellStyle bordered = style(book, "General");
    bordered.setBorderBottom(BorderStyle.THICK);
    log.getRow(4).createCell(3).setCellStyle(bordered);
    log.getRow(5).createCell(3).setCellStyle(style(book, "0.00"));
    log.setDefaultColumnStyle(4, style(book, "0.000"));
    Scene scene = new Scene(folder);
    scene.plan("True SG", Scene.CORRECT, "Brix", "GRAVITY.TOBRIX([SG])");
    Workbook filled =
        open(
            scene.filled(
                scene.save(
                    book, "log" + (books.get() instanceof HSSFWorkbook ? ".xls" : ".xlsx"))));
    assertEquals("0.0000", format(filled, "D5"));
    assertEquals(
        BorderStyle.THICK, cell(filled, Scene.SHEET, "D5").getCellStyle().getBorderBottom());
    assertEquals("0.00", format(filled, "D6"));
    assertEquals("0.0000", format(filled, "D7"));
    assertEquals("0.000", format(filled, "E5"), "the column's");
  }

  private static CellStyle style(Workbook book, String format) {
    CellStyle style = book.createCellStyle();
    style.setDataFormat(book.createDataFormat().getFormat(format));
    return style;
  }

  private static String format(Workbook book, String place) {
    return cell(book, Scene.SHEET, place).getCellStyle().getDataFormatString();
  }

  @Test
  void decimalsAreThoseOfTheQuantity() throws IOException {
    Scene scene = new Scene(folder);
    scene.plan(
        "Brix", "GRAVITY.TOBRIX([SG])",
        "Index", "GRAVITY.INDEXFROMBRIX([SG])",
        "Twice", "2*GRAVITY.TOBRIX([SG])",
        "Why", "CELLAR.WHY(\"GRAVITY.TOBRIX\"; [SG]+1)");
    Workbook filled = open(scene.filled(scene.save(Scene.log(new XSSFWorkbook()), "log.xlsx")));
    assertEquals("0.0", format(filled, "D5"));
    assertEquals("0.0000", format(filled, "E5"));
    assertEquals("0.000", format(filled, "F5"));
    assertEquals("General", format(filled, "G5"), "a text shows in any");
  }

  @Test
  void inOpenDocumentToo() throws IOException {
    Path file = folder.resolve("log.ods");
    Files.write(
        file,
        OdsLog.of(
            OdsLog.row(OdsLog.text("OG"), OdsLog.number("1.1"))
                + OdsLog.row(OdsLog.text(""))
                + OdsLog.row(OdsLog.text("SG"), OdsLog.text("Temp"), OdsLog.text("True SG"))
                + reading("table:style-name=\"general\"")
                + reading("table:style-name=\"chosen\"")
                + reading("table:style-name=\"Mine\"")
                + reading("")));
    Parts parts = new Parts(file);
    parts.replaceAll(
        "content.xml",
        "<office:automatic-styles/>",
        "<office:automatic-styles xmlns:style=\"urn:oasis:names:tc:opendocument:xmlns:style:1.0\""
            + " xmlns:number=\"urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0\">"
            + "<number:number-style style:name=\"N0\"><number:number"
            + " number:min-integer-digits=\"1\"/></number:number-style>"
            + "<number:number-style style:name=\"N2\"><number:number number:decimal-places=\"2\""
            + " number:min-integer-digits=\"1\"/></number:number-style>"
            + style("general", "N0")
            + style("chosen", "N2")
            + "</office:automatic-styles>");
    parts.replaceAll(
        "content.xml",
        "<table:table-column table:number-columns-repeated=\"3\"/>",
        "<table:table-column table:number-columns-repeated=\"3\""
            + " table:default-cell-style-name=\"chosen\"/>");
    parts.save(file);
    Scene scene = new Scene(folder);
    scene.plan("True SG", Scene.CORRECT);
    String content = Scene.part(scene.filled(file), "content.xml");
    assertTrue(
        content.matches(
            "(?s).*style:data-style-name=\"meadcell1n\" style:family=\"table-cell\" style:name=\"meadcell1\".*"),
        content);
    assertEquals("meadcell1 chosen Mine -", styles(content));
  }

  /** The styles of the results, one after the other. */
  private static String styles(String content) {
    return Stream.of(content.split("<table:table-cell"))
        .filter(cell -> cell.contains("table:formula"))
        .map(
            cell ->
                cell.contains("style-name")
                    ? cell.replaceFirst("(?s).*?style-name=\"([^\"]*)\".*", "$1")
                    : "-")
        .collect(java.util.stream.Collectors.joining(" "));
  }

  private static String reading(String attribute) {
    return OdsLog.row(
        OdsLog.number("1.06"), OdsLog.number("18"), "<table:table-cell " + attribute + "/>");
  }

  private static String style(String name, String format) {
    return "<style:style style:name=\""
        + name
        + "\" style:family=\"table-cell\""
        + " style:parent-style-name=\"Default\" style:data-style-name=\""
        + format
        + "\"/>";
  }
}
