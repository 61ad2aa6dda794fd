package meadcell.batch.check;

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
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InspectionTest {
  @TempDir Path folder;
  private final XSSFWorkbook book = new XSSFWorkbook();
  private final Sheet sheet = book.createSheet("log");

  private Run check() throws IOException {
    Path file = save(book, folder.resolve("log.xlsx"));
    byte[] before = Files.readAllBytes(file);
    Run run = Run.of("check", file.toString());
    assertArrayEquals(before, Files.readAllBytes(file));
    return run;
  }

  @Test
  void listsWhatShouldBeLookedAt() throws IOException {
    rows(
        sheet,
        0,
        row("=GRAVITY.TOBRICKS(1.05)"),
        row("=GRAVITY.TOBRIX(D9)"),
        row("=GRAVITY.TOBRIX(1085)"),
        row("=GRAVITY.TOBRIX(1.05)"),
        row("=OTHERS.WORK(1)"),
        row("Date", "SG"),
        row(1, 1.090),
        row(2, 1.080),
        row(3, 1.008),
        row(4, 1.060),
        row(5, 1050),
        row(6, 21));
    Run run = check();
    assertEquals(ExitCode.CHECK_FAILED, run.code());
    String found = run.out();
    assertTrue(found.contains("log!A1: the function GRAVITY.TOBRICKS is not known."), found);
    assertTrue(found.contains("log!A2: its input D9 is blank."), found);
    assertTrue(found.contains("log!A3: GRAVITY.TOBRIX: sg is 1085 SG"), found);
    assertTrue(found.contains("log!A4: shows nothing; computed again it is 12.3"), found);
    assertFalse(found.contains("OTHERS"), found);
    assertTrue(found.contains("log!B9: 1.008 stands between 1.08 and 1.06"), found);
    assertTrue(
        found.contains(
            "log!B11: 1050 is no specific gravity of a mead; fill reads it as 1.05: type it so."),
        found);
    assertTrue(found.contains("log!B12: 21 is no specific gravity of a mead; type it as"), found);
    assertTrue(found.lines().noneMatch(line -> line.endsWith(" ")), found);
    assertFalse(found.contains("log!B8"), found);
  }

  @Test
  void saysSoWhenThereIsNothing() throws IOException {
    rows(sheet, 0, row("SG"), row(1.05), row(1.04));
    Run run = check();
    assertEquals(ExitCode.OK, run.code());
    assertTrue(run.out().contains("nothing to look at"));
  }
}
