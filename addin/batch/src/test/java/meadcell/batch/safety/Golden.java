package meadcell.batch.safety;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import meadcell.batch.TestBooks;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A log, and something else that workbooks hold beside it; only the log is filled. */
final class Golden {
  static final String SHEET = "HH-22";

  /** What POI can add. */
  interface Feature {
    void addTo(Workbook book, Sheet log, Sheet other);
  }

  /** What is written by hand. */
  interface Edit {
    void of(Parts parts);
  }

  final String name;
  private final Feature feature;
  private Edit edit = parts -> {};
  String ending = "xlsx";

  /** Cells of the log that are to change. */
  final Set<String> cells = new TreeSet<>(Set.of("D4", "D5", "D6", "D7"));

  /** Parts that are to change, beside those that change always. */
  Set<String> parts = Set.of();

  String[] options = {};

  Golden(String name, Feature feature) {
    this.name = name;
    this.feature = feature;
  }

  static Golden byHand(String name, Edit edit) {
    return new Golden(name, (book, log, other) -> {}).edited(edit);
  }

  Golden edited(Edit edit) {
    this.edit = edit;
    return this;
  }

  Golden changing(String... more) {
    cells.addAll(Set.of(more));
    return this;
  }

  Golden changingParts(String... names) {
    parts = Set.of(names);
    return this;
  }

  Golden with(String... options) {
    this.options = options;
    return this;
  }

  Golden as(String ending) {
    this.ending = ending;
    return this;
  }

  /** What the log is filled by. */
  static Path plan(Path file) throws IOException {
    Workbook plan = new XSSFWorkbook();
    String formula = "GRAVITY.CORRECT([SG]; [Temp]; ; {OG})";
    rows(
        plan.createSheet("Fill"),
        0,
        row("Sheet", "Result", "Formula"),
        row(SHEET, "True SG", formula));
    return TestBooks.save(plan, file);
  }

  /** Makes the workbook. */
  Path save(Path folder) throws IOException {
    Workbook book = ending.equals("xls") ? new HSSFWorkbook() : new XSSFWorkbook();
    Sheet log = book.createSheet(SHEET);
    Sheet other = book.createSheet("Other");
    rows(log, 0, row("Heather honey"), row("OG", 1.1), row());
    rows(log, 3, row("Date", "SG", "Temp"), row(1, 1.08, 18), row(2, 1.06, 17), row(3, 1.02, 16));
    rows(other, 0, row("Lot", "Jars"), row("HH", 12), row("SC", 30));
    feature.addTo(book, log, other);
    Path file = folder.resolve(name.replace(' ', '-').replace(",", "") + "." + ending);
    TestBooks.save(book, file);
    if (!ending.equals("xls")) {
      Parts parts = new Parts(file);
      edit.of(parts);
      parts.save(file);
    }
    return file;
  }
}
