package meadcell.calc.build;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.beans.PropertyValue;
import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XNameAccess;
import com.sun.star.uno.UnoRuntime;
import java.util.Arrays;
import meadcell.calc.menu.Installation;
import meadcell.calc.office.Office;
import meadcell.calc.office.TestOffice;
import meadcell.calc.office.Workbook;
import meadcell.catalogue.FunctionSpec;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

/** An office in German: German texts, the same function names, a decimal comma. */
class LanguageIT {
  private static final Language GERMAN = Language.all().get(1);

  @Test
  void textsAreGermanAndNamesStay() throws Exception {
    try (Office office = new Office("de")) {
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
      String report = new Installation(office.context()).report();
      assertTrue(report.endsWith("Alles in Ordnung."), report);
    }
  }

  @Test
  void everyPhraseKeepsItsPlaceForAValue() {
    for (String phrase : GERMAN.translated()) {
      assertEquals(phrase.contains("%s"), GERMAN.apply(phrase).contains("%s"), phrase);
    }
  }
}
