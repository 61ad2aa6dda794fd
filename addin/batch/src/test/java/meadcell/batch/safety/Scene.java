package meadcell.batch.safety;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.TestBooks;
import meadcell.batch.book.Packages;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A small log, a plan for it, and a run. */
record Scene(Path folder) {
  static final String SHEET = Golden.SHEET;
  static final String CORRECT = "GRAVITY.CORRECT([SG]; [Temp]; ; {OG})";

  /** The golden log; its second reading gets a note. */
  static <W extends Workbook> W log(W book) {
    rows(book.createSheet(SHEET), 0, row("Heather honey"), row("OG", 1.1), row());
    rows(
        book.getSheet(SHEET),
        3,
        row("Date", "SG", "Temp"),
        row(1, 1.08, 18),
        row(2, 1.06, "17 C"),
        row(3, 1.02, 16));
    rows(book.createSheet("Other"), 0, row("Lot", "Jars"), row("HH", 12), row("SC", 30));
    return book;
  }

  Path save(Workbook book, String name) throws IOException {
    return TestBooks.save(book, folder.resolve(name));
  }

  /** The golden log in {@code log.xlsx}, with its XML changed. */
  Path xlsx(Golden.Edit edit) throws IOException {
    Path file = save(log(new XSSFWorkbook()), "log.xlsx");
    Parts parts = new Parts(file);
    edit.of(parts);
    parts.save(file);
    return file;
  }

  /** Results and formulas, in turn. */
  Path plan(String... lines) throws IOException {
    XSSFWorkbook plan = new XSSFWorkbook();
    rows(plan.createSheet("Fill"), 0, row("Sheet", "Result", "Formula"));
    for (int i = 0; i < lines.length; i += 2) {
      rows(plan.getSheet("Fill"), 1 + i / 2, row("*", lines[i], lines[i + 1]));
    }
    return save(plan, "plan.xlsx");
  }

  Run fill(Path file, String... more) throws IOException {
    if (!Files.exists(folder.resolve("plan.xlsx"))) {
      plan("True SG", CORRECT);
    }
    String[] args = {"fill", file.toString(), "--plan", folder.resolve("plan.xlsx").toString()};
    return Run.of(Stream.of(args, more).flatMap(Stream::of).toArray(String[]::new));
  }

  Path out(Path file) {
    return folder.resolve("out").resolve(file.getFileName());
  }

  /** Fills into another folder; the result. */
  Path filled(Path file, String... more) throws IOException {
    String[] out = {"--out", folder.resolve("out").toString()};
    Run run = fill(file, Stream.of(out, more).flatMap(Stream::of).toArray(String[]::new));
    assertEquals(ExitCode.OK, run.code(), run.err());
    return out(file);
  }

  static String part(Path file, String name) throws IOException {
    return Parts.text(Packages.parts(Files.readAllBytes(file)).get(name));
  }
}
