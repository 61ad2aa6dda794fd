package meadcell.batch.safety;

import static meadcell.batch.TestBooks.cell;
import static meadcell.batch.TestBooks.open;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.TestBooks;
import meadcell.batch.book.Packages;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Parts of {@code .xlsx} workbooks that a note or a style touches, with the oddities of others. */
class XlsxTest {
  private static final String RELATIONS = "xl/worksheets/_rels/sheet1.xml.rels";
  private static final String STYLES = "xl/styles.xml";

  @TempDir Path folder;
  private Scene scene;

  @BeforeEach
  void scene() {
    scene = new Scene(folder);
  }

  private void checkFilled(Path file) throws Exception {
    try (Workbook after = open(file)) {
      assertEquals(1.07946, cell(after, Scene.SHEET, "D5").getNumericCellValue(), 1e-5);
      assertEquals("Meadcell", cell(after, Scene.SHEET, "D6").getCellComment().getAuthor());
    }
  }

  @Test
  void linksStayAsTheyAreWritten() throws Exception {
    String links =
        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
            + link("a", "C:\\Users\\me\\Fass 3.xlsx")
            + link("b", "\\\\server\\share\\log.xlsx")
            + link("c", "mailto:a@b; c@d")
            + link("d", "http://[")
            + "</Relationships>";
    Path file =
        scene.xlsx(
            parts -> {
              parts.put(RELATIONS, links);
              parts.replace(
                  Parts.LOG,
                  "</sheetData>",
                  "</sheetData><hyperlinks"
                      + " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\">"
                      + "<hyperlink ref=\"A1\" r:id=\"a\"/><hyperlink ref=\"A2\" r:id=\"b\"/>"
                      + "<hyperlink ref=\"A4\" r:id=\"c\"/><hyperlink ref=\"A5\" r:id=\"d\"/>"
                      + "</hyperlinks>");
            });
    Path filled = scene.filled(file);
    String after = Scene.part(filled, RELATIONS);
    String kept = links.replace("</Relationships>", "");
    assertTrue(after.startsWith(kept), after);
    assertTrue(after.contains("/comments\""), after);
    assertTrue(Scene.part(filled, "xl/comments.xml").contains("read as 17 °C"));
  }

  private static String link(String id, String target) {
    return "<Relationship Id=\""
        + id
        + "\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/hyperlink\""
        + " Target=\""
        + target
        + "\" TargetMode=\"External\"/>";
  }

  /** A style sheet with a named style, on which the readings rest. */
  private static void namedStyle(Parts parts) {
    parts.replaceAll(
        STYLES,
        "<cellStyleXfs.*</cellXfs>",
        "<cellStyleXfs count=\"2\"><xf numFmtId=\"0\" fontId=\"0\" fillId=\"0\" borderId=\"0\"/>"
            + "<xf numFmtId=\"0\" fontId=\"0\" fillId=\"1\" borderId=\"0\"/></cellStyleXfs>"
            + "<cellXfs count=\"2\"><xf numFmtId=\"0\" fontId=\"0\" fillId=\"0\" borderId=\"0\""
            + " xfId=\"0\"/><xf xfId=\"1\" borderId='0' fillId='1' fontId='0' numFmtId='2'"
            + " applyFill=\"1\"><alignment horizontal=\"left\"/></xf></cellXfs><cellStyles"
            + " count=\"2\"><cellStyle name=\"Normal\" xfId=\"0\" builtinId=\"0\"/>"
            + "<cellStyle name=\"Cellar red\" xfId=\"1\"/></cellStyles>");
    style(parts, 1);
  }

  /** Gives the cells left of the results a style. */
  private static void style(Parts parts, int style) {
    parts.replaceAll(Parts.LOG, " s=\"0\"", "");
    parts.replaceAll(Parts.LOG, "<c r=\"(C[567])\"", "<c r=\"$1\" s=\"" + style + "\"");
  }

