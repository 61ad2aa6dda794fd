package meadcell.batch.book;

import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * A sheet of a {@link GuardedBook}. What is asked for at every cell goes without a closure, which
 * Java's first compiler makes slowly.
 */
final class GuardedSheet implements BookSheet {
  private final BookSheet sheet;

  GuardedSheet(BookSheet sheet) {
    this.sheet = sheet;
  }

  /** Changes one place of a sheet. */
  private interface Writer<T> {
    void write(BookSheet sheet, Place place, T what);
  }

  private <T> T read(Function<BookSheet, T> reader) {
    try {
      return reader.apply(sheet);
    } catch (RuntimeException e) {
      throw GuardedBook.damage(e);
    }
  }

  private <A, T> T read(BiFunction<BookSheet, A, T> reader, A of) {
    try {
      return reader.apply(sheet, of);
    } catch (RuntimeException e) {
      throw GuardedBook.damage(e);
    }
  }

  private <T> void write(Writer<T> writer, Place place, T what) {
    try {
      writer.write(sheet, place, what);
    } catch (RuntimeException e) {
      throw GuardedBook.damage(e);
    }
  }

  private static void guarded(Runnable writer) {
    try {
      writer.run();
    } catch (RuntimeException e) {
      throw GuardedBook.damage(e);
    }
  }

  @Override
  public String name() {
    return sheet.name();
  }

  @Override
  public boolean isProtected() {
    return read(BookSheet::isProtected);
  }

  @Override
  public int lastRow() {
    return read(BookSheet::lastRow);
  }

  @Override
  public int lastColumn(int row) {
    return read(BookSheet::lastColumn, row);
  }

  @Override
  public CellContent content(Place place) {
    return read(BookSheet::content, place);
  }

  @Override
  public Place mergedEnd(Place place) {
    return read(BookSheet::mergedEnd, place);
  }

  @Override
  public boolean isHidden(int row) {
    return read(BookSheet::isHidden, row);
  }

  @Override
  public Span array(Place place) {
    return read(BookSheet::array, place);
  }

  @Override
  public boolean isCovered(Place place) {
    return read(BookSheet::isCovered, place);
  }

  @Override
  public void putFormula(Place place, String formula) {
    write(BookSheet::putFormula, place, formula);
  }

  @Override
  public void putArray(Span span, String formula) {
    guarded(() -> sheet.putArray(span, formula));
  }

  @Override
  public void putValue(Place place, Value value) {
    write(BookSheet::putValue, place, value);
  }

  @Override
  public void freeze(Place place) {
    guarded(() -> sheet.freeze(place));
  }

  @Override
  public void clear(Place place) {
    guarded(() -> sheet.clear(place));
  }

  @Override
  public void copyStyle(Place from, Place to, String format) {
    try {
      sheet.copyStyle(from, to, format);
    } catch (RuntimeException e) {
      throw GuardedBook.damage(e);
    }
  }

  @Override
  public void widen(int column, int characters) {
    guarded(() -> sheet.widen(column, characters));
  }

  @Override
  public Runnable keep(Place place) {
    Runnable kept = read(BookSheet::keep, place);
    return () -> guarded(kept);
  }

  @Override
  public int mostColumns() {
    return sheet.mostColumns();
  }

  @Override
  public boolean canHoldNotes() {
    return sheet.canHoldNotes();
  }

  @Override
  public Optional<Note> note(Place place) {
    return read(BookSheet::note, place);
  }

  @Override
  public void putNote(Place place, Note note) {
    guarded(() -> sheet.putNote(place, note));
  }

  @Override
  public void removeNote(Place place) {
    guarded(() -> sheet.removeNote(place));
  }
}
