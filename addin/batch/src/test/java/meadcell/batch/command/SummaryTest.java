package meadcell.batch.command;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.report.Report;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SummaryTest {
  @TempDir Path folder;

  private Path log(String name, Object gravity) throws IOException {
    XSSFWorkbook book = new XSSFWorkbook();
    book.setCellFormulaValidation(false);
    rows(book.createSheet("log"), 0, row(gravity, "=GRAVITY.TOBRIX(A1)", "=B1*2"));
    return save(book, folder.resolve(name));
  }

  private Run recalc(List<Path> files, String... more) {
    List<String> args = new ArrayList<>(List.of("recalc", "--dry-run"));
    files.forEach(file -> args.add(file.toString()));
    args.addAll(List.of(more));
    return Run.of(args.toArray(String[]::new));
  }

  @Test
  void oneFileMakesALine() throws IOException {
    assertTrue(recalc(List.of(log("good.xlsx", 1.05))).out().contains(": 2 cells changed"));
    XSSFWorkbook book = new XSSFWorkbook();
    book.setCellFormulaValidation(false);
    rows(book.createSheet("log"), 0, row("=GRAVITY.TOBRIX(1.05)"));
    Run run = recalc(List.of(save(book, folder.resolve("one.xlsx"))));
    assertTrue(run.out().contains(": 1 cell changed"), run.out());
  }

  @Test
  void severalFilesMakeATableWithTotals() throws IOException {
    Path broken = Files.writeString(folder.resolve("broken.xlsx"), "no workbook");
    Run run = recalc(List.of(log("good.xlsx", 1.05), log("bad.xlsx", 1085), broken));
    assertEquals(ExitCode.SOME_FAILED, run.code());
    List<String> lines = run.out().lines().toList();
    assertEquals(5, lines.size(), run.out());
    assertTrue(lines.get(1).matches("\\S*good.xlsx +dry run +2 +0 +0 +0 +0 +0"), run.out());
    assertTrue(lines.get(2).matches("\\S*bad.xlsx +dry run +2 +0 +0 +0 +1 +0"), run.out());
    assertTrue(lines.get(3).matches("\\S*broken.xlsx +refused +0 +0 +0 +0 +0 +0"), run.out());
    assertTrue(lines.get(4).matches("3 workbooks +1 failed +4 +0 +0 +0 +1 +0"), run.out());
    assertTrue(lines.stream().allMatch(line -> line.length() <= 80), run.out());
    assertTrue(run.err().contains("broken.xlsx: refused."), run.err());
    assertTrue(run.err().contains("bad.xlsx: log!B1: GRAVITY.TOBRIX: sg is 1085"), run.err());
  }

  @Test
  void manyFilesStillFitAScreen() throws IOException {
    List<Path> files = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      files.add(log(i + ".xlsx", i % 2 == 0 ? 1.05 : 1085));
    }
    Run run = recalc(files, "--jobs", "2");
    List<String> lines = run.out().lines().toList();
    assertEquals(23, lines.size(), run.out());
    assertTrue(lines.get(1).contains("1.xlsx"), "those to look at: " + run.out());
    assertEquals("… and 40 more", lines.get(21));
    assertTrue(lines.get(22).matches("60 workbooks +all done +120 +0 +0 +0 +30 +0"), run.out());
    assertEquals(21, run.err().lines().count(), run.err());
  }

  @Test
  void explainReportNamesEverythingThatTheFileHolds() throws IOException {
    Path file = folder.resolve("report.json");
    assertEquals(
        ExitCode.OK, recalc(List.of(log("a.xlsx", 1085)), "--report", file.toString()).code());
    String page = Run.of("explain", "report").out();
    JsonObject report = JsonParser.parseString(Files.readString(file)).getAsJsonObject();
    JsonObject result = report.getAsJsonArray("files").get(0).getAsJsonObject();
    for (JsonElement object :
        List.of(
            report,
            result,
            result.getAsJsonArray("changes").get(0),
            result.getAsJsonArray("remarks").get(0))) {
      for (String member : object.getAsJsonObject().keySet()) {
        assertTrue(page.matches("(?s).*\\b" + member + "\\b.*"), member);
      }
    }
    for (Report.Code code : Report.Code.values()) {
      assertTrue(page.contains("  " + code + " "), code.name());
    }
    assertTrue(page.lines().allMatch(line -> line.length() <= 100), page);
  }

  @Test
  void whatIsMissingOrCannotBeWrittenIsSaid() throws IOException {
    Path log = log("a.xlsx", 1.05);
    Run missing = Run.of("fill", log.toString(), "--dry-run", "--plan", "no-such-plan.xlsx");
    assertEquals(ExitCode.REFUSED, missing.code());
    assertTrue(missing.err().contains("There is no such file: no-such-plan.xlsx"), missing.err());
    Run report = recalc(List.of(log), "--report", folder.resolve("none/r.json").toString());
    assertEquals(ExitCode.NOT_WRITTEN, report.code());
    assertTrue(
        report.err().contains("The report was not written. There is no such folder: "),
        report.err());
  }
}
