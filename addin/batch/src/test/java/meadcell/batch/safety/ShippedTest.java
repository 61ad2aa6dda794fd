package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What we ship, and what we make of it, is as the standards have it. */
class ShippedTest {
  private static final Path SAMPLES = Path.of("../../sample-workbooks");

  @TempDir Path folder;

  private static List<Path> shipped(String ending) throws IOException {
    try (Stream<Path> files = Files.list(SAMPLES)) {
      return files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
    }
  }

  @Test
  void xlsx() throws Exception {
    Schemas schemas = new Schemas();
    List<Path> files = new ArrayList<>(shipped(".xlsx"));
    Run run =
        Run.of(
            "fill",
            SAMPLES.resolve("old-log.xlsx").toString(),
            "--plan",
            SAMPLES.resolve("old-log-plan.xlsx").toString(),
            "--report-sheet",
            "--out",
            folder.toString());
    assertEquals(ExitCode.OK, run.code(), run.err());
    files.add(folder.resolve("old-log.xlsx"));
    for (Path file : files) {
      assertEquals(List.of(), schemas.errors(Files.readAllBytes(file)), file.toString());
    }
  }

  @Test
  void ods() throws Exception {
    for (var file : OdfValidator.errors(shipped(".ods"), folder).entrySet()) {
      assertEquals(List.of(), file.getValue(), file.getKey().toString());
    }
  }

  /** Their results come from an office: what is computed here is the same, the rest is left. */
  @Test
  void recalculatingChangesNothing() throws Exception {
    for (Path file : shipped(".ods")) {
      Run run = Run.of("recalc", file.toString(), "--out", folder.toString());
      assertEquals(ExitCode.OK, run.code(), run.err());
      assertTrue(run.out().contains(": 0 cells changed, "), run.out());
      assertEquals(cells(file), cells(folder.resolve(file.getFileName())), file.toString());
    }
  }

  private static Map<String, CellContent> cells(Path file) throws Exception {
    Map<String, CellContent> cells = new TreeMap<>();
    try (Book book = Books.open(Files.readAllBytes(file), file.toString())) {
      for (BookSheet sheet : book.sheets()) {
        for (int row = 0; row <= sheet.lastRow(); row++) {
          for (int column = 0; column <= sheet.lastColumn(row); column++) {
            Place place = new Place(row, column);
            cells.put(sheet.name() + "!" + place.a1(), sheet.content(place));
          }
        }
      }
    }
    return cells;
  }
}
