package meadcell.batch.book.xls;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Place;
import meadcell.batch.book.xls.Biff.Entry;
import org.apache.poi.hssf.record.RecordFactory;
import org.apache.poi.hssf.record.RecordInputStream;
import org.apache.poi.hssf.record.SSTRecord;

/**
 * Whether a written {@code .xls} still has all that it had, record by record, but for what was to
 * change. It reads the file itself, not POI's model of it.
 */
final class XlsComparison {
  private static final int FONT = 0x0031;
  private static final int STYLE = 0x00E0;
  private static final int ROW = 0x0208;
  private static final int COLUMN = 0x007D;
  private static final int DRAWING = 0x00EC;
  private static final int DRAWINGS = 0x00EB;

  /** Where things are, not what; every program writes these anew. */
  private static final Set<Integer> DIRECTORIES =
      Set.of(Biff.SHEET, 0x013D, 0x00FC, 0x00FF, 0x020B, 0x00D7, 0x0200);

  private static final Set<Integer> LINKS =
      Set.of(Biff.NAME, Biff.LINKED_BOOK, Biff.LINKED_NAME, Biff.LINKED_SHEETS);
  private static final Set<Integer> DRAWN =
      Set.of(DRAWING, XlsNotes.OBJECT, XlsNotes.TEXT, XlsNotes.NOTE);

  /** Records with texts, which can be stored in one byte a letter or in two. */
  private static final Set<Integer> WORDED =
      Set.of(
          FONT,
          0x041E,
          0x0293,
          0x0014,
          0x0015,
          0x01BE,
          0x01B8,
          0x01B1,
          0x005C,
          Biff.NAME,
          Biff.LINKED_BOOK,
          Biff.LINKED_NAME);

  private static final HexFormat HEX = HexFormat.of();

  private final List<Entry> oldRecords;
  private final List<Entry> newRecords;
  private final List<XlsSheet> sheets;

  XlsComparison(List<Entry> before, List<Entry> after, List<XlsSheet> sheets) {
    this.oldRecords = before;
    this.newRecords = after;
    this.sheets = sheets;
  }

  /**
   * Compares the two.
   *
   * @throws FileRefused when something is lost, with what it is
   */
  void requireNoLoss() throws FileRefused, IOException {
    List<XlsParts> before = XlsParts.of(oldRecords);
    List<XlsParts> after = XlsParts.of(newRecords);
    require(before.size() <= after.size(), "sheets");
    shared(before.get(0), after.get(0));
    SSTRecord oldTexts = XlsCells.texts(oldRecords);
    SSTRecord newTexts = XlsCells.texts(newRecords);
    for (int i = 1; i < before.size(); i++) {
      XlsParts old = before.get(i);
      XlsParts now = after.get(i);
      require(old.kind() == now.kind(), "sheets");
      require(same(old.inner(), now.inner()), "its charts");
      XlsSheet sheet = i <= sheets.size() ? sheets.get(i - 1) : null;
      Changes changes = sheet == null ? new Changes() : sheet.changes();
      cells(changes, XlsCells.of(old, oldTexts), XlsCells.of(now, newTexts));
      rowsAndColumns(changes, old, now);
      drawings(changes, old, now);
      others(old, now);
    }
  }

  private static void require(boolean isKept, String what) throws FileRefused {
    if (!isKept) {
      throw new FileRefused(
          "This .xls cannot be written without harm to "
              + what
              + "; save it as .xlsx, and use that.");
    }
  }

  private static boolean same(List<XlsParts> before, List<XlsParts> after) {
    if (before.size() != after.size()) {
      return false;
    }
    for (int i = 0; i < before.size(); i++) {
      XlsParts old = before.get(i);
      XlsParts now = after.get(i);
      if (old.kind() != now.kind()
          || !written(old.records()).equals(written(now.records()))
          || !same(old.inner(), now.inner())) {
        return false;
      }
    }
    return true;
  }

  private static List<String> written(List<Entry> records) {
    return records.stream().map(XlsComparison::written).toList();
  }

  /** A record in figures; a text in one way only. */
  private static String written(Entry record) {
    byte[] data = record.data();
    if (WORDED.contains(record.kind())) {
      byte[] file = new byte[data.length + 4];
      file[0] = (byte) record.kind();
      file[1] = (byte) (record.kind() >> 8);
      file[2] = (byte) data.length;
      file[3] = (byte) (data.length >> 8);
      System.arraycopy(data, 0, file, 4, data.length);
      RecordInputStream in = new RecordInputStream(new ByteArrayInputStream(file));
      in.nextRecord();
      byte[] again = RecordFactory.createSingleRecord(in).serialize();
      data = Arrays.copyOfRange(again, 4, again.length);
    }
    if (record.kind() == XlsNotes.OBJECT) { // filled up to a multiple of some length
      int end = data.length;
      while (end > 0 && data[end - 1] == 0) {
        end--;
      }
      data = Arrays.copyOf(data, end);
    }
    return record.kind() + " " + HEX.formatHex(data);
  }

  // ---- what all sheets share --------------------------------------------------------------

  private void shared(XlsParts before, XlsParts after) throws FileRefused {
    require(begins(before, after, FONT), "fonts");
    require(begins(before, after, STYLE), "the styles of its cells");
    require(begins(before, after, Biff.NAME), "its names");
    require(begin(links(before), links(after)), "its links");
    others(before, after);
  }

