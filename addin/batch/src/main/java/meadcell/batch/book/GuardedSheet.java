package meadcell.batch.book;

import java.util.Optional;
import java.util.function.Supplier;

/** A sheet of a {@link GuardedBook}. What is asked for at every cell goes without a closure. */
final class GuardedSheet implements BookSheet {
  private final BookSheet sheet;

  GuardedSheet(BookSheet sheet) {
    this.sheet = sheet;
  }

  private static <T> T guarded(Supplier<T> reader) {
    try {
      return reader.get();
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
    return guarded(sheet::isProtected);
  }

  @Override
  public int lastRow() {
    try {
      return sheet.lastRow();
    } catch (RuntimeException e) {
      throw GuardedBook.damage(e);
    }
  }

  @Override
  public int lastColumn(int row) {
    try {
      return sheet.lastColumn(row);
    } catch (RuntimeException e) {
      throw GuardedBook.damage(e);
    }
  }

  @Override
  public CellContent content(Place place) {
    try {
      return sheet.content(place);
    } catch (RuntimeException e) {
      throw GuardedBook.damage(e);
    }
  }

  @Override
  public Place mergedEnd(Place place) {
    return guarded(() -> sheet.mergedEnd(place));
  }

  @Override
  public boolean isHidden(int row) {
    return guarded(() -> sheet.isHidden(row));
  }

  @Override
  public Span array(Place place) {
    try {
      return sheet.array(place);
    } catch (RuntimeException e) {
      throw GuardedBook.damage(e);
    }
  }

  @Override
  public boolean isCovered(Place place) {
    return guarded(() -> sheet.isCovered(place));
  }

  @Override
  public void putFormula(Place place, String formula) {
    guarded(() -> sheet.putFormula(place, formula));
  }

  @Override
  public void putArray(Span span, String formula) {
    guarded(() -> sheet.putArray(span, formula));
  }

  @Override
  public void putValue(Place place, Value value) {
    guarded(() -> sheet.putValue(place, value));
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
    guarded(() -> sheet.copyStyle(from, to, format));
  }

  @Override
  public void widen(int column, int characters) {
    guarded(() -> sheet.widen(column, characters));
  }

  @Override
  public Runnable keep(Place place) {
    Runnable kept = guarded(() -> sheet.keep(place));
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
    return guarded(() -> sheet.note(place));
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
