package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipFile;
import meadcell.samples.sheet.Book;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint;
import org.apache.poi.ss.usermodel.FormulaEvaluator;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The workbooks as built: Book.finish() itself refuses to leave an error cell behind. */
class BooksTest {
  private static final Pattern TEXT = Pattern.compile("\"((?:[^\"]|\"\")*)\"");
  private static final String NAMES = "meadcell.samples.Samples#names";

  @ParameterizedTest
  @MethodSource(NAMES)
  void theFileCheckedInIsTheOneThatTheCodeBuilds(String name) throws IOException {
    byte[] built = Build.xlsx(Build.BOOKS.get(name).get().workbook());
    assertEquals(
        List.of(),
        Samples.differences(new XSSFWorkbook(new ByteArrayInputStream(built)), Samples.open(name)));
  }

  /** What the file format allows; a spreadsheet that holds to it calls the whole file damaged. */
  @ParameterizedTest
  @MethodSource(NAMES)
  void formulasAndTheirTextsAreNotTooLong(String name) throws IOException {
    for (Sheet sheet : Samples.open(name)) {
      for (Row row : sheet) {
        for (Cell cell : row) {
          if (cell.getCellType() == CellType.FORMULA) {
            String formula = cell.getCellFormula();
            String where = sheet.getSheetName() + "!" + cell.getAddress();
            assertTrue(formula.length() <= 8192, where + ": " + formula.length());
            assertEquals(
                List.of(),
                TEXT.matcher(formula)
                    .results()
                    .map(text -> text.group(1).replace("\"\"", "\""))
                    .filter(text -> text.length() > 255)
                    .toList(),
                where);
          }
        }
      }
    }
  }

  /** The cellar book's, which an office computes: OfficeIT. */
  @ParameterizedTest
  @ValueSource(strings = {"first-week", "erste-woche"})
  void inUsUnitsEveryNumberIsTheSameQuantity(String name) {
    Book book = Build.BOOKS.get(name).get();
    Map<XSSFCell, Double> metric = new HashMap<>();
    book.fields()
        .forEach(
            (cell, field) -> {
              if (field.isNumber() && Samples.value(cell) instanceof Double number) {
                metric.put(cell, number);
              }
            });
    Samples.named(book.workbook(), "units").setCellValue("US");
    book.evaluate();
    FormulaEvaluator evaluator = book.workbook().getCreationHelper().createFormulaEvaluator();
    Cell scratch = book.workbook().createSheet("scratch").createRow(0).createCell(0);
    metric.forEach(
        (cell, number) -> {
          if (book.workbook().getSheetIndex(cell.getSheet()) == 0) {
            return; // the factors themselves
          }
          scratch.setCellFormula(book.fields().get(cell).following(number));
          evaluator.clearAllCachedResultValues();
          double expected = evaluator.evaluate(scratch).getNumberValue();
          assertEquals(
              expected,
              cell.getNumericCellValue(),
              1e-6 * Math.max(1e-3, Math.abs(expected)),
              () -> cell.getSheet().getSheetName() + "!" + cell.getAddress() + " " + cell);
        });
    assertTrue(metric.size() > 20);
  }

  @ParameterizedTest
  @MethodSource(NAMES)
  void headsStayOnTheScreenInBothFormats(String name) throws IOException {
    String settings;
    try (ZipFile ods = new ZipFile(Samples.file(name, "ods").toFile())) {
      settings =
          new String(
              ods.getInputStream(ods.getEntry("settings.xml")).readAllBytes(),
              StandardCharsets.UTF_8);
    }
    XSSFWorkbook book = Samples.open(name);
    for (Sheet sheet : book) {
      if (book.isSheetHidden(book.getSheetIndex(sheet))) {
        continue;
      }
      String view = settings.split("entry config:name=\"" + sheet.getSheetName() + "\">")[1];
      int rows = sheet.getPaneInformation().getHorizontalSplitTopRow();
      assertTrue(rows > 0, sheet.getSheetName());
      assertTrue(
          view.split("</config:config-item-map-entry>")[0].contains(
              "VerticalSplitPosition\" config:type=\"int\">" + rows + "<"),
          sheet.getSheetName());
    }
  }

