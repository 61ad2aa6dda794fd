package meadcell.batch.book.xls;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import meadcell.batch.book.xls.Biff.Entry;

/**
 * The list of sheets that formulas refer to. A workbook with names but without that list is sound;
 * POI needs it to add a function's name.
 */
final class LinkTables {
  private LinkTables() {}

  static boolean isMissing(List<Entry> records) {
    return first(records, Biff.NAME) >= 0 && first(records, Biff.LINKED_SHEETS) < 0;
  }

  private static int first(List<Entry> records, int kind) {
    for (int i = 0; i < records.size(); i++) {
      if (records.get(i).kind() == kind) {
        return i;
      }
    }
    return -1;
  }

  /** The records with an empty list, in front of the names. */
  static List<Entry> added(List<Entry> records) {
    List<Entry> all = new ArrayList<>(records);
    int names = first(records, Biff.NAME);
    all.add(names, new Entry(Biff.LINKED_SHEETS, new byte[2]));
    if (first(records, Biff.LINKED_BOOK) < 0) {
      short sheets = (short) records.stream().filter(r -> r.kind() == Biff.SHEET).count();
      byte[] thisBook =
          ByteBuffer.allocate(4)
              .order(ByteOrder.LITTLE_ENDIAN)
              .putShort(sheets)
              .putShort((short) 0x0401)
              .array();
      all.add(names, new Entry(Biff.LINKED_BOOK, thisBook));
    }
    return all;
  }
}
