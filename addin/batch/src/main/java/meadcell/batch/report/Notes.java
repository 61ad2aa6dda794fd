package meadcell.batch.report;

import java.util.Set;
import java.util.TreeSet;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Place;

/** The notes that the tool leaves at cells. */
public final class Notes {
  private static final String AUTHOR = "Meadcell";

  private final Set<String> elsewhere = new TreeSet<>();
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
    var before = sheet.note(place);
    if (before.isEmpty() || before.get().author().equals(AUTHOR) && !before.get().equals(note)) {
      sheet.putNote(place, note);
      changed = true;
    }
  }

  /** Removes a note of ours. */
  public void unmark(BookSheet sheet, Place place) {
    unmark(sheet, place, "");
  }

  /** Removes a note of ours that begins like this. */
  public void unmark(BookSheet sheet, Place place, String start) {
    if (sheet.canHoldNotes()
        && sheet
            .note(place)
            .filter(note -> note.author().equals(AUTHOR) && note.text().startsWith(start))
            .isPresent()) {
      sheet.removeNote(place);
      changed = true;
    }
  }
}
