package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every shipped check value holds, names its source, and no function goes without one. */
class CheckRowsTest {
  private static final Catalogue CATALOGUE = Cellar.catalogue();
  private static List<CheckRow> rows;

  @BeforeAll
  static void load() {
    rows = CheckRow.load(CATALOGUE);
  }

  @TestFactory
  Stream<DynamicTest> everyRowHolds() {
    return rows.stream().map(row -> DynamicTest.dynamicTest(row.call(), () -> assertHolds(row)));
  }

  private static void assertHolds(CheckRow row) {
    CheckRow.Verdict verdict = row.verdict(CATALOGUE);
    if (!verdict.holds()) {
      fail(
          String.format(
              "%s gave %s, expected %s ± %s (%s, %s)",
              row.call(),
              verdict.gotText(),
              verdict.expectedText(),
              row.tolerance(),
              row.source(),
              row.where()));
    }
  }

  @Test
  void aRowOfTheWrongShapeSaysSo() {
    Object[][] column = {{785.398}};
    CheckRow row = new CheckRow("X()", 785.398, 0.001, "test", "");
    CheckRow.Verdict verdict = row.verdict(column);
    assertEquals(false, verdict.holds());
    assertEquals("{785.398}", verdict.gotText());
    assertEquals("785.398", verdict.expectedText());
  }

  @Test
  void everyRowNamesItsSource() {
    for (CheckRow row : rows) {
      assertTrue(row.source().length() > 3, row.call());
      assertTrue(row.tolerance() >= 0, row.call());
    }
  }

  @Test
  void aWrongExpectationIsNoticed() {
    for (CheckRow row : rows) {
      if (row.expected() instanceof Double expected) {
        double off = expected + 2 * row.tolerance() + 1e-3 * Math.max(1, Math.abs(expected));
        CheckRow wrong = new CheckRow(row.call(), off, row.tolerance(), row.source(), "");
        assertEquals(false, wrong.verdict(CATALOGUE).holds(), row.call());
      }
    }
  }

  @Test
  void everyFunctionHasARow() {
    Set<String> without = new TreeSet<>(CATALOGUE.names());
    rows.forEach(row -> without.remove(LiteralCall.parse(row.call()).function()));
    // These answer about other functions; CatalogueTest covers them.
    without.removeAll(Set.of("CELLAR.WHY", "CELLAR.SOURCE", "CELLAR.MAP"));
    assertTrue(without.isEmpty(), "without check values: " + without);
  }
}
