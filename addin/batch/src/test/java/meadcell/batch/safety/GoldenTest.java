package meadcell.batch.safety;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.TestBooks;
import meadcell.batch.book.Packages;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.ComparisonOperator;
import org.apache.poi.ss.usermodel.DataConsolidateFunction;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Filling changes the cells it is for and nothing else, whatever else a workbook holds. */
class GoldenTest {
  private static final String ENCODED_PIXEL =
      "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJg"
          + "gg==";

  /** Something that workbooks hold beside a log; the second sheet is never filled. */
  private interface Feature {
    void addTo(Workbook book, Sheet log, Sheet other);
  }

  @TempDir Path folder;

  private static Map<String, Feature> both() {
    Map<String, Feature> features = new LinkedHashMap<>();
    features.put("nothing else", (book, log, other) -> {});
    features.put("names", GoldenTest::names);
    features.put("comments", (book, log, other) -> comment(log, comment(other, 0)));
    features.put("validation", GoldenTest::validation);
    features.put("conditional format", GoldenTest::conditionalFormat);
    features.put(
        "merged cells", (b, log, o) -> log.addMergedRegion(CellRangeAddress.valueOf("A1:D1")));
    features.put("picture", GoldenTest::picture);
    features.put("hyperlink", GoldenTest::hyperlink);
    features.put("protected other sheet", (b, l, other) -> other.protectSheet("x"));
    features.put("hidden rows", (b, log, o) -> log.getRow(5).setZeroHeight(true));
    features.put("hidden sheet", (book, l, o) -> book.setSheetHidden(1, true));
    features.put("frozen panes", (b, log, o) -> log.createFreezePane(1, 4));
    features.put("filter", (b, log, o) -> log.setAutoFilter(CellRangeAddress.valueOf("A4:C7")));
    features.put("outline", (b, log, o) -> log.groupRow(5, 6));
    features.put("print set-up", GoldenTest::printSetup);
    features.put("array formula", GoldenTest::arrayFormula);
    features.put("other formulas", GoldenTest::otherFormulas);
    features.put("rich text", GoldenTest::richText);
    return features;
  }

  private static Map<String, Feature> xlsxOnly() {
    Map<String, Feature> features = new LinkedHashMap<>();
    features.put("table", GoldenTest::table);
    features.put("chart", GoldenTest::chart);
    features.put("pivot table", GoldenTest::pivot);
    features.put("1904 dates", GoldenTest::dates1904);
    features.put("modern formulas", GoldenTest::modernFormulas);
    return features;
  }

  @TestFactory
  Stream<DynamicTest> xlsx() {
    Map<String, Feature> all = both();
    all.putAll(xlsxOnly());
    return all.entrySet().stream()
        .map(f -> DynamicTest.dynamicTest(f.getKey(), () -> checkXlsx(f.getKey(), f.getValue())));
  }

  @TestFactory
  Stream<DynamicTest> xls() {
    return both().entrySet().stream()
        .map(f -> DynamicTest.dynamicTest(f.getKey(), () -> check("xls", f.getValue())));
  }

  /** The workbook before, and the same after it was filled. */
  private record Pair(Path before, Path after) {}

  private void checkXlsx(String name, Feature feature) throws IOException {
    Pair pair = check("xlsx", feature);
    Map<String, byte[]> before = Packages.parts(Files.readAllBytes(pair.before));
    Map<String, byte[]> after = Packages.parts(Files.readAllBytes(pair.after));
    Set<String> changed = new TreeSet<>();
    for (Map.Entry<String, byte[]> part : before.entrySet()) {
      assertTrue(after.containsKey(part.getKey()), "lost: " + part.getKey());
      if (!java.util.Arrays.equals(part.getValue(), after.get(part.getKey()))) {
        changed.add(part.getKey());
      }
    }
    changed.removeAll(
        Set.of(
            "xl/worksheets/sheet1.xml",
            "xl/sharedStrings.xml",
            "xl/styles.xml",
            "docProps/custom.xml",
            "[Content_Types].xml",
            "_rels/.rels",
            "xl/calcChain.xml"));
    assertEquals(Set.of(), changed, name);
  }

