package meadcell.batch.recalc;

import static meadcell.batch.TestBooks.cell;
import static meadcell.batch.TestBooks.open;
import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.cellar.Cellar;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecalcTest {
  @TempDir Path folder;
  private final XSSFWorkbook book = new XSSFWorkbook();
  private final Sheet sheet = book.createSheet("log");

  {
    book.setCellFormulaValidation(false); // formulas of tomorrow, too
  }

  private Workbook run(String command) throws IOException {
    save(book, folder.resolve("log.xlsx"));
    Run run =
        Run.of(
            command,
            folder.resolve("log.xlsx").toString(),
            "--force",
            "--out",
            folder.resolve("out").toString());
    said = run.out() + run.err();
    assertEquals(ExitCode.OK, run.code(), said);
    return open(folder.resolve("out/log.xlsx"));
  }

  private String said;

  private void stored(String a1, double value) {
    cell(book, "log", a1).setCellValue(value);
  }

  private static double value(Workbook workbook, String a1) {
    return cell(workbook, "log", a1).getNumericCellValue();
  }

  private static double brix(double gravity) {
    return (Double) Cellar.catalogue().get("GRAVITY.TOBRIX").call(gravity);
  }

  @Test
  void computesOursAndWhatRestsOnThemAndNothingElse() throws IOException {
    rows(
        sheet,
        0,
        row(1.04, "=GRAVITY.TOBRIX(A1)", "=B1*2", "=A1+1", "=SUM(B1:C1)"),
        row(1.05, "=_xll.gravity.tobrix(A2)", "=IF(B2>12,\"strong\",\"weak\")"));
    stored("D1", 77);
    Workbook after = run("recalc");
    assertEquals(brix(1.04), value(after, "B1"));
    assertEquals(2 * brix(1.04), value(after, "C1"), 1e-12);
    assertEquals(77, value(after, "D1"), "not ours: the stored value stays");
    assertEquals(3 * brix(1.04), value(after, "E1"), 1e-12);
    assertEquals(brix(1.05), value(after, "B2"));
    assertEquals("strong", cell(after, "log", "C2").getStringCellValue());
    assertEquals("_xll.gravity.tobrix(A2)", cell(after, "log", "B2").getCellFormula());
  }

  @Test
  void modernAndUnknownFormulasStandForTheirStoredValues() throws IOException {
    rows(
        sheet,
        0,
        row("=_xlfn.LET(_xlpm.x,1.04,_xlpm.x)", "=GRAVITY.TOBRIX(A1)"),
        row("=OTHER.ADDIN(1)", "=GRAVITY.TOBRIX(A2)"),
        row("=A9#", "=GRAVITY.TOBRIX(A3)"),
        row(1.04, "=GRAVITY.TOBRIX(A4)", "=OTHER.ADDIN(B4)", "=LET(x,B4,x*2)", "=C4+1"));
    stored("A1", 1.04);
    stored("A2", 1.05);
    stored("A3", 1.06);
    stored("C4", 5);
    stored("D4", 6);
    stored("E4", 7);
    Workbook after = run("recalc");
    assertEquals(brix(1.04), value(after, "B1"));
    assertEquals(brix(1.05), value(after, "B2"));
    assertEquals(brix(1.06), value(after, "B3"));
    assertEquals(5, value(after, "C4"), "kept, and reported");
    assertEquals(6, value(after, "D4"));
    assertEquals(7, value(after, "E4"));
    for (String stale : new String[] {"log!C4", "log!D4", "log!E4"}) {
      assertTrue(said.contains(stale + ": keeps its old value"), said);
    }
    assertEquals("_xlfn.LET(_xlpm.x,1.04,_xlpm.x)", cell(after, "log", "A1").getCellFormula());
  }

  @Test
  void refusedInputGivesTheErrorAndTheSentence() throws IOException {
    rows(sheet, 0, row(1085, "=GRAVITY.TOBRIX(A1)", "=IFERROR(B1,0)"));
    Workbook after = run("recalc");
    Cell refused = cell(after, "log", "B1");
    assertEquals(CellType.ERROR, refused.getCachedFormulaResultType());
    assertEquals(0, value(after, "C1"));
    assertTrue(said.contains("log!B1: GRAVITY.TOBRIX: sg is 1085 SG"), said);
  }

  @Test
  void namesOtherSheetsLongChainsAndIndirectReferences() throws IOException {
    Sheet other = book.createSheet("other sheet");
    rows(other, 0, row("=log!B1+1", "=INDIRECT(\"log!B1\")"));
    rows(sheet, 0, row(1.04, "=GRAVITY.TOBRIX(A1)", "=B1"));
    for (int r = 1; r < 3000; r++) {
      rows(sheet, r, row(null, null, "=C" + r + "+1"));
    }
    var name = book.createName();
    name.setNameName("Start");
    name.setRefersToFormula("log!$B$1");
    rows(sheet, 0, row(null, null, null, "=Start*2"));
    Workbook after = run("recalc");
    assertEquals(brix(1.04) + 1, cell(after, "other sheet", "A1").getNumericCellValue());
    assertEquals(brix(1.04), cell(after, "other sheet", "B1").getNumericCellValue());
    assertEquals(2 * brix(1.04), value(after, "D1"), 1e-12);
    assertEquals(brix(1.04) + 2999, value(after, "C3000"), 1e-9);
  }

  @Test
  void arrayAndSharedFormulas() throws IOException {
    rows(sheet, 0, row(1.04), row(1.05), row(1.06));
    sheet.setArrayFormula(
        "CELLAR.MAP(\"GRAVITY.TOBRIX\",A1:A3)", CellRangeAddress.valueOf("B1:B3"));
    rows(sheet, 4, row(1.04, "=GRAVITY.TOBRIX(A5)"), row(1.05, "=GRAVITY.TOBRIX(A6)"));
    var shared = ((org.apache.poi.xssf.usermodel.XSSFCell) cell(book, "log", "B5")).getCTCell();
    shared
        .getF()
        .setT(org.openxmlformats.schemas.spreadsheetml.x2006.main.STCellFormulaType.SHARED);
    shared.getF().setRef("B5:B6");
    shared.getF().setSi(0);
    var second = ((org.apache.poi.xssf.usermodel.XSSFCell) cell(book, "log", "B6")).getCTCell();
    second
        .getF()
        .setT(org.openxmlformats.schemas.spreadsheetml.x2006.main.STCellFormulaType.SHARED);
    second.getF().setSi(0);
    second.getF().setStringValue("");
    Workbook after = run("recalc");
    assertEquals(brix(1.06), value(after, "B3"));
    assertEquals(brix(1.04), value(after, "B5"));
    assertEquals(brix(1.05), value(after, "B6"));
  }

  @Test
  void freezeLeavesValuesOfOursAndFormulasOfOthers() throws IOException {
    rows(sheet, 0, row(1.04, "=GRAVITY.TOBRIX(A1)", "=B1*2"));
    rows(sheet, 1, row(1.05));
    sheet.setArrayFormula(
        "CELLAR.MAP(\"GRAVITY.TOBRIX\",A1:A2)", CellRangeAddress.valueOf("D1:D2"));
    Workbook after = run("freeze");
    assertEquals(CellType.NUMERIC, cell(after, "log", "B1").getCellType());
    assertEquals(brix(1.04), value(after, "B1"));
    assertEquals("B1*2", cell(after, "log", "C1").getCellFormula());
    assertEquals(CellType.NUMERIC, cell(after, "log", "D2").getCellType());
    assertEquals(brix(1.05), value(after, "D2"));
  }

  @Test
  void freezeKeepsAFormulaThatHasNoValueToLeave() throws IOException {
    book.setCellFormulaValidation(false);
    String formula = "GRAVITY.TOBRIX(A1)+_xlfn.LET(_xlpm.x,1,_xlpm.x)";
    rows(sheet, 0, row(1.04, "=" + formula, "=GRAVITY.TOBRIX(A1)"));
    Workbook after = run("freeze");
    assertEquals(formula, cell(after, "log", "B1").getCellFormula());
    assertEquals(CellType.NUMERIC, cell(after, "log", "C1").getCellType());
  }

  @Test
  void fillComputesAgainWhatRestsOnTheFilledCells() throws IOException {
    rows(
        sheet,
        0,
        row("SG", "Note", null, "=IFERROR(SUM(C2:C3),0)"),
        row(1.04, "a"),
        row(1.05, "b"));
    Workbook plan = new XSSFWorkbook();
    rows(plan.createSheet("Fill"), 0, row("Sheet", "Result", "Formula"));
    rows(plan.getSheet("Fill"), 1, row("*", "Brix", "GRAVITY.TOBRIX([SG])"));
    save(plan, folder.resolve("plan.xlsx"));
    save(book, folder.resolve("log.xlsx"));
    Run run =
        Run.of(
            "fill",
            folder.resolve("log.xlsx").toString(),
            "--plan",
            folder.resolve("plan.xlsx").toString(),
            "--in-place");
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertEquals(brix(1.04) + brix(1.05), value(open(folder.resolve("log.xlsx")), "D1"), 1e-12);
  }

  /** The table knows that SUM is right; only the stored value shows that it is meant otherwise. */
  @Test
  void aStoredValueThatIsNotReproducedStays() throws IOException {
    rows(sheet, 0, row(1.04, "=GRAVITY.TOBRIX(A1)", "=SUM(B1,B1)", "=SUM(B1,B1)", "=C1+1"));
    stored("B1", 5);
    stored("C1", 99);
    stored("D1", 10);
    stored("E1", 100);
    Workbook after = run("recalc");
    assertEquals(99, value(after, "C1"));
    assertEquals(2 * brix(1.04), value(after, "D1"), 1e-12);
    assertEquals(100, value(after, "E1"), "rests on it");
    assertTrue(said.contains("log!C1: keeps its old value, because its formula with SUM"), said);
    assertTrue(said.contains("from the same inputs, this tool gets another value"), said);
    assertTrue(said.contains("log!E1: keeps its old value"), said);
    assertTrue(said.contains("it rests on log!C1"), said);
    assertTrue(note(after, "C1").contains("SUM"), "said at the cell");
    assertTrue(cell(after, "log", "D1").getCellComment() == null);
  }

  /** Programs disagree on the first of several modes, so no stored value proves it. */
  @Test
  void whatIsNotProvenStaysEvenIfItIsReproduced() throws IOException {
    rows(
        sheet,
        0,
        row(1.05, "=GRAVITY.TOBRIX(A1)", "=MODE(B1:B3)", "=IF(B1>10,MODE(B1:B3),0)"),
        row(1.05, "=GRAVITY.TOBRIX(A2)"),
        row(1.06, "=GRAVITY.TOBRIX(A3)"));
    stored("B1", 5);
    stored("B2", 5);
    stored("B3", 7);
    stored("C1", 5);
    stored("D1", 0);
    Workbook after = run("recalc");
    assertEquals(5, value(after, "C1"));
    assertEquals(0, value(after, "D1"), "the other branch was taken when this was stored");
    assertTrue(said.contains("MODE is not known to give the same"), said);
    assertTrue(said.contains("log!D1: keeps its old value"), said);
  }

  @Test
  void aSignBindsTighterThanAPower() throws IOException {
    rows(sheet, 0, row(1.04, "=GRAVITY.TOBRIX(A1)", "=-B1^2", "=2^-B1^2", "=-(B1^2)"));
    Workbook after = run("recalc");
    assertEquals(Math.pow(brix(1.04), 2), value(after, "C1"), 1e-9);
    assertEquals(Math.pow(2, -2 * brix(1.04)), value(after, "D1"), 1e-12);
    assertEquals(-Math.pow(brix(1.04), 2), value(after, "E1"), 1e-9);
  }

  @Test
  void volatileFormulasStay() throws IOException {
    rows(sheet, 0, row(1.04, "=GRAVITY.TOBRIX(A1)", "=IF(TODAY()>0,B1,0)"));
    stored("C1", 7);
    Workbook after = run("recalc");
    assertEquals(7, value(after, "C1"));
    assertTrue(said.contains("TODAY gives another result at every calculation"), said);
  }

  /** The note goes with the next run that gets it right. */
  @Test
  void theNoteGoesWhenTheValueIsRight() throws IOException {
    rows(sheet, 0, row(1.04, "=GRAVITY.TOBRIX(A1)", "=SUM(B1,B1)"));
    stored("B1", 5);
    stored("C1", 99);
    Path once = folder.resolve("once.xlsx");
    try (Workbook left = run("recalc")) {
      assertTrue(note(left, "C1").startsWith("Not computed again"));
      cell(left, "log", "C1").setCellValue(2 * brix(1.04));
      save(left, once);
    }
    Run again = Run.of("recalc", once.toString(), "--in-place");
    assertEquals(ExitCode.OK, again.code(), again.err());
    assertEquals(null, cell(open(once), "log", "C1").getCellComment());
  }

  private static String note(Workbook workbook, String a1) {
    return cell(workbook, "log", a1).getCellComment().getString().getString();
  }

  @Test
  void whatIsTheSameOfManyCellsOfAColumnIsToldOnce() throws IOException {
    rows(sheet, 0, row("SG", "Brix"));
    for (int i = 1; i <= 30; i++) {
      rows(sheet, i, row(1.05, "=GRAVITY.TOBRIX(A" + (i + 1) + ")+0*NOW()"));
      stored("B" + (i + 1), 5);
    }
    Workbook out = run("recalc");
    assertTrue(said.contains("log!B2 to B31, 30 cells: keeps its old value"), said);
    assertEquals(2, said.lines().filter(line -> !line.isBlank()).count(), said);
    assertEquals(20, out.getSheet("log").getCellComments().size());
    String last = cell(out, "log", "B21").getCellComment().getString().getString();
    assertTrue(last.endsWith("have no note; the report lists them."), last);
  }
}
