package meadcell.batch.book.xls;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import meadcell.batch.book.BookSheet.Note;
import meadcell.batch.book.Place;
import meadcell.batch.book.xls.Biff.Entry;

/**
 * The notes of a sheet ([MS-XLS] 2.4.179, 2.4.181, 2.4.329), read without POI, which would take all
 * drawings of the sheet apart for it.
 */
final class XlsNotes {
  static final int NOTE = 0x001C;
  static final int OBJECT = 0x005D;
  static final int TEXT = 0x01B6;
  private static final int TEXT_HEAD = 18;

  private XlsNotes() {}

  static Map<Place, Note> of(XlsParts sheet) {
    Map<Integer, String> texts = new HashMap<>();
    Map<Place, Note> notes = new HashMap<>();
    int object = -1;
    for (Entry record : sheet.records()) {
      switch (record.kind()) {
        case OBJECT -> object = id(record);
        case TEXT -> texts.put(object, text(record.data()));
        default -> {}
      }
    }
    for (Entry record : sheet.ofKind(NOTE)) {
      String author = author(record);
      notes.put(place(record), new Note(author, texts.getOrDefault(record.number(6), "")));
    }
    return notes;
  }

  static Place place(Entry note) {
    return new Place(note.number(0), note.number(2));
  }

  /** The number by which a note knows its box. */
  static int id(Entry object) {
    return object.data().length < 8 ? -1 : object.number(6);
  }

  static String author(Entry note) {
    byte[] data = note.data();
    return data.length < 11 ? "" : string(data, 11, note.number(8), (data[10] & 1) != 0);
  }

  private static String text(byte[] data) {
    int length = data.length < TEXT_HEAD ? 0 : (data[10] & 0xFF) | (data[11] & 0xFF) << 8;
    return length == 0 || data.length <= TEXT_HEAD
        ? ""
        : string(data, TEXT_HEAD + 1, length, (data[TEXT_HEAD] & 1) != 0);
  }

  private static String string(byte[] data, int at, int length, boolean isWide) {
    int size = Math.max(0, Math.min(data.length - at, isWide ? 2 * length : length));
    return new String(
        data, at, size, isWide ? StandardCharsets.UTF_16LE : StandardCharsets.ISO_8859_1);
  }
}
