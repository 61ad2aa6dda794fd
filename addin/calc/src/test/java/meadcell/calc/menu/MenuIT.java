package meadcell.calc.menu;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.sun.star.task.XJobExecutor;
import java.util.ArrayList;
import java.util.List;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** The menu's packed guide opens as an untitled copy. */
class MenuIT {
  @Test
  void theGuideHasASheetForEveryFamily() throws Exception {
    List<String> sheets = new ArrayList<>(List.of("Functions"));
    sheets.addAll(Cellar.catalogue().families().keySet());
    assertEquals(List.of(sheets), opened("guide"));
  }

  /** The sheets of each untitled document that an entry opens, the one in front first. */
  private static List<List<String>> opened(String entry) throws Exception {
    RemoteOffice office = TestOffice.get();
    office.service(XJobExecutor.class, Menu.SERVICE).trigger(entry);
    List<List<String>> sheets = new ArrayList<>();
    for (Workbook book : office.openWorkbooks()) {
      assertEquals("", book.url(), "untitled");
      sheets.add(book.sheets());
      book.close();
    }
    return sheets;
  }
}
