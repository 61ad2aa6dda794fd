package meadcell.batch.report;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Place;

/** The notes that the tool leaves at cells. */
public final class Notes {
  private static final String AUTHOR = "Meadcell";

  /** Of so many cells of a column for the same reason, each has a note; the next ones do not. */
  private static final int MOST_ALIKE = 20;

  private static final String AND_SO_ON =
      " Further cells of this column that have the same have no note; the report lists them.";

  private final Set<String> elsewhere = new TreeSet<>();
  private final Map<List<String>, Integer> alike = new HashMap<>();
  private boolean changed;

  boolean areChanged() {
    return changed;
  }

  /** The sheets that can hold no notes, and should. */
  Set<String> elsewhere() {
    return elsewhere;
  }

  /** Puts a note, but never over a person's. */
  public void mark(BookSheet sheet, Place place, String text) {
    if (!sheet.canHoldNotes()) {
      elsewhere.add(sheet.name());
      return;
    }
    BookSheet.Note note = new BookSheet.Note(AUTHOR, text);
    Optional<BookSheet.Note> before = sheet.note(place);
    if (before.isEmpty() || before.get().author().equals(AUTHOR) && !before.get().equals(note)) {
      sheet.putNote(place, note);
      changed = true;
    }
  }

  /**
   * Puts a note at one of many cells that may have the same, and none at what is too many.
   *
   * @param start how such notes begin
   */
  public void markOneOfMany(BookSheet sheet, Place place, String start, String text) {
    List<String> kind = List.of(sheet.name(), Alike.rowless(place.a1()), Alike.rowless(text));
    int count = alike.merge(kind, 1, Integer::sum);
    if (count > MOST_ALIKE) {
      unmark(sheet, place, start);
    } else {
      mark(sheet, place, start + text + (count == MOST_ALIKE ? AND_SO_ON : ""));
    }
  }

  /** Removes a note of ours. */
  public void unmark(BookSheet sheet, Place place) {
    unmark(sheet, place, "");
  }

  /** Removes a note of ours that begins like this. */
  public void unmark(BookSheet sheet, Place place, String start) {
    Optional<BookSheet.Note> note = sheet.canHoldNotes() ? sheet.note(place) : Optional.empty();
    if (note.isPresent()
        && note.get().author().equals(AUTHOR)
        && note.get().text().startsWith(start)) {
      sheet.removeNote(place);
      changed = true;
    }
  }
}
