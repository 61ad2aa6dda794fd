package meadcell.batch.draft;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.TestBooks;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DraftTest {
  @TempDir Path folder;
  private final XSSFWorkbook log = new XSSFWorkbook();
  private final Sheet sheet = log.createSheet("Log");

  private Path plan() {
    return folder.resolve("plan.xlsx");
  }

  private Run draft(String... more) throws IOException {
    Path file = TestBooks.save(log, folder.resolve("log.xlsx"));
    List<String> command = new ArrayList<>(List.of("draft", file.toString()));
    command.addAll(List.of("--force", "--plan", plan().toString()));
    command.addAll(List.of(more));
    return Run.of(command.toArray(String[]::new));
  }

  /** The rows of a sheet of the plan, their cells between bars. */
  private List<String> lines(String name) throws IOException {
    List<String> lines = new ArrayList<>();
    try (Workbook plan = TestBooks.open(plan())) {
      for (Row row : plan.getSheet(name)) {
        List<String> cells = new ArrayList<>();
        for (Cell cell : row) {
          cells.add(cell.toString());
        }
        lines.add(String.join(" | ", cells));
      }
    }
    return lines;
  }

  private String line(String name, String part) throws IOException {
    List<String> found = lines(name).stream().filter(line -> line.contains(part)).toList();
    assertEquals(
        1, found.size(), part + " in " + lines(name).stream().collect(Collectors.joining("\n")));
    return found.get(0);
  }

  private void ferment(String gravity, String temperature, double... warmth) {
    rows(sheet, 0, row("OG", 1.104), row());
    rows(sheet, 3, row("Date", gravity, temperature));
    for (int i = 0; i < warmth.length; i++) {
      rows(sheet, 4 + i, row(45566 + 4 * i, 1.102 - 0.01 * i, warmth[i]));
    }
  }

  @Test
  void aLineSaysWhyAndWhereItFoundWhatItTakesAndWhatItGives() throws IOException {
    ferment("SG", "Temp (°C)", 18, 20, 22, 21);
    Run run = draft();
    assertEquals(ExitCode.OK, run.code(), run.err());
    String line = line("Fill", "GRAVITY.CORRECT");
    assertTrue(line.startsWith("sure | * | True SG | GRAVITY.CORRECT([SG]; [Temp]; ; {OG})"), line);
    assertTrue(line.contains("at 20 °C, for which it is taken to be made"), line);
    assertTrue(line.contains("\"SG\" Log!B5:B8 in SG"), line);
    assertTrue(line.contains("\"Temp (°C)\" Log!C5:C8 in °C"), line);
    assertTrue(line.matches(".*D5 1\\.10\\d*; D6 1\\.09\\d*; D7 1\\.08\\d*.*"), line);
    String progress = line("Fill", "FERMENT.PROGRESS");
    assertTrue(progress.startsWith("please check"), progress);
    assertTrue(progress.contains("write the expected FG into the log"), progress);
  }

  /** 18 to 22 can be no °F in a ferment; 64 to 72 no °C; 33 to 40 may be either. */
  @Test
  void valuesSayTheUnitWhereTheHeaderDoesNot() throws IOException {
    ferment("SG", "Temp", 18, 20, 22, 21);
    draft();
    assertTrue(line("Fill", "GRAVITY.CORRECT").startsWith("sure"));
    ferment("SG", "Temp", 64, 68, 72, 70);
    draft();
    assertTrue(line("Fill", "GRAVITY.CORRECT").contains("{OG}; \"US\")"));
    assertTrue(line("Names", "°F").startsWith("Temp (°F) | temp"));
    ferment("SG", "Temp", 33, 35, 38, 40);
    draft();
    String either = line("Fill", "GRAVITY.CORRECT");
    assertTrue(either.startsWith("please check"), either);
    assertTrue(either.contains("33 to 40 may be °C or °F, taken as °C"), either);
  }

  @Test
  void whereNameAndValuesDisagreeItAsks() throws IOException {
    rows(sheet, 0, row("OG", 1.104), row(), row("Date", "SG", "Temp (°C)"));
    for (int i = 0; i < 5; i++) {
      rows(sheet, 3 + i, row(45566 + i, 24 - 2 * i, 20));
    }
    Run run = draft();
    assertEquals(ExitCode.LEFT, run.code(), run.out());
    rows(sheet, 10, row("Date", "Free SO2", "pH"), row(45600, 30, 3.4), row(45601, 28, 3.4));
    assertEquals(ExitCode.OK, draft().code());
    String asked = line("Seen, not used", "Log!B4:B8");
    assertTrue(
        asked.contains("16 to 24 does not fit its name. Is it in °Bx or °Oe or °Bé?"), asked);
  }

  /** What came in after the first topping is what the days since then took. */
  @Test
  void theLossOfAYearFollowsFromTheToppings() throws IOException {
    rows(sheet, 0, row("Capacity (L)", 225), row(), row("Date", "Topped (L)"));
    rows(sheet, 3, row(45600, 4), row(45630, 0.9), row(45661, 1), row(45692, 0.8));
    draft();
    assertTrue(line("Fill", "BARREL.LOSSRATE").contains("[so far Topped]"));
    Path file = TestBooks.save(log, folder.resolve("log.xlsx"));
    Run fill = Run.of("fill", file.toString(), "--plan", plan().toString(), "--in-place");
    assertEquals(ExitCode.OK, fill.code(), fill.err());
    try (Workbook filled = TestBooks.open(file)) {
      assertEquals(
          100 * (0.9 + 1 + 0.8) / 92 * 365.25 / 225,
          TestBooks.cell(filled, "Log", "C7").getNumericCellValue(),
          0.05);
    }
  }

  @Test
  void anUnknownUnitIsListedAndNotUsed() throws IOException {
    rows(sheet, 0, row("Head (cm)", 50), row("Bilge (cm)", 62), row("Length (cm)", 80), row());
    rows(sheet, 4, row("Date", "Dip (ells)", "Drop (xyz)", "Free SO2", "pH"));
    rows(sheet, 5, row(45600, 40, 3, 30, 3.4), row(45601, 40, 3, 30, 3.4));
    draft();
    assertTrue(line("Seen, not used", "Drop (xyz)").contains("the unit \"xyz\" is not known"));
    List<String> fill = lines("Fill");
    assertTrue(fill.stream().noneMatch(line -> line.contains("BARREL.")), fill.toString());
  }

  @Test
  void theLogStaysAsItIsAndAPlanIsNotReplacedUnasked() throws IOException {
    ferment("SG", "Temp", 18, 20, 22, 21);
    Path file = TestBooks.save(log, folder.resolve("log.xlsx"));
    byte[] before = Files.readAllBytes(file);
    String[] command = {"draft", file.toString(), "--plan", plan().toString()};
    assertEquals(ExitCode.OK, Run.of(command).code());
    assertArrayEquals(before, Files.readAllBytes(file));
    Run again = Run.of(command);
    assertEquals(ExitCode.NOT_WRITTEN, again.code());
    assertTrue(again.err().contains("--force replaces it"), again.err());
    Run over = Run.of("draft", file.toString(), "--force", "--plan", file.toString());
    assertEquals(ExitCode.USAGE, over.code());
    assertArrayEquals(before, Files.readAllBytes(file));
  }

  /** Logs of other trades, with some of the same words. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Date,Car,Odometer (km),Litres,Price\n2024-01-03,Van,120345,41.2,1.799\n2024-01-19,Van,120901,38.5,1.819",
        "Name;Datum;Stunden;Brutto;Netto\nA;01.02.2024;160;2960,00;2100,12\nB;01.02.2024;150;2625,00;1900,40",
        "Date,Temp (°C),pH,Chlorine\n2024-06-01,26,7.3,1.1\n2024-06-02,27,7.4,0.9",
        "Lorry,Gross (kg),Tare (kg)\nA,24000,11000\nB,23800,11000",
        "Date,Length,Head,Gap\n2024-06-01,1200,3,0.5\n2024-06-02,1300,4,0.4",
        "Cell,SG,Temp (C),Date\n1,1.265,22,2024-03-01\n2,1.262,22,2024-03-01\n3,1.268,23,2024-03-01",
        "Hours,Temp C,RH\n0,20,60\n24,21,61\n48,20,62",
        "timestamp,Volume,Temperature\n2024-06-01 08:00,12,20\n2024-06-01 09:00,13,21",
        "Day,Hours,Rate\n1,8,20\n2,7.5,20\n3,8,20",
        "elapsed hours,sg,temp c\n0,1.265,22\n5,1.262,22\n10,1.258,23",
        "Time (h),Dissolved oxygen,pH\n0,8.1,7.2\n1,7.9,7.2\n2,7.7,7.1",
        "Date,SG,Temp,pH\n2024-01-02,1.025,25.1,4.9\n2024-01-09,1.026,25.3,4.8\n2024-01-16,1.024,24.9,5"
      })
  void aLogOfAnotherTradeDraftsNothing(String text) throws IOException {
    Path other = Files.writeString(folder.resolve("other.csv"), text);
    Run run = Run.of("draft", other.toString(), "--plan", plan().toString());
    assertEquals(ExitCode.LEFT, run.code(), run.out() + run.err());
    assertFalse(Files.exists(plan()));
  }

  @Test
  void oneLogThatCannotBeReadStopsNoOther() throws IOException {
    ferment("SG", "Temp", 18, 20, 22, 21);
    Path broken = Files.writeString(folder.resolve("broken.xlsx"), "no workbook");
    Run run = draft(broken.toString());
    assertEquals(ExitCode.SOME_FAILED, run.code());
    assertTrue(run.err().contains("broken.xlsx: refused. "), run.err());
    assertTrue(Files.exists(plan()));
  }

  @Test
  void aPlanWithoutALog() throws IOException {
    Run empty = Run.of("draft", "--empty", "--plan", plan().toString());
    assertEquals(ExitCode.OK, empty.code(), empty.err());
    ferment("SG", "Temp", 20, 20, 20);
    Path file = TestBooks.save(log, folder.resolve("log.xlsx"));
    Run fill = Run.of("fill", file.toString(), "--plan", plan().toString(), "--in-place");
    assertEquals(ExitCode.OK, fill.code(), fill.err());
    assertEquals(ExitCode.USAGE, Run.of("draft", "--plan", plan().toString()).code());
    assertTrue(Run.of("explain", "plan").out().contains("[so far SG]"));
  }

  /** Two tables of one sheet whose true gravity needs other formulas. */
  @Test
  void oneSheetHasOneFormulaForAResult() throws IOException {
    ferment("SG", "Temp (°C)", 18, 20, 22, 21);
    rows(sheet, 12, row("Date", "SG", "Temp (°F)"));
    for (int i = 0; i < 4; i++) {
      rows(sheet, 13 + i, row(45600 + i, 1.09 - 0.01 * i, 66));
    }
    draft();
    line("Fill", "| True SG |");
    assertTrue(line("Seen, not used", "True SG = ").contains("by another formula"));
  }

  @Test
  void aRisingGravityIsNoSureMatter() throws IOException {
    ferment("SG", "Temp (°C)", 18, 20, 22, 21, 21, 20);
    sheet.getRow(7).getCell(1).setCellValue(1.095);
    draft();
    String strength = line("Fill", "ALCOHOL.ABV");
    assertTrue(strength.startsWith("please check"), strength);
    assertTrue(
        strength.contains("it rises from 1.082 to 1.095: was honey or fruit added"), strength);
  }

  /** One list for all batches: an original gravity in each row, or none that is sure. */
  @Test
  void severalBatchesInOneTable() throws IOException {
    rows(sheet, 0, row("OG", 1.104), row(), row("Batch", "Date", "SG", "Temp (°C)"));
    for (int i = 0; i < 6; i++) {
      rows(sheet, 3 + i, row(i < 3 ? "A" : "B", 45566 + i, 1.09 - 0.01 * i, 20));
    }
    draft();
    String strength = line("Fill", "ALCOHOL.ABV");
    assertTrue(strength.contains("one OG is taken for several batches or barrels"), strength);
    assertTrue(lines("Fill").stream().noneMatch(line -> line.contains("FERMENT.STATE")));
    rows(sheet, 2, row("Batch", "Date", "SG", "Temp (°C)", "OG"));
    for (int i = 0; i < 6; i++) {
      sheet.getRow(3 + i).createCell(4).setCellValue(i < 3 ? 1.104 : 1.09);
    }
    draft();
    assertTrue(line("Fill", "ALCOHOL.ABV").startsWith("sure"), line("Fill", "ALCOHOL.ABV"));
    assertTrue(line("Fill", "ALCOHOL.ABV").contains("ALCOHOL.ABV([OG]; [True SG])"));
  }

  @Test
  void resultsOfLabelledCellsGetALabel() throws IOException {
    rows(
        sheet,
        0,
        row("OG", 1.104),
        row("FG", 0.998),
        row("Volume (L)", 100),
        row("Honey (kg)", 31));
    draft();
    Path file = folder.resolve("log.xlsx");
    Run fill = Run.of("fill", file.toString(), "--plan", plan().toString(), "--in-place");
    assertEquals(ExitCode.OK, fill.code(), fill.err());
    try (Workbook filled = TestBooks.open(file)) {
      assertEquals("ABV (% vol)", TestBooks.cell(filled, "Log", "D1").getStringCellValue());
      assertEquals(
          Handbook.abv(1.104, 0.998),
          TestBooks.cell(filled, "Log", "E1").getNumericCellValue(),
          0.35);
      assertEquals("OG by the honey", TestBooks.cell(filled, "Log", "D3").getStringCellValue());
    }
    Run again = Run.of("fill", file.toString(), "--plan", plan().toString(), "--in-place");
    assertTrue(again.out().contains("no change"), again.out());
  }

  /** Headers as laboratories and loggers write them: hours, Brix alone, days and times. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "hr,brix,temp c\n0,23.5,20\n24,16.2,22\n72,5.9,21\n120,0.4,20\n168,-1.1,20",
        "hours since pitch,brix\n0,23.5\n24,16.2\n72,5.9\n120,0.4\n168,-1.1",
        "brix,day\n23.5,0\n16.2,1\n5.9,3\n0.4,5\n-1.1,7",
        "time (h),sg\n0,1.09\n24,1.06\n72,1.02\n120,1.001\n168,0.997",
        "Elapsed days,Plato,Temp_C\n0,22,18\n1,16,18\n3,6,18\n5,0.4,18\n7,-0.9,18",
        "timestamp,sg\n2024-09-01 08:30,1.09\n2024-09-02 20:00,1.05\n2024-09-05 08:30,1.0"
      })
  void whatALaboratoryWritesIsAFerment(String text) throws IOException {
    Path lab = Files.writeString(folder.resolve("lab.csv"), text);
    Run run = Run.of("draft", lab.toString(), "--plan", plan().toString());
    assertTrue(run.out().contains("ABV (% vol) = ALCOHOL.ABV("), run.out() + run.err());
    assertTrue(run.out().contains("State = FERMENT.STATE([so far "), run.out());
    assertTrue(run.out().contains("; 0 seen and not used"), run.out());
  }

  /** A refractometer would still show some 8 °Bx of what began with 23.5 and is dry. */
  @Test
  void brixThatARefractometerMayShowIsNotTakenForAHydrometers() throws IOException {
    Path log =
        Files.writeString(
            folder.resolve("lab.csv"), "hr,brix\n0,23.5\n24,17\n72,11\n120,8.9\n168,8.4");
    Run run = Run.of("draft", log.toString(), "--plan", plan().toString());
    assertTrue(run.out().contains("SG by refractometer = GRAVITY.FROMBRIX([Brix])"), run.out());
    assertFalse(run.out().contains("ALCOHOL.ABV"), run.out());
    Run filled =
        Run.of("fill", log.toString(), "--plan", plan().toString(), "--out", folder + "/out");
    assertEquals(ExitCode.OK, filled.code(), filled.err());
    try (Workbook book = TestBooks.open(folder.resolve("out/lab.xlsx"))) {
      double gravity = TestBooks.cell(book, book.getSheetName(0), "C2").getNumericCellValue();
      assertEquals(1.0985, gravity, 0.001, "23.5 °Bx in SG, not in °Bx");
    }
  }
}
