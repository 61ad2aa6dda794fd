package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every shipped check value holds, names its source, and no function goes without one. */
class CheckRowsTest {
  private Catalogue catalogue;
  private List<CheckRow> rows;

  @BeforeEach
  void load() {
    catalogue = Fresh.catalogue();
    rows = CheckRow.load(catalogue);
  }

  @TestFactory
  Stream<DynamicTest> everyRowHolds() {
    return rows.stream().map(row -> DynamicTest.dynamicTest(row.call(), () -> assertHolds(row)));
  }

  private void assertHolds(CheckRow row) {
    CheckRow.Verdict verdict = row.verdict(catalogue);
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
    CheckRow row = new CheckRow("X()", 785.398, 0.001, Evidence.WORKED, "test", "");
    CheckRow.Verdict verdict = row.verdict(column);
    assertEquals(false, verdict.holds());
    assertEquals("{785.398}", verdict.gotText());
    assertEquals("785.398", verdict.expectedText());
  }

  @Test
  void cellsAgreeOneByOneWithinTheTolerance() {
    Object[][] expected = {{1.0, "a"}, {2.0, "b"}};
    CheckRow row = new CheckRow("X()", expected, 0.5, Evidence.WORKED, "test", "");
    assertEquals(true, row.verdict(new Object[][] {{1.5, "a"}, {1.5, "b"}}).holds());
    assertEquals(false, row.verdict(new Object[][] {{1.0, "a"}, {2.6, "b"}}).holds());
    assertEquals(false, row.verdict(new Object[][] {{1.6, "a"}, {2.0, "b"}}).holds());
    assertEquals(false, row.verdict(new Object[][] {{1.0, "a"}, {2.0, "c"}}).holds());
    assertEquals(false, row.verdict(new Object[][] {{1.0, "a"}}).holds());
    assertEquals(false, row.verdict(new Object[][] {{1.0, "a"}, {2.0}}).holds());
    assertEquals(false, row.verdict(new Object[][] {{1.0, "a", 3.0}, {2.0, "b"}}).holds());
    assertEquals("{1,\"a\";2,\"b\"}", row.verdict(1.0).expectedText());
    assertEquals("X", row.function());
  }

  @Test
  void everyRowNamesItsSource() {
    for (CheckRow row : rows) {
      assertTrue(row.source().length() > 3, row.call());
      assertTrue(row.tolerance() >= 0, row.call());
    }
  }

  /** A row's kind and its own words say the same; what is recalled is never called more. */
  @Test
  void kindAndSourceAgree() {
    Predicate<String> recalled = Pattern.compile("(?i)\\bfrom memory\\b").asPredicate();
    Predicate<String> place =
        Pattern.compile(
                "(?i)\\b(table|chart|annex|appendix|abstract|section|example|ch\\.|p\\.|CFR|U\\.S\\.C\\.|NDB|aqueous"
                    + " solutions|densities of|H = )|standard [0-9.]+|\\([a-z]+\\.[a-z]+\\)")
            .asPredicate();
    Predicate<String> own =
        Pattern.compile("(?i)computed|independent|by hand|in Python|SciPy|our own|this project")
            .asPredicate();
    Predicate<String> how =
        Pattern.compile("by hand|in Python|SciPy|scipy|NumPy|mpmath|R package").asPredicate();
    List<String> faults = new ArrayList<>();
    for (CheckRow row : rows) {
      String words = row.source() + " | " + row.where();
      boolean practice = row.source().startsWith("common practice, no source");
      boolean agrees =
          switch (row.kind()) {
            case PUBLISHED ->
                place.test(words) && !own.test(words) && !practice && !recalled.test(words);
            case WORKED -> how.test(words) && !practice && !recalled.test(words);
            case PRACTICE -> practice && !recalled.test(words);
            case MEMORY -> recalled.test(words);
          };
      if (!agrees) {
        String says =
            switch (row.kind()) {
              case PUBLISHED -> "the printed place, such as 'table 2', and no work of our own";
              case WORKED -> "how: 'by hand', 'in Python' or the library";
              case PRACTICE -> "'common practice, no source' first in its source";
              case MEMORY -> "'from memory'";
            };
        faults.add(
            row.call() + " is " + row.kind().word() + ", so is to say " + says + ": " + words);
      }
    }
    assertTrue(faults.isEmpty(), () -> String.join("\n", faults) + "\n");
  }

  @Test
  void theReadmeTellsWhatTheCheckValuesAreWorth() throws IOException {
    String told = "%1$d of %1$d check values hold: ".formatted(rows.size()) + CheckRow.totals(rows);
    assertTrue(
        Files.readString(Path.of("../README.md")).contains(told), "README.md is to say: " + told);
  }

  @Test
  void aWrongExpectationIsNoticed() {
    for (CheckRow row : rows) {
      if (row.expected() instanceof Double expected) {
        double off = expected + 2 * row.tolerance() + 1e-3 * Math.max(1, Math.abs(expected));
        CheckRow wrong =
            new CheckRow(row.call(), off, row.tolerance(), row.kind(), row.source(), "");
        assertEquals(false, wrong.verdict(catalogue).holds(), row.call());
      }
    }
  }

  @Test
  void everyFunctionHasARow() {
    Set<String> without = new TreeSet<>(catalogue.names());
    rows.forEach(row -> without.remove(row.function()));
    // These answer about other functions; CatalogueTest covers them.
    without.removeAll(Set.of("CELLAR.WHY", "CELLAR.SOURCE", "CELLAR.MAP"));
    assertTrue(without.isEmpty(), "without check values: " + without);
  }
}