  @Test
  void namedStylesStayAsTheyAre() throws Exception {
    Path file = scene.xlsx(XlsxTest::namedStyle);
    Path filled = scene.filled(file);
    String before = Scene.part(file, STYLES);
    String after = Scene.part(filled, STYLES);
    String named = before.replaceFirst("(?s).*(<cellStyleXfs.*</cellStyleXfs>).*", "$1");
    assertTrue(after.contains(named), after);
    try (XSSFWorkbook book = (XSSFWorkbook) open(filled)) {
      XSSFCellStyle style = (XSSFCellStyle) cell(book, Scene.SHEET, "D5").getCellStyle();
      assertEquals("0.0000", style.getDataFormatString());
      assertEquals(1, style.getCoreXf().getXfId());
      assertEquals("left", style.getCoreXf().getAlignment().getHorizontal().toString());
    }
  }

  @Test
  void withoutNamedStyles() throws Exception {
    Path file =
        scene.xlsx(
            parts -> {
              parts.replaceAll(STYLES, "<cellStyleXfs.*</cellStyleXfs>", "");
              parts.replaceAll(STYLES, "<cellStyles.*</cellStyles>", "");
              parts.replaceAll(STYLES, " xfId=\"0\"", "");
            });
    Path filled = scene.filled(file);
    assertTrue(Scene.part(filled, Parts.LOG).contains("GRAVITY.CORRECT(B5"));
    assertFalse(Scene.part(filled, STYLES).contains("cellStyleXfs"));
  }

  @Test
  void withoutAnyStyleSheet() throws Exception {
    Path file =
        scene.xlsx(
            parts -> {
              parts.remove(STYLES);
              parts.replaceAll("[Content_Types].xml", "<Override[^>]*styles\\.xml[^>]*/>", "");
              parts.replaceAll(
                  "xl/_rels/workbook.xml.rels", "<Relationship [^>]*styles\\.xml[^>]*/>", "");
            });
    Path filled = scene.filled(file);
    try (Workbook after = open(filled)) {
      assertEquals("0.0000", cell(after, Scene.SHEET, "D5").getCellStyle().getDataFormatString());
    }
  }

  @Test
  void moreStylesThanAShortNumberCounts() throws Exception {
    Path file =
        scene.xlsx(
            parts -> {
              String many =
                  "<xf numFmtId=\"1\" fontId=\"0\" fillId=\"0\" borderId=\"0\" xfId=\"0\"/>";
              parts.replaceAll(
                  STYLES, "<cellXfs.*</cellXfs>", "<cellXfs>" + many.repeat(40_000) + "</cellXfs>");
              style(parts, 39_999);
            });
    String after = Scene.part(scene.filled(file, "--trust-large-files"), Parts.LOG);
    assertTrue(after.matches("(?s).*<c r=\"D5\" s=\"4000[01]\">.*"), after);
  }

  @Test
  void noMoreStylesThanExcelReads() throws Exception {
    Path file =
        scene.xlsx(
            parts ->
                parts.replaceAll(
                    STYLES,
                    "<cellXfs.*</cellXfs>",
                    "<cellXfs>" + "<xf numFmtId=\"1\"/>".repeat(65_000) + "</cellXfs>"));
    Path filled = scene.filled(file, "--trust-large-files");
    assertEquals(Scene.part(file, STYLES), Scene.part(filled, STYLES));
  }

  private static void commentAt(Workbook book, int row, int column) {
    var helper = book.getCreationHelper();
    var anchor = helper.createClientAnchor();
    anchor.setRow1(row);
    anchor.setCol1(column);
    anchor.setCol2(column + 2);
    anchor.setRow2(row + 2);
    var sheet = book.getSheet(Scene.SHEET);
    var comment = sheet.createDrawingPatriarch().createCellComment(anchor);
    comment.setString(helper.createRichTextString("mine"));
    comment.setAuthor("a person");
  }

  @Test
  void aPersonsNoteBesideOneOfOurs() throws Exception {
    XSSFWorkbook book = Scene.log(new XSSFWorkbook());
    commentAt(book, 5, 4); // E6, where POI puts the box of the note at D6
    Path file = scene.save(book, "log.xlsx");
    Path filled = scene.filled(file);
    checkFilled(filled);
    try (Workbook after = open(filled)) {
      var note =
          after.getSheet(Scene.SHEET).getCellComment(new org.apache.poi.ss.util.CellAddress("E6"));
      assertEquals("mine", note.getString().getString());
    }
    rereadAndUnmarked(filled);
  }

