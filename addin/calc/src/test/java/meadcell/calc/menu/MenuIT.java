package meadcell.calc.menu;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.sun.star.container.XEnumeration;
import com.sun.star.container.XNameAccess;
import com.sun.star.frame.XDesktop;
import com.sun.star.frame.XModel;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.task.XJobExecutor;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.util.XCloseable;
import java.util.ArrayList;
import java.util.List;
import meadcell.calc.office.Office;
import meadcell.calc.office.TestOffice;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

/** The menu's packed workbooks open as untitled copies. */
class MenuIT {
  @Test
  void theGuideHasASheetForEveryFamily() throws Exception {
    List<String> sheets = new ArrayList<>(List.of("Functions"));
    sheets.addAll(Cellar.catalogue().families().keySet());
    assertEquals(sheets, opened("guide"));
  }

  @Test
  void theSampleOpens() throws Exception {
    assertFalse(opened("sample").isEmpty());
  }

  /** The sheets of the one untitled document that an entry opens. */
  private static List<String> opened(String entry) throws Exception {
    Office office = TestOffice.get();
    office.service(XJobExecutor.class, Menu.SERVICE).trigger(entry);
    XEnumeration open =
        office
            .service(XDesktop.class, "com.sun.star.frame.Desktop")
            .getComponents()
            .createEnumeration();
    Object document = open.nextElement();
    assertFalse(open.hasMoreElements(), "one document");
    assertEquals("", UnoRuntime.queryInterface(XModel.class, document).getURL(), "untitled");
    Object sheets = UnoRuntime.queryInterface(XSpreadsheetDocument.class, document).getSheets();
    List<String> names =
        List.of(UnoRuntime.queryInterface(XNameAccess.class, sheets).getElementNames());
    UnoRuntime.queryInterface(XCloseable.class, document).close(true);
    return names;
  }
}
