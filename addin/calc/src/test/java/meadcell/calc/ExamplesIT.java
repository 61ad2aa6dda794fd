package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import meadcell.calc.extension.FormulaText;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.LiteralCall;
import meadcell.cellar.Cellar;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** Each function typed by its name in a cell gives what the catalogue gives. */
class ExamplesIT {
  private static final List<FunctionSpec> FUNCTIONS = List.copyOf(Cellar.catalogue().functions());

  @Test
  void everyFunctionGivesItsExample() throws Exception {
    String[] formulas =
        FUNCTIONS.stream()
            .map(function -> "=" + FormulaText.of(function.declaration().example()))
            .toArray(String[]::new);
    Object[] expected = FUNCTIONS.stream().map(ExamplesIT::topLeft).toArray();
    try (Workbook book = TestOffice.get().newWorkbook()) {
      book.type(0, formulas);
      int[] errors = book.errors(0, formulas.length);
      for (int i = 0; i < formulas.length; i++) {
        assertEquals(0, errors[i], formulas[i]);
      }
      assertArrayEquals(expected, book.column(0, formulas.length));
    }
  }

  private static Object topLeft(FunctionSpec function) {
    Object result = function.call(LiteralCall.parse(function.declaration().example()).arguments());
    return result instanceof Object[][] rows ? rows[0][0] : result;
  }
}
