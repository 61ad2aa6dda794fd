package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.beans.XPropertySet;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.util.CellProtection;
import java.util.List;
import meadcell.calc.menu.Texts;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** The explanation of a cell. */
class ExplanationIT {
  private static final Texts ENGLISH = new Texts("en");

  @Test
  void everyArgumentIsNamedWithItsUnitAndItsCell() throws Exception {
    List<String> lines = explained("=BARREL.VOLUME(A1*2;A2;A3;\"US\")", "D1");
    assertEquals("=BARREL.VOLUME(A1*2,A2,A3,\"US\")", lines.get(0), "as an English office has it");
    assertTrue(lines.contains("  head = 20 in (from A1*2): Inside diameter of a head"), "" + lines);
    assertTrue(lines.contains("  bilge = 25 in (from A2): Inside diameter at the bilge"));
    assertTrue(lines.contains("  units = US"), "units may come early: " + lines);
    assertTrue(lines.contains("  shape = ellipse, since left out: Curve of the staves"));
    assertEquals("  59.8399 US gal", after(lines, "Result"));
    String source = Cellar.catalogue().get("BARREL.VOLUME").source(Words.ENGLISH);
    assertEquals("  " + source, after(lines, "Source"));
  }

  @Test
  void eachCallIsExplainedTheOuterOneFirst() throws Exception {
    List<String> lines = explained("=ROUND(GRAVITY.TOBRIX(GRAVITY.FROMBRIX(A1*2));3)", "D1");
    int outer = lines.indexOf("GRAVITY.TOBRIX(GRAVITY.FROMBRIX(A1*2))");
    int inner = lines.indexOf("GRAVITY.FROMBRIX(A1*2)");
    assertTrue(outer > 0 && inner > outer, "" + lines);
    assertTrue(lines.get(inner + 6).startsWith("  brix = 20 °Bx (from A1*2)"), "" + lines);
  }

  @Test
  void aRefusalIsExplainedByItsSentence() throws Exception {
    List<String> lines = explained("=GRAVITY.TOBRIX(B1:B9)", "D1");
    assertEquals("shows Err:502", lines.get(1));
    assertTrue(after(lines, "Arguments").startsWith("  sg = 1085 SG (from B1)"), "" + lines);
    assertEquals(
        "  sg is 1085 SG; it must be 0.98 to 1.45. Did you mean 1.085?", after(lines, "Refused"));
  }

  @Test
  void anErrorInARangeIsFound() throws Exception {
    List<String> lines = explained("=FERMENT.STATE(A1:A3;C1:C3;1)", "D1");
    assertEquals("shows Err:504", lines.get(1));
    assertEquals("  gravities is an error: C2 shows #DIV/0!.", after(lines, "Not computed"));
    lines = explained("=GRAVITY.TOBRIX(1/0)", "D1");
    assertEquals("  sg is an error: 1/0 shows #DIV/0!.", after(lines, "Not computed"));
  }

  @Test
  void everyCellOfARowIsExplained() throws Exception {
    List<String> lines = explained("{=BLEND.PARTS(12;65;24)}", "E1", "D1:E1");
    assertEquals("  share of first = 77.3585 %", after(lines, "Result"));
    assertTrue(lines.contains("  share of second = 22.6415 % (in this cell)"), "" + lines);
  }

  @Test
  void inAnArrayTheChosenElementIsExplained() throws Exception {
    for (String formula :
        List.of("{=GRAVITY.TOBRIX($C$4:$C$6)}", "{=CELLAR.MAP(\"GRAVITY.TOBRIX\";$C$4:$C$6)}")) {
      List<String> lines = explained(formula, "D2", "D1:D3");
      assertTrue(after(lines, "Arguments").startsWith("  sg = 1.05 SG (from C5)"), "" + lines);
      assertEquals("  12.3975 °Bx", after(lines, "Result"));
    }
  }

