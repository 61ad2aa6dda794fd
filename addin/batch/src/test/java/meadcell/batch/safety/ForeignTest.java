package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.Series;
import meadcell.batch.book.Packages;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;

/**
 * Workbooks that other programs wrote are filled and keep all that they had; the schemas of the
 * formats find nothing in them that was not there before.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ForeignTest {
  private static final Path BOOKS = Path.of("src/test/resources/meadcell/batch/golden");
  private static final Set<String> CHANGING =
      Set.of("xl/styles.xml", "docProps/custom.xml", "[Content_Types].xml", "_rels/.rels");

  /** In the gate; odd, so that every writer's workbooks are among them. */
  private static final int EVERY = 3;

  private static final Set<String> ODS = Set.of("content.xml", "meta.xml");

  @TempDir static Path folder;

  @BeforeAll
  static void plan() throws IOException {
    Golden.plan(folder.resolve("plan.xlsx"));
  }

  private static List<Path> books(String ending, int every) throws IOException {
    try (Stream<Path> files = Files.walk(BOOKS)) {
      return Series.of(
          files.filter(file -> file.toString().endsWith(ending)).sorted().toList(), every);
    }
  }

  private static String name(Path book) {
    return BOOKS.relativize(book).toString();
  }

  private static Path filled(Path book) throws IOException {
    Path out = folder.resolve(name(book)).getParent();
    Run run =
        Run.of(
            "fill",
            book.toString(),
            "--plan",
            folder.resolve("plan.xlsx").toString(),
            "--out",
            out.toString(),
            "--force");
    assertEquals(ExitCode.OK, run.code(), run.err());
    return out.resolve(book.getFileName());
  }

  private static Set<String> changed(Path before, Path after) throws IOException {
    Map<String, byte[]> old = Packages.parts(Files.readAllBytes(before));
    Map<String, byte[]> now = Packages.parts(Files.readAllBytes(after));
    Set<String> changed = new TreeSet<>();
    old.forEach(
        (part, bytes) -> {
          if (!java.util.Arrays.equals(bytes, now.get(part))) {
            changed.add(part);
          }
        });
    return changed;
  }

  /** What is wrong after filling and was not before. */
  static List<String> newErrors(Schemas schemas, Path before, Path after) throws Exception {
    List<String> errors = new ArrayList<>(schemas.errors(Files.readAllBytes(after)));
    schemas.errors(Files.readAllBytes(before)).forEach(errors::remove);
    return errors;
  }

  @TestFactory
  Stream<DynamicTest> xlsx() throws Exception {
    Schemas schemas = new Schemas();
    List<Path> books = books(".xlsx", EVERY);
    assertTrue(books.size() >= 110 / EVERY, books.size() + " workbooks");
    return books.stream()
        .map(
            book ->
                DynamicTest.dynamicTest(
                    name(book),
                    () -> {
                      Path after = filled(book);
                      Set<String> changed = changed(book, after);
                      changed.removeAll(CHANGING);
                      assertEquals(Set.of("xl/worksheets/sheet1.xml"), changed);
                      GoldenCells.compare(book, after, Set.of("D4", "D5", "D6", "D7"));
                      assertEquals(List.of(), newErrors(schemas, book, after));
                    }));
  }

  @TestFactory
  Stream<DynamicTest> xls() throws Exception {
    return books(".xls", EVERY).stream()
        .map(
            book ->
                DynamicTest.dynamicTest(
                    name(book),
                    () -> GoldenCells.compare(book, filled(book), Set.of("D4", "D5", "D6", "D7"))));
  }

  private static byte[] part(Path ods) throws IOException {
    return Packages.parts(Files.readAllBytes(ods)).get("content.xml");
  }

  @TestFactory
  Stream<DynamicTest> ods() throws Exception {
    List<Path> books = books(".ods", EVERY);
    Map<Path, Path> filled = new LinkedHashMap<>();
    for (Path book : books) {
      filled.put(book, filled(book));
    }
    List<Path> all = new ArrayList<>(books);
    all.addAll(filled.values());
    Map<Path, List<String>> errors = OdfValidator.errors(all, folder);
    return books.stream()
        .map(
            book ->
                DynamicTest.dynamicTest(
                    name(book),
                    () -> {
                      Path after = filled.get(book);
                      Set<String> changed = changed(book, after);
                      changed.removeAll(ODS);
                      assertEquals(Set.of(), changed);
                      Set<String> cells = Set.of("D4", "D5", "D6", "D7");
                      Document old = new OdsCells(part(book)).without(cells);
                      Document now = new OdsCells(part(after)).without(cells);
                      assertTrue(old.isEqualNode(now), "the documents differ");
                      List<String> more = new ArrayList<>(errors.get(after));
                      errors.get(book).forEach(more::remove);
                      assertEquals(List.of(), more);
                    }));
  }
}
