package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** What is said about a call is what the call itself gets. */
public class WhyIT {
  private static final List<String> TYPED =
      List.of(
          "1.083",
          "1,083",
          "1083",
          "1.5",
          "1,5",
          "12 %",
          "2020-01-02",
          "1e2",
          "x",
          "1.083,5",
          "1,083.5",
          " 1.05 ");

  @Test
  void typedNumbersAreReadAsCalcReadsThem() throws Exception {
    try (Workbook book = TestOffice.get().newWorkbook()) {
      typedNumbersAreReadAsByCalc(book);
      assertEquals("sg is 1083 SG; it must be 0.98 to 1.45. Did you mean 1.083?", book.shown("C2"));
    }
  }

  /** In an office of any language. */
  public static void typedNumbersAreReadAsByCalc(Workbook book) throws Exception {
    int count = TYPED.size();
    String[] calls = new String[count];
    String[] whys = new String[count];
    for (int i = 0; i < count; i++) {
      calls[i] = "=GRAVITY.TOBRIX(A" + (i + 1) + ")";
      whys[i] = "=CELLAR.WHY(\"GRAVITY.TOBRIX\";A" + (i + 1) + ")";
    }
    book.type(0, TYPED.stream().map(text -> "'" + text).toArray(String[]::new));
    book.type(1, calls);
    book.type(2, whys);
    int[] errors = book.errors(1, count);
    for (int i = 0; i < count; i++) {
      String why = book.shown("C" + (i + 1));
      boolean isSaidToBeText = why.contains('"' + TYPED.get(i) + '"');
      assertEquals(errors[i] == 0, why.isEmpty(), TYPED.get(i) + ": " + why);
      assertEquals(
          errors[i] == CellError.NO_VALUE.code(), isSaidToBeText, TYPED.get(i) + ": " + why);
    }
  }
}