  private Pair check(String ending, Feature feature) throws IOException {
    Path folder = Files.createTempDirectory(this.folder, "golden");
    Workbook book = ending.equals("xls") ? new HSSFWorkbook() : new XSSFWorkbook();
    Sheet log = book.createSheet("HH-22");
    Sheet other = book.createSheet("Other");
    rows(log, 0, row("Heather honey"), row("OG", 1.1), row());
    rows(log, 3, row("Date", "SG", "Temp"), row(1, 1.08, 18), row(2, 1.06, 17), row(3, 1.02, 16));
    rows(other, 0, row("Lot", "Jars"), row("HH", 12), row("SC", 30));
    feature.addTo(book, log, other);
    Path file = save(book, folder.resolve("log." + ending));
    Workbook plan = new XSSFWorkbook();
    rows(
        plan.createSheet("Fill"),
        0,
        row("Sheet", "Result", "Formula"),
        row("HH-22", "True SG", "GRAVITY.CORRECT([SG]; [Temp]; ; {OG})"));
    save(plan, folder.resolve("plan.xlsx"));
    Path out = folder.resolve("out");
    Run run =
        Run.of(
            "fill",
            file.toString(),
            "--plan",
            folder.resolve("plan.xlsx").toString(),
            "--out",
            out.toString());
    assertEquals(ExitCode.OK, run.code(), run.err());
    Path after = out.resolve(file.getFileName());
    compareCells(TestBooks.open(file), TestBooks.open(after));
    return new Pair(file, after);
  }

  private static void compareCells(Workbook before, Workbook after) {
    int filled = 0;
    for (int s = 0; s < before.getNumberOfSheets(); s++) {
      for (Row row : after.getSheetAt(s)) {
        for (Cell cell : row) {
          String place = new CellReference(cell).formatAsString();
          Row oldRow = before.getSheetAt(s).getRow(cell.getRowIndex());
          Cell old = oldRow == null ? null : oldRow.getCell(cell.getColumnIndex());
          if (old == null && cell.getCellType() != CellType.BLANK) {
            filled++;
          } else if (old != null) {
            assertEquals(shown(old), shown(cell), place);
            assertEquals(old.getCellStyle().getIndex(), cell.getCellStyle().getIndex(), place);
          }
        }
      }
    }
    assertEquals(4, filled, "a header and three results");
  }

  private static String shown(Cell cell) {
    CellType type =
        cell.getCellType() == CellType.FORMULA
            ? cell.getCachedFormulaResultType()
            : cell.getCellType();
    String value =
        switch (type) {
          case NUMERIC -> "" + cell.getNumericCellValue();
          case STRING -> cell.getStringCellValue();
          case BOOLEAN -> "" + cell.getBooleanCellValue();
          case ERROR -> "error " + cell.getErrorCellValue();
          default -> "";
        };
    return cell.getCellType() == CellType.FORMULA ? cell.getCellFormula() + " " + value : value;
  }

  // ---- features ---------------------------------------------------------------------------

  private static void names(Workbook book, Sheet log, Sheet other) {
    var name = book.createName();
    name.setNameName("Jars");
    name.setRefersToFormula("Other!$B$2:$B$3");
  }

  private static int comment(Sheet sheet, int column) {
    var helper = sheet.getWorkbook().getCreationHelper();
    var anchor = helper.createClientAnchor();
    anchor.setCol2(3);
    anchor.setRow2(3);
    var comment = sheet.createDrawingPatriarch().createCellComment(anchor);
    comment.setString(helper.createRichTextString("mine"));
    comment.setAuthor("a person");
    sheet.getRow(1).getCell(column).setCellComment(comment);
    return column;
  }

  private static void validation(Workbook book, Sheet log, Sheet other) {
    var helper = log.getDataValidationHelper();
    var constraint = helper.createDecimalConstraint(0, "0.9", "1.3");
    log.addValidationData(
        helper.createValidation(constraint, new CellRangeAddressList(4, 20, 1, 1)));
  }

  private static void conditionalFormat(Workbook book, Sheet log, Sheet other) {
    var formats = log.getSheetConditionalFormatting();
    var rule = formats.createConditionalFormattingRule(ComparisonOperator.GT, "1.05");
    rule.createFontFormatting().setFontStyle(true, true);
    formats.addConditionalFormatting(
        new CellRangeAddress[] {CellRangeAddress.valueOf("B5:B20")}, rule);
  }

  private static void picture(Workbook book, Sheet log, Sheet other) {
    byte[] pixel = java.util.Base64.getDecoder().decode(ENCODED_PIXEL);
    int picture = book.addPicture(pixel, Workbook.PICTURE_TYPE_PNG);
    var anchor = book.getCreationHelper().createClientAnchor();
    anchor.setCol2(2);
    anchor.setRow2(2);
    log.createDrawingPatriarch().createPicture(anchor, picture);
  }

