package meadcell.batch.book.xlsx;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.DefinedName;
import meadcell.batch.book.Limits;
import meadcell.batch.book.NamedTable;
import meadcell.batch.book.Setting;
import meadcell.batch.book.poi.PoiNames;
import org.apache.poi.ooxml.POIXMLException;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.xssf.usermodel.XSSFName;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;

/** What a workbook consists of is what POI finds when it reads all of it. */
class XlsxBookTest {
  private static final Path GOLDEN = Path.of("src/test/resources/meadcell/batch/golden");

  private record Read(
      List<String> sheets,
      List<DefinedName> names,
      List<String> tables,
      boolean isLocked,
      boolean isDate1904) {

    static Read here(byte[] bytes) throws IOException {
      try (Book book = new XlsxFormat().read(bytes, Limits.USUAL)) {
        return new Read(
            book.sheets().stream().map(BookSheet::name).toList(),
            book.names(),
            book.tables().stream().map(Read::placed).toList(),
            book.isStructureProtected(),
            book.settings().contains(Setting.OTHER_DAYS));
      }
    }

    private static String placed(NamedTable table) {
      return table.name() + " on " + table.sheet();
    }

    static Read byPoi(byte[] bytes) throws IOException {
      try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(bytes))) {
        List<String> sheets = new ArrayList<>();
        List<String> tables = new ArrayList<>();
        for (int i = 0; i < book.getNumberOfSheets(); i++) {
          sheets.add(book.getSheetName(i));
          for (XSSFTable table : book.getSheetAt(i).getTables()) {
            tables.add(table.getName() + " on " + i);
          }
        }
        return new Read(
            sheets, PoiNames.of(book), tables, book.isStructureLocked(), book.isDate1904());
      }
    }
  }

  @Test
  void ofOthersWorkbooks() throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.walk(GOLDEN)) {
      files = all.filter(file -> file.toString().matches(".*\\.xls[xm]")).sorted().toList();
    }
    int compared = 0;
    int withNames = 0;
    int withTables = 0;
    for (Path file : files) {
      byte[] bytes = Files.readAllBytes(file);
      Read here = Read.here(bytes);
      try {
        assertEquals(Read.byPoi(bytes), here, file.toString());
      } catch (POIXMLException e) { // the strict kind
        assertTrue(e.getMessage().contains("Strict"), file + ": " + e.getMessage());
        continue;
      }
      compared++;
      withNames += here.names.isEmpty() ? 0 : 1;
      withTables += here.tables.isEmpty() ? 0 : 1;
    }
    assertTrue(
        compared > 100 && withNames > 2 && withTables > 2,
        compared + " compared, with names " + withNames + ", with tables " + withTables);
  }

  @Test
  void withAllThatItMayHave() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      for (String sheet : List.of("Log & <1>", "Übersicht", "Casks")) {
        book.createSheet(sheet);
      }
      name(book, "og", "Casks!$A$1", -1);
      name(book, "og", "'Log & <1>'!$B$2", 1);
      book.getSheetAt(2)
          .createTable(new AreaReference("A1:B3", SpreadsheetVersion.EXCEL2007))
          .setName("casks");
      book.lockStructure();
      book.getCTWorkbook().getWorkbookPr().setDate1904(true);
      book.setSheetVisibility(1, SheetVisibility.VERY_HIDDEN);
      book.write(bytes);
    }
    Read here = Read.here(bytes.toByteArray());
    assertEquals(Read.byPoi(bytes.toByteArray()), here);
    assertTrue(here.isLocked && here.isDate1904, here.toString());
    assertEquals(2, here.names.size(), here.toString());
    assertEquals(List.of("casks on 2"), here.tables);
  }

  private static void name(XSSFWorkbook book, String name, String formula, int sheet) {
    XSSFName created = book.createName();
    created.setSheetIndex(sheet);
    created.setNameName(name);
    created.setRefersToFormula(formula);
  }
}
