package meadcell.batch.calculation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import meadcell.batch.Series;
import meadcell.batch.calculation.Differential.Case;
import meadcell.batch.calculation.Differential.Outcome;
import meadcell.batch.calculation.Differential.Result;
import meadcell.office.uno.TestOffice;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * The user's own formulas, computed again by this tool and by a real office. A fixed sixth of them
 * by default; with the property {@code meadcell.proof} all, and the table of what is proven: {@code
 * check} holds it to the office, {@code write} writes it. Both take some minutes.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ProofIT {
  private static final String PROOF = System.getProperty("meadcell.proof", "");
  private static final int SHARE = PROOF.isEmpty() && !Series.IS_WHOLE ? 6 : 1;
  private static final double LEAST_EQUAL = 0.8;
  private static final List<String> ENDINGS = List.of("xlsx", "ods", "xls");
  private static final Path TABLE =
      Path.of("src/main/resources/meadcell/batch/calculation", Proven.Table.RESOURCE);
  private static final Path OUTCOMES = Path.of("target/formula-outcomes.txt");

  @TempDir static Path folder;
  private Differential differential;
  private final Map<String, Case> cases = new TreeMap<>();

  @BeforeAll
  void compute() throws Exception {
    List<Corpus.Line> all = Corpus.formulas();
    List<Corpus.Line> lines =
        IntStream.range(0, all.size()).filter(i -> i % SHARE == 0).mapToObj(all::get).toList();
    differential = new Differential(TestOffice.get(), folder, lines);
    for (String ending : ENDINGS) {
      cases.put(ending, differential.prepare(ending));
    }
    if (PROOF.equals("write")) {
      Files.write(TABLE, proven());
    }
  }

  @Test
  void nothingIsSilentlyWrong() throws Exception {
    List<Result> results = new ArrayList<>();
    for (Case given : cases.values()) {
      results.addAll(differential.run(given));
    }
    report(results);
    assertEquals(List.of(), results.stream().filter(r -> r.outcome() == Outcome.WRONG).toList());
    List<Result> changed = results.stream().filter(Result::isChanged).toList();
    double equal = changed.stream().filter(r -> r.outcome() == Outcome.EQUAL).count();
    assertTrue(equal / changed.size() >= LEAST_EQUAL, equal + " of " + changed.size());
  }

  /** What the office itself does not know stays as it is, and is listed. */
  @Test
  void withAnOfficeAllIsRight() throws Exception {
    for (Case given : PROOF.isEmpty() ? List.of(cases.get("ods")) : cases.values()) {
      for (Result result : differential.run(given, "--with-office")) {
        boolean isKnown = !Differential.isUnknown(result.truth());
        assertEquals(
            isKnown ? Outcome.EQUAL : result.outcome(), result.outcome(), () -> "" + result);
        assertFalse(result.outcome() == Outcome.WRONG, () -> "" + result);
      }
    }
  }

  /** No formula that the office computes otherwise has only calls that the table has. */
  @Test
  void theTableLetsNothingWrongThrough() throws Exception {
    Evidence evidence = new Evidence();
    for (Case given : cases.values()) {
      differential.prove(given, evidence);
    }
    assertEquals(List.of(), evidence.wrongThrough(new Proven.Table().words()));
  }

  @Test
  void theTableIsWhatTheOfficeShows() throws Exception {
    assumeFalse(PROOF.isEmpty(), "takes minutes");
    Set<String> shown = new HashSet<>(proven());
    assertEquals(shown, Set.copyOf(Files.readAllLines(TABLE)), "write the table again");
  }

  private Set<String> proven() throws Exception {
    Evidence evidence = new Evidence();
    for (Case given : cases.values()) {
      differential.prove(given, evidence);
    }
    Differential calls = new Differential(TestOffice.get(), folder, Corpus.calls());
    calls.prove(calls.prepare("xlsx"), evidence);
    Set<String> proven = evidence.proven();
    Files.writeString(Path.of("target/doubted-calls.txt"), evidence.told());
    return proven;
  }

  @SuppressWarnings("EnumOrdinal") // the columns go in its order
  private static void report(List<Result> results) throws IOException {
    Map<String, int[]> counts = new TreeMap<>();
    for (Result result : results) {
      int outcome = result.outcome().ordinal() + (result.isChanged() ? Outcome.values().length : 0);
      for (String family : List.of(result.line().family(), "all")) {
        counts.computeIfAbsent(result.ending() + "  " + family, key -> new int[6])[outcome]++;
      }
    }
    List<String> lines = new ArrayList<>();
    String row = "%-32s %8s %8s %8s   %8s %8s %8s";
    lines.add(String.format(row, "", "of all", "", "", "of those", "that", "change"));
    lines.add(String.format(row, "", "equal", "listed", "wrong", "equal", "listed", "wrong"));
    counts.forEach(
        (family, n) ->
            lines.add(
                String.format(
                    Locale.ROOT,
                    row,
                    family,
                    n[0] + n[3],
                    n[1] + n[4],
                    n[2] + n[5],
                    n[3],
                    n[4],
                    n[5])));
    Map<String, List<String>> listed = new HashMap<>();
    for (Result result : results) {
      if (result.outcome() != Outcome.EQUAL) {
        listed
            .computeIfAbsent(result.line().formula(), key -> new ArrayList<>())
            .add(result.ending() + " " + result.outcome() + ": " + result.said());
      }
    }
    lines.add("");
    new TreeMap<>(listed).forEach((formula, said) -> lines.add(formula + "\t" + said));
    Files.createDirectories(OUTCOMES.getParent());
    Files.write(OUTCOMES, lines);
  }
}
