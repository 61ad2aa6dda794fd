package meadcell.batch.book;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/**
 * A book as its format's reader made it. Some damage shows only when a part is used: whatever the
 * reader throws then is the file's fault, and said so.
 */
final class GuardedBook implements Book {
  private final Book book;
  private final List<BookSheet> sheets = new ArrayList<>();

  GuardedBook(Book book) {
    this.book = book;
    book.sheets().forEach(sheet -> sheets.add(new GuardedSheet(sheet)));
  }

  static UncheckedIOException damage(RuntimeException thrown) {
    return new UncheckedIOException(FileRefused.of(thrown));
  }

  private static <T> T guarded(Supplier<T> reader) {
    try {
      return reader.get();
    } catch (RuntimeException e) {
      throw damage(e);
    }
  }

  @Override
  public List<BookSheet> sheets() {
    return sheets;
  }

  @Override
  public boolean isStructureProtected() {
    return guarded(book::isStructureProtected);
  }

  @Override
  public BookSheet addSheet(String name) {
    BookSheet sheet = new GuardedSheet(guarded(() -> book.addSheet(name)));
    sheets.add(sheet);
    return sheet;
  }

  @Override
  public List<DefinedName> names() {
    return guarded(book::names);
  }

  @Override
  public List<NamedTable> tables() {
    return guarded(book::tables);
  }

  @Override
  public Set<Setting> settings() {
    return guarded(book::settings);
  }

  @Override
  public int mostRows() {
    return book.mostRows();
  }

  @Override
  public Optional<String> property(String name) {
    return guarded(() -> book.property(name));
  }

  @Override
  public void property(String name, String value) {
    try {
      book.property(name, value);
    } catch (RuntimeException e) {
      throw damage(e);
    }
  }

  @Override
  public List<String> caveats() {
    return guarded(book::caveats);
  }

  @Override
  public void write(OutputStream out) throws IOException {
    try {
      book.write(out);
    } catch (IOException | RuntimeException e) { // out is memory
      throw FileRefused.of(e);
    }
  }

  @Override
  public void close() throws IOException {
    book.close();
  }
}
