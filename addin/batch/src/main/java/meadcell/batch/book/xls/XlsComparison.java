package meadcell.batch.book.xls;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.xls.Biff.Entry;
import org.apache.poi.hssf.record.SSTRecord;

/**
 * Whether a written {@code .xls} still has all that it had, record by record, but for what was to
 * change. It reads the file itself, not POI's model of it.
 */
final class XlsComparison {
  static final int FONT = 0x0031;
  private static final int STYLE = 0x00E0;
  private static final int DRAWINGS = 0x00EB;

  /** Where things are, not what; every program writes these anew. */
  private static final Set<Integer> DIRECTORIES =
      Set.of(Biff.SHEET, 0x013D, 0x00FC, 0x00FF, 0x020B, 0x00D7, 0x0200);

  private static final Set<Integer> LINKS =
      Set.of(Biff.NAME, Biff.LINKED_BOOK, Biff.LINKED_NAME, Biff.LINKED_SHEETS);
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
      var comparison = new XlsSheetComparison(changes, old, now);
      comparison.cells(XlsCells.of(old, oldTexts), XlsCells.of(now, newTexts));
      comparison.rowsAndColumns();
      comparison.drawings();
      others(old, now);
    }
  }

  static void require(boolean isKept, String what) throws FileRefused {
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
          || !RecordText.of(old.records()).equals(RecordText.of(now.records()))
          || !same(old.inner(), now.inner())) {
        return false;
      }
    }
    return true;
  }

  private void shared(XlsParts before, XlsParts after) throws FileRefused {
    require(begins(before, after, FONT), "fonts");
    require(begins(before, after, STYLE), "the styles of its cells");
    require(begins(before, after, Biff.NAME), "its names");
    require(begin(links(before), links(after)), "its links");
    others(before, after);
  }

  private static boolean begins(XlsParts before, XlsParts after, int kind) {
    return begin(RecordText.of(before.ofKind(kind)), RecordText.of(after.ofKind(kind)));
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
        String text = RecordText.of(record);
        books.add(new ArrayList<>(List.of(isThisBook ? "" + record.number(2) : text)));
      } else if (record.kind() == Biff.LINKED_NAME) {
        books.get(books.size() - 1).add(RecordText.of(record));
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
        counts.merge(RecordText.of(record), 1, Integer::sum);
      }
    }
    for (Entry record : before.records()) {
      if (isOther(record.kind())) {
        require(counts.merge(RecordText.of(record), -1, Integer::sum) >= 0, "one of its settings");
      }
    }
  }

  private static boolean isOther(int kind) {
    return !DIRECTORIES.contains(kind)
        && !LINKS.contains(kind)
        && !XlsSheetComparison.DRAWN.contains(kind)
        && !XlsCells.KINDS.contains(kind)
        && kind != FONT
        && kind != STYLE
        && kind != XlsSheetComparison.ROW
        && kind != XlsSheetComparison.COLUMN
        && kind != DRAWINGS;
  }
}
