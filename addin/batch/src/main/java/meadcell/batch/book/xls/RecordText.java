package meadcell.batch.book.xls;

import java.io.ByteArrayInputStream;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import meadcell.batch.book.xls.Biff.Entry;
import org.apache.poi.hssf.record.RecordFactory;
import org.apache.poi.hssf.record.RecordInputStream;

/** Records of an {@code .xls} in figures, the same for the same meaning. */
final class RecordText {
  static final HexFormat HEX = HexFormat.of();

  /** Records with texts, which can be stored in one byte a letter or in two. */
  private static final Set<Integer> WORDED =
      Set.of(
          XlsComparison.FONT,
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

  private RecordText() {}

  static List<String> of(List<Entry> records) {
    return records.stream().map(RecordText::of).toList();
  }

  /** A record in figures; a text in one way only. */
  static String of(Entry record) {
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
}
