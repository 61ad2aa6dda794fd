package meadcell.batch.calculation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import meadcell.catalogue.CallMatrix;
import meadcell.catalogue.CallMatrix.Answer;
import meadcell.catalogue.CallMatrix.BlankCell;
import meadcell.catalogue.CallMatrix.Call;
import meadcell.catalogue.CallMatrix.ErrorCell;
import meadcell.catalogue.CallMatrix.Given;
import meadcell.catalogue.CallMatrix.HostError;
import meadcell.catalogue.CallMatrix.Input;
import meadcell.catalogue.CallMatrix.OwnRow;
import meadcell.catalogue.CallMatrix.Refused;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import org.apache.poi.hssf.usermodel.HSSFFormulaEvaluator;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.ValueEval;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** The calls that every host must answer alike, through POI's evaluator. */
class ArgumentMatrixTest {
  private static final int OWN_ROW = 50;

  private final HSSFWorkbook workbook = new HSSFWorkbook();
  private final Sheet sheet = workbook.createSheet("matrix");
  private final HSSFFormulaEvaluator evaluator;
  private int free;

  ArgumentMatrixTest() {
    workbook.addToolPack(new PoiFunctions(Cellar.catalogue()));
    evaluator = workbook.getCreationHelper().createFormulaEvaluator();
  }

  @TestFactory
  Stream<DynamicTest> answersAsDeclared() {
    return CallMatrix.of(Cellar.catalogue()).stream()
        .map(call -> DynamicTest.dynamicTest(call.label(), () -> check(call)));
  }

  private void check(Call call) {
    while (sheet.getLastRowNum() >= 0) {
      sheet.removeRow(sheet.getRow(sheet.getLastRowNum()));
    }
    free = 1;
    List<String> arguments = new ArrayList<>();
    for (Input input : call.inputs()) {
      arguments.add(written(input));
    }
    String formula = "(" + call.function().name() + "(" + String.join(",", arguments) + "))";
    evaluator.clearAllCachedResultValues();
    ValueEval result =
        evaluator
            ._getWorkbookEvaluator()
            .evaluateList(
                formula,
                new CellReference("matrix", OWN_ROW, 0, false, false),
                new CellRangeAddress(OWN_ROW, OWN_ROW, 0, 0));
    if (result instanceof RefusedArea refused) {
      result = refused.error();
    }
    if (call.outcome() instanceof Answer answer) {
      assertEquals(text(answer.value()), text(CellValues.shown(result)), formula);
    } else if (call.outcome() instanceof Refused refused) {
      assertEquals(SheetError.of(refused.refusal()), result, formula);
    } else {
      assertInstanceOf(HostError.class, call.outcome());
      assertInstanceOf(ErrorEval.class, result, formula);
    }
  }

  /** All digits; blanks of a result are blank cells. */
  private static String text(Object value) {
    if (value instanceof Refusal refusal) {
      return SheetError.of(refusal).getErrorString();
    }
    if (!(value instanceof Object[][] rows)) {
      return String.valueOf(value == null ? "" : value);
    }
    StringBuilder text = new StringBuilder();
    for (Object[] row : rows) {
      for (Object cell : row) {
        text.append(text(cell)).append(',');
      }
      text.append(';');
    }
    return text.toString();
  }

  private String written(Input input) {
    if (input instanceof Given given && given.value() instanceof Object[][] cells) {
      return range(OWN_ROW + 10, cells);
    }
    if (input instanceof Given given) {
      return given.value() instanceof String text
          ? '"' + text.replace("\"", "\"\"") + '"'
          : given.value() == null ? "" : given.value().toString();
    }
    if (input instanceof OwnRow own) {
      return range(OWN_ROW - 1, new Object[][] {{"x"}, {own.value()}, {"x"}});
    }
    if (input instanceof ErrorCell) {
      String place = range(OWN_ROW + 10, new Object[][] {{"x"}});
      sheet.getRow(OWN_ROW + 10).getCell(free - 2).setCellFormula("NA()");
      return place.substring(0, place.indexOf(':') < 0 ? place.length() : place.indexOf(':'));
    }
    assertInstanceOf(BlankCell.class, input);
    return new CellReference(OWN_ROW + 9, free++).formatAsString();
  }

  /** Lays cells out beside each other and gives their address. */
  private String range(int top, Object[][] cells) {
    int left = free;
    for (int i = 0; i < cells.length; i++) {
      Row row = sheet.getRow(top + i) == null ? sheet.createRow(top + i) : sheet.getRow(top + i);
      for (int j = 0; j < cells[i].length; j++) {
        Cell cell = row.createCell(left + j);
        if (cells[i][j] instanceof Double number) {
          cell.setCellValue(number);
        } else if (cells[i][j] instanceof String text && !text.isEmpty()) {
          cell.setCellValue(text);
        }
      }
    }
    free = left + cells[0].length + 1;
    int right = left + cells[0].length - 1;
    return new CellRangeAddress(top, top + cells.length - 1, left, right).formatAsString();
  }
}
