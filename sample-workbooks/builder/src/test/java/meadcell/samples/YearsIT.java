package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Three seasons in one file: still right, and how long it takes is printed. */
class YearsIT {
  private static final Facts FACTS = Years.facts();

  @Test
  void threeSeasonsOfSixtyCasksAndFortyLots() throws Exception {
    assertEquals(40, FACTS.lots.size());
    assertTrue(FACTS.moves.size() > 3000);
    try (CellarFile empty = CellarFile.open("years-empty").waiting()) {
      empty.emptyAllLogs();
      FACTS.fill(empty);
      empty.set("today_typed", Years.TODAY).recalculate();
      Path stored = empty.savedAs("years");
      long start = System.nanoTime();
      try (CellarFile book = CellarFile.open(stored)) {
        double opened = seconds(start);
        start = System.nanoTime();
        int line = book.type("Tastings", Years.TODAY, "No. 107", "A", 12);
        double edited = seconds(start);
        book.clear("Tastings", line - 1);
        start = System.nanoTime();
        book.recalculate();
        System.out.printf(
            "three seasons: opened and recalculated in %.1f s, four cells edited in %.1f s, all"
                + " recalculated in %.1f s%n",
            opened, edited, seconds(start));
        check(book);
      }
    }
  }

  private static double seconds(long start) {
    return (System.nanoTime() - start) / 1e9;
  }

  private static void check(CellarFile book) throws Exception {
    assertEquals(List.of(), book.errors());
    Ledger ledger = new Ledger(FACTS, Years.TODAY);
    SeasonIT.checkCasksNow(book, FACTS, ledger, Years.TODAY);
    SeasonIT.checkToday(book, Wants.of(FACTS, Years.TODAY, Wants.House.AS_SHIPPED));
    SeasonIT.checkStory(book, ledger, "No. 107");
    SeasonIT.checkStory(book, ledger, "T3");
    book.set("today_typed", Years.FIRST.plusDays(300)); // and two years back
    Ledger then = new Ledger(FACTS, Years.FIRST.plusDays(300));
    SeasonIT.checkCasksNow(book, FACTS, then, Years.FIRST.plusDays(300));
  }
}
