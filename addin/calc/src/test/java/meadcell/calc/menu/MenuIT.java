package meadcell.calc.menu;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.task.XJobExecutor;
import java.util.ArrayList;
import java.util.List;
import meadcell.calc.office.Office;
import meadcell.calc.office.TestOffice;
import meadcell.calc.office.Workbook;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

/** The menu's packed workbooks open as untitled copies. */
class MenuIT {
  @Test
  void theGuideHasASheetForEveryFamily() throws Exception {
    List<String> sheets = new ArrayList<>(List.of("Functions"));
    sheets.addAll(Cellar.catalogue().families().keySet());
    assertEquals(List.of(sheets), opened("guide"));
  }

  @Test
  void bothSamplesOpenTheCellarBookInFront() throws Exception {
    List<List<String>> samples = opened("sample");
    assertEquals(2, samples.size());
    assertTrue(samples.get(0).contains("Barrels"), samples.toString());
    assertTrue(samples.get(1).contains("Triangle"), samples.toString());
  }

  /** The sheets of each untitled document that an entry opens, the one in front first. */
  private static List<List<String>> opened(String entry) throws Exception {
    Office office = TestOffice.get();
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
