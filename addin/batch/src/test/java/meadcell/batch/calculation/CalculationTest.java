package meadcell.batch.calculation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import meadcell.batch.book.Book;
import meadcell.batch.book.Books;
import meadcell.batch.book.Packages;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.cellar.Cellar;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.usermodel.CellValue;
import org.apache.poi.ss.usermodel.FormulaEvaluator;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Names, tables, sheets and copied formulas, against POI's evaluator over its own workbooks. */
class CalculationTest {
  private static final int ROWS = 6;
  private static final int FIRST = 10;

  /** Each stands in three rows, so that its tokens are also moved. */
  private static final List<String> FORMULAS =
      List.of(
          "SUM(1:2)",
          "SUM($1:$2)+A1",
          "SUM(A:A)*2",
          "SUM(A$1:B3)",
          "all_sg*2",
          "SUM(column)",
          "own",
          "SUM(Other!A1:B2)",
          "SUM('My ''log'!A1:A3)+'My ''log'!$A$1",
          "SUM(Log:Other!A1)",
          "IF(A1>2,\"LAB.SO2(1) \"&A1,LEN(\"a\"\"b\"))",
          "INDEX(A1:B6,2,2)",
          "SUM({1,2;3,4})",
          "SUM(OFFSET(A1,1,0,2,2))");

  private static final List<String> TABLE_FORMULAS =
      List.of("SUM(Readings[B1])", "SUM(Readings[[#All],[A1]])", "SUM(Readings[])");

  private static Workbook filled(Workbook workbook) {
    for (String name : List.of("Log", "Other", "My 'log")) {
      Sheet sheet = workbook.createSheet(name);
      for (int i = 0; i < ROWS; i++) {
        Row row = sheet.createRow(i);
        row.createCell(0).setCellValue(i + 1 + 10 * workbook.getSheetIndex(sheet));
        row.createCell(1).setCellValue(2.5 * i);
      }
    }
    name(workbook, "all_sg", "Log!$A$2", -1);
    name(workbook, "column", "Log!$A$1:$A$6", -1);
    name(workbook, "own", "Log!$A$4", 0);
    name(workbook, "own", "Other!$A$1", -1);
    return workbook;
  }

  private static void name(Workbook workbook, String text, String formula, int sheet) {
    Name name = workbook.createName();
    name.setSheetIndex(sheet);
    name.setNameName(text);
    name.setRefersToFormula(formula);
  }

