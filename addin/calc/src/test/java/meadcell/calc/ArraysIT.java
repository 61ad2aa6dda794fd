package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import meadcell.calc.extension.FormulaText;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Kind;
import meadcell.catalogue.LiteralCall;
import meadcell.catalogue.ResultSpec;
import meadcell.cellar.Cellar;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** Array formulas: scalars go element by element, rows and tables fill their cells. */
class ArraysIT {
  private static final String LOG = "GRAVITY.TOBRIX";

  @Test
  void aScalarFunctionGoesElementByElement() throws Exception {
    try (Workbook book = TestOffice.get().newWorkbook()) {
      for (FunctionSpec function : Cellar.catalogue().functions()) {
        Object[] example = LiteralCall.parse(function.declaration().example()).arguments();
        boolean scalar = function.required() > 0 && function.args().get(0).kind() == Kind.NUMBER;
        if (!scalar || function.result().shape() != ResultSpec.Shape.NUMBER) {
          continue;
        }
        Object once = function.call(example);
        example[0] = new Object[][] {{example[0]}, {"x"}, {example[0]}};
        book.typeArray("A1:A3", "=" + FormulaText.of(function.name(), example));
        Object[] cells = book.column(0, 3);
        assertEquals(once, cells[0], function.name());
        assertEquals(CellError.NO_VALUE.code(), book.errors(0, 3)[1], function.name());
        assertEquals(once, cells[2], function.name());
        book.clear("A1:A3");
      }
    }
  }

  @Test
  void aTableFillsItsCells() throws Exception {
    try (Workbook book = TestOffice.get().newWorkbook()) {
      for (FunctionSpec function : Cellar.catalogue().functions()) {
        String example = function.declaration().example();
        if (function.call(LiteralCall.parse(example).arguments()) instanceof Object[][] rows) {
          String area = "A1:" + (char) ('A' + rows[0].length - 1) + rows.length;
          book.typeArray(area, "=" + FormulaText.of(example));
          assertArrayEquals(rows, book.values(area), function.name());
          book.clear(area);
        }
      }
    }
  }

  @Test
  void mapGivesEveryRowItsValueOrItsError() throws Exception {
    try (Workbook book = TestOffice.get().newWorkbook()) {
      book.type(0, "1.05", "", "1085", "text", "1.09");
      book.typeArray("B1:B5", "=CELLAR.MAP(\"" + LOG + "\";A1:A5)");
      FunctionSpec log = Cellar.catalogue().get(LOG);
      Object[] cells = book.column(1, 5);
      assertEquals(log.call(1.05), cells[0]);
      assertEquals("", cells[1]);
      assertEquals(log.call(1.09), cells[4]);
      int illegal = CellError.ILLEGAL_ARGUMENT.code();
      assertArrayEquals(new int[] {0, 0, illegal, CellError.NO_VALUE.code(), 0}, book.errors(1, 5));
    }
  }

  @Test
  void anErrorInARangeIsTheOfficesOwnErrorForTheWholeCall() throws Exception {
    int notCalled = 504;
    try (Workbook book = TestOffice.get().newWorkbook()) {
      book.type(0, "1.05", "=NA()", "1.09");
      book.typeArray("B1:B3", "=CELLAR.MAP(\"" + LOG + "\";A1:A3)");
      assertArrayEquals(new int[] {notCalled, notCalled, notCalled}, book.errors(1, 3));
      book.typeArray("C1:C3", "=CELLAR.MAP(\"" + LOG + "\";IFERROR(A1:A3;\"\"))");
      assertArrayEquals(new int[3], book.errors(2, 3), "the remedy");
    }
  }

  @Test
  void anInlineArrayGivenToWhyFillsOneCell() throws Exception {
    try (Workbook book = TestOffice.get().newWorkbook()) {
      String why = "=CELLAR.WHY(\"BLEND.PARTS\";12;{1;2;3})";
      book.typeArray("A1:A3", why);
      Object[] cells = book.column(0, 3);
      assertEquals(cells[0], cells[1], "the one answer serves every cell of the array");
      book.clear("A1:A3");
      book.type(0, why, "", "");
      assertArrayEquals(new Object[] {cells[0], "", ""}, book.column(0, 3));
    }
  }

  @Test
  void mapGoesRowByRowThroughManyColumns() throws Exception {
    try (Workbook book = TestOffice.get().newWorkbook()) {
      book.type(0, "50", "51", "52");
      book.type(1, "64", "65", "66");
      book.type(2, "81", "82", "83");
      book.type(3, "6", "", "7");
      book.typeArray("E1:E3", "=CELLAR.MAP(\"BARREL.HEADSPACE\";A1:A3;B1:B3;C1:C3;D1:D3;1.5)");
      book.type(5, "=BARREL.HEADSPACE(A1;B1;C1;D1;1.5)", "=BARREL.HEADSPACE(A2;B2;C2;D2;1.5)");
      assertEquals(book.column(5, 1)[0], book.column(4, 1)[0]);
      assertArrayEquals(book.errors(5, 2), Arrays.copyOf(book.errors(4, 3), 2));
      assertEquals(0, book.errors(4, 3)[2]);
    }
  }
}
