package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import meadcell.calc.extension.FormulaText;
import meadcell.catalogue.CallMatrix;
import meadcell.catalogue.CallMatrix.Answer;
import meadcell.catalogue.CallMatrix.BlankCell;
import meadcell.catalogue.CallMatrix.Call;
import meadcell.catalogue.CallMatrix.ErrorCell;
import meadcell.catalogue.CallMatrix.Given;
import meadcell.catalogue.CallMatrix.Input;
import meadcell.catalogue.CallMatrix.OwnRow;
import meadcell.catalogue.CallMatrix.Refused;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** Every function, called well and badly, answers in a cell as the catalogue says. */
class ArgumentMatrixIT {
  private static final String BLANK = "Z1";
  private static final String ERROR = "Y1";

  /** Rows a call takes: its own and one on either side for {@link OwnRow}. */
  private static final int ROWS = 3;

  @Test
  void everyCallIsAnsweredOrRefusedAsTheCatalogueDoes() throws Exception {
    List<Call> calls = CallMatrix.of(Cellar.catalogue());
    String[] formulas = new String[calls.size() * ROWS];
    String[] columns = new String[calls.size() * ROWS];
    Arrays.fill(formulas, "");
    Arrays.fill(columns, "");
    for (int i = 0; i < calls.size(); i++) {
      int row = i * ROWS + 1;
      List<String> shown = new ArrayList<>();
      for (Input input : calls.get(i).inputs()) {
        shown.add(shown(input, row));
        if (input instanceof OwnRow own) {
          columns[row - 1] = "x";
          columns[row] = typed(own.value());
          columns[row + 1] = "x";
        }
      }
      formulas[row] = "=" + calls.get(i).function().name() + "(" + String.join(";", shown) + ")";
    }
    try (Workbook book = TestOffice.get().newWorkbook()) {
      book.cell(ERROR).setFormula("=NA()");
      book.type(1, columns);
      book.type(0, formulas);
      Object[] values = book.column(0, formulas.length);
      int[] errors = book.errors(0, formulas.length);
      List<String> wrong = new ArrayList<>();
      for (int i = 0; i < calls.size(); i++) {
        int row = i * ROWS + 1;
        String got = errors[row] == 0 ? "" + values[row] : "error " + errors[row];
        String want = want(calls.get(i), errors[row]);
        if (!got.equals(want)) {
          wrong.add(calls.get(i).label() + ": " + formulas[row] + " gave " + got + ", not " + want);
        }
      }
      assertEquals("", String.join("\n", wrong), wrong.size() + " of " + calls.size() + " calls");
    }
  }

  @Test
  void whySaysTheSentenceOfEveryRefusal() throws Exception {
    List<String> formulas = new ArrayList<>();
    List<Object> sentences = new ArrayList<>();
    for (Call call : CallMatrix.of(Cellar.catalogue())) {
      if (call.outcome() instanceof Refused refused
          && call.inputs().stream().allMatch(Given.class::isInstance)) {
        List<String> shown = new ArrayList<>(List.of('"' + call.function().name() + '"'));
        call.inputs().forEach(input -> shown.add(shown(input, 0)));
        formulas.add("=CELLAR.WHY(" + String.join(";", shown) + ")");
        sentences.add(refused.refusal().getMessage());
      }
    }
    try (Workbook book = TestOffice.get().newWorkbook()) {
      book.type(0, formulas.toArray(String[]::new));
      assertArrayEquals(sentences.toArray(), book.column(0, formulas.size()));
    }
  }

  private static String shown(Input input, int row) {
    if (input instanceof Given given) {
      return FormulaText.literal(given.value());
    }
    if (input instanceof BlankCell) {
      return BLANK;
    }
    if (input instanceof ErrorCell) {
      return ERROR;
    }
    return "B" + row + ":B" + (row + 2);
  }

  private static String typed(Object value) {
    return value instanceof String text ? text : "=" + value;
  }

  private static String want(Call call, int error) {
    if (call.outcome() instanceof Answer answer) {
      Object value = answer.value() instanceof Object[][] rows ? rows[0][0] : answer.value();
      return value instanceof Refusal refusal ? error(refusal) : "" + value;
    }
    if (call.outcome() instanceof Refused refused) {
      return error(refused.refusal());
    }
    return "error " + (error == 0 ? "of the office" : error);
  }

  private static String error(Refusal refusal) {
    return "error " + CellError.of(refusal).code();
  }
}
