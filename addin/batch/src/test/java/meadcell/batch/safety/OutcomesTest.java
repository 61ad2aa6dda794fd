package meadcell.batch.safety;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run that filled nothing says so once, with what helps, and does not end like one that did. */
class OutcomesTest {
  @TempDir Path folder;
  private Scene scene;
  private XSSFWorkbook book;
  private Sheet log;

  @BeforeEach
  void scene() {
    scene = new Scene(folder);
    book = Scene.log(new XSSFWorkbook());
    log = book.getSheet(Scene.SHEET);
  }

  private void saysWhy(Run run, String why) {
    assertEquals(ExitCode.LEFT, run.code(), run.out() + run.err());
    assertTrue(run.out().contains("nothing was filled"), run.out());
    assertTrue(run.out().contains(why), run.out());
    assertFalse(run.err().contains(why), run.err());
  }

  @Test
  void protectedSheets() throws Exception {
    log.protectSheet("x");
    Path file = scene.save(book, "log.xlsx");
    saysWhy(scene.fill(file, "--in-place"), "--ignore-protection");
    assertEquals(ExitCode.OK, scene.fill(file, "--in-place", "--ignore-protection").code());
  }

  @Test
  void noRoom() throws Exception {
    rows(log, 3, row("Date", "SG", "Temp", null, "Date", "Cask"));
    Path file = scene.save(book, "log.xlsx");
    saysWhy(scene.fill(file, "--in-place"), "insert columns in front of E4");
  }

  @Test
  void ambiguousHeaders() throws Exception {
    rows(log, 3, row("Date", "SG", "Temp", "SG"));
    Path file = scene.save(book, "log.xlsx");
    saysWhy(scene.fill(file, "--in-place"), "which is meant by");
  }

  @Test
  void everythingTyped() throws Exception {
    rows(log, 3, row("Date", "SG", "Temp", "True SG"));
    for (int row = 4; row <= 6; row++) {
      log.getRow(row).createCell(3).setCellValue(1.05);
    }
    Path file = scene.save(book, "log.xlsx");
    saysWhy(scene.fill(file, "--in-place"), "--overwrite");
  }

  @Test
  void amongOthers() throws Exception {
    Path file = scene.save(book, "log.xlsx");
    log.protectSheet("x");
    Path closed = scene.save(book, "closed.xlsx");
    scene.plan("True SG", Scene.CORRECT);
    Run run =
        Run.of(
            "fill",
            file.toString(),
            closed.toString(),
            "--plan",
            folder.resolve("plan.xlsx").toString(),
            "--out",
            folder.resolve("out").toString());
    assertEquals(ExitCode.LEFT, run.code());
    assertTrue(run.out().contains("1 not filled"), run.out());
  }

  @Test
  void strictly() throws Exception {
    log.getRow(4).getCell(2).setCellValue("warm");
    Path file = scene.save(book, "log.xlsx");
    Path out = folder.resolve("out");
    Run run = scene.fill(file, "--out", out.toString());
    assertEquals(ExitCode.OK, run.code());
    assertTrue(run.err().contains("stays empty"), run.err());
    assertEquals(ExitCode.LEFT, scene.fill(file, "--out", out.toString(), "--strict").code());
    log.getRow(4).getCell(2).setCellValue(18);
    Path clear = scene.save(book, "clear.xlsx");
    assertEquals(ExitCode.OK, scene.fill(clear, "--out", out.toString(), "--strict").code());
  }

  @Test
  void recalcTellsOfMisspeltFunctions() throws Exception {
    log.getRow(4).createCell(4).setCellFormula("GRAVITY.TOBRX(B5)");
    Path file = scene.save(book, "log.xlsx");
    String sentence = "the function GRAVITY.TOBRX is not known. Did you mean GRAVITY.TOBRIX?";
    assertTrue(Run.of("check", file.toString()).out().contains(sentence));
    Run run = Run.of("recalc", file.toString(), "--in-place");
    assertTrue(run.err().contains(sentence), run.err());
  }
}
