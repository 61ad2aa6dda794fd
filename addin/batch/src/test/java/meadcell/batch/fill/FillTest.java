package meadcell.batch.fill;

import static meadcell.batch.TestBooks.cell;
import static meadcell.batch.TestBooks.open;
import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.cellar.Cellar;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FillTest {
  private static final String CORRECT = "GRAVITY.CORRECT([SG]; [Temp]; ; {OG})";

  @TempDir Path folder;
  private final Workbook log = new XSSFWorkbook();
  private final Workbook plan = new XSSFWorkbook();
  private Sheet sheet;
  private boolean isPlanNew = true;

  @BeforeEach
  void sheets() {
    sheet = log.createSheet("HH-22");
    rows(plan.createSheet("Fill"), 0, row("Sheet", "Result", "Formula", "Format", "Note"));
  }

  private void plan(String sheetPattern, String result, String formula) {
    isPlanNew = true;
    Sheet fill = plan.getSheet("Fill");
    rows(fill, fill.getLastRowNum() + 1, row(sheetPattern, result, formula, "0.000"));
  }

  private Run fill(String... more) throws IOException {
    Path logFile = folder.resolve("log.xlsx");
    if (!Files.exists(logFile)) {
      save(log, logFile);
    }
    if (isPlanNew) { // POI writes the time into it
      save(plan, folder.resolve("plan.xlsx"));
      isPlanNew = false;
    }
    String[] fixed = {"fill", logFile.toString(), "--plan", folder.resolve("plan.xlsx").toString()};
    String[] args = new String[fixed.length + more.length];
    System.arraycopy(fixed, 0, args, 0, fixed.length);
    System.arraycopy(more, 0, args, fixed.length, more.length);
    return Run.of(args);
  }

  /** Fills into another folder and gives the result. */
  private Workbook filled() throws IOException {
    Run run = fill("--out", folder.resolve("out").toString());
    assertEquals(ExitCode.OK, run.code(), run.err());
    return open(folder.resolve("out/log.xlsx"));
  }

  private void oneTable(Object[]... readings) {
    rows(sheet, 0, row("Heather honey"), row(), row("OG:", 1.1), row());
    rows(sheet, 4, row("Date", "SG", "Temp (°C)"));
    rows(sheet, 5, readings);
  }

  private static String note(Cell cell) {
    return cell.getCellComment().getString().getString();
  }

  private static double corrected(double reading, double temperature) {
    return (Double) Cellar.catalogue().get("GRAVITY.CORRECT").call(reading, temperature, null, 1.1);
  }

  @Test
  void writesLiveFormulasWithTheirValues() throws IOException {
    oneTable(row(1, 1.08, 18), row(), row(9, 1.03, 16));
    plan("HH-*", "True SG", CORRECT);
    plan("HH-*", "ABV", "ALCOHOL.ABV({OG}; [True SG])");
    Workbook filled = filled();
    assertEquals("True SG", cell(filled, "HH-22", "D5").getStringCellValue());
    Cell first = cell(filled, "HH-22", "D6");
    assertEquals("GRAVITY.CORRECT(B6, C6, , $B$3)", first.getCellFormula());
    assertEquals(corrected(1.08, 18), first.getNumericCellValue());
    assertEquals("0.000", first.getCellStyle().getDataFormatString());
    assertNull(cell(filled, "HH-22", "D7"), "a blank row stays blank");
    assertEquals(
        Cellar.catalogue().get("ALCOHOL.ABV").call(1.1, corrected(1.03, 16)),
        cell(filled, "HH-22", "E8").getNumericCellValue());
  }

  @Test
  void secondRunChangesNothing() throws IOException {
    oneTable(row(1, 1.08, 18), row(2, "1.06 sg", 18), row(3, "?", 18), row(4, 1.3, 20));
    plan("*", "True SG", CORRECT);
    plan("*", "ABV", "ALCOHOL.ABV({OG}; [True SG])");
    Run first = fill("--in-place");
    assertEquals(ExitCode.OK, first.code(), first.err());
    byte[] once = Files.readAllBytes(folder.resolve("log.xlsx"));
    Run second = fill("--in-place");
    assertTrue(second.out().contains("no change"), second.out());
    assertArrayEquals(once, Files.readAllBytes(folder.resolve("log.xlsx")));
    assertTrue(Files.exists(folder.resolve("log.xlsx.bak")));
    assertFalse(Files.exists(folder.resolve("log.xlsx.bak2")));
  }

  @Test
  void refreshFollowsChangedReadingsAndKeepsTypedCells() throws IOException {
    oneTable(row(1, 1.08, 18), row(2, 1.06, 18));
    plan("*", "True SG", CORRECT);
    fill("--in-place");
    Workbook changed = open(folder.resolve("log.xlsx"));
    cell(changed, "HH-22", "B6").setCellValue("not read");
    cell(changed, "HH-22", "D7").setBlank();
    cell(changed, "HH-22", "D7").setCellValue(1.0601);
    save(changed, folder.resolve("log.xlsx"));
    Run run = fill("--in-place");
    assertTrue(run.err().contains("hold what a person typed"), run.err());
    Workbook again = open(folder.resolve("log.xlsx"));
    assertEquals(CellType.BLANK, cell(again, "HH-22", "D6").getCellType());
    assertEquals(1.0601, cell(again, "HH-22", "D7").getNumericCellValue());
    fill("--in-place", "--overwrite");
    assertEquals(
        CellType.FORMULA, cell(open(folder.resolve("log.xlsx")), "HH-22", "D7").getCellType());
  }

  @Test
  void valuesOnlyAreRefreshedToo() throws IOException {
    oneTable(row(1, 1.08, 18));
    plan("*", "True SG", CORRECT);
    fill("--in-place", "--write", "values");
    Workbook changed = open(folder.resolve("log.xlsx"));
    assertEquals(CellType.NUMERIC, cell(changed, "HH-22", "D6").getCellType());
    assertEquals(corrected(1.08, 18), cell(changed, "HH-22", "D6").getNumericCellValue());
    cell(changed, "HH-22", "B6").setCellValue(1.07);
    save(changed, folder.resolve("log.xlsx"));
    fill("--in-place", "--write", "values");
    assertEquals(
        corrected(1.07, 18),
        cell(open(folder.resolve("log.xlsx")), "HH-22", "D6").getNumericCellValue());
  }

  @Test
  void unusualReadingsAreReadWhereClearAndLeftEmptyWhereNot() throws IOException {
    oneTable(
        row(1, "1.085 sg", 18),
        row(2, 1085, "64F"),
        row(3, "~1.020", "18,5"),
        row(4, "1,052", "18 C"),
        row(5, "1.020-1.022", 18),
        row(6, "1.018?", 18),
        row(7, 1.05, "1,018"),
        row(8, 1.05, null),
        row(9, "=1/0", 18),
        row(10, true, 18));
    plan("*", "True SG", CORRECT);
    Workbook filled = filled();
    assertEquals(
        "GRAVITY.CORRECT(IFERROR(GRAVITY.READ(B6), B6), C6, , $B$3)",
        cell(filled, "HH-22", "D6").getCellFormula());
    assertTrue(note(cell(filled, "HH-22", "D6")).contains("\"1.085 sg\", read as 1.085"));
    assertEquals(
        "GRAVITY.CORRECT(IF(B7=1085, 1.085, B7), IF(C7=\"64F\", ((64-32)/1.8), C7), , $B$3)",
        cell(filled, "HH-22", "D7").getCellFormula());
    assertEquals(
        "GRAVITY.CORRECT(IF(B8=\"~1.020\", 1.02, B8), IF(C8=\"18,5\", 18.5, C8), , $B$3)",
        cell(filled, "HH-22", "D8").getCellFormula());
    assertEquals(corrected(1.052, 18), cell(filled, "HH-22", "D9").getNumericCellValue());
    for (String empty : new String[] {"D10", "D11", "D12", "D13", "D14", "D15"}) {
      Cell left = cell(filled, "HH-22", empty);
      assertTrue(left == null || left.getCellType() == CellType.BLANK, empty);
      Comment note = filled.getSheet("HH-22").getCellComment(new CellAddress(empty));
      assertTrue(note.getString().getString().startsWith("True SG stays empty: "), empty);
    }
  }

  /** Computing again says nothing new of how an input was read. */
  @Test
  void recalcLeavesTheNotesOfFill() throws IOException {
    oneTable(row(1, "1.085 sg", 18), row(2, "1.020-1.022", 18));
    plan("*", "True SG", CORRECT);
    Path again = save(filled(), folder.resolve("again.xlsx"));
    assertEquals(ExitCode.OK, Run.of("recalc", again.toString(), "--in-place").code());
    Workbook recalculated = open(again);
    assertTrue(note(cell(recalculated, "HH-22", "D6")).contains("read as 1.085"));
    assertTrue(
        recalculated
            .getSheet("HH-22")
            .getCellComment(new CellAddress("D7"))
            .getString()
            .getString()
            .startsWith("True SG stays empty: "));
  }

  @Test
  void refusedInputStaysEmptyWithTheSentence() throws IOException {
    oneTable(row(1, 1.05, 90));
    plan("*", "True SG", CORRECT);
    String note = note(cell(filled(), "HH-22", "D6"));
    assertTrue(note.contains("temperature is 90 °C"), note);
  }

  @Test
  void unitsOfHeadersAreConvertedForTheFunctionThatTakesThem() throws IOException {
    rows(sheet, 0, row("Head (in)", 20), row("Bilge (in)", 25), row("Length (in)", 32));
    rows(sheet, 4, row("Date", "Dip (mm)", "Temp (°F)"), row(1, 400, 60));
    plan("*", "Metric (L)", "BARREL.CONTENTS({Head}; {Bilge}; {Length}; [Dip])");
    plan("*", "In gallons", "BARREL.CONTENTS({Head}; {Bilge}; {Length}; [Dip]; \"US\")");
    Workbook filled = filled();
    assertEquals(
        "BARREL.CONTENTS($B$1*2.54, $B$2*2.54, $B$3*2.54, B6/10)",
        cell(filled, "HH-22", "D6").getCellFormula());
    assertEquals(
        "BARREL.CONTENTS($B$1, $B$2, $B$3, B6/25.4, \"US\")",
        cell(filled, "HH-22", "E6").getCellFormula());
    assertEquals(
        cell(filled, "HH-22", "D6").getNumericCellValue(),
        3.785411784 * cell(filled, "HH-22", "E6").getNumericCellValue(),
        1e-9);
  }

  @Test
  void severalTablesAndBlocksOfLabelsStayApart() throws IOException {
    rows(sheet, 0, row("OG", 1.1), row(), row("Date", "SG", "Temp"), row(1, 1.08, 20));
    rows(sheet, 5, row("Batch", "next one"), row("OG", 1.09), row());
    rows(sheet, 8, row("Date", "SG", "Temp"), row(1, 1.07, 20), row("Average", 1.07, 20));
    plan("*", "True SG", CORRECT);
    Workbook filled = filled();
    assertEquals("GRAVITY.CORRECT(B4, C4, , $B$1)", cell(filled, "HH-22", "D4").getCellFormula());
    assertEquals(
        "GRAVITY.CORRECT(B10, C10, , $B$7)", cell(filled, "HH-22", "D10").getCellFormula());
    assertNull(cell(filled, "HH-22", "D6"));
    assertNull(cell(filled, "HH-22", "D11"));
  }

  @Test
  void oneHeaderMayStandTwiceInAFormula() throws IOException {
    oneTable(row(0, 1.1, 20), row(5, 1.06, 20));
    plan("*", "Points", "1000*([SG]-1)+0*[SG]*[SG]");
    Workbook filled = filled();
    assertEquals("1000*(B6-1)+0*B6*B6", cell(filled, "HH-22", "D6").getCellFormula());
    assertEquals(100, cell(filled, "HH-22", "D6").getNumericCellValue(), 1e-9);
  }

  @Test
  void labelledCellsAndWholeColumns() throws IOException {
    oneTable(row(0, 1.1, 20), row(5, 1.06, 20));
    sheet.getRow(2).createCell(4).setCellValue("Largest");
    plan("*", "Largest", "MAX([all SG])");
    Workbook filled = filled();
    assertEquals("MAX($B$6:$B$7)", cell(filled, "HH-22", "F3").getCellFormula());
    assertEquals(1.1, cell(filled, "HH-22", "F3").getNumericCellValue());
  }

  @Test
  void otherSpellingsOfHeaders() throws IOException {
    rows(sheet, 0, row("Starting gravity", 1.1), row(), row("Hydrometer", "T"), row(1.08, 20));
    Sheet names = plan.createSheet("Names");
    rows(names, 0, row("SG", "Hydrometer"), row("Temp", "T"), row("OG", "Starting gravity"));
    plan("*", "True SG", CORRECT);
    assertEquals("GRAVITY.CORRECT(A4, B4, , $B$1)", cell(filled(), "HH-22", "C4").getCellFormula());
  }

  @Test
  void planMistakesStopBeforeAnyWorkbookIsTouched() throws IOException {
    oneTable(row(1, 1.08, 18));
    assertMistake("GRAVITY.CORECT([SG]; [Temp])", "Fill!C2", "Did you mean GRAVITY.CORRECT?");
    assertMistake("GRAVITY.CORRECT([SG])", "Fill!C3", "it takes GRAVITY.CORRECT(reading;");
    assertMistake("GRAVITY.CORRECT([SG]; [Temp]", "Fill!C4", "not closed");
    assertMistake("GRAVITY.CORRECT([SG]; [Temp], 3)", "Fill!C5", "by ; and by ,");
    assertMistake("ALCOHOL.ABV(OG;SG)", "Fill!C6", "what is OG? Write [OG] for the value in each");
  }

  private void assertMistake(String formula, String where, String sentence) throws IOException {
    plan("*", "Result", formula);
    Run run = fill("--in-place");
    assertEquals(ExitCode.REFUSED, run.code());
    assertTrue(run.err().contains(where) && run.err().contains(sentence), run.err());
    assertFalse(Files.exists(folder.resolve("log.xlsx.bak")));
    isPlanNew = true;
    Sheet fill = plan.getSheet("Fill");
    fill.getRow(fill.getLastRowNum()).getCell(1).setBlank();
    fill.getRow(fill.getLastRowNum()).getCell(2).setBlank();
  }

  @Test
  void dryRunAndReportTellEverythingAndWriteNothingElse() throws IOException {
    oneTable(row(1, 1.08, 18), row(2, "x", 18));
    plan("*", "True SG", CORRECT);
    Path report = folder.resolve("report.json");
    Run run = fill("--dry-run", "--report", report.toString());
    assertEquals(ExitCode.OK, run.code(), run.err());
    String json = Files.readString(report);
    assertTrue(json.contains("\"status\": \"DRY_RUN\""), json);
    assertTrue(json.contains("\"formula\": \"GRAVITY.CORRECT(B6, C6, , $B$3)\""), json);
    assertTrue(json.contains("\"code\": \"LEFT_EMPTY\""), json);
  }

  @Test
  void existingDifferentResultIsReplacedOnlyByForce() throws IOException {
    oneTable(row(1, 1.08, 18));
    plan("*", "True SG", CORRECT);
    filled();
    assertEquals(ExitCode.OK, fill("--out", folder.resolve("out").toString()).code());
    plan("*", "ABV", "ALCOHOL.ABV({OG}; [True SG])");
    Run run = fill("--out", folder.resolve("out").toString());
    assertEquals(ExitCode.NOT_WRITTEN, run.code());
    assertTrue(run.err().contains("--force"));
    assertEquals(ExitCode.OK, fill("--force", "--out", folder.resolve("out").toString()).code());
  }

  @Test
  void lockedAndProtectedAreRespected() throws IOException {
    oneTable(row(1, 1.08, 18));
    sheet.protectSheet("secret");
    plan("*", "True SG", CORRECT);
    Run run = fill("--in-place");
    assertEquals(ExitCode.LEFT, run.code());
    assertTrue(run.out().contains("The sheet is protected"), run.out());
    assertTrue(run.out().contains("--ignore-protection"), run.out());
    Files.writeString(folder.resolve(".~lock.log.xlsx#"), "");
    assertEquals(ExitCode.REFUSED, fill("--in-place").code());
  }

  @Test
  void tablesSideBySideHaveTheirOwnLabelsAndResults() throws IOException {
    rows(sheet, 0, row("OG", 1.1, null, null, null, null, "OG", 1.12), row());
    rows(sheet, 3, row("SG", "Temp", null, null, null, null, "SG", "Temp"));
    rows(sheet, 4, row(1.09, 20, null, null, null, null, 1.11, 20));
    plan("*", "True SG", "GRAVITY.CORRECT([SG]; [Temp])");
    plan("*", "ABV", "ALCOHOL.ABV({OG}; [True SG])");
    Workbook filled = filled();
    assertEquals("ALCOHOL.ABV($B$1, C5)", cell(filled, "HH-22", "D5").getCellFormula());
    assertEquals("ALCOHOL.ABV($H$1, I5)", cell(filled, "HH-22", "J5").getCellFormula());
    save(filled, folder.resolve("log.xlsx"));
    Run again = fill("--in-place");
    assertTrue(again.out().contains("0 cells changed, 4 as before"), again.out() + again.err());
  }

  @Test
  void tablesTooCloseToEachOtherAreLeftAlone() throws IOException {
    rows(sheet, 0, row("OG", 1.1), row());
    rows(sheet, 3, row("SG", "Temp", null, "SG", "Temp"), row(1.09, 20, null, 1.11, 20));
    plan("*", "True SG", "GRAVITY.CORRECT([SG]; [Temp])");
    Run run = fill("--in-place");
    assertTrue(run.err().contains("insert columns in front of D4"), run.err());
    Workbook filled = open(folder.resolve("log.xlsx"));
    assertNull(cell(filled, "HH-22", "C5"));
    assertEquals("GRAVITY.CORRECT(D5, E5)", cell(filled, "HH-22", "F5").getCellFormula());
  }

  @Test
  void formulasWithoutAStoredResultAreComputed() throws IOException {
    oneTable(row(1, "=1.04+0.01", 18));
    plan("*", "True SG", CORRECT);
    assertEquals(corrected(1.05, 18), cell(filled(), "HH-22", "D6").getNumericCellValue());
  }

  @Test
  void typedNumbersStayThoughEqualToAnEarlierResult() throws IOException {
    oneTable(row(1, 1.08, 20), row(2, 1.07, 20));
    plan("*", "True SG", "GRAVITY.CORRECT([SG]; [Temp])");
    fill("--in-place", "--write", "values");
    Workbook changed = open(folder.resolve("log.xlsx"));
    double first = cell(changed, "HH-22", "D6").getNumericCellValue();
    cell(changed, "HH-22", "D7").setCellValue(first);
    save(changed, folder.resolve("log.xlsx"));
    Run again = fill("--in-place", "--write", "values");
    assertTrue(again.err().contains("what a person typed"), again.err());
    Workbook after = open(folder.resolve("log.xlsx"));
    assertEquals(first, cell(after, "HH-22", "D7").getNumericCellValue());
  }

  @Test
  void oldResultsGoWhenTheirInputIsGone() throws IOException {
    oneTable(row(1, 1.08, 20));
    plan("*", "ABV", "ALCOHOL.ABV({OG}; [SG])");
    fill("--in-place", "--write", "values");
    Workbook changed = open(folder.resolve("log.xlsx"));
    cell(changed, "HH-22", "B3").setCellValue("nothing yet");
    save(changed, folder.resolve("log.xlsx"));
    fill("--in-place", "--write", "values");
    Workbook after = open(folder.resolve("log.xlsx"));
    assertEquals(CellType.BLANK, cell(after, "HH-22", "D6").getCellType());
  }

  @Test
  void nothingIsPutUnderMergedCells() throws IOException {
    oneTable(row(1, 1.08, 20), row(2, 1.07, 20));
    sheet.getRow(4).createCell(3).setCellValue("Notes");
    sheet.getRow(5).createCell(3).setCellValue("a long note");
    sheet.addMergedRegion(CellRangeAddress.valueOf("D6:F7"));
    plan("*", "True SG", CORRECT);
    assertEquals(corrected(1.08, 20), cell(filled(), "HH-22", "G6").getNumericCellValue());
  }

  @Test
  void failedReadingInTheFirstColumnIsNoted() throws IOException {
    rows(sheet, 0, row("SG", "Temp"), row(1.09, 20), row("not read", 20), row(1.07, 20));
    plan("*", "True SG", "GRAVITY.CORRECT([SG]; [Temp])");
    Run run = fill("--in-place");
    assertTrue(run.err().contains("C3: True SG stays empty"), run.err());
  }

  @Test
  void typedResultBesideAFailedReadingIsKept() throws IOException {
    oneTable(row(1, 1.08, 20), row(2, "not read", 20));
    sheet.getRow(4).createCell(3).setCellValue("True SG");
    sheet.getRow(6).createCell(3).setCellValue(1.065);
    plan("*", "True SG", CORRECT);
    Run run = fill("--in-place");
    assertTrue(run.err().contains("1 cell of True SG hold"), run.err());
    assertFalse(run.err().contains("stays empty"), run.err());
  }

  @Test
  void ofManyUnreadableFilesEachIsTold() throws IOException {
    plan("*", "True SG", CORRECT);
    if (isPlanNew) { // POI writes the time into it
      save(plan, folder.resolve("plan.xlsx"));
      isPlanNew = false;
    }
    Path first = Files.write(folder.resolve("a.xlsx"), new byte[0]);
    Path second = Files.writeString(folder.resolve("b.xlsx"), "no workbook");
    Run run =
        Run.of(
            "fill",
            first.toString(),
            second.toString(),
            "--plan",
            folder.resolve("plan.xlsx").toString(),
            "--out",
            folder.resolve("out").toString());
    assertEquals(ExitCode.REFUSED, run.code());
    assertTrue(run.err().contains("a.xlsx: refused"), run.err());
    assertTrue(run.err().contains("b.xlsx: refused"), run.err());
  }

  private Cell first(Workbook filled, String a1) {
    return cell(filled, "HH-22", a1);
  }

  /** What a line needs and does not find is listed with what is there, as it is written. */
  @Test
  void linesWithoutAPlaceAreListedAndTheOthersFilled() throws IOException {
    oneTable(row(1, 1.08, 18));
    plan("*", "True SG", CORRECT);
    plan("*", "Headspace", "BARREL.HEADSPACE({Head}; {Bilge}; {Length}; [Drop])");
    plan("2023", "ABV", "ALCOHOL.ABV({OG}; [True SG])");
    plan("*", "Molecular", "SULFITE.MOLECULAR([Frei]; [pH])");
    Run run = fill("--out", folder.resolve("out").toString());
    assertEquals(ExitCode.OK, run.code(), run.err());
    String why = "\"Drop\" was not found. There is: \"Heather honey\", \"OG:\", \"Date\", \"SG\", ";
    assertTrue(run.err().contains("Headspace (Fill!C3 of the plan): " + why), run.err());
    assertTrue(
        run.err().contains("no sheet has the name \"2023\". There is: \"HH-22\""), run.err());
    Run strict = fill("--strict", "--force", "--out", folder.resolve("out").toString());
    assertEquals(ExitCode.LEFT, strict.code());
  }

  @Test
  void aPlanOfWhichNoLineFindsAPlaceFillsNothing() throws IOException {
    oneTable(row(1, 1.08, 18));
    plan("*", "Molecular", "SULFITE.MOLECULAR([Frei]; [pH])");
    Run run = fill("--in-place");
    assertEquals(ExitCode.LEFT, run.code());
    assertTrue(run.out().contains("nothing was filled"), run.out());
  }

  /** Sheets may be called by years, and a program keeps a typed 2023 as a number. */
  @Test
  void namesAndFormatsTypedAsNumbers() throws IOException {
    Sheet year = log.createSheet("2023");
    rows(year, 0, row("OG", 1.1), row(), row("SG", "Temp"), row(1.08, 20));
    plan("*", "True SG", CORRECT);
    plan.getSheet("Fill").getRow(1).createCell(0).setCellValue(2023);
    assertEquals(1.08, cell(filled(), "2023", "C4").getNumericCellValue(), 1e-9);
    plan.getSheet("Fill").getRow(1).createCell(3).setCellValue(0.0);
    isPlanNew = true;
    Run number = fill("--dry-run");
    assertEquals(ExitCode.REFUSED, number.code());
    assertTrue(number.err().contains("with an apostrophe in front: '0.0000"), number.err());
    for (String unknown : new String[] {"three decimals", "0,000"}) {
      plan.getSheet("Fill").getRow(1).createCell(3).setCellValue(unknown);
      isPlanNew = true;
      assertEquals(ExitCode.REFUSED, fill("--dry-run").code(), unknown);
    }
  }

  @Test
  void theUnitInAResultsHeaderCounts() throws IOException {
    rows(sheet, 0, row("Head (cm)", 50), row("Bilge (cm)", 62), row("Length (cm)", 80), row());
    rows(sheet, 4, row("Drop (cm)"), row(3));
    String headspace = "BARREL.HEADSPACE({Head}; {Bilge}; {Length}; [Drop])";
    plan("*", "Headspace (L)", headspace);
    plan("*", "Gallons missing (gal)", headspace);
    plan("*", "Missing (g)", headspace);
    plan("*", "Missing too (blub)", headspace);
    Run run = fill("--in-place");
    Workbook filled = open(folder.resolve("log.xlsx"));
    double litres = first(filled, "B6").getNumericCellValue();
    assertEquals(litres / 3.785411784, first(filled, "C6").getNumericCellValue(), 1e-9, run.err());
    assertTrue(run.err().contains("its header names g; the formula gives L"), run.err());
    assertEquals(
        CellType.BLANK,
        first(filled, "D6") == null ? CellType.BLANK : first(filled, "D6").getCellType());
  }

  @Test
  void rowsOfUnitsInAnySpelling() throws IOException {
    for (String spelled : new String[] {"(°F)", "deg F", "[degrees F]", "°f", "Fahrenheit"}) {
      Files.deleteIfExists(folder.resolve("log.xlsx"));
      rows(sheet, 0, row("SG", "Temp"), row(null, spelled), row(1.05, 68));
      plan("*", "True SG", "GRAVITY.CORRECT([SG]; [Temp])");
      assertEquals(ExitCode.OK, fill("--in-place").code());
      assertEquals(
          1.05, first(open(folder.resolve("log.xlsx")), "C3").getNumericCellValue(), 1e-9, spelled);
      plan.getSheet("Fill").removeRow(plan.getSheet("Fill").getRow(1));
    }
  }

  /** Two furlongs are not two centimetres. */
  @Test
  void anUnknownUnitIsRefused() throws IOException {
    rows(sheet, 0, row("Head", 50, "cm"), row("Bilge", 62, "cm"), row("Length", 80, "fur"));
    rows(sheet, 4, row("Date", "Dip"), row(null, "(xyz)"), row(1, 2));
    plan("*", "Holds", "BARREL.CONTENTS(50; 62; 80; [Dip])");
    plan("*", "Full", "BARREL.VOLUME({Head}; {Bilge}; {Length})");
    Run run = fill("--in-place");
    assertTrue(run.err().contains("the unit \"xyz\" of Dip is not known"), run.err());
    assertTrue(run.err().contains("the unit \"fur\" of Length is not known"), run.err());
  }

  @Test
  void unitsBesideLabelledValues() throws IOException {
    rows(sheet, 0, row("Head", 20, "in"), row("Bilge", 24, "in"), row("Length", 32, "in"));
    sheet.createRow(4).createCell(0).setCellValue("Full (L)");
    plan("*", "Full (L)", "BARREL.VOLUME({Head}; {Bilge}; {Length})");
    assertEquals(
        "BARREL.VOLUME($B$1*2.54, $B$2*2.54, $B$3*2.54)", first(filled(), "B5").getCellFormula());
  }

  @Test
  void aHeaderThatStandsTwiceAsksWhich() throws IOException {
    rows(sheet, 0, row("SG", "SG", "Temp"), row(1.08, 1.05, 20));
    plan("*", "True SG", "GRAVITY.CORRECT([SG]; [Temp])");
    plan("*", "True second", "GRAVITY.CORRECT([SG #2]; [Temp])");
    Run run = fill("--in-place");
    assertTrue(
        run.err().contains("which is meant by \"sg\", \"SG\" in A1 or \"SG\" in B1?"), run.err());
    assertTrue(run.err().contains("In the plan write [SG #1] or [SG #2]"), run.err());
    assertEquals(1.05, first(open(folder.resolve("log.xlsx")), "D2").getNumericCellValue(), 1e-9);
  }

  @Test
  void tablesSideBySideWithoutAGapAreTwo() throws IOException {
    rows(sheet, 0, row("SG", "Temp", "SG", "Temp"), row(1.08, 20, 1.05, 20));
    plan("*", "True SG", "GRAVITY.CORRECT([SG]; [Temp])");
    Run run = fill("--in-place");
    assertTrue(run.err().contains("insert columns in front of C1"), run.err());
    assertEquals(
        "GRAVITY.CORRECT(C2, D2)", first(open(folder.resolve("log.xlsx")), "E2").getCellFormula());
  }

  @Test
  void aCorrectedReadingCorrectsTheResult() throws IOException {
    oneTable(row(1, "1.080 SG", "18 C"), row(2, "1060", 18));
    plan("*", "True SG", CORRECT);
    fill("--in-place");
    Workbook changed = open(folder.resolve("log.xlsx"));
    assertEquals(corrected(1.08, 18), cell(changed, "HH-22", "D6").getNumericCellValue());
    cell(changed, "HH-22", "B6").setCellValue(1.07);
    cell(changed, "HH-22", "C6").setCellValue(20.0);
    save(changed, folder.resolve("log.xlsx"));
    assertEquals(
        ExitCode.OK, Run.of("recalc", folder.resolve("log.xlsx").toString(), "--in-place").code());
    assertEquals(
        corrected(1.07, 20),
        cell(open(folder.resolve("log.xlsx")), "HH-22", "D6").getNumericCellValue());
  }

  @Test
  void aLabelAndItsValueInOneCell() throws IOException {
    rows(sheet, 0, row("OG: 1.105"), row("Volume: 100 L"), row("Honey = 30 kg"), row());
    rows(sheet, 5, row("Date", "SG", "Temp"), row(1, "1.042 @ 18C", 18));
    plan("*", "True SG", "GRAVITY.CORRECT([SG]; GRAVITY.READTEMPERATURE([SG]); ; {OG})");
    plan("*", "OG by the honey", "HONEY.GRAVITY({Volume}; {Honey})");
    Workbook filled = filled();
    assertEquals(
        Cellar.catalogue().get("GRAVITY.CORRECT").call(1.042, 18.0, null, 1.105),
        first(filled, "D7").getNumericCellValue());
    assertEquals("OG by the honey", first(filled, "C2").getStringCellValue());
    assertEquals(
        Cellar.catalogue().get("HONEY.GRAVITY").call(100.0, 30.0),
        first(filled, "D2").getNumericCellValue());
  }

  @Test
  void aReadingWithAUnitOfTwoLettersIsComputed() throws IOException {
    rows(sheet, 0, row("Drop (in)"), row("7.5 cm"));
    plan("*", "Missing", "BARREL.HEADSPACE(50; 62; 80; [Drop])");
    Cell result = first(filled(), "B2");
    assertEquals(
        (Double) Cellar.catalogue().get("BARREL.HEADSPACE").call(50.0, 62.0, 80.0, 7.5),
        result.getNumericCellValue());
    assertEquals(
        "BARREL.HEADSPACE(50, 62, 80, IF(A2=\"7.5 cm\", 7.5, A2*2.54))", result.getCellFormula());
  }

  @Test
  void tablesThatLieAcross() throws IOException {
    rows(sheet, 0, row("OG", 1.1), row());
    rows(sheet, 3, row("Date", 1, 5, 9), row("SG", 1.08, 1.05, 1.02), row("Temp (°F)", 68, 68, 64));
    plan("*", "True SG", CORRECT);
    Workbook filled = filled();
    assertEquals("True SG", first(filled, "A7").getStringCellValue());
    assertEquals(
        "GRAVITY.CORRECT(C5, ((C6-32)/1.8), , $B$1)", first(filled, "C7").getCellFormula());
    assertEquals(corrected(1.08, 20), first(filled, "B7").getNumericCellValue(), 1e-12);
  }

  @Test
  void theTradesOtherWordsAreFound() throws IOException {
    rows(sheet, 0, row("Stammdichte", 1.1), row(), row("Dichte", "Temperatur"), row(1.08, 20));
    plan("*", "True SG", CORRECT);
    assertEquals("GRAVITY.CORRECT(A4, B4, , $B$1)", first(filled(), "C4").getCellFormula());
  }

  @Test
  void aColumnSoFarBeginsBelowTheLastBlank() throws IOException {
    rows(sheet, 0, row("SG"), row(1.08), row(1.06), row("lost"), row(1.04), row(1.03));
    plan("*", "Mean", "BLEND.MEAN([so far SG]; [so far SG])");
    Workbook filled = filled();
    assertEquals("BLEND.MEAN($A$2:A3, $A$2:A3)", first(filled, "B3").getCellFormula());
    assertEquals("BLEND.MEAN($A$5:A6, $A$5:A6)", first(filled, "B6").getCellFormula());
  }

  @Test
  void columnsSoFarGiveWhatEachRowByItselfGives() throws IOException {
    rows(sheet, 0, row("L", "SG"));
    double litres = 0;
    double sum = 0;
    for (int i = 1; i <= 60; i++) {
      rows(sheet, i, row((double) i, 1 + i * i / 1e5));
    }
    plan("*", "Mean", "BLEND.MEAN([so far L]; [so far SG])");
    Workbook filled = filled();
    for (int i = 1; i <= 60; i++) {
      litres += i;
      sum += i * (1 + i * i / 1e5);
      assertEquals(sum / litres, first(filled, "C" + (i + 1)).getNumericCellValue(), 1e-12);
    }
  }
}
