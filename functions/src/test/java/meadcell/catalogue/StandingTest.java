package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** How well functions are proven. */
class StandingTest {
  private static CheckRow row(String call, Evidence kind) {
    return new CheckRow(call, 1.0, 0, kind, "a source", "a place");
  }

  @Test
  void theWeakestComesFirst() {
    List<Standing> standings =
        Standing.weakestFirst(
            List.of(
                row("A.READ(1)", Evidence.MEMORY),
                row("A.READ(2)", Evidence.PUBLISHED),
                row("B.WORKED(1)", Evidence.WORKED),
                row("C.RULE(1)", Evidence.PRACTICE),
                row("D.READ(1)", Evidence.PUBLISHED),
                row("D.READ(2)", Evidence.PUBLISHED),
                row("E.RECALLED(1)", Evidence.MEMORY),
                row("F.WORKED(1)", Evidence.WORKED),
                row("F.WORKED(2)", Evidence.WORKED),
                row("G.READ(1)", Evidence.PUBLISHED),
                row("H.READ(1)", Evidence.PUBLISHED),
                row("H.READ(2)", Evidence.WORKED)));
    assertEquals(
        List.of(
            "E.RECALLED", "C.RULE", "B.WORKED", "F.WORKED", "A.READ", "G.READ", "H.READ", "D.READ"),
        standings.stream().map(Standing::function).toList());
    assertEquals(
        List.of(false, false, true, true, true, true, true, true),
        standings.stream().map(Standing::isProven).toList());
    Standing readAndRecalled = standings.get(4);
    assertEquals(Evidence.PUBLISHED, readAndRecalled.best());
    assertEquals(1, readAndRecalled.count(Evidence.MEMORY));
    assertEquals(0, readAndRecalled.count(Evidence.WORKED));
  }
}
