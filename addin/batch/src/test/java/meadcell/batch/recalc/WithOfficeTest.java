package meadcell.batch.recalc;

import static meadcell.batch.TestBooks.cell;
import static meadcell.batch.TestBooks.open;
import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.book.Book;
import meadcell.batch.book.Books;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.cellar.Cellar;
import meadcell.office.Office;
import org.apache.commons.math3.stat.descriptive.moment.Skewness;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** With a real LibreOffice, which the build of the module office installs. POI has no SKEW. */
class WithOfficeTest {
  private static final double[] GRAVITIES = {1.04, 1.05, 1.08};

  @TempDir Path folder;

  @BeforeAll
  static void officeIsInstalled() throws IOException {
    new ProcessBuilder("soffice", "--version").start();
  }

  private static double brix(double gravity) {
    return (Double) Cellar.catalogue().get("GRAVITY.TOBRIX").call(gravity);
  }

  private static double skewness() {
    double[] brix = new double[GRAVITIES.length];
    for (int i = 0; i < brix.length; i++) {
      brix[i] = brix(GRAVITIES[i]);
    }
    return new Skewness().evaluate(brix);
  }

  /** Our functions, the office's on them, ours on those, and what is not affected. */
  private static <W extends Workbook> W log(W book) {
    if (book instanceof XSSFWorkbook xssf) {
      xssf.setCellFormulaValidation(false);
    }
    Sheet sheet = book.createSheet("log");
    rows(
        sheet,
        0,
        row(GRAVITIES[0], "=GRAVITY.TOBRIX(A1)"),
        row(GRAVITIES[1], "=GRAVITY.TOBRIX(A2)"),
        row(GRAVITIES[2], "=GRAVITY.TOBRIX(A3)", "=SKEW(B1:B3)"),
        row("=GRAVITY.FROMBRIX(10*C3)", "=SKEW(A4,B1,B2,1)*2", "=SKEW(A1:A3)"));
    cell(book, "log", "C4").setCellValue(77);
    return book;
  }

  private static double value(Workbook book, String a1) {
    return cell(book, "log", a1).getNumericCellValue();
  }

  private Run recalc(Path file, String... office) {
    String[] args = {"recalc", file.toString(), "--in-place"};
    return Run.of(Stream.of(args, office).flatMap(Stream::of).toArray(String[]::new));
  }

