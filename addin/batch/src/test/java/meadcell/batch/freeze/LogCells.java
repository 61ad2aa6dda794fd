package meadcell.batch.freeze;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.TreeMap;
import java.util.function.Consumer;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;

/** Looks at the cells of a log, and changes them as a script would. */
final class LogCells {
  private LogCells() {}

  static Book open(Path file) throws Exception {
    return Books.open(Files.readAllBytes(file), file.toString());
  }

  static BookSheet sheet(Book book, String name) {
    return book.sheets().stream().filter(s -> s.name().equals(name)).findFirst().orElseThrow();
  }

  static CellContent content(Path file, String sheet, String cell) throws Exception {
    try (Book book = open(file)) {
      return sheet(book, sheet).content(Place.of(cell));
    }
  }

  /** All cells but those of the sheet with the formulas. */
  static TreeMap<String, CellContent> cells(Path file) throws Exception {
    TreeMap<String, CellContent> cells = new TreeMap<>();
    try (Book book = open(file)) {
      for (BookSheet sheet : book.sheets()) {
        for (int r = 0; !FormulaSheet.is(sheet.name()) && r <= sheet.lastRow(); r++) {
          for (int c = 0; c <= sheet.lastColumn(r); c++) {
            Place place = new Place(r, c);
            CellContent content = sheet.content(place);
            if (content.isFormula() || !content.isBlank()) {
              cells.put(sheet.name() + "!" + place + " " + sheet.array(place), content);
            }
          }
        }
      }
    }
    return cells;
  }

  /** An office without the functions writes their names in lower case when it converts. */
  static void assertFormula(String wanted, CellContent got) {
    assertTrue(wanted.equalsIgnoreCase(got.formula()), wanted + " and not " + got.formula());
  }

  static void assertSame(TreeMap<String, CellContent> wanted, Path file) throws Exception {
    TreeMap<String, CellContent> got = cells(file);
    assertEquals(wanted.keySet(), got.keySet());
    wanted.forEach(
        (cell, content) -> {
          CellContent now = got.get(cell);
          if (content.isFormula()) {
            assertFormula(content.formula(), now);
          } else {
            assertNull(now.formula(), cell);
          }
          if (content.value() instanceof Value.Number number) {
            assertEquals(number.number(), ((Value.Number) now.value()).number(), 1e-12, cell);
          } else {
            assertEquals(content.value(), now.value(), cell);
          }
        });
  }

  /** The cells of the ferment. */
  static TreeMap<String, CellContent> log(Path file) throws Exception {
    TreeMap<String, CellContent> cells = cells(file);
    cells.keySet().removeIf(cell -> !cell.startsWith(FermentLog.LOG));
    return cells;
  }

  /** Changes a file as a script would, which moves no references along. */
  static void change(Path file, Consumer<Book> change) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Book book = open(file)) {
      change.accept(book);
      book.write(out);
    }
    Files.write(file, out.toByteArray());
  }

  static void put(Path file, String cell, Value value) throws Exception {
    change(file, book -> sheet(book, FermentLog.LOG).putValue(Place.of(cell), value));
  }

  static void swap(BookSheet sheet, Place a, Place b) {
    CellContent first = sheet.content(a);
    CellContent second = sheet.content(b);
    sheet.clear(a);
    sheet.clear(b);
    sheet.putValue(a, second.value());
    sheet.putValue(b, first.value());
  }
}
