package meadcell.batch.book.xls;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Place;
import meadcell.batch.book.xls.Biff.Entry;

/**
 * Whether a written sheet of an {@code .xls} still has all that it had, but for what was to change.
 */
record XlsSheetComparison(Changes changes, XlsParts before, XlsParts after) {
  static final int ROW = 0x0208;
  static final int COLUMN = 0x007D;
  static final int DRAWING = 0x00EC;
  static final Set<Integer> DRAWN = Set.of(DRAWING, XlsNotes.OBJECT, XlsNotes.TEXT, XlsNotes.NOTE);

  void cells(Map<Place, XlsCells.Cell> before, Map<Place, XlsCells.Cell> after) throws FileRefused {
    Set<Place> all = new TreeSet<>(Place.DOWN);
    all.addAll(before.keySet());
    all.addAll(after.keySet());
    for (Place place : all) {
      XlsCells.Cell old = before.get(place);
      XlsCells.Cell now = after.get(place);
      if (changes.cells.contains(place) || old != null && old.equals(now)) {
        continue;
      }
      String where = " in " + place;
      XlsComparison.require(old != null && now != null, "the cell" + where);
      XlsComparison.require(old.formula().equals(now.formula()), "the formula" + where);
      XlsComparison.require(old.style() == now.style(), "the style" + where);
      XlsComparison.require(changes.values.contains(place), "the value" + where);
    }
  }

  void rowsAndColumns() throws FileRefused {
    Map<Integer, String> rows = rows(after);
    for (Map.Entry<Integer, String> row : rows(before).entrySet()) {
      XlsComparison.require(
          row.getValue().equals(rows.get(row.getKey())), "the row " + (row.getKey() + 1));
    }
    Map<Integer, String> columns = columns(after);
    for (Map.Entry<Integer, String> column : columns(before).entrySet()) {
      boolean isKept = column.getValue().equals(columns.get(column.getKey()));
      XlsComparison.require(
          isKept || changes.widened.contains(column.getKey()), "the widths of its columns");
    }
  }

  private static Map<Integer, String> rows(XlsParts sheet) {
    Map<Integer, String> rows = new HashMap<>();
    for (Entry row : sheet.ofKind(ROW)) {
      rows.put(row.number(0), row.number(6) + " " + RecordText.HEX.formatHex(row.data(), 12, 16));
    }
    return rows;
  }

  private static Map<Integer, String> columns(XlsParts sheet) {
    Map<Integer, String> columns = new HashMap<>();
    for (Entry group : sheet.ofKind(COLUMN)) {
      for (int column = group.number(0); column <= group.number(2); column++) {
        columns.put(column, RecordText.HEX.formatHex(group.data(), 4, 10));
      }
    }
    return columns;
  }

  void drawings() throws FileRefused {
    if (changes.notes.isEmpty()) {
      XlsComparison.require(drawn(before).equals(drawn(after)), "its pictures, shapes or notes");
      return;
    }
    Set<String> gone = new HashSet<>();
    Set<String> notes = new HashSet<>(RecordText.of(after.ofKind(XlsNotes.NOTE)));
    for (Entry note : before.ofKind(XlsNotes.NOTE)) {
      if (changes.notes.contains(XlsNotes.place(note))) {
        gone.add(String.valueOf(note.number(6)));
      } else {
        XlsComparison.require(
            notes.contains(RecordText.of(note)), "the note in " + XlsNotes.place(note));
      }
    }
    Set<String> objects = objects(after);
    for (String object : objects(before)) {
      boolean mayGo = gone.contains(object.substring(object.indexOf(' ') + 1));
      XlsComparison.require(mayGo || objects.contains(object), "its pictures, shapes or controls");
    }
    XlsComparison.require(
        Escher.shapes(before.ofKind(DRAWING)) - gone.size() <= Escher.shapes(after.ofKind(DRAWING)),
        "its pictures, shapes or controls");
  }

  private static List<String> drawn(XlsParts sheet) {
    return RecordText.of(sheet.records().stream().filter(r -> DRAWN.contains(r.kind())).toList());
  }

  /** Kind and number of each object. */
  private static Set<String> objects(XlsParts sheet) {
    Set<String> objects = new HashSet<>();
    for (Entry object : sheet.ofKind(XlsNotes.OBJECT)) {
      objects.add(object.number(4) + " " + XlsNotes.id(object));
    }
    return objects;
  }
}
