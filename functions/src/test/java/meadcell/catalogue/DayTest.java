package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class DayTest {
  /** 2008-01-01 is 39448 in the usual example of DATEVALUE (spreadsheet manuals; from memory). */
  @Test
  void datesAreWhatSpreadsheetsShow() {
    assertEquals("2008-01-01", Day.text(39448));
    assertEquals("2000-02-29", Day.text(36585));
    assertEquals("2025-12-01", Day.text(45992));
    assertEquals("2025-12-01 18:30", Day.text(45992 + 18.5 / 24));
    assertEquals("2025-12-01", Day.text(45992 + 2 / 86400.0));
  }

  @Test
  void smallNumbersCountFromAnOwnBeginning() {
    assertFalse(Day.isDated(19999));
    assertTrue(Day.isDated(20000));
    assertFalse(Day.isDated(100001));
    assertEquals("day number 60", Words.ENGLISH.measured(60, Quantity.DATE, UnitSystem.METRIC));
  }
}
