package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import meadcell.catalogue.LiteralCall;
import meadcell.cellar.Cellar;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** Functions that call another by its name, its arguments in cells: texts, blanks and units too. */
class UncertaintyIT {
  private static Object call(String text) {
    LiteralCall call = LiteralCall.parse(text);
    return Cellar.catalogue().get(call.function()).call(call.arguments());
  }

  @Test
  void argumentsInCellsAnswerAsLiteralsDo() throws Exception {
    try (Workbook book = TestOffice.get().newWorkbook()) {
      book.type(0, "1.05", "77", "68", "", "US");
      book.type(1, "0.0004", "1.8", "", "", "");
      book.type(2, "1", "2");
      book.type(
          3,
          "=CELLAR.UNCERTAINTY(\"GRAVITY.CORRECT\";A1:A5;B1:B5)",
          "=CELLAR.UNCERTAINTY(\"GRAVITY.CORRECT\";A1:A5;B1:B5;C1:C2)",
          "=CELLAR.SOLVE(\"GRAVITY.CORRECT\";1.052;2;A1:A5)",
          "=CELLAR.UNCERTAINTY(\"BLEND.ABV\";A1:A5;B1:B5)",
          "=CELLAR.WHY(\"CELLAR.SOLVE\";\"BOTTLE.DELLE\";200;1;A1:A2)");
      String correct = "(\"GRAVITY.CORRECT\";{1.05;77;68;\"\";\"US\"};{0.0004;1.8;\"\";\"\";\"\"}";
      Object[] shown = book.column(3, 5);
      assertEquals(call("CELLAR.UNCERTAINTY" + correct + ")"), shown[0]);
      assertEquals(call("CELLAR.UNCERTAINTY" + correct + ";{1;2})"), shown[1]);
      assertEquals(
          call("CELLAR.SOLVE(\"GRAVITY.CORRECT\";1.052;2;{1.05;\"\";68;\"\";\"US\"})"), shown[2]);
      assertEquals(CellError.ILLEGAL_ARGUMENT.code(), book.errors(3, 5)[3]);
      assertEquals("abv is 77 % vol; it must be 1 to 25.", shown[4]);
      book.typeArray("F1:F5", "=CELLAR.SHARES(\"GRAVITY.CORRECT\";A1:A5;B1:B5)");
      assertArrayEquals(
          (Object[][]) call("CELLAR.SHARES" + correct + ")"), book.values("F1:F5"), "shares");
    }
  }

  @Test
  void twoInstrumentsAreTwoRanges() throws Exception {
    try (Workbook book = TestOffice.get().newWorkbook()) {
      book.type(0, "225", "20", "57.6", "33");
      book.type(1, "1", "0.1", "0.2", "0.2");
      book.type(2, "1", "2");
      book.type(3, "3", "4");
      book.type(4, "=CELLAR.UNCERTAINTY(\"SULFITE.DOSE\";A1:A4;B1:B4;C1:C2;D1:D2)");
      assertEquals(
          call("CELLAR.UNCERTAINTY(\"SULFITE.DOSE\";{225;20;57.6;33};{1;0.1;0.2;0.2};{1;2};{3;4})"),
          book.column(4, 1)[0]);
    }
  }
}
