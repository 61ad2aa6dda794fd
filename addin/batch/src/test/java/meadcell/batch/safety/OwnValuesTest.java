package meadcell.batch.safety;

import static meadcell.batch.TestBooks.cell;
import static meadcell.batch.TestBooks.open;
import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a person typed is not lost, and what a run fills is not taken for an input. */
class OwnValuesTest {
  @TempDir Path folder;
  private Scene scene;

  @BeforeEach
  void scene() {
    scene = new Scene(folder);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "SG | GRAVITY.CORRECT([SG]; [Temp]) | | ",
        "Sg (SG) | GRAVITY.CORRECT([sg]; [Temp]) | | ",
        "OG | GRAVITY.CORRECT({OG}; 20) | | ",
        "SG | GRAVITY.CORRECT([Temp]; [X]) | X | GRAVITY.CORRECT([SG]; 20)"
      })
  void resultsThatAreInputsAreMistakesOfThePlan(
      String result, String formula, String next, String nextFormula) throws Exception {
    Path file = scene.xlsx(parts -> {});
    byte[] before = Files.readAllBytes(file);
    if (next == null) {
      scene.plan(result, formula);
    } else {
      scene.plan(result, formula, next, nextFormula);
    }
    Run run = scene.fill(file, "--in-place", "--overwrite");
    assertEquals(ExitCode.REFUSED, run.code(), run.err());
    assertTrue(run.err().contains("is also an input"), run.err());
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  private Workbook logWithTypedResults(boolean xlsx) {
    Workbook book = Scene.log(xlsx ? new XSSFWorkbook() : new HSSFWorkbook());
    Sheet sheet = book.getSheet(Scene.SHEET);
    sheet.getRow(3).createCell(3).setCellValue("True SG");
    sheet.getRow(4).createCell(3).setCellValue(1.079);
    sheet.getRow(5).createCell(3).setCellValue("about 1.06");
    sheet.getRow(6).createCell(3).setCellFormula("B7+0.001");
    sheet.getRow(6).getCell(3).setCellValue(1.021);
    for (int row = 4; row <= 6; row++) {
      sheet.getRow(row).getCell(2).setCellValue(400); // no temperature of a cellar
    }
    return book;
  }

  @ParameterizedTest
  @ValueSource(strings = {"xlsx", "xls"})
  void refusalsDeleteNothing(String ending) throws Exception {
    Path file = scene.save(logWithTypedResults(ending.equals("xlsx")), "log." + ending);
    Run run = scene.fill(file, "--in-place", "--overwrite");
    Workbook after = open(file);
    assertEquals(1.079, cell(after, Scene.SHEET, "D5").getNumericCellValue());
    assertEquals("about 1.06", cell(after, Scene.SHEET, "D6").getStringCellValue());
    assertEquals("B7+0.001", cell(after, Scene.SHEET, "D7").getCellFormula());
    assertEquals(1.021, cell(after, Scene.SHEET, "D7").getNumericCellValue());
    assertTrue(run.err().contains("keeps what a person put there"), run.err());
  }

  @Test
  void refusalsDeleteNothingInAnOpenDocument() throws Exception {
    Path ods = folder.resolve("log.ods");
    Files.write(ods, OdsLog.of(OdsLog.typed("400")));
    Run run = scene.fill(ods, "--in-place", "--overwrite");
    String content = Scene.part(ods, "content.xml");
    assertTrue(content.contains("<text:p>about <text:span>1.06</text:span></text:p>"), content);
    assertTrue(run.out().contains("keeps what a person put there"), run.out() + run.err());
  }

  @Test
  void aPersonsOwnFormulaThatIsThePlansKeepsItsPlace() throws Exception {
    XSSFWorkbook book = Scene.log(new XSSFWorkbook());
    Sheet sheet = book.getSheet(Scene.SHEET);
    sheet.getRow(3).createCell(3).setCellValue("True SG");
    sheet.getRow(4).createCell(3).setCellFormula("GRAVITY.CORRECT(B5,C5,,$B$2)");
    sheet.getRow(4).getCell(2).setCellValue(400);
    Path file = scene.save(book, "log.xlsx");
    scene.fill(file, "--in-place");
    Cell after = cell(open(file), Scene.SHEET, "D5");
    assertEquals("GRAVITY.CORRECT(B5,C5,,$B$2)", after.getCellFormula());
    assertEquals(FormulaError.NUM.getCode(), after.getErrorCellValue());
  }

  /** As an office without the functions stores it. */
  private static void forgetResults(Path file) throws Exception {
    Workbook book = open(file);
    for (Sheet sheet : book) {
      sheet.forEach(
          row ->
              row.forEach(
                  each -> {
                    boolean isFormula =
                        each.getCellType() == org.apache.poi.ss.usermodel.CellType.FORMULA;
                    if (isFormula) {
                      each.setCellErrorValue(FormulaError.NAME.getCode());
                    }
                  }));
    }
    meadcell.batch.TestBooks.save(book, file);
  }

  @ParameterizedTest
  @ValueSource(strings = {"xlsx", "xls"})
  void refillComputesWhatAnotherProgramCouldNot(String ending) throws Exception {
    Workbook book = Scene.log(ending.equals("xlsx") ? new XSSFWorkbook() : new HSSFWorkbook());
    Sheet sheet = book.getSheet(Scene.SHEET);
    rows(sheet, 3, row("Date", "SG", "Temp", "Mine"));
    for (int row = 4; row <= 6; row++) {
      sheet.getRow(row).createCell(3).setCellFormula("GRAVITY.CORRECT(B" + (row + 1) + ",20)");
    }
    Path file = scene.save(book, "log." + ending);
    scene.plan(
        "True SG",
        Scene.CORRECT,
        "Brix",
        "GRAVITY.TOBRIX([True SG])",
        "Half",
        "GRAVITY.TOBRIX([Mine])");
    assertEquals(ExitCode.OK, Run.of("recalc", file.toString(), "--in-place").code());
    assertEquals(ExitCode.OK, scene.fill(file, "--in-place").code());
    Workbook once = open(file);
    forgetResults(file);
    Run again = scene.fill(file, "--in-place");
    assertEquals(ExitCode.OK, again.code(), again.err());
    Workbook after = open(file);
    for (String a1 : new String[] {"E5", "F5", "G5", "E6", "F6", "G6", "E7", "F7", "G7", "D7"}) {
      double expected = cell(once, Scene.SHEET, a1).getNumericCellValue();
      assertEquals(expected, cell(after, Scene.SHEET, a1).getNumericCellValue(), 1e-12, a1);
    }
  }

  private static final String COUNT = "ROW(INDIRECT(\"1:\"&C12))";
  private static final String SINGLE = "_xlfn.SINGLE(GRAVITY.CORRECT(B5:B7,20))";

  /** Formulas of the person's own, with the right results as an office of today stores them. */
  private Path logWithOwnFormulas() throws Exception {
    XSSFWorkbook book = Scene.log(new XSSFWorkbook());
    book.setCellFormulaValidation(false);
    Sheet sheet = book.getSheet(Scene.SHEET);
    rows(sheet, 11, row("Count", null, 3));
    sheet.setArrayFormula(COUNT, CellRangeAddress.valueOf("H5:H7"));
    for (int row = 4; row <= 6; row++) {
      sheet.getRow(row).getCell(7).setCellValue(row - 3);
      sheet.getRow(row).createCell(8).setCellFormula(SINGLE);
      sheet.getRow(row).getCell(8).setCellValue(CORRECTED[row - 4]);
    }
    return scene.save(book, "log.xlsx");
  }

  /** What an office picks of the column in each row, here of made-up figures. */
  private static final double[] CORRECTED = {1.0801, 1.0601, 1.0201};

  @ParameterizedTest
  @ValueSource(strings = {"fill", "recalc"})
  void aPersonsOwnFormulasThatOnlyAnOfficeComputesKeepTheirValues(String command) throws Exception {
    Path file = logWithOwnFormulas();
    Run run =
        command.equals("fill")
            ? scene.fill(file, "--in-place")
            : Run.of("recalc", file.toString(), "--in-place");
    assertTrue(run.code() == ExitCode.OK || run.code() == ExitCode.LEFT, run.err());
    Workbook after = open(file);
    for (int row = 5; row <= 7; row++) {
      Cell count = cell(after, Scene.SHEET, "H" + row);
      assertEquals(row - 4, count.getNumericCellValue(), run.err());
      assertEquals(COUNT, count.getCellFormula());
      assertEquals("H5:H7", count.getArrayFormulaRange().formatAsString());
      Cell single = cell(after, Scene.SHEET, "I" + row);
      assertEquals(CORRECTED[row - 5], single.getNumericCellValue(), run.err());
      assertEquals(SINGLE, single.getCellFormula());
    }
  }
}
