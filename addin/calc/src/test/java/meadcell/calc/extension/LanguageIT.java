package meadcell.calc.extension;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.beans.PropertyValue;
import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XNameAccess;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.task.XJobExecutor;
import com.sun.star.uno.UnoRuntime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import meadcell.calc.CatalogueFunctions;
import meadcell.calc.WhyIT;
import meadcell.calc.menu.Installation;
import meadcell.calc.menu.Menu;
import meadcell.calc.menu.MenuIT;
import meadcell.calc.menu.Texts;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.ReferencePage;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** An office in German: German texts, the same function names, a decimal comma. */
class LanguageIT {
  private static final Words GERMAN = Words.in("de");

  @Test
  void textsAreGermanAndNamesStay() throws Exception {
    try (RemoteOffice office = new RemoteOffice("de")) {
      office.install(TestOffice.extension());
      office.start();
      XNameAccess wizard =
          office.service(XNameAccess.class, "com.sun.star.sheet.FunctionDescriptions");
      for (FunctionSpec function : Cellar.catalogue().functions()) {
        Object shown =
            Arrays.stream((PropertyValue[]) wizard.getByName(function.name()))
                .filter(property -> property.Name.equals("Description"))
                .findFirst()
                .orElseThrow()
                .Value;
        assertEquals(function.description(GERMAN), shown, function.name());
      }
      try (Workbook book = office.newWorkbook()) {
        UnoRuntime.queryInterface(XPropertySet.class, book.cell("A1"))
            .setPropertyValue("FormulaLocal", "=GRAVITY.TOBRIX(1,05)");
        assertEquals(Cellar.catalogue().get("GRAVITY.TOBRIX").call(1.05), book.column(0, 1)[0]);
        book.cell("A2").setFormula("=CELLAR.WHY(\"GRAVITY.TOBRIX\";1085)");
        assertEquals(
            "sg ist 1085 SG; erlaubt ist 0,98 bis 1,45. Ist 1,085 gemeint?", book.column(0, 2)[1]);
        String page =
            new CatalogueFunctions()
                .explain(
                    office.context(),
                    RemoteOffice.as(XSpreadsheetDocument.class, book.document()),
                    book.cell("A1"),
                    new Texts("de"));
        assertTrue(page.contains("\n  sg = 1,05 SG: "), page);
        assertTrue(page.contains("\nErgebnis\n  12,3975 °Bx\n"), page);
        WhyIT.typedNumbersAreReadAsByCalc(book);
      }
      office.service(XJobExecutor.class, Menu.SERVICE).trigger("guide");
      try (Workbook guide = office.openWorkbooks().get(0)) {
        isGerman(guide);
      }
      assertTrue(MenuIT.pagesShown(office).contains("<html lang=\"de\">"));
      String report = new Installation(office.context()).report();
      assertTrue(report.endsWith("Alles in Ordnung."), report);
    }
  }

  /** Every line of every page. */
  private static void isGerman(Workbook guide) throws Exception {
    for (String family : Cellar.catalogue().families().keySet()) {
      List<Object> page = new ArrayList<>();
      for (FunctionSpec function : Cellar.catalogue().functions(family)) {
        page.add("");
        ReferencePage.of(function, GERMAN).sections().forEach(s -> page.addAll(s.lines()));
      }
      assertEquals(page, List.of(guide.sheet(family).column(1, page.size())));
    }
    assertEquals("Zweck", guide.sheet("TANK").shown("A2"));
  }
}
