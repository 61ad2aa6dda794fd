package meadcell.batch.fill;

import static meadcell.batch.TestBooks.cell;
import static meadcell.batch.TestBooks.open;
import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.catalogue.LiteralCall;
import meadcell.cellar.Cellar;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Functions that call another one by its name, in a log and on the command line. */
class CalledByNameTest {
  @TempDir Path folder;

  private static double number(String text) {
    LiteralCall call = LiteralCall.parse(text);
    return (Double) Cellar.catalogue().get(call.function()).call(call.arguments());
  }

  @Test
  void aRowOfALogIsTheArguments() throws IOException {
    Workbook log = new XSSFWorkbook();
    Sheet sheet = log.createSheet("HH-22");
    rows(sheet, 0, row("Date", "SG", "Temp", "Error SG", "Error Temp"));
    rows(sheet, 1, row(1, 1.08, 18, 0.0005, 0.5), row(9, 1.03, 16, 0.001, 1));
    save(log, folder.resolve("log.xlsx"));
    Workbook plan = new XSSFWorkbook();
    rows(
        plan.createSheet("Fill"),
        0,
        row("Sheet", "Result", "Formula"),
        row(
            "*",
            "Sigma",
            "CELLAR.UNCERTAINTY(\"GRAVITY.CORRECT\"; [SG]:[Temp]; [Error SG]:[Error Temp])"),
        row("*", "Warm", "CELLAR.SOLVE(\"GRAVITY.CORRECT\"; [SG]+0.001; 2; [SG]:[Temp])"));
    save(plan, folder.resolve("plan.xlsx"));
    Run run =
        Run.of(
            "fill",
            folder.resolve("log.xlsx").toString(),
            "--plan",
            folder.resolve("plan.xlsx").toString(),
            "--out",
            folder.resolve("out").toString());
    assertEquals(ExitCode.OK, run.code(), run.out() + run.err());
    Workbook filled = open(folder.resolve("out/log.xlsx"));
    Cell u = cell(filled, "HH-22", "F3");
    assertEquals("CELLAR.UNCERTAINTY(\"GRAVITY.CORRECT\", B3:C3, D3:E3)", u.getCellFormula());
    assertEquals(
        number("CELLAR.UNCERTAINTY(\"GRAVITY.CORRECT\";{1.03,16};{0.001,1})"),
        u.getNumericCellValue());
    assertEquals(
        number("CELLAR.SOLVE(\"GRAVITY.CORRECT\";1.081;2;{1.08,18})"),
        cell(filled, "HH-22", "G2").getNumericCellValue(),
        1e-9);
  }

  @Test
  void evalAnswersThem() {
    assertEquals(
        "2.15",
        Run.of("eval", "CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{120;15};{8;0.3};{1;2})")
            .out()
            .strip());
    assertEquals("150", Run.of("eval", "CELLAR.SOLVE(\"BOTTLE.DELLE\";78;1;{0;14})").out().strip());
    Run none = Run.of("eval", "CELLAR.SOLVE(\"BOTTLE.DELLE\";200;1;{0;10})");
    assertEquals(ExitCode.REFUSED, none.code());
    assertEquals(
        "#N/A No sugar from 0 to 800 gives 200; the function gives 45 to 125 there.",
        none.out().strip());
  }
}
