package meadcell.batch.safety;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.stream.Stream;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.usermodel.ComparisonOperator;
import org.apache.poi.ss.usermodel.DataConsolidateFunction;
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

/** The golden workbooks that POI can make. */
final class GoldenBooks {
  private static final String ENCODED_PIXEL =
      "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJg"
          + "gg==";

  private GoldenBooks() {}

  /** Those of both kinds. */
  static List<Golden> both() {
    return List.of(
        new Golden("nothing else", (book, log, other) -> {}),
        new Golden("names", GoldenBooks::names),
        new Golden("comments", (book, log, other) -> comments(log, other)),
        new Golden("comment in the result column", (b, log, o) -> comment(log, 4, 3)),
        new Golden("notes beside comments", GoldenBooks::notesBesideComments)
            .changingParts(
                "xl/comments1.xml", "xl/drawings/vmlDrawing0.vml", "xl/drawings/vmlDrawing1.vml"),
        new Golden("validation", GoldenBooks::validation),
        new Golden("conditional format", GoldenBooks::conditionalFormat),
        new Golden("merged cells", (b, log, o) -> merge(log, "A1:D1")),
        new Golden("picture", GoldenBooks::picture),
        new Golden("hyperlink", GoldenBooks::hyperlink),
        new Golden("protected other sheet", (b, l, other) -> other.protectSheet("x")),
        new Golden("protected log", (b, log, o) -> log.protectSheet("x"))
            .with("--ignore-protection"),
        new Golden("hidden rows", (b, log, o) -> log.getRow(5).setZeroHeight(true)),
        new Golden("hidden sheet", (book, l, o) -> book.setSheetHidden(1, true)),
        new Golden("frozen panes", (b, log, o) -> log.createFreezePane(1, 4)),
        new Golden("filter", (b, log, o) -> log.setAutoFilter(CellRangeAddress.valueOf("A4:C7"))),
        new Golden("outline", (b, log, o) -> log.groupRow(5, 6)),
        new Golden("print set-up", GoldenBooks::printSetup),
        new Golden("array formula", GoldenBooks::arrayFormula),
        new Golden("other formulas", GoldenBooks::otherFormulas),
        new Golden("rich text", GoldenBooks::richText));
  }

  static List<Golden> xlsxOnly() {
    return List.of(
        new Golden("table", GoldenBooks::table),
        new Golden("chart", GoldenBooks::chart),
        new Golden("pivot table", GoldenBooks::pivot),
        new Golden("1904 dates", GoldenBooks::dates1904),
        new Golden("modern formulas", GoldenBooks::modernFormulas),
        new Golden("macros", GoldenBooks::macros).as("xlsm"));
  }

  static List<Golden> xlsx() {
    return Stream.of(both(), xlsxOnly(), GoldenXml.all()).flatMap(List::stream).toList();
  }

  static List<Golden> xls() {
    return both().stream().map(golden -> golden.as("xls")).toList();
  }

  private static void names(Workbook book, Sheet log, Sheet other) {
    var name = book.createName();
    name.setNameName("Jars");
    name.setRefersToFormula("Other!$B$2:$B$3");
  }

  private static void comments(Sheet log, Sheet other) {
    comment(log, 1, 0);
    comment(other, 1, 0);
  }

  private static void comment(Sheet sheet, int row, int column) {
    var helper = sheet.getWorkbook().getCreationHelper();
    var anchor = helper.createClientAnchor();
    anchor.setCol2(3);
    anchor.setRow2(3);
    var comment = sheet.createDrawingPatriarch().createCellComment(anchor);
    comment.setString(helper.createRichTextString("mine"));
    comment.setAuthor("a person");
    comment.setAddress(row, column);
  }

  /** A reading as text, which gets a note. */
  static void notesBesideComments(Workbook book, Sheet log, Sheet other) {
    comments(log, other);
    log.getRow(5).getCell(2).setCellValue("17 C");
  }

  private static void merge(Sheet sheet, String range) {
    sheet.addMergedRegion(CellRangeAddress.valueOf(range));
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

  static void picture(Workbook book, Sheet log, Sheet other) {
    byte[] pixel = Base64.getDecoder().decode(ENCODED_PIXEL);
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

  private static void macros(Workbook book, Sheet log, Sheet other) {
    try {
      ((XSSFWorkbook) book)
          .setVBAProject(new ByteArrayInputStream("macros".getBytes(StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
