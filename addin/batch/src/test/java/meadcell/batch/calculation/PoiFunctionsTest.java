package meadcell.batch.calculation;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Locale;
import java.util.stream.Stream;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.Place;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.LiteralCall;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class PoiFunctionsTest {
  private static final Catalogue CATALOGUE = Cellar.catalogue();

  private final Workbook workbook = new XSSFWorkbook();
  private final Sheet sheet = workbook.createSheet("log");
  private final PoiFunctions functions = new PoiFunctions(CATALOGUE);

  {
    workbook.addToolPack(functions);
  }

  @TestFactory
  Stream<DynamicTest> everyExampleGivesTheCataloguesAnswer() {
    Calculator calculator = new Calculator(CATALOGUE);
    return CATALOGUE.functions().stream()
        .map(
            function ->
                DynamicTest.dynamicTest(
                    function.name(),
                    () -> {
                      String example = function.declaration().example();
                      Calculator.Answer answer = calculator.evaluate(example);
                      Object expected = function.call(LiteralCall.parse(example).arguments());
                      assertTrue(answer.isValue(), () -> answer.why());
                      assertEquals(
                          Words.ENGLISH.shown(expected), Words.ENGLISH.shown(answer.value()));
                    }));
  }

  @TestFactory
  Stream<DynamicTest> everyNameIsReadInBothFileFormatsInAnyCaseAndWithItsStoredPrefix() {
    return CATALOGUE.functions().stream()
        .map(FunctionSpec::name)
        .map(
            name ->
                DynamicTest.dynamicTest(
                    name,
                    () -> {
                      for (String kind : new String[] {"a.xls", "a.xlsx"}) {
                        Book book = Books.open(empty(kind), kind);
                        BookSheet any = book.sheets().get(0);
                        Place home = new Place(0, 0);
                        for (String spelling :
                            new String[] {name, name.toLowerCase(Locale.ROOT), "_xll." + name}) {
                          any.putFormula(home, spelling + "()");
                          Outcome outcome =
                              new Calculation(book, CATALOGUE, (s, r, c) -> true).outcome(0, home);
                          assertFalse(outcome instanceof Outcome.Beyond, outcome.toString());
                        }
                      }
                    }));
  }

  private static byte[] empty(String kind) throws IOException {
    try (Workbook book = kind.endsWith("x") ? new XSSFWorkbook() : new HSSFWorkbook()) {
      book.createSheet();
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      book.write(bytes);
      return bytes.toByteArray();
    }
  }

  @Test
  void columnGivenToSingleValueTakesItsOwnRow() {
    numbers(0, 1.04, 1.09);
    Cell second = formula(1, 3, "GRAVITY.TOBRIX(A1:A2)");
    assertEquals(call("GRAVITY.TOBRIX", 1.09), evaluated(second).getNumericCellValue());
    Cell outside = formula(5, 3, "GRAVITY.TOBRIX(A1:A2)");
    assertError(FormulaError.VALUE, outside);
  }

  @Test
  void arrayFormulaGoesCellByCellWhereverItStands() {
    numbers(0, 1.04, 1.09, 0.5);
    sheet.setArrayFormula("GRAVITY.TOBRIX(A1:A3)", CellRangeAddress.valueOf("D11:D14"));
    assertEquals(call("GRAVITY.TOBRIX", 1.04), evaluated(cell(10, 3)).getNumericCellValue());
    assertEquals(call("GRAVITY.TOBRIX", 1.09), evaluated(cell(11, 3)).getNumericCellValue());
    assertError(FormulaError.NUM, cell(12, 3));
    assertError(FormulaError.NA, cell(13, 3));
  }

  @Test
  void arrayResultFillsItsRangeAndShowsItsFirstCellElsewhere() {
    numbers(0, 1.04, 1.09);
    sheet.setArrayFormula(
        "CELLAR.MAP(\"GRAVITY.TOBRIX\",A1:A2)", CellRangeAddress.valueOf("F7:F8"));
    assertEquals(call("GRAVITY.TOBRIX", 1.09), evaluated(cell(7, 5)).getNumericCellValue());
    Cell plain = formula(9, 9, "CELLAR.MAP(\"GRAVITY.TOBRIX\",A1:A2)");
    assertEquals(call("GRAVITY.TOBRIX", 1.04), evaluated(plain).getNumericCellValue());
    Cell nested = formula(9, 10, "SUM(CELLAR.MAP(\"GRAVITY.TOBRIX\",A1:A2))");
    assertEquals(
        call("GRAVITY.TOBRIX", 1.04) + call("GRAVITY.TOBRIX", 1.09),
        evaluated(nested).getNumericCellValue(),
        1e-12);
  }

  @Test
  void arrayResultsFollowChangedCells() {
    numbers(0, 1.04, 1.09);
    sheet.setArrayFormula("GRAVITY.TOBRIX(A1:A2)", CellRangeAddress.valueOf("D1:D2"));
    evaluated(cell(0, 3));
    cell(0, 0).setCellValue(1.05);
    functions.forget();
    assertEquals(call("GRAVITY.TOBRIX", 1.05), evaluated(cell(0, 3)).getNumericCellValue());
  }

  @Test
  void blankTextAndTruthArriveAsInCalc() {
    sheet.createRow(0).createCell(0).setCellValue("1.04");
    cell(1, 0).setCellValue("Nov 3");
    cell(2, 0).setCellValue(true);
    assertEquals(
        call("GRAVITY.TOBRIX", 1.04),
        evaluated(formula(0, 5, "GRAVITY.TOBRIX(A1)")).getNumericCellValue());
    assertError(FormulaError.VALUE, formula(1, 5, "GRAVITY.TOBRIX(A2)"));
    assertEquals(0, evaluated(formula(2, 5, "GRAVITY.TOBRIX(A3)")).getNumericCellValue());
    assertError(FormulaError.NUM, formula(3, 5, "GRAVITY.TOBRIX(A9)"));
    assertTrue(
        functions.takeRefused().stream().anyMatch(r -> r.refusal().getMessage().contains("blank")));
  }

  @Test
  void errorsPassThrough() {
    formula(0, 0, "1/0");
    assertError(FormulaError.DIV0, formula(0, 5, "GRAVITY.TOBRIX(A1)"));
    assertError(FormulaError.DIV0, formula(0, 6, "CELLAR.MAP(\"GRAVITY.TOBRIX\",A1:A2)"));
  }

  @Test
  void refusalsBecomeTheDocumentedErrors() {
    assertAll(
        () -> assertError(FormulaError.NUM, formula(0, 0, "GRAVITY.TOBRIX(0.5)")),
        () -> assertError(FormulaError.VALUE, formula(0, 0, "GRAVITY.TOBRIX(\"x\")")),
        () -> assertError(FormulaError.VALUE, formula(0, 0, "GRAVITY.TOBRIX()")),
        () -> assertError(FormulaError.NUM, formula(0, 0, "CELLAR.SOURCE(\"NO.SUCH\")")));
  }

  @Test
  void refusalIsKeptWithItsCellAndSentence() {
    evaluated(formula(4, 2, "GRAVITY.TOBRIX(1085)"));
    PoiFunctions.Refused refused = functions.takeRefused().get(0);
    assertArrayEquals(
        new int[] {0, 4, 2}, new int[] {refused.sheet(), refused.row(), refused.column()});
    assertTrue(refused.refusal().getMessage().contains("Did you mean 1.085?"));
    assertTrue(functions.takeRefused().isEmpty());
  }

  private static double call(String name, Object... args) {
    return (Double) CATALOGUE.get(name).call(args);
  }

  private void numbers(int column, double... values) {
    for (int i = 0; i < values.length; i++) {
      cell(i, column).setCellValue(values[i]);
    }
  }

  private Cell cell(int row, int column) {
    var line = sheet.getRow(row) == null ? sheet.createRow(row) : sheet.getRow(row);
    return line.getCell(column) == null ? line.createCell(column) : line.getCell(column);
  }

  private Cell formula(int row, int column, String formula) {
    Cell cell = cell(row, column);
    cell.setCellFormula(formula);
    return cell;
  }

  private Cell evaluated(Cell cell) {
    workbook.getCreationHelper().createFormulaEvaluator().evaluateFormulaCell(cell);
    return cell;
  }

  private void assertError(FormulaError expected, Cell cell) {
    evaluated(cell);
    assertEquals(CellType.ERROR, cell.getCachedFormulaResultType());
    assertEquals(expected, FormulaError.forInt(cell.getErrorCellValue()));
  }
}
