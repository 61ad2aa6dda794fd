package meadcell.calc.extension;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.beans.PropertyValue;
import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XNameAccess;
import com.sun.star.task.XJobExecutor;
import com.sun.star.uno.UnoRuntime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import meadcell.calc.menu.Installation;
import meadcell.calc.menu.Menu;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.ReferencePage;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** An office in German: German texts, the same function names, a decimal comma. */
class LanguageIT {
  private static final Language GERMAN = Language.all().get(1);

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
      }
      office.service(XJobExecutor.class, Menu.SERVICE).trigger("guide");
      try (Workbook guide = office.openWorkbooks().get(0)) {
        isGerman(guide);
      }
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

  @Test
  void nothingThatIsShownLacksGermanAndNoGermanIsLeftOver() {
    Language german = Language.all().get(1);
    Catalogue catalogue = Cellar.catalogue();
    List<String> families = List.copyOf(catalogue.families().keySet());
    WizardTexts.write(catalogue, families, List.of(german));
    GuideWorkbook.write(catalogue, families, german);
    assertEquals(Set.of(), german.missing());
    assertEquals(Set.of(), german.unused());
  }

  @Test
  void everyPhraseKeepsItsPlacesForValues() {
    for (String phrase : GERMAN.translated()) {
      assertEquals(places(phrase), places(GERMAN.apply(phrase)), phrase);
    }
  }

  private static int places(String phrase) {
    return phrase.split("%s", -1).length;
  }
}