  private static void hyperlink(Workbook book, Sheet log, Sheet other) {
    var link = book.getCreationHelper().createHyperlink(HyperlinkType.DOCUMENT);
    link.setAddress("Other!A1");
    log.getRow(0).getCell(0).setHyperlink(link);
  }

  private static void printSetup(Workbook book, Sheet log, Sheet other) {
    log.getPrintSetup().setLandscape(true);
    log.getHeader().setCenter("Log");
    book.setPrintArea(0, "$A$1:$C$7");
  }

  private static void arrayFormula(Workbook book, Sheet log, Sheet other) {
    other.setArrayFormula("B2:B3*2", CellRangeAddress.valueOf("D2:D3"));
  }

  private static void otherFormulas(Workbook book, Sheet log, Sheet other) {
    rows(other, 5, row("=SUM(B2:B3)", "='HH-22'!B5*1000"));
    other.getRow(5).getCell(0).setCellValue(42);
    other.getRow(5).getCell(1).setCellValue(1080);
  }

  private static void richText(Workbook book, Sheet log, Sheet other) {
    var text = book.getCreationHelper().createRichTextString("Heather honey, bold");
    var font = book.createFont();
    font.setBold(true);
    text.applyFont(0, 7, font);
    log.getRow(0).getCell(0).setCellValue(text);
  }

  private static void table(Workbook book, Sheet log, Sheet other) {
    ((XSSFSheet) other)
        .createTable(new AreaReference("A1:B3", SpreadsheetVersion.EXCEL2007))
        .setName("Jars");
  }

  private static void chart(Workbook book, Sheet log, Sheet other) {
    XSSFSheet sheet = (XSSFSheet) log;
    var drawing = sheet.createDrawingPatriarch();
    var chart = drawing.createChart(drawing.createAnchor(0, 0, 0, 0, 8, 1, 14, 12));
    var bottom = chart.createCategoryAxis(AxisPosition.BOTTOM);
    var left = chart.createValueAxis(AxisPosition.LEFT);
    var data = chart.createData(ChartTypes.LINE, bottom, left);
    data.addSeries(
        XDDFDataSourcesFactory.fromNumericCellRange(sheet, CellRangeAddress.valueOf("A5:A7")),
        XDDFDataSourcesFactory.fromNumericCellRange(sheet, CellRangeAddress.valueOf("B5:B7")));
    chart.plot(data);
  }

  private static void pivot(Workbook book, Sheet log, Sheet other) {
    XSSFSheet sheet = (XSSFSheet) book.createSheet("Pivot");
    var pivot =
        sheet.createPivotTable(
            new AreaReference("A1:B3", SpreadsheetVersion.EXCEL2007),
            new CellReference("A3"),
            other);
    pivot.addRowLabel(0);
    pivot.addColumnLabel(DataConsolidateFunction.SUM, 1);
  }

  private static void dates1904(Workbook book, Sheet log, Sheet other) {
    ((XSSFWorkbook) book).getCTWorkbook().addNewWorkbookPr().setDate1904(true);
  }

  private static void modernFormulas(Workbook book, Sheet log, Sheet other) {
    ((XSSFWorkbook) book).setCellFormulaValidation(false);
    rows(other, 5, row("=_xlfn.LET(_xlpm.x,B2,_xlpm.x*2)"));
    other.getRow(5).getCell(0).setCellValue(24);
  }

  @TestFactory
  Stream<DynamicTest> macrosAreCarriedAlong() {
    return Stream.of(
        DynamicTest.dynamicTest(
            "xlsm",
            () -> {
              XSSFWorkbook book = new XSSFWorkbook();
              rows(book.createSheet("HH-22"), 0, row("SG"), row(1.05));
              book.setVBAProject(new java.io.ByteArrayInputStream("macros".getBytes("UTF-8")));
              Path file = save(book, folder.resolve("log.xlsm"));
              XSSFWorkbook plan = new XSSFWorkbook();
              rows(plan.createSheet("Fill"), 0, row("Sheet", "Result", "Formula"));
              rows(plan.getSheet("Fill"), 1, row("*", "Brix", "GRAVITY.TOBRIX([SG])"));
              save(plan, folder.resolve("plan.xlsx"));
              String planFile = folder.resolve("plan.xlsx").toString();
              Run run = Run.of("fill", file.toString(), "--plan", planFile, "--in-place");
              assertEquals(ExitCode.OK, run.code(), run.err());
              Map<String, byte[]> parts = Packages.parts(Files.readAllBytes(file));
              assertArrayEquals("macros".getBytes("UTF-8"), parts.get("xl/vbaProject.bin"));
            }));
  }
}
