package meadcell.batch.draft;

import static meadcell.batch.draft.Cellar12.CELSIUS;
import static meadcell.batch.draft.Cellar12.GRAVITY;
import static meadcell.batch.draft.Cellar12.ORIGINAL;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.TestBooks;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Drafts a plan for each of twelve logs and fills the log by it, with no hand on the plan. What a
 * person would want is there and agrees with {@link Handbook}, as far as that goes.
 */
class TwelveLogsTest {
  private static final double LIKE_A_RULE_OF_THUMB = 0.0012;
  private static final double LIKE_BALLINGS_FORMULA = 0.35;

  @TempDir Path folder;
  private final List<String> wanted = new ArrayList<>();
  private final List<String> missed = new ArrayList<>();

  /** A log with its drafted plan, filled. */
  private record Filled(Workbook log, Workbook plan) {}

  private Filled filled(int number) throws IOException {
    Path log = Cellar12.write(number, Files.createDirectories(folder.resolve("logs")));
    byte[] before = Files.readAllBytes(log);
    Path plan = folder.resolve("plan-" + number + ".xlsx");
    Run draft = Run.of("draft", log.toString(), "--plan", plan.toString());
    assertEquals(ExitCode.OK, draft.code(), number + draft.out() + draft.err());
    assertArrayEquals(before, Files.readAllBytes(log));
    Path out = folder.resolve("filled");
    Run fill = Run.of("fill", log.toString(), "--plan", plan.toString(), "--out", out.toString());
    assertEquals(ExitCode.OK, fill.code(), number + fill.out() + fill.err());
    String name = log.getFileName().toString().replace(".csv", ".xlsx");
    return new Filled(TestBooks.open(out.resolve(name)), TestBooks.open(plan));
  }

  /** The results under (or, of a table that lies across, beside) a header, all tables together. */
  private static List<Double> results(Workbook log, String header) {
    List<Double> found = new ArrayList<>();
    Sheet sheet = log.getSheetAt(0);
    for (Row row : sheet) {
      for (Cell cell : row) {
        if (cell.getCellType() == CellType.STRING && cell.getStringCellValue().equals(header)) {
          boolean isAcross = numeric(sheet, cell.getRowIndex(), cell.getColumnIndex() + 1);
          for (int i = 1; i < 20; i++) {
            int r = cell.getRowIndex() + (isAcross ? 0 : i);
            int c = cell.getColumnIndex() + (isAcross ? i : 0);
            if (numeric(sheet, r, c)) {
              found.add(sheet.getRow(r).getCell(c).getNumericCellValue());
            } else if (!isAcross && i > 2) {
              break;
            }
          }
        }
      }
    }
    return found;
  }

  private static boolean numeric(Sheet sheet, int r, int c) {
    Cell cell = sheet.getRow(r) == null ? null : sheet.getRow(r).getCell(c);
    return cell != null
        && cell.getCellType() == CellType.FORMULA
        && cell.getCachedFormulaResultType() == CellType.NUMERIC;
  }

  private void holds(
      int log, Filled filled, String header, int count, double within, IntToDoubleFunction truth) {
    String what = "log " + log + " " + header;
    wanted.add(what);
    List<Double> found = results(filled.log, header);
    if (found.isEmpty()) {
      missed.add(what);
      return;
    }
    assertEquals(count, found.size(), what + found);
    for (int i = 0; i < count; i++) {
      assertEquals(truth.applyAsDouble(i), found.get(i), within, what + " in row " + i);
    }
  }

  private void ferment(int log, int count, IntToDoubleFunction corrected) throws IOException {
    Filled filled = filled(log);
    holds(log, filled, "True SG", count, LIKE_A_RULE_OF_THUMB, corrected);
    holds(
        log,
        filled,
        "ABV (% vol)",
        count,
        LIKE_BALLINGS_FORMULA,
        i -> Handbook.abv(ORIGINAL, Math.min(ORIGINAL, corrected.applyAsDouble(i))));
    holds(
        log,
        filled,
        "Sugar left (g/L)",
        count,
        6,
        i -> Handbook.sugarLeft(ORIGINAL, Math.min(ORIGINAL, corrected.applyAsDouble(i))));
    String[] states = states(filled.log);
    wanted.add("log " + log + " state");
    if (states.length == 0) {
      missed.add("log " + log + " state");
      return;
    }
    assertEquals("cannot tell", states[0], "one reading tells nothing");
    assertEquals("falling", states[5], "it falls by 0.004 a day");
    for (String state : states) {
      assertTrue(!state.equals("finished") && !state.equals("stalled"), "it falls to the last");
    }
  }

  private static String[] states(Workbook log) {
    List<String> found = new ArrayList<>();
    for (Row row : log.getSheetAt(0)) {
      for (Cell cell : row) {
        boolean isText =
            cell.getCellType() == CellType.FORMULA
                && cell.getCellFormula().startsWith("FERMENT.STATE")
                && cell.getCachedFormulaResultType() == CellType.STRING;
        if (isText) {
          found.add(cell.getStringCellValue());
        }
      }
    }
    return found.toArray(String[]::new);
  }

  private static double at20(int i) {
    return Handbook.corrected(GRAVITY[i], CELSIUS[i], 20);
  }

  private void metric(int log) throws IOException {
    ferment(log, GRAVITY.length, TwelveLogsTest::at20);
  }

