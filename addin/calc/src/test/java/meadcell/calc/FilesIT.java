package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import meadcell.calc.extension.FormulaText;
import meadcell.catalogue.FunctionSpec;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sheet stored in each format and loaded again has the same formulas and still computes. */
class FilesIT {
  private static final List<FunctionSpec> FUNCTIONS = List.copyOf(Cellar.catalogue().functions());

  @ParameterizedTest
  @CsvSource({"ods, calc8", "xlsx, Calc MS Excel 2007 XML", "xls, MS Excel 97"})
  void formulasSurviveStoringAndLoading(String ending, String filter) throws Exception {
    RemoteOffice office = TestOffice.get();
    Path file = office.home().resolve("stored." + ending);
    Object[] before;
    try (Workbook book = office.newWorkbook()) {
      book.type(
          0,
          FUNCTIONS.stream()
              .map(function -> "=" + FormulaText.of(function.declaration().example()))
              .toArray(String[]::new));
      before = book.column(0, FUNCTIONS.size());
      book.store(file, filter);
    }
    try (Workbook book = office.open(file.toUri().toString(), true)) {
      book.recalculate();
      for (int i = 0; i < FUNCTIONS.size(); i++) {
        assertEquals(
            "=" + FUNCTIONS.get(i).name() + "(",
            book.cell("A" + (i + 1)).getFormula().replaceAll("\\(.*", "("));
      }
      assertArrayEquals(before, book.column(0, FUNCTIONS.size()));
    }
  }
}