  private static Set<Path> leftovers() throws IOException {
    try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
      return files
          .filter(file -> file.getFileName().toString().startsWith("meadcell-recalculation"))
          .collect(Collectors.toSet());
    }
  }

  /** Tests beside this one have such folders, too, which go while one waits. */
  private static void assertNothingLeftSince(Set<Path> before) throws Exception {
    Set<Path> left = new TreeSet<>(leftovers());
    left.removeAll(before);
    for (int second = 0; second < 60 && !left.isEmpty(); second++) {
      Thread.sleep(1000);
      left.retainAll(leftovers());
    }
    assertEquals(Set.of(), left);
  }

  @Test
  void xlsxRoundsUntilNothingChanges() throws Exception {
    Path file = save(log(new XSSFWorkbook()), folder.resolve("log.xlsx"));
    roundsUntilNothingChanges(file);
    byte[] once = Files.readAllBytes(file);
    assertTrue(recalc(file, "--with-office").out().contains("no change"));
    assertArrayEquals(once, Files.readAllBytes(file));
  }

  @Test
  void xlsRoundsUntilNothingChanges() throws Exception {
    Workbook book = new HSSFWorkbook();
    book.addToolPack(new PoiFunctions(Cellar.catalogue()));
    roundsUntilNothingChanges(save(log(book), folder.resolve("log.xls")));
  }

  private void roundsUntilNothingChanges(Path file) throws Exception {
    Set<Path> before = leftovers();
    Run run = recalc(file, "--with-office");
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertEquals("", run.err());
    Workbook after = open(file);
    assertEquals(skewness(), value(after, "C3"), 1e-12);
    double gravity = (Double) Cellar.catalogue().get("GRAVITY.FROMBRIX").call(10 * skewness());
    assertEquals(gravity, value(after, "A4"), 1e-12);
    double[] mixed = {gravity, brix(GRAVITIES[0]), brix(GRAVITIES[1]), 1};
    assertEquals(2 * new Skewness().evaluate(mixed), value(after, "B4"), 1e-12);
    assertEquals(77, value(after, "C4"), "does not rest on our functions");
    assertEquals("SKEW(B1:B3)", cell(after, "log", "C3").getCellFormula());
    assertNothingLeftSince(before);
  }

  /** An office writes the .ods here, since POI cannot. */
  @Test
  void odsKeepsItsFormulasToo() throws Exception {
    Path xlsx = save(log(new XSSFWorkbook()), folder.resolve("log.xlsx"));
    Path file = folder.resolve("log.ods");
    try (Office office = new Office("soffice")) {
      Files.write(file, office.recalculated(Files.readAllBytes(xlsx), "xlsx", "ods"));
    }
    Run run = recalc(file, "--with-office");
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertEquals("", run.err());
    try (Book after = book(file)) {
      CellContent skewness = after.sheets().get(0).content(new Place(2, 2));
      assertEquals(skewness(), ((Value.Number) skewness.value()).number(), 1e-12);
      assertEquals("SKEW(B1:B3)", skewness.formula());
    }
    assertTrue(recalc(file, "--with-office").out().contains("no change"));
  }

  private static Book book(Path file) throws Exception {
    return Books.open(Files.readAllBytes(file), file.toString());
  }

  @Test
  void whatTheOfficeDoesNotKnowEitherStaysAndIsListed() throws IOException {
    XSSFWorkbook book = log(new XSSFWorkbook());
    rows(
        book.getSheet("log"),
        5,
        row("=OTHER.ADDIN(B1)", "=SKEW(B1:B3,A7)", "=GRAVITY.TOBRIX(SKEW(A1:A3)/1000+1)"),
        row("=OTHER.ADDIN(1)"));
    cell(book, "log", "A6").setCellValue(5);
    cell(book, "log", "A7").setCellValue(15);
    Path file = save(book, folder.resolve("log.xlsx"));
    Run run = recalc(file, "--with-office");
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertEquals(5, value(open(file), "A6"));
    assertTrue(run.err().contains("log!A6: keeps its old value"), run.err());
    assertTrue(run.err().contains("does not know its function OTHER.ADDIN"), run.err());
    double[] withStored = {brix(GRAVITIES[0]), brix(GRAVITIES[1]), brix(GRAVITIES[2]), 15};
    assertEquals(new Skewness().evaluate(withStored), value(open(file), "B6"), 1e-12);
    assertTrue(run.err().contains("log!C6: keeps its old value"), "ours, so never the office's");
  }

  /** IFERROR and COUNT take the office's "no such function" for an answer. */
  @Test
  void nothingRestsOnAFunctionThatTheOfficeDoesNotKnow() throws IOException {
    XSSFWorkbook book = log(new XSSFWorkbook());
    Name strengths = book.createName();
    strengths.setNameName("strengths");
    strengths.setRefersToFormula("GRAVITY.TOBRIX(log!$A$1:$A$3)");
    rows(
        book.getSheet("log"),
        5,
        row("=IFERROR(OTHER.ADDIN(B1),0)", "=COUNT(A6)+SKEW(B1:B3)"),
        row("=IFERROR(GRAVITY.TOBRIX(1+SKEW(B1:B3)/100),0)", "=COUNT(A7)+B1"),
        row("=IFERROR(SKEW(strengths),0)", "=IF(B1>0,SKEW(B1:B3),A8)"),
        row("=IFERROR(_xlfn.SKEW.P(B1:B3),0)"));
    List<String> kept = List.of("A6", "B6", "A7", "B7", "A8", "B8");
    kept.forEach(a1 -> cell(book, "log", a1).setCellValue(77));
    Path file = save(book, folder.resolve("log.xlsx"));
    Run run = recalc(file, "--with-office");
    assertEquals(ExitCode.OK, run.code(), run.err());
    for (String a1 : kept) {
      assertEquals(77, value(open(file), a1), a1);
      assertTrue(run.err().contains("log!" + a1 + ": keeps its old value"), run.err());
    }
    assertTrue(
        run.err().contains("GRAVITY.TOBRIX stands in it with what only LibreOffice can compute."));
    int n = GRAVITIES.length;
    double ofPopulation = skewness() * (n - 2) / Math.sqrt(n * (n - 1.0));
    assertEquals(ofPopulation, value(open(file), "A9"), 1e-12);
  }

  /** CUBEVALUE is one of the usual functions, and not all offices have it. */
  @Test
  void norOnAUsualOneThatItDoesNotKnow() throws IOException {
    usualUnknown(new XSSFWorkbook(), "cube.xlsx", "IFERROR");
  }

  /** Other programs store there what came after the format with a prefix. */
  @Test
  void norInXls() throws IOException {
    usualUnknown(new HSSFWorkbook(), "cube.xls", "_xlfn.IFERROR");
  }

  private void usualUnknown(Workbook book, String file, String ifError) throws IOException {
    log(book);
    Name cube = book.createName();
    cube.setNameName("cube");
    cube.setRefersToFormula("CUBEVALUE(\"Sales\")");
    rows(
        book.getSheet("log"),
        5,
        row("=" + ifError + "(CUBEVALUE(\"Sales\"),SKEW(B1:B3))", "=COUNT(A6)+SKEW(B1:B3)"),
        row("=" + ifError + "(cube,SKEW(B1:B3))", "=" + ifError + "(SKEW(B1:B3),0)"));
    List<String> kept = List.of("A6", "B6", "A7");
    kept.forEach(a1 -> cell(book, "log", a1).setCellValue(77));
    Path path = save(book, folder.resolve(file));
    Run run = recalc(path, "--with-office");
    assertEquals(ExitCode.OK, run.code(), run.err());
    for (String a1 : kept) {
      assertEquals(77, value(open(path), a1), a1);
      assertTrue(run.err().contains("log!" + a1 + ": keeps its old value"), run.err());
    }
    for (String a1 : List.of("A6", "A7")) {
      assertTrue(
          run.err()
              .lines()
              .anyMatch(
                  line ->
                      line.contains("log!" + a1)
                          && line.contains("does not know its function CUBEVALUE")),
          run.err());
    }
    assertEquals(skewness(), value(open(path), "B7"), 1e-12);
  }

  @Test
  void resultsOfSeveralCellsStandInWhatTheOfficeComputes() throws IOException {
    resultsOfSeveralCells(log(new XSSFWorkbook()), "log.xlsx");
  }

  @Test
  void inXlsToo() throws IOException {
    Workbook book = new HSSFWorkbook();
    book.addToolPack(new PoiFunctions(Cellar.catalogue()));
    resultsOfSeveralCells(log(book), "log.xls");
  }

  private void resultsOfSeveralCells(Workbook book, String name) throws IOException {
    rows(
        book.getSheet("log"),
        5,
        row("=INDEX(GRAVITY.OFFSET({1.002;1.051},{1;1.0505},1.03,0.0005),1,2)*SKEW(A1:A3)"));
    book.getSheet("log")
        .setArrayFormula("SKEW(A1:A3)*GRAVITY.TOBRIX(A1:A3)", CellRangeAddress.valueOf("A7:A9"));
    Path file = save(book, folder.resolve(name));
    Run run = recalc(file, "--with-office");
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertEquals("", run.err());
    double skewness = new Skewness().evaluate(GRAVITIES);
    Object[][] read = {{1.002}, {1.051}};
    Object[][] due = {{1.0}, {1.0505}};
    Object[][] offset =
        (Object[][]) Cellar.catalogue().get("GRAVITY.OFFSET").call(read, due, 1.03, 0.0005);
    assertEquals((Double) offset[0][1] * skewness, value(open(file), "A6"), 1e-12);
    for (int i = 0; i < GRAVITIES.length; i++) {
      assertEquals(brix(GRAVITIES[i]) * skewness, value(open(file), "A" + (7 + i)), 1e-12);
    }
  }

  @Test
  void fillHasItComputeWhatRestsOnTheFilledCells() throws IOException {
    XSSFWorkbook log = new XSSFWorkbook();
    rows(
        log.createSheet("log"),
        0,
        row("SG", "Note", null, "=SKEW(C2:C4)"),
        row(GRAVITIES[0], "a"),
        row(GRAVITIES[1], "b"),
        row(GRAVITIES[2], "c"));
    XSSFWorkbook plan = new XSSFWorkbook();
    rows(plan.createSheet("Fill"), 0, row("Sheet", "Result", "Formula"));
    rows(plan.getSheet("Fill"), 1, row("*", "Brix", "GRAVITY.TOBRIX([SG])"));
    Path file = save(log, folder.resolve("log.xlsx"));
    Path planFile = save(plan, folder.resolve("plan.xlsx"));
    String[] fill = {
      "fill", "--with-office", file.toString(), "--plan", planFile.toString(), "--in-place"
    };
    Run run = Run.of(fill);
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertEquals(skewness(), value(open(file), "D1"), 1e-12);
  }

  /** A filled cell rests on what only the office computes, and that on other filled cells. */
  @Test
  void fillWaitsForTheOfficeWhereItMust() throws IOException {
    XSSFWorkbook log = new XSSFWorkbook();
    rows(log.createSheet("log"), 0, row("SG", "Skew", "Note"));
    for (int i = 0; i < GRAVITIES.length; i++) {
      rows(log.getSheet("log"), i + 1, row(GRAVITIES[i], "=SKEW(D$2:D$4)", "a"));
    }
    XSSFWorkbook plan = new XSSFWorkbook();
    rows(plan.createSheet("Fill"), 0, row("Sheet", "Result", "Formula"));
    rows(plan.getSheet("Fill"), 1, row("*", "Brix", "GRAVITY.TOBRIX([SG])"));
    rows(plan.getSheet("Fill"), 2, row("*", "Again", "GRAVITY.FROMBRIX(10*[Skew])"));
    Path file = save(log, folder.resolve("log.xlsx"));
    Path planFile = save(plan, folder.resolve("plan.xlsx"));
    Run run =
        Run.of(
            "fill", "--with-office", file.toString(), "--plan", planFile.toString(), "--in-place");
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertEquals(skewness(), value(open(file), "B2"), 1e-12);
    double gravity = (Double) Cellar.catalogue().get("GRAVITY.FROMBRIX").call(10 * skewness());
    assertEquals(gravity, value(open(file), "E2"), 1e-12);
    assertEquals(gravity, value(open(file), "E4"), 1e-12);
  }

  @Test
  void aMissingOfficeIsSaidAndNothingElseHappens() throws IOException {
    Path file = save(log(new XSSFWorkbook()), folder.resolve("log.xlsx"));
    Run run = recalc(file, "--with-office=no-such-office");
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertTrue(run.err().contains("was not found as \"no-such-office\""), run.err());
    assertTrue(run.err().contains("log!C3: keeps its old value"), run.err());
    assertEquals(brix(GRAVITIES[0]), value(open(file), "B1"));
  }

  @Test
  void anOfficeThatFailsIsSaid() throws Exception {
    Path file = save(log(new XSSFWorkbook()), folder.resolve("log.xlsx"));
    Set<Path> before = leftovers();
    Run failed = recalc(file, "--with-office=false");
    assertTrue(failed.err().contains("ended with the error code 1"), failed.err());
    Run silent = recalc(file, "--with-office=true");
    assertTrue(silent.err().contains("could not read the workbook's copy"), silent.err());
    assertFalse(silent.err().contains("Exception"), silent.err());
    assertNothingLeftSince(before);
  }
}
