package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.sheet.XCellRangeData;
import com.sun.star.sheet.XSpreadsheet;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.uno.UnoRuntime;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.stream.Stream;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The checked-in files in a real office: the same values as the batch tool's evaluator gives, and
 * lists that can be chosen from.
 */
class OfficeIT {
  static Stream<Arguments> files() {
    return Samples.names()
        .flatMap(name -> Stream.of(Arguments.of(name, "xlsx"), Arguments.of(name, "ods")));
  }

  @ParameterizedTest
  @MethodSource("files")
  void recalculatedByTheExtension(String name, String ending) throws Exception {
    assertShows(TestOffice.get(), name, ending, true);
  }

  /** Texts are worked out anew of files by makers that the office does not know. */
  @Test
  void withoutTheExtensionStoredNumbersAreShown() throws Exception {
    try (RemoteOffice bare = new RemoteOffice()) {
      bare.recalculateNever();
      bare.start();
      assertShows(bare, "first-week", "xlsx", false);
    }
  }

  private static void assertShows(
      RemoteOffice office, String name, String ending, boolean recalculated) throws Exception {
    Path copy = office.home().resolve(name + "." + ending);
    Files.copy(Samples.file(name, ending), copy, StandardCopyOption.REPLACE_EXISTING);
    try (Workbook book = office.open(copy.toUri().toString(), true)) {
      if (recalculated) {
        book.recalculate();
      }
      for (Sheet sheet : Samples.open(name)) {
        Object[][] shown = cells(book, sheet);
        for (Row row : sheet) {
          for (Cell cell : row) {
            if (cell.getCellType() == CellType.FORMULA
                && (recalculated || cell.getCachedFormulaResultType() == CellType.NUMERIC)) {
              Object expected = Samples.value(cell);
              Object got = shown[cell.getRowIndex()][cell.getColumnIndex()];
              assertTrue(
                  Samples.sameValue(expected, got) || isError(expected) && isError(got),
                  () ->
                      sheet.getSheetName() + "!" + cell.getAddress() + " " + expected + ", " + got);
            }
          }
        }
      }
      Lists.check(book, Samples.open(name));
    }
  }

  private static boolean isError(Object value) {
    return value instanceof String text ? text.startsWith("error ") : !(value instanceof Double);
  }

  private static Object[][] cells(Workbook book, Sheet sheet) throws Exception {
    XSpreadsheet office =
        UnoRuntime.queryInterface(
            XSpreadsheet.class,
            UnoRuntime.queryInterface(XSpreadsheetDocument.class, book.document())
                .getSheets()
                .getByName(sheet.getSheetName()));
    int columns = 1;
    for (Row row : sheet) {
      columns = Math.max(columns, row.getLastCellNum());
    }
    return UnoRuntime.queryInterface(
            XCellRangeData.class,
            office.getCellRangeByPosition(0, 0, columns - 1, sheet.getLastRowNum()))
        .getDataArray();
  }
}
