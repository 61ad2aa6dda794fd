package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.Series;
import meadcell.batch.TestBooks;
import meadcell.batch.book.Packages;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Workbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * Filling changes the cells it is for and nothing else, whatever else a workbook holds; and
 * LibreOffice, which the tests of the extension install, opens each result.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class GoldenTest {
  /** What may change with any filling: our property, a style, and the lists of parts. */
  private static final Set<String> ALWAYS =
      Set.of(
          Parts.LOG, "xl/styles.xml", "docProps/custom.xml", "[Content_Types].xml", "_rels/.rels");

  private static final String BOOK = "xl/workbook.xml";
  private static final String BOOK_LINKS = "xl/_rels/workbook.xml.rels";

  /** In the gate, of those that an office converts or opens. */
  private static final int EVERY = 4;

  private static final Set<String> ODS = Set.of("content.xml", "meta.xml");
  private static final double HALF_A_DIGIT = 0.5e-4; // of what the cells show
  private static final long MINUTES = 10;

  /** ECMA-376 part 1, 18.3.1.99: the order of the elements in question. */
  private static final List<String> ORDER =
      List.of("sheetData", "drawing", "legacyDrawing", "mc:AlternateContent", "extLst");

  /** A workbook before and after it was filled. */
  private record Filled(Golden golden, Path before, Path after, Run run) {
    boolean keepsFormulas() {
      return List.of(golden.options).contains("values");
    }

    byte[] partBefore(String name) throws Exception {
      return Packages.parts(Files.readAllBytes(before)).get(name);
    }

    byte[] partAfter(String name) throws Exception {
      return Packages.parts(Files.readAllBytes(after)).get(name);
    }
  }

  @TempDir static Path folder;

  private final List<Filled> xlsx = new ArrayList<>();
  private final List<Filled> xls = new ArrayList<>();
  private final List<Filled> ods = new ArrayList<>();

  @BeforeAll
  void fill() throws Exception {
    Golden.plan(folder.resolve("plan.xlsx"));
    for (Golden golden : GoldenBooks.xlsx()) {
      xlsx.add(filled(golden, golden.save(made("made"))));
    }
    for (Golden golden : GoldenBooks.xls()) {
      xls.add(filled(golden, golden.save(made("made"))));
    }
    List<Filled> originals = Series.of(xlsx, EVERY);
    convert("ods", originals.stream().map(Filled::before).toList(), made("ods"));
    for (Filled original : originals) {
      String name = original.before.getFileName().toString().replaceAll("xls[xm]$", "ods");
      ods.add(filled(original.golden, folder.resolve("ods").resolve(name)));
    }
  }

  private static Path made(String name) throws Exception {
    return Files.createDirectories(folder.resolve(name));
  }

  private static Filled filled(Golden golden, Path file) {
    Path out = folder.resolve("filled");
    List<String> command = new ArrayList<>(List.of("fill", file.toString()));
    command.addAll(List.of("--plan", folder.resolve("plan.xlsx").toString()));
    command.addAll(List.of("--out", out.toString()));
    command.addAll(List.of(golden.options));
    Run run = Run.of(command.toArray(String[]::new));
    return new Filled(golden, file, out.resolve(file.getFileName()), run);
  }

  private static void convert(String to, List<Path> files, Path out) throws Exception {
    List<String> command = new ArrayList<>(List.of("soffice", "--headless", "--norestore"));
    command.add("-env:UserInstallation=" + folder.resolve("profile").toUri());
    command.addAll(List.of("--convert-to", to, "--outdir", out.toString()));
    files.forEach(file -> command.add(file.toString()));
    File log = folder.resolve("soffice.log").toFile();
    Process office =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log).start();
    try {
      assertTrue(office.waitFor(MINUTES, TimeUnit.MINUTES), "LibreOffice does not end");
    } finally {
      office.descendants().forEach(ProcessHandle::destroyForcibly);
      office.destroyForcibly();
    }
  }

  private interface Check {
    void of(Filled filled) throws Throwable;
  }

  private static Stream<DynamicTest> tests(List<Filled> all, Check check) {
    Function<Filled, Executable> test =
        filled ->
            () -> {
              assertEquals(ExitCode.OK, filled.run.code(), filled.run.err());
              check.of(filled);
            };
    return all.stream()
        .map(filled -> DynamicTest.dynamicTest(filled.golden.name, test.apply(filled)));
  }

  private static void unchangedParts(Filled filled, Set<String> changing) throws Exception {
    Map<String, byte[]> before = Packages.parts(Files.readAllBytes(filled.before));
    Map<String, byte[]> after = Packages.parts(Files.readAllBytes(filled.after));
    Set<String> changed = new TreeSet<>();
    before.forEach(
        (name, part) -> {
          if (!Arrays.equals(part, after.get(name))) {
            changed.add(name);
          }
        });
    changed.removeAll(changing);
    assertEquals(Set.of(), changed);
  }

  @TestFactory
  Stream<DynamicTest> xlsx() throws Exception {
    Schemas schemas = new Schemas();
    return tests(
        xlsx,
        filled -> {
          assertEquals(List.of(), ForeignTest.newErrors(schemas, filled.before, filled.after));
          Set<String> changing = new TreeSet<>(ALWAYS);
          changing.addAll(filled.golden.parts);
          if (filled.keepsFormulas()) {
            changing.addAll(Set.of(BOOK, BOOK_LINKS));
            assertEquals(
                Parts.text(filled.partBefore(BOOK)),
                Parts.text(filled.partAfter(BOOK))
                    .replaceFirst(
                        "<(\\w+:)?sheet [^>]*name=\"" + GoldenCells.KEPT + "\"[^>]*/>", ""));
            Set<String> links = links(filled.partAfter(BOOK_LINKS));
            links.removeAll(links(filled.partBefore(BOOK_LINKS)));
            assertEquals(1, links.size(), () -> "" + links);
          }
          unchangedParts(filled, changing);
          String before = Parts.text(filled.partBefore(Parts.LOG));
          String after = Parts.text(filled.partAfter(Parts.LOG));
          Set<String> cells = filled.golden.cells;
          assertEquals(
              GoldenCells.without(cells, before, before),
              GoldenCells.without(cells, after, before));
          List<String> elements =
              OdsCells.elements(
                      OdsCells.parse(filled.partAfter(Parts.LOG)).getDocumentElement(),
                      String.join("|", ORDER))
                  .stream()
                  .map(Element::getTagName)
                  .toList();
          assertEquals(ORDER.stream().filter(elements::contains).toList(), elements);
          compareCells(filled);
        });
  }

  private static Set<String> links(byte[] relations) throws Exception {
    return OdsCells.elements(OdsCells.parse(relations).getDocumentElement(), "Relationship")
        .stream()
        .map(link -> link.getAttribute("Id") + " " + link.getAttribute("Target"))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @TestFactory
  Stream<DynamicTest> xls() {
    return tests(xls, GoldenTest::compareCells);
  }

  private static void compareCells(Filled filled) throws Exception {
    GoldenCells.compare(filled.before, filled.after, filled.golden.cells);
  }

  private Filled named(String name) {
    return xlsx.stream().filter(f -> f.golden.name.equals(name)).findFirst().orElseThrow();
  }

  @TestFactory
  Stream<DynamicTest> particulars() {
    return Stream.of(
        DynamicTest.dynamicTest(
            "a formula keeps its place in the chain",
            () ->
                assertArrayEquals(
                    named("calculation chain").partBefore("xl/calcChain.xml"),
                    named("calculation chain").partAfter("xl/calcChain.xml"))),
        DynamicTest.dynamicTest(
            "a chain that is no longer true goes",
            () ->
                assertEquals(
                    null, named("calculation chain of values").partAfter("xl/calcChain.xml"))),
        DynamicTest.dynamicTest(
            "the rest of a shared formula keeps it",
            () -> {
              try (Workbook after = TestBooks.open(named("our own shared formula").after)) {
                Cell rest = GoldenCells.cell(after, 0, "D12");
                assertEquals("GRAVITY.CORRECT(B12,C12)", rest.getCellFormula());
                assertEquals(8, rest.getNumericCellValue());
              }
            }),
        DynamicTest.dynamicTest(
            "formulas on the results are recomputed and stay shared",
            () -> {
              try (Workbook after = TestBooks.open(named("shared formula on the results").after)) {
                Cell last = GoldenCells.cell(after, 0, "H14");
                assertEquals("D7*2", last.getCellFormula());
                assertEquals(2 * GoldenCells.expected(2), last.getNumericCellValue(), 1e-12);
              }
            }));
  }

  @TestFactory
  Stream<DynamicTest> ods() throws Exception {
    List<Path> all =
        ods.stream().flatMap(filled -> Stream.of(filled.before, filled.after)).toList();
    Map<Path, List<String>> errors = OdfValidator.errors(all, folder);
    return tests(
        ods,
        filled -> {
          List<String> more = new ArrayList<>(errors.get(filled.after));
          errors.get(filled.before).forEach(more::remove);
          assertEquals(List.of(), more);
          unchangedParts(filled, ODS);
          OdsCells before = new OdsCells(filled.partBefore("content.xml"));
          OdsCells after = new OdsCells(filled.partAfter("content.xml"));
          for (int i = 0; i < GoldenCells.RESULTS.size(); i++) {
            assertEquals(
                GoldenCells.expected(i),
                after.number(GoldenCells.RESULTS.get(i)),
                0,
                GoldenCells.RESULTS.get(i));
          }
          Set<String> cells = filled.golden.cells;
          assertEqual(before.without(cells), after.without(cells));
          assertEqual(meta(filled.partBefore("meta.xml")), meta(filled.partAfter("meta.xml")));
        });
  }

  private static void assertEqual(Document before, Document after) {
    assertTrue(before.isEqualNode(after), "the documents differ");
  }

  /** All but our properties. */
  private static Document meta(byte[] xml) throws Exception {
    Document meta = OdsCells.parse(xml);
    for (Element property : OdsCells.elements(meta.getDocumentElement(), "meta:user-defined")) {
      if (property.getAttribute("meta:name").startsWith("Meadcell ")) {
        property.getParentNode().removeChild(property);
      }
    }
    return meta;
  }

  @TestFactory
  Stream<DynamicTest> libreOfficeOpensEveryOne() throws Exception {
    List<Filled> all =
        Stream.of(Series.of(xlsx, EVERY), Series.of(xls, EVERY), ods)
            .flatMap(List::stream)
            .toList();
    List<Path> named = new ArrayList<>();
    for (Filled filled : all) { // one name for each
      String name = filled.after.getFileName().toString();
      Path copy = made("to open").resolve(name.replace('.', '-') + name.replaceFirst(".*\\.", "."));
      named.add(Files.copy(filled.after, copy));
    }
    convert("csv", named, made("csv"));
    return tests(
        all,
        filled -> {
          String name = filled.after.getFileName().toString().replace('.', '-') + ".csv";
          List<String> lines = Files.readAllLines(folder.resolve("csv").resolve(name));
          for (int i = 0; i < GoldenCells.RESULTS.size(); i++) {
            String shown = lines.get(4 + i).split(",")[3];
            if (filled.after.toString().endsWith(".xls")) {
              assertEquals("#ADDIN?", shown); // computed anew, here without the extension
            } else {
              assertEquals(GoldenCells.expected(i), Double.parseDouble(shown), HALF_A_DIGIT);
            }
          }
        });
  }
}