  /** The second run changes nothing; a reading that is clear takes the note away again. */
  private void rereadAndUnmarked(Path filled) throws Exception {
    Run again = scene.fill(filled, "--in-place");
    assertTrue(again.out().contains("no change"), again.out());
    try (Workbook book = open(filled)) {
      cell(book, Scene.SHEET, "C6").setCellValue(17);
      TestBooks.save(book, filled);
    }
    assertEquals(ExitCode.OK, scene.fill(filled, "--in-place").code());
    try (Workbook after = open(filled)) {
      assertEquals(null, cell(after, Scene.SHEET, "D6").getCellComment());
    }
  }

  @Test
  void controlsAndObjectsInTheDrawingOfNotes() throws Exception {
    String drawing =
        "<xml xmlns:v=\"urn:schemas-microsoft-com:vml\""
            + " xmlns:o=\"urn:schemas-microsoft-com:office:office\""
            + " xmlns:x=\"urn:schemas-microsoft-com:office:excel\"><v:shape id=\"_x0000_s1025\""
            + " type=\"#_x0000_t201\"><v:textbox><div>a<br>b</div></v:textbox>"
            + "<x:ClientData ObjectType=\"Button\"><x:Anchor>1,0,1,0,2,0,2,0</x:Anchor>"
            + "</x:ClientData></v:shape></xml>";
    Path file =
        scene.xlsx(
            parts -> {
              parts.add(
                  "xl/drawings/vmlDrawing1.vml",
                  "application/vnd.openxmlformats-officedocument.vmlDrawing",
                  drawing);
              parts.relate(Parts.LOG, "boxes", "vmlDrawing", "../drawings/vmlDrawing1.vml");
              parts.replace(
                  Parts.LOG,
                  "</worksheet>",
                  "<legacyDrawing xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/"
                      + "relationships\" r:id=\"boxes\"/></worksheet>");
            });
    Path filled = scene.filled(file);
    String after = Scene.part(filled, "xl/drawings/vmlDrawing1.vml");
    assertTrue(after.startsWith(drawing.replace("</xml>", "")), after);
    assertTrue(after.contains("_x0000_s1026"), after);
    assertTrue(after.contains("<x:Row>5</x:Row><x:Column>3</x:Column>"), after);
  }

  @Test
  void veryManyShapes() throws Exception {
    StringBuilder shapes = new StringBuilder("<xml xmlns:v=\"urn:schemas-microsoft-com:vml\">");
    for (int i = 0; i < 5000; i++) {
      shapes.append("<v:shape id=\"_x0000_s" + (1025 + i) + "\"/>");
    }
    Path file =
        scene.xlsx(
            parts -> {
              parts.add(
                  "xl/drawings/vmlDrawing1.vml",
                  "application/vnd.openxmlformats-officedocument.vmlDrawing",
                  shapes.append("</xml>").toString());
              parts.relate(Parts.LOG, "boxes", "vmlDrawing", "../drawings/vmlDrawing1.vml");
              parts.replace(
                  Parts.LOG,
                  "</worksheet>",
                  "<legacyDrawing xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/"
                      + "relationships\" r:id=\"boxes\"/></worksheet>");
            });
    assertTrue(
        Scene.part(scene.filled(file), "xl/drawings/vmlDrawing1.vml").contains("_x0000_s6025"));
  }

  @Test
  void fullToTheLastColumn() throws Exception {
    Path file =
        scene.xlsx(
            parts ->
                parts.replaceAll(Parts.LOG, "(<row r=\"4\".*?)</row>", "$1" + cells() + "</row>"));
    Run run = scene.fill(file, "--out", folder.resolve("out").toString());
    assertEquals(ExitCode.LEFT, run.code(), run.err());
    assertTrue(run.out().contains("full to its last column"), run.out() + run.err());
  }

