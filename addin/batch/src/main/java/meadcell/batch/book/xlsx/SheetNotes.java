package meadcell.batch.book.xlsx;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.BookSheet.Note;
import meadcell.batch.book.Place;

/**
 * The notes of one sheet: their texts and the boxes that show them. New ones are put behind the
 * others; whatever else the two parts hold stays.
 */
final class SheetNotes {
  private final NoteTexts texts;
  private final NoteBoxes boxes;
  private final Map<Place, Note> notes;
  private final Set<Place> before;
  private final Set<Place> changed = new HashSet<>();

  SheetNotes(NoteTexts texts, NoteBoxes boxes) {
    this.texts = texts;
    this.boxes = boxes;
    notes = new HashMap<>(texts.read());
    before = Set.copyOf(notes.keySet());
  }

  Optional<Note> get(Place place) {
    return Optional.ofNullable(notes.get(place));
  }

  void put(Place place, Note note) {
    notes.put(place, note);
    changed.add(place);
  }

  void remove(Place place) {
    if (notes.remove(place) != null) {
      changed.add(place);
    }
  }

  boolean isChanged() {
    return !changed.isEmpty();
  }

  /** The part with the texts. */
  byte[] changedTexts() {
    return texts.changed(notes, changed);
  }

  /** The part with the boxes. */
  byte[] changedBoxes() {
    List<Place> added = new ArrayList<>();
    Set<Place> removed = new HashSet<>();
    for (Place place : changed.stream().sorted(Place.DOWN).toList()) {
      boolean isThere = notes.containsKey(place);
      if (isThere && !before.contains(place)) {
        added.add(place);
      } else if (!isThere && before.contains(place)) {
        removed.add(place);
      }
    }
    return boxes.changed(added, removed);
  }
}
