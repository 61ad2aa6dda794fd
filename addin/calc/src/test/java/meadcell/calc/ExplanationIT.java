package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.uno.UnoRuntime;
import java.util.List;
import meadcell.calc.menu.Texts;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** The menu's explanation of a cell. */
class ExplanationIT {
  private static final String SOURCE =
      "Source: " + Cellar.catalogue().get("GRAVITY.TOBRIX").declaration().source();

  @Test
  void eachCallIsExplainedWithItsValues() throws Exception {
    assertEquals(
        List.of(
            "GRAVITY.TOBRIX(GRAVITY.FROMBRIX(A1*2))",
            "   sg = 1.0",
            "gives",
            SOURCE,
            "",
            "GRAVITY.FROMBRIX(A1*2)",
            "   brix = 20   (A1*2)",
            "gives 1.0"),
        explained("=ROUND(GRAVITY.TOBRIX(GRAVITY.FROMBRIX(A1*2));3)&\"; (\"").stream()
            .limit(8)
            .map(line -> line.replaceAll("(sg = 1\\.0|gives 1\\.0|gives).*", "$1"))
            .map(line -> line.startsWith("gives") && !line.endsWith("1.0") ? "gives" : line)
            .toList());
  }

  @Test
  void aRefusalIsExplainedByItsSentence() throws Exception {
    assertEquals(
        List.of(
            "GRAVITY.TOBRIX(B1:B9)",
            "   sg = 1085   (B1:B9)",
            "is refused (Err:502). sg is 1085 SG; it must be 1 to 1.45. Did you mean 1.085?",
            SOURCE),
        explained("=GRAVITY.TOBRIX(B1:B9)"));
  }

  @Test
  void anErrorInAnArgumentIsNotOurs() throws Exception {
    List<String> lines = explained("=GRAVITY.TOBRIX(1/0)");
    assertEquals("   sg = #DIV/0!   (1/0)", lines.get(1));
    assertTrue(lines.get(2).startsWith("is not computed (#DIV/0!)"), lines.get(2));
  }

  @Test
  void aFormulaWithoutOurFunctionsIsSaidToHaveNone() throws Exception {
    assertEquals(new Texts("en").say("noCall"), String.join("\n", explained("=SUM(A1:A2)")));
  }

  @Test
  void aSheetProtectedWithoutPasswordIsExplainedToo() throws Exception {
    assertEquals("gives 1", explained("=GRAVITY.FROMBRIX(0)", "").get(2));
    assertEquals(
        List.of(new Texts("en").say("protected")), explained("=GRAVITY.FROMBRIX(0)", "secret"));
  }

  private static List<String> explained(String formula) throws Exception {
    return explained(formula, null);
  }

  private static List<String> explained(String formula, String password) throws Exception {
    RemoteOffice office = TestOffice.get();
    try (Workbook book = office.newWorkbook()) {
      book.type(0, "10");
      book.type(1, "1085");
      book.type(2, formula);
      if (password != null) {
        book.protect(password);
      }
      String text =
          new Explanation(office.context(), new Texts("en"))
              .of(
                  UnoRuntime.queryInterface(XSpreadsheetDocument.class, book.document()),
                  book.cell("C1"));
      assertEquals(formula, book.cell("C1").getFormula(), "the document is left alone");
      return text.lines().toList();
    }
  }
}