  @ParameterizedTest
  @CsvSource({"cellar-book, 4", "first-week, 0", "erste-woche, 0"})
  void chartsAreInBothFormats(String name, int charts) throws IOException {
    int drawn = 0;
    for (Sheet sheet : Samples.open(name)) {
      var drawing = ((XSSFSheet) sheet).getDrawingPatriarch();
      drawn += drawing == null ? 0 : drawing.getCharts().size();
    }
    assertEquals(charts, drawn);
    try (ZipFile ods = new ZipFile(Samples.file(name, "ods").toFile())) {
      assertEquals(
          charts,
          ods.stream().filter(e -> e.getName().matches("Object \\d+/content\\.xml")).count());
    }
  }

  @ParameterizedTest
  @MethodSource(NAMES)
  void formulasAreLockedAndInputsAreOpen(String name) throws IOException {
    for (Sheet sheet : Samples.open(name)) {
      boolean log = !((XSSFSheet) sheet).getTables().isEmpty();
      assertEquals(!log, sheet.getProtect(), sheet.getSheetName());
      if (!hidden(sheet)) {
        assertTrue(sheet.getPaneInformation().isFreezePane(), sheet.getSheetName());
        assertTrue(sheet.getFitToPage(), sheet.getSheetName());
      }
      int open = 0;
      for (Row row : sheet) {
        for (Cell cell : row) {
          open += cell.getCellStyle().getLocked() ? 0 : 1;
          if (cell.getCellType() == CellType.FORMULA
              && cell.getCellFormula().matches(".*[A-Z]+\\.[A-Z]+\\(.*")) {
            assertTrue(cell.getCellStyle().getLocked(), sheet.getSheetName() + cell.getAddress());
          }
        }
      }
      assertTrue(
          open == 0 || hidden(sheet) || !sheet.getDataValidations().isEmpty(),
          sheet.getSheetName());
    }
  }

  /** An office takes no formula in a cell that stops whoever types what it does not expect. */
  @ParameterizedTest
  @MethodSource(NAMES)
  void onlyAListStopsWhoTypes(String name) throws IOException {
    int asked = 0;
    for (Sheet sheet : Samples.open(name)) {
      for (DataValidation validation : sheet.getDataValidations()) {
        boolean list =
            validation.getValidationConstraint().getValidationType()
                == DataValidationConstraint.ValidationType.LIST;
        String at =
            sheet.getSheetName()
                + validation.getRegions().getCellRangeAddresses()[0].formatAsString();
        assertTrue(
            list
                || !validation.getShowErrorBox()
                || validation.getErrorStyle() != DataValidation.ErrorStyle.STOP,
            at);
        assertTrue(validation.getPromptBoxText().length() > 5, at);
        if (validation.getShowErrorBox()) {
          asked++;
          String says = validation.getErrorBoxText();
          assertTrue(says.substring(says.indexOf(": ") + 2).length() > 10, at + ": " + says);
        }
      }
    }
    assertTrue(asked > 0);
    try (ZipFile ods = new ZipFile(Samples.file(name, "ods").toFile())) {
      String content =
          new String(
              ods.getInputStream(ods.getEntry("content.xml")).readAllBytes(),
              StandardCharsets.UTF_8);
      Matcher validation = VALIDATION.matcher(content);
      int seen = 0;
      while (validation.find()) {
        seen++;
        String text = validation.group();
        assertTrue(
            text.contains("cell-content-is-in-list")
                || text.matches("(?s).*<table:error-message[^>]*table:display=\"false\".*")
                || text.contains("table:message-type=\"warning\""),
            text);
      }
      assertTrue(seen > 0);
    }
  }

  private static final Pattern VALIDATION =
      Pattern.compile("(?s)<table:content-validation .*?</table:content-validation>");

  /** What stands below another cell's merged ones is never seen. */
  @ParameterizedTest
  @MethodSource(NAMES)
  void nothingStandsUnderMergedCells(String name) throws IOException {
    for (Sheet sheet : Samples.open(name)) {
      for (CellRangeAddress merged : sheet.getMergedRegions()) {
        for (CellAddress at : merged) {
          Row row = sheet.getRow(at.getRow());
          Cell cell = row == null ? null : row.getCell(at.getColumn());
          boolean first =
              at.getRow() == merged.getFirstRow() && at.getColumn() == merged.getFirstColumn();
          assertTrue(
              first || cell == null || cell.getCellType() == CellType.BLANK,
              sheet.getSheetName() + "!" + at);
        }
      }
    }
  }

  private static boolean hidden(Sheet sheet) {
    return sheet.getWorkbook().isSheetHidden(sheet.getWorkbook().getSheetIndex(sheet));
  }
}
