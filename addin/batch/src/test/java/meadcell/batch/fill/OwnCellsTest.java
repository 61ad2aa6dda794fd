package meadcell.batch.fill;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;

/** What is remembered of values, and in how few letters. */
class OwnCellsTest {
  private static final int ROWS = 60_000;
  private static final int MOST_LETTERS_A_ROW = 5;

  private static CellContent value(double number) {
    return new CellContent(Value.of(number), null, CellContent.Look.PLAIN);
  }

  @Test
  void valuesAreKnownByTheirPlaceInFewLetters() throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    XSSFWorkbook empty = new XSSFWorkbook();
    empty.createSheet("log");
    empty.write(bytes);
    try (Book book = Books.open(bytes.toByteArray(), "log.xlsx")) {
      BookSheet sheet = book.sheets().get(0);
      OwnCells own = new OwnCells(book);
      for (int row = 0; row < ROWS; row++) {
        own.add(sheet, new Place(row, 3), value(1 + row / 1e5));
      }
      own.store(book);
      int letters = book.property("Meadcell cells").orElseThrow().length();
      assertTrue(letters < MOST_LETTERS_A_ROW * ROWS, letters + " letters");
      OwnCells again = new OwnCells(book);
      for (int row = 0; row < ROWS; row++) {
        assertTrue(again.isOwn(sheet, new Place(row, 3), value(1 + row / 1e5)), "row " + row);
        assertFalse(again.isOwn(sheet, new Place(row, 4), value(1 + row / 1e5)), "row " + row);
        assertFalse(again.isOwn(sheet, new Place(row, 3), value(1.5 + row / 1e5)), "row " + row);
      }
    }
  }
}