  private static boolean begins(XlsParts before, XlsParts after, int kind) {
    return begin(written(before.ofKind(kind)), written(after.ofKind(kind)));
  }

  private static boolean begin(List<String> before, List<String> after) {
    return before.size() <= after.size() && after.subList(0, before.size()).equals(before);
  }

  /** What a formula's numbers of sheets and functions mean. */
  private static List<String> links(XlsParts globals) {
    List<List<String>> books = new ArrayList<>();
    List<String> links = new ArrayList<>();
    for (Entry record : globals.records()) {
      if (record.kind() == Biff.LINKED_BOOK) {
        boolean isThisBook = record.data().length == 4;
        String text = written(record);
        books.add(new ArrayList<>(List.of(isThisBook ? "" + record.number(2) : text)));
      } else if (record.kind() == Biff.LINKED_NAME) {
        books.get(books.size() - 1).add(written(record));
      }
    }
    for (Entry record : globals.ofKind(Biff.LINKED_SHEETS)) {
      for (int at = 2; at + 6 <= record.data().length; at += 6) {
        int book = record.number(at);
        List<String> names = book < books.size() ? books.get(book) : List.of();
        links.add(
            (names.isEmpty() ? "" : names.get(0))
                + " "
                + record.number(at + 2)
                + " "
                + record.number(at + 4));
      }
    }
    return links;
  }

  private static void others(XlsParts before, XlsParts after) throws FileRefused {
    Map<String, Integer> counts = new HashMap<>();
    for (Entry record : after.records()) {
      if (isOther(record.kind())) {
        counts.merge(written(record), 1, Integer::sum);
      }
    }
    for (Entry record : before.records()) {
      if (isOther(record.kind())) {
        require(counts.merge(written(record), -1, Integer::sum) >= 0, "one of its settings");
      }
    }
  }

  private static boolean isOther(int kind) {
    return !DIRECTORIES.contains(kind)
        && !LINKS.contains(kind)
        && !DRAWN.contains(kind)
        && !XlsCells.KINDS.contains(kind)
        && kind != FONT
        && kind != STYLE
        && kind != ROW
        && kind != COLUMN
        && kind != DRAWINGS;
  }

  // ---- a sheet ----------------------------------------------------------------------------

  private static void cells(
      Changes changes, Map<Place, XlsCells.Cell> before, Map<Place, XlsCells.Cell> after)
      throws FileRefused {
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
      require(old != null && now != null, "the cell" + where);
      require(old.formula().equals(now.formula()), "the formula" + where);
      require(old.style() == now.style(), "the style" + where);
      require(changes.values.contains(place), "the value" + where);
    }
  }

  private static void rowsAndColumns(Changes changes, XlsParts before, XlsParts after)
      throws FileRefused {
    Map<Integer, String> rows = rows(after);
    for (Map.Entry<Integer, String> row : rows(before).entrySet()) {
      require(row.getValue().equals(rows.get(row.getKey())), "the row " + (row.getKey() + 1));
    }
    Map<Integer, String> columns = columns(after);
    for (Map.Entry<Integer, String> column : columns(before).entrySet()) {
      boolean isKept = column.getValue().equals(columns.get(column.getKey()));
      require(isKept || changes.widened.contains(column.getKey()), "the widths of its columns");
    }
  }

  private static Map<Integer, String> rows(XlsParts sheet) {
    Map<Integer, String> rows = new HashMap<>();
    for (Entry row : sheet.ofKind(ROW)) {
      rows.put(row.number(0), row.number(6) + " " + HEX.formatHex(row.data(), 12, 16));
    }
    return rows;
  }

  private static Map<Integer, String> columns(XlsParts sheet) {
    Map<Integer, String> columns = new HashMap<>();
    for (Entry group : sheet.ofKind(COLUMN)) {
      for (int column = group.number(0); column <= group.number(2); column++) {
        columns.put(column, HEX.formatHex(group.data(), 4, 10));
      }
    }
    return columns;
  }

  private static void drawings(Changes changes, XlsParts before, XlsParts after)
      throws FileRefused {
    if (changes.notes.isEmpty()) {
      require(drawn(before).equals(drawn(after)), "its pictures, shapes or notes");
      return;
    }
    Set<String> gone = new HashSet<>();
    Set<String> notes = new HashSet<>(written(after.ofKind(XlsNotes.NOTE)));
    for (Entry note : before.ofKind(XlsNotes.NOTE)) {
      if (changes.notes.contains(XlsNotes.place(note))) {
        gone.add(String.valueOf(note.number(6)));
      } else {
        require(notes.contains(written(note)), "the note in " + XlsNotes.place(note));
      }
    }
    Set<String> objects = objects(after);
    for (String object : objects(before)) {
      boolean mayGo = gone.contains(object.substring(object.indexOf(' ') + 1));
      require(mayGo || objects.contains(object), "its pictures, shapes or controls");
    }
    require(
        Escher.shapes(before.ofKind(DRAWING)) - gone.size() <= Escher.shapes(after.ofKind(DRAWING)),
        "its pictures, shapes or controls");
  }

  private static List<String> drawn(XlsParts sheet) {
    return written(sheet.records().stream().filter(r -> DRAWN.contains(r.kind())).toList());
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