  private static String cells() {
    StringBuilder cells = new StringBuilder();
    for (int column = 3; column < 16_384; column++) {
      String name = org.apache.poi.ss.util.CellReference.convertNumToColString(column);
      cells.append("<c r=\"" + name + "4\" t=\"inlineStr\"><is><t>x</t></is></c>");
    }
    return cells.toString();
  }

  @Test
  void strictWorkbooks() throws Exception {
    Path file = scene.save(Scene.log(new XSSFWorkbook()), "log.xlsx");
    Map<String, byte[]> parts = new TreeMap<>();
    for (Map.Entry<String, byte[]> part : Packages.parts(Files.readAllBytes(file)).entrySet()) {
      String text = Parts.text(part.getValue());
      String strict =
          text.replace(
                  "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
                  "http://purl.oclc.org/ooxml/spreadsheetml/main")
              .replace(
                  "http://schemas.openxmlformats.org/officeDocument/2006/",
                  "http://purl.oclc.org/ooxml/officeDocument/");
      parts.put(part.getKey(), strict.getBytes(StandardCharsets.UTF_8));
    }
    Files.write(file, Packages.zip(parts));
    Path filled = scene.filled(file);
    for (Map.Entry<String, byte[]> part : Packages.parts(Files.readAllBytes(filled)).entrySet()) {
      String text = Parts.text(part.getValue());
      assertFalse(text.contains("schemas.openxmlformats.org/spreadsheetml"), part.getKey());
      assertFalse(text.contains("schemas.openxmlformats.org/officeDocument"), part.getKey());
    }
    assertTrue(Scene.part(filled, Parts.LOG).contains("<v>1.079"), "no result");
    Run again = scene.fill(filled, "--in-place");
    assertTrue(again.out().contains("no change"), again.out() + again.err());
  }

  @Test
  void aTruncatedPackage() throws Exception {
    Path file = scene.xlsx(parts -> {});
    byte[] bytes = Files.readAllBytes(file);
    Files.write(file, Arrays.copyOf(bytes, bytes.length / 2));
    Run run = scene.fill(file, "--in-place");
    assertEquals(ExitCode.REFUSED, run.code());
    assertTrue(run.err().contains("it is cut off"), run.err());
    assertFalse(run.err().contains("java"), run.err());
  }

  /** Of which each program takes another one. */
  @ParameterizedTest
  @ValueSource(strings = {"xl/worksheets/sheet1.xml", "xl/worksheets/SHEET1.xml", "_rels/.rels"})
  void aPartThatStandsTwice(String name) throws Exception {
    Path file = scene.xlsx(parts -> {});
    Map<String, byte[]> parts = Packages.parts(Files.readAllBytes(file));
    try (ZipArchiveOutputStream out = new ZipArchiveOutputStream(file)) {
      for (Map.Entry<String, byte[]> part : parts.entrySet()) {
        put(out, part.getKey(), part.getValue());
      }
      put(out, name, parts.get("xl/worksheets/sheet1.xml"));
    }
    byte[] before = Files.readAllBytes(file);
    Run run = scene.fill(file, "--in-place");
    assertEquals(ExitCode.REFUSED, run.code(), run.out() + run.err());
    assertTrue(run.err().contains("it holds its part " + name + " twice"), run.err());
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  private static void put(ZipArchiveOutputStream out, String name, byte[] content)
      throws IOException {
    out.putArchiveEntry(new ZipArchiveEntry(name));
    out.write(content);
    out.closeArchiveEntry();
  }

  @Test
  void noPartsThatNobodyNeeds() throws Exception {
    Path file = scene.xlsx(parts -> {});
    Path filled = scene.filled(file);
    Set<String> added = new TreeSet<>(Packages.parts(Files.readAllBytes(filled)).keySet());
    added.removeAll(Packages.parts(Files.readAllBytes(file)).keySet());
    assertEquals(
        Set.of(
            "docProps/custom.xml",
            "xl/comments.xml",
            "xl/drawings/vmlDrawing.vml",
            "xl/worksheets/_rels/sheet1.xml.rels"),
        added);
    assertArrayEquals(
        Packages.parts(Files.readAllBytes(file)).get("docProps/core.xml"),
        Packages.parts(Files.readAllBytes(filled)).get("docProps/core.xml"));
  }
}