  @Test
  void aCellOfAnotherSheetIsNamedWithItsSheet() throws Exception {
    try (Workbook book = book()) {
      RemoteOffice.as(XSpreadsheetDocument.class, book.document())
          .getSheets()
          .insertNewByName("Log book", (short) 1);
      book.sheet("Log book").type(0, "1.05");
      book.cell("D1").setFormula("=GRAVITY.TOBRIX($'Log book'.A1)");
      List<String> lines = explained(book, "D1");
      assertTrue(
          after(lines, "Arguments").startsWith("  sg = 1.05 SG (from Log book.A1)"), "" + lines);
    }
  }

  @Test
  void wordsAreThoseOfTheLanguageAndNumbersThoseOfTheLocale() throws Exception {
    try (Workbook book = book()) {
      book.cell("D1").setFormula("=GRAVITY.TOBRIX(C5)");
      List<String> lines = explained(book, "D1", new Texts("de"));
      assertTrue(after(lines, "Argumente").startsWith("  sg = 1.05 SG (aus C5)"), "" + lines);
      assertEquals("  12.3975 °Bx", after(lines, "Ergebnis"));
    }
  }

  @Test
  void aFormulaWithoutOurFunctionsIsSaidToHaveNone() throws Exception {
    assertEquals(List.of(ENGLISH.say("noCall")), explained("=SUM(A1:A2)", "D1"));
  }

  @Test
  void aSheetProtectedWithoutPasswordIsExplainedToo() throws Exception {
    try (Workbook book = book()) {
      book.cell("D1").setFormula("=GRAVITY.FROMBRIX(0)");
      book.protect("");
      assertEquals("  1 SG", after(explained(book, "D1"), "Result"));
    }
    try (Workbook book = book()) {
      book.cell("D1").setFormula("=GRAVITY.FROMBRIX(0)");
      book.protect("secret");
      assertEquals(List.of(ENGLISH.say("protected")), explained(book, "D1"));
    }
  }

  @Test
  void aFormulaThatItsSheetHidesIsNotTold() throws Exception {
    try (Workbook book = book()) {
      book.cell("D1").setFormula("=GRAVITY.FROMBRIX(0)");
      CellProtection hidden = new CellProtection(true, true, false, false);
      RemoteOffice.as(XPropertySet.class, book.cell("D1"))
          .setPropertyValue("CellProtection", hidden);
      assertEquals("  1 SG", after(explained(book, "D1"), "Result"), "not protected yet");
      book.protect("");
      assertEquals(List.of(ENGLISH.say("hidden")), explained(book, "D1"));
    }
  }

  private static String after(List<String> lines, String heading) {
    assertTrue(lines.contains(heading), heading + " in " + lines);
    return lines.get(lines.indexOf(heading) + 1);
  }

  private static Workbook book() throws Exception {
    Workbook book = TestOffice.get().newWorkbook();
    book.type(0, "10", "25", "32");
    book.type(1, "1085");
    book.type(2, "1.05", "=1/0", "1.04", "1.04", "1.05", "1.06");
    return book;
  }

  private static List<String> explained(String formula, String cell) throws Exception {
    return explained(formula, cell, cell);
  }

  private static List<String> explained(String formula, String cell, String area) throws Exception {
    try (Workbook book = book()) {
      if (formula.startsWith("{")) {
        book.typeArray(area, formula.substring(1, formula.length() - 1));
      } else {
        book.cell(cell).setFormula(formula);
      }
      List<String> lines = explained(book, cell);
      assertEquals(formula, book.cell(cell).getFormula(), "the document is left alone");
      return lines;
    }
  }

  private static List<String> explained(Workbook book, String cell) throws Exception {
    return explained(book, cell, ENGLISH);
  }

  private static List<String> explained(Workbook book, String cell, Texts texts) throws Exception {
    return new Explanation(TestOffice.get().context(), texts)
        .of(UnoRuntime.queryInterface(XSpreadsheetDocument.class, book.document()), book.cell(cell))
        .lines()
        .toList();
  }
}
