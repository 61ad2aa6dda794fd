package meadcell.batch.report;

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
import java.util.Arrays;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.TestBooks;
import meadcell.cellar.Cellar;
import org.apache.poi.ooxml.POIXMLProperties.CustomProperties;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A filled workbook says by which version, plan and date; {@code check} says what changed since.
 */
class OriginTest {
  @TempDir Path folder;
  private Path log;
  private Path plan;

  @BeforeEach
  void workbooks() throws IOException {
    log = folder.resolve("log.xlsx");
    plan = folder.resolve("plan.xlsx");
    Workbook book = new XSSFWorkbook();
    rows(book.createSheet("Log"), 0, row("OG", "SG"), row(1.1, 0.995), row(1.12, 1.01));
    save(book, log);
    Workbook lines = new XSSFWorkbook();
    rows(
        lines.createSheet("Fill"),
        0,
        row("Sheet", "Result", "Formula"),
        row("Log", "Sugar", "ALCOHOL.SUGARLEFT([OG]; [SG])"),
        row("Log", "ABV", "ALCOHOL.ABV([OG]; [SG])"));
    save(lines, plan);
  }

  private Run fill(String... more) {
    String[] all = {"fill", log.toString(), "--plan", plan.toString(), "--in-place"};
    String[] args = Arrays.copyOf(all, all.length + more.length);
    System.arraycopy(more, 0, args, all.length, more.length);
    return Run.of(args);
  }

  private CustomProperties properties() throws IOException {
    try (XSSFWorkbook book = (XSSFWorkbook) TestBooks.open(log)) {
      return book.getProperties().getCustomProperties();
    }
  }

  /** Puts the numbers there that an older version left. */
  private void older(String property, String value) throws IOException {
    change(property, value);
    try (XSSFWorkbook book = (XSSFWorkbook) TestBooks.open(log)) {
      book.getSheetAt(0).getRow(1).getCell(2).setCellValue(9.38);
      book.getSheetAt(0).getRow(1).getCell(3).setCellValue(13);
      save(book, log);
    }
  }

  private void change(String property, String value) throws IOException {
    try (XSSFWorkbook book = (XSSFWorkbook) TestBooks.open(log)) {
      CustomProperties properties = book.getProperties().getCustomProperties();
      properties.getUnderlyingProperties().getPropertyList().stream()
          .filter(found -> found.getName().equals(property))
          .forEach(found -> found.setLpwstr(value));
      save(book, log);
    }
  }

  @Test
  void versionPlanAndTheCallersDateAreInTheProperties() throws IOException {
    assertEquals(ExitCode.OK, fill("--date", "2026-11-26").code());
    assertEquals(Cellar.version(), properties().getProperty("Meadcell version").getLpwstr());
    assertEquals("2026-11-26", properties().getProperty("Meadcell date").getLpwstr());
    String plans = properties().getProperty("Meadcell plans").getLpwstr();
    assertTrue(plans.matches("plan\\.xlsx \\(SHA-256 [0-9a-f]{64}, version [0-9.]+\\)"), plans);
  }

  @Test
  void withoutADateNoneIsWrittenAndEqualInputIsEqualBytes() throws IOException {
    byte[] before = Files.readAllBytes(log);
    fill();
    byte[] once = Files.readAllBytes(log);
    assertFalse(properties().contains("Meadcell date"));
    fill();
    assertArrayEquals(once, Files.readAllBytes(log), "the same command again");
    Files.write(log, before);
    fill();
    assertArrayEquals(once, Files.readAllBytes(log), "the same workbook again");
  }

  @Test
  void checkSaysWhichCellsAnOlderVersionComputed() throws IOException {
    fill();
    assertEquals(ExitCode.OK, Run.of("check", log.toString()).code());
    String plans = properties().getProperty("Meadcell plans").getLpwstr();
    older("Meadcell plans", plans.replaceAll("version [0-9.]+", "version 0.9"));
    Run check = Run.of("check", log.toString());
    assertEquals(ExitCode.CHECK_FAILED, check.code());
    assertTrue(
        check
            .out()
            .contains(
                "Log!C2: was computed by version 0.9; ALCOHOL.SUGARLEFT gives other numbers since"
                    + " version 1.0.0: ALCOHOL.SUGARLEFT(1.1;0.995) was 9.38, is 2.89"),
        check.out());
    assertFalse(check.out().contains("Log!C3"), "is what it gives now: " + check.out());
    assertTrue(check.out().contains("Log!D2: shows 13"), check.out());
    assertFalse(check.out().contains("Log!D2: was computed"), "not changed by us: " + check.out());
    fill();
    Run again = Run.of("check", log.toString());
    assertEquals(ExitCode.OK, again.code(), again.out());
  }

  @Test
  void aWorkbookFilledBeforeVersionsWereWrittenIsOlder() throws IOException {
    fill();
    older("Meadcell plans", "");
    String told = Run.of("check", log.toString()).out();
    assertTrue(told.contains("was computed by a version that did not say its number"), told);
  }

  @Test
  void explainTellsWhatChanged() {
    assertTrue(
        Run.of("explain", "ALCOHOL.SUGARLEFT").out().replaceAll("\\s+", " ").contains("was 9.38"));
  }
}
