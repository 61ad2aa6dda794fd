package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipFile;
import meadcell.calc.extension.Extension;
import meadcell.catalogue.CheckRow;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** The packed check workbook, recalculated by the office, finds every check value met. */
class CheckWorkbookIT {
  @Test
  void everyCheckValueIsMetInACell() throws Exception {
    RemoteOffice office = TestOffice.get();
    Path copy = office.home().resolve(Extension.CHECKS);
    try (ZipFile extension = new ZipFile(TestOffice.extension().toFile())) {
      Files.write(
          copy, extension.getInputStream(extension.getEntry(Extension.CHECKS)).readAllBytes());
    }
    try (Workbook book = office.open(copy.toUri().toString(), true)) {
      book.recalculate();
      for (Object[] row : book.values("A3:E" + book.rows())) {
        assertEquals(1.0, row[4], row[0] + " gave " + row[1] + ", expected " + row[2]);
      }
      assertEquals("TRUE", book.shown("B1"));
      assertEquals(CheckRow.totals(CheckRow.load(Cellar.catalogue())), book.shown("C1"));
    }
  }
}
