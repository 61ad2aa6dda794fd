package meadcell.samples;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.Supplier;
import meadcell.samples.cellar.CellarBook;
import meadcell.samples.sheet.Book;
import meadcell.samples.week.FirstWeek;

/** Writes the teaching workbooks into a folder. */
public final class Build {
  /** The workbooks by their names. */
  public static final Map<String, Supplier<Book>> BOOKS =
      Map.of("cellar-book", CellarBook::build, "first-week", FirstWeek::build);

  private Build() {}

  public static void main(String[] args) throws IOException {
    for (Map.Entry<String, Supplier<Book>> book : BOOKS.entrySet()) {
      Path file = Path.of(args[0], book.getKey() + ".xlsx");
      Files.write(file, xlsx(book.getValue().get()));
    }
  }

  /** The same book always gives the same bytes. */
  static byte[] xlsx(Book book) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    book.workbook().write(bytes);
    return Repacked.zip(bytes.toByteArray(), (name, content) -> content);
  }
}