  @Test
  void whatAPersonWouldWantIsThereAndRight() throws IOException {
    for (int log : new int[] {1, 2, 4, 5}) {
      metric(log);
    }
    ferment(
        3,
        GRAVITY.length,
        i ->
            Handbook.corrected(
                GRAVITY[i], (Cellar12.fahrenheit(i) - 32) / 1.8, 60 / 1.8 - 32 / 1.8));
    withoutGap();
    headerAgain();
    batches();
    inches();
    scale();
    ferment(
        11,
        Cellar12.OECHSLE_READINGS,
        i -> Handbook.corrected(1 + Cellar12.oechsle(i) / 1000, CELSIUS[i], 20));
    sulfite();
    assertTrue(wanted.size() >= 30, wanted.size() + " lines are wanted");
    assertTrue(missed.size() <= wanted.size() / 10, missed + " of " + wanted.size());
  }

  private void withoutGap() throws IOException {
    Filled filled = filled(6);
    holds(6, filled, "True SG", GRAVITY.length, LIKE_A_RULE_OF_THUMB, TwelveLogsTest::at20);
    holds(
        6,
        filled,
        "ABV (% vol)",
        GRAVITY.length,
        LIKE_BALLINGS_FORMULA,
        i -> Handbook.abv(ORIGINAL, Math.min(ORIGINAL, at20(i))));
    holds(6, filled, "Headspace (L)", 6, 0.02, i -> Handbook.headspace(50, 62, 80, 2.5 + 0.5 * i));
  }

  private void headerAgain() throws IOException {
    Filled filled = filled(7);
    holds(7, filled, "True SG", GRAVITY.length, LIKE_A_RULE_OF_THUMB, TwelveLogsTest::at20);
    holds(
        7,
        filled,
        "ABV (% vol)",
        GRAVITY.length,
        LIKE_BALLINGS_FORMULA,
        i -> Handbook.abv(ORIGINAL, Math.min(ORIGINAL, at20(i))));
  }

  private void batches() throws IOException {
    Filled filled = filled(8);
    double[][] b = Cellar12.BATCHES;
    holds(8, filled, "ABV (% vol)", 3, LIKE_BALLINGS_FORMULA, i -> Handbook.abv(b[i][0], b[i][1]));
    holds(8, filled, "Sugar left (g/L)", 3, 6, i -> Handbook.sugarLeft(b[i][0], b[i][1]));
    holds(8, filled, "OG by the honey", 3, 0.0005, i -> Handbook.honey(b[i][2], b[i][3], b[i][4]));
  }

  private void inches() throws IOException {
    Filled filled = filled(9);
    double gallon = 3.785411784;
    double h = 20 * 2.54;
    double b = 24 * 2.54;
    double l = 32 * 2.54;
    holds(
        9,
        filled,
        "Headspace (gal)",
        6,
        0.01,
        i -> Handbook.headspace(h, b, l, Cellar12.DROP_IN[i] * 2.54) / gallon);
    holds(
        9,
        filled,
        "Holds (gal)",
        6,
        0.01,
        i -> Handbook.contents(h, b, l, Cellar12.DIP_IN[i] * 2.54) / gallon);
  }

  private void scale() throws IOException {
    Filled filled = filled(10);
    holds(10, filled, "Weighs (L)", 6, 1e-9, i -> (Cellar12.GROSS_KG[i] - 54) / 1.008);
  }

  private void sulfite() throws IOException {
    Filled filled = filled(12);
    holds(
        12,
        filled,
        "Molecular SO2 (mg/L)",
        6,
        1e-9,
        i -> Handbook.molecular(Cellar12.FREE[i], Cellar12.PH[i]));
  }

  /** One plan for all of them, which also works on each of them alone. */
  @Test
  void onePlanFitsThemAll() throws IOException {
    List<String> command = new ArrayList<>(List.of("draft"));
    for (int log = 1; log <= 12; log++) {
      command.add(Cellar12.write(log, folder).toString());
    }
    Path plan = folder.resolve("plan.xlsx");
    command.addAll(List.of("--plan", plan.toString()));
    Run draft = Run.of(command.toArray(String[]::new));
    assertEquals(ExitCode.OK, draft.code(), draft.out() + draft.err());
    Workbook drafted = TestBooks.open(plan);
    assertEquals("lacks it", said(drafted, "12-sulfit.csv", "ABV (% vol)"));
    assertEquals("yes", said(drafted, "12-sulfit.csv", "Molecular SO2 (mg/L)"));
    Path out = folder.resolve("filled");
    for (int log : new int[] {1, 3, 9, 12}) {
      Path alone = Cellar12.write(log, folder);
      Run fill =
          Run.of("fill", alone.toString(), "--plan", plan.toString(), "--out", out.toString());
      assertEquals(ExitCode.OK, fill.code(), fill.out() + fill.err());
    }
    Filled american = new Filled(TestBooks.open(out.resolve("03-american.xls")), drafted);
    holds(
        3,
        american,
        "True SG",
        GRAVITY.length,
        LIKE_A_RULE_OF_THUMB,
        i ->
            Handbook.corrected(
                GRAVITY[i], (Cellar12.fahrenheit(i) - 32) / 1.8, 60 / 1.8 - 32 / 1.8));
    assertTrue(missed.isEmpty(), missed.toString());
  }

  private static String said(Workbook plan, String log, String result) {
    Sheet logs = plan.getSheet("Logs");
    for (Cell head : logs.getRow(0)) {
      for (Row row : logs) {
        if (head.getStringCellValue().equals(result)
            && row.getCell(0).getStringCellValue().equals(log)) {
          return row.getCell(head.getColumnIndex()).getStringCellValue();
        }
      }
    }
    return "neither log nor result";
  }
}