  private static byte[] bytes(Workbook workbook) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    workbook.write(bytes);
    return bytes.toByteArray();
  }

  private static Stream<DynamicTest> asInPoi(
      Workbook workbook, String fileName, List<String> formulas) throws IOException {
    Sheet log = workbook.getSheet("Log");
    for (int i = 0; i < 3; i++) {
      Row row = log.createRow(FIRST + i);
      for (int column = 0; column < formulas.size(); column++) {
        row.createCell(4 + column).setCellFormula(formulas.get(column));
      }
    }
    FormulaEvaluator poi = workbook.getCreationHelper().createFormulaEvaluator();
    Book book = Books.open(bytes(workbook), fileName);
    Calculation calculation = new Calculation(book, Cellar.catalogue(), (s, r, c) -> true);
    return java.util.stream.IntStream.range(0, 3 * formulas.size())
        .mapToObj(
            i -> {
              Place place = new Place(FIRST + i % 3, 4 + i / 3);
              String formula = formulas.get(i / 3);
              return DynamicTest.dynamicTest(
                  fileName + " " + place + " =" + formula,
                  () -> {
                    CellValue expected =
                        poi.evaluate(log.getRow(place.row()).getCell(place.column()));
                    assertEquals(
                        new Outcome.Computed(value(expected)), calculation.outcome(0, place));
                  });
            });
  }

  private static Value value(CellValue value) {
    return switch (value.getCellType()) {
      case NUMERIC -> Value.of(value.getNumberValue());
      case STRING -> Value.of(value.getStringValue());
      case BOOLEAN -> Value.of(value.getBooleanValue());
      default -> new Value.Error(value.formatAsString());
    };
  }

  @TestFactory
  Stream<DynamicTest> xlsx() throws IOException {
    return asInPoi(filled(new XSSFWorkbook()), "log.xlsx", FORMULAS);
  }

  @TestFactory
  Stream<DynamicTest> xls() throws IOException {
    return asInPoi(filled(new HSSFWorkbook()), "log.xls", FORMULAS);
  }

  @TestFactory
  Stream<DynamicTest> tables() throws IOException {
    XSSFWorkbook workbook = new XSSFWorkbook();
    XSSFSheet log = workbook.createSheet("Log");
    Row header = log.createRow(0);
    header.createCell(0).setCellValue("A1");
    header.createCell(1).setCellValue("B1");
    for (int i = 1; i < ROWS; i++) {
      Row row = log.createRow(i);
      row.createCell(0).setCellValue(i);
      row.createCell(1).setCellValue(0.5 * i);
    }
    XSSFTable table = log.createTable(new AreaReference("A1:B6", SpreadsheetVersion.EXCEL2007));
    table.setName("Readings");
    return asInPoi(workbook, "log.xlsx", TABLE_FORMULAS);
  }

  /** As ECMA-376 part 1, 18.2.5, has it; POI takes the first of them in today's format. */
  @Test
  void aSheetsOwnNameHidesTheWorkbooks() throws IOException {
    XSSFWorkbook workbook = new XSSFWorkbook();
    workbook.createSheet("Log").createRow(0).createCell(0).setCellValue(4);
    name(workbook, "own", "99", -1);
    name(workbook, "own", "Log!$A$1", 0);
    workbook.getSheet("Log").getRow(0).createCell(1).setCellFormula("own");
    Book book = Books.open(bytes(workbook), "log.xlsx");
    Calculation calculation = new Calculation(book, Cellar.catalogue(), (s, r, c) -> true);
    assertEquals(new Outcome.Computed(Value.of(4)), calculation.outcome(0, new Place(0, 1)));
  }

  /** One that reads another workbook keeps its stored value, which is all there is of that. */
  @Test
  void otherWorkbooksStayClosed() throws IOException {
    XSSFWorkbook workbook = new XSSFWorkbook();
    workbook.setCellFormulaValidation(false);
    Row row = workbook.createSheet("Log").createRow(0);
    row.createCell(0).setCellFormula("[1]Log!A1*2");
    row.getCell(0).setCellValue(7);
    row.createCell(1).setCellFormula("A1+1");
    Book book = Books.open(bytes(workbook), "log.xlsx");
    Calculation calculation = new Calculation(book, Cellar.catalogue(), (s, r, c) -> true);
    assertEquals(new Outcome.Computed(Value.of(7)), calculation.outcome(0, new Place(0, 0)));
    assertEquals(new Outcome.Computed(Value.of(8)), calculation.outcome(0, new Place(0, 1)));
    assertEquals(List.of(), calculation.reads(0, new Place(0, 0)).areas());
  }

  @Test
  void whatCannotBeReadIsBeyond() throws IOException {
    XSSFWorkbook workbook = new XSSFWorkbook();
    workbook.setCellFormulaValidation(false);
    Row row = workbook.createSheet("Log").createRow(0);
    row.createCell(0).setCellFormula("SUM(B1:C2,Log!D4,[1]Log!E5)*LAB.SO2(F6,)+*");
    Book book = Books.open(bytes(workbook), "log.xlsx");
    Calculation calculation = new Calculation(book, Cellar.catalogue(), (s, r, c) -> true);
    assertInstanceOf(Outcome.Beyond.class, calculation.outcome(0, new Place(0, 0)));
    Reads reads = calculation.reads(0, new Place(0, 0));
    assertEquals(
        List.of(
            new Reads.Area(0, 0, 1, 1, 2),
            new Reads.Area(0, 3, 3, 3, 3),
            new Reads.Area(0, 5, 5, 5, 5)),
        reads.areas());
    assertEquals(java.util.Set.of("LAB.SO2"), reads.functions());
  }

  private static Outcome arrayCell(String formula, String a1) throws IOException {
    XSSFWorkbook workbook = new XSSFWorkbook();
    Sheet log = workbook.createSheet("Log");
    for (int i = 0; i < ROWS; i++) {
      log.createRow(i).createCell(0).setCellValue(i + 1.0);
    }
    name(workbook, "here", "ROW()", -1);
    log.setArrayFormula(formula, CellRangeAddress.valueOf("C2:D4"));
    Book book = Books.open(bytes(workbook), "log.xlsx");
    Calculation calculation = new Calculation(book, Cellar.catalogue(), (s, r, c) -> true);
    Outcome last = null;
    for (String cell : List.of("C2", a1)) { // after another of its cells
      CellReference place = new CellReference(cell);
      last = calculation.outcome(0, new Place(place.getRow(), place.getCol()));
    }
    return last;
  }

  @Test
  void cellsOfAnArrayFormulaShareOneResult() throws IOException {
    assertEquals(new Outcome.Computed(Value.of(6)), arrayCell("A1:A3*{1,2}", "D4"));
    assertEquals(new Outcome.Computed(new Value.Error("#N/A")), arrayCell("A1:A2*{1,2}", "D4"));
  }

  @Test
  void anArrayFormulaThatAsksWhereItStandsIsComputedInEachCell() throws IOException {
    assertEquals(new Outcome.Computed(Value.of(4)), arrayCell("ROW()*A$1", "D4"));
    assertEquals(new Outcome.Computed(Value.of(4)), arrayCell("here*A$1", "D4"));
    assertEquals(new Outcome.Computed(Value.of(4)), arrayCell("COLUMN()*A$1", "D4"));
  }

  @Test
  void anArrayFormulaThatReadsItsOwnCellsRestsOnItself() throws IOException {
    assertEquals(new Outcome.Beyond("it rests on itself."), arrayCell("C2:D4+A1", "D4"));
    assertEquals(new Outcome.Beyond("it rests on itself."), arrayCell("ROW()+C2:D4", "D4"));
  }

  @Test
  void whyAnArrayFormulaIsNotComputedIsSaidAtEachCell() throws IOException {
    Outcome.Beyond first = (Outcome.Beyond) arrayCell("NOW()+A1:A3", "C2");
    assertEquals(first, arrayCell("NOW()+A1:A3", "D4"));
    assertTrue(first.reason().startsWith("NOW gives another result"), first.reason());
  }

  /** As some programs write it; POI reads up to 255 signs. */
  @Test
  void aFormulaWithALongTextIsBeyondThisTool() throws IOException {
    XSSFWorkbook workbook = new XSSFWorkbook();
    workbook.setCellFormulaValidation(false);
    Row row = workbook.createSheet("Log").createRow(0);
    row.createCell(0).setCellFormula("LEN(\"" + "a".repeat(300) + "\")");
    name(workbook, "long", "\"SHORT\"", -1);
    row.createCell(1).setCellFormula("LEN(long)");
    Map<String, byte[]> parts = Packages.parts(bytes(workbook));
    parts.computeIfPresent(
        "xl/workbook.xml",
        (part, xml) ->
            new String(xml, StandardCharsets.UTF_8)
                .replace("SHORT", "a".repeat(300))
                .getBytes(StandardCharsets.UTF_8));
    Book book = Books.open(Packages.zip(parts), "log.xlsx");
    Calculation calculation = new Calculation(book, Cellar.catalogue(), (s, r, c) -> true);
    for (int column = 0; column < 2; column++) {
      Place place = new Place(0, column);
      assertFalse(calculation.reads(0, place).canBeRead());
      assertEquals(
          new Outcome.Beyond("it is written in a way that is not known here."),
          calculation.outcome(0, place));
    }
  }
}
