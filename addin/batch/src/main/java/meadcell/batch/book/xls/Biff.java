package meadcell.batch.book.xls;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import meadcell.batch.book.FileRefused;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** The records of an old binary workbook as they stand in the file ([MS-XLS] 2.1.4). */
final class Biff {
  static final int BEGIN = 0x0809;
  static final int END = 0x000A;
  static final int CONTINUE = 0x003C;
  static final int SHEET = 0x0085;
  static final int NAME = 0x0018;
  static final int LINKED_BOOK = 0x01AE;
  static final int LINKED_SHEETS = 0x0017;
  static final int LINKED_NAME = 0x0023;
  private static final int HEAD = 4;

  /** One record. */
  record Entry(int kind, byte[] data) {
    int number(int at) {
      return (data[at] & 0xFF) | (data[at + 1] & 0xFF) << 8;
    }
  }

  private Biff() {}

  /** The records of a file, from the first to the last. */
  static List<Entry> records(DirectoryNode root) throws IOException {
    byte[] stream;
    try (InputStream in =
        root.createDocumentInputStream(HSSFWorkbook.getWorkbookDirEntryName(root))) {
      stream = in.readAllBytes();
    }
    ByteBuffer bytes = ByteBuffer.wrap(stream).order(ByteOrder.LITTLE_ENDIAN);
    List<Entry> records = new ArrayList<>();
    int depth = 0;
    while (bytes.remaining() >= HEAD) {
      int kind = bytes.getShort() & 0xFFFF;
      byte[] data = new byte[bytes.getShort() & 0xFFFF];
      if (data.length > bytes.remaining()) {
        throw FileRefused.damaged("a record of it is cut off", null);
      }
      bytes.get(data);
      depth += kind == BEGIN ? 1 : 0;
      if (depth == 0) {
        break; // what follows the last sheet is filling
      }
      records.add(new Entry(kind, data));
      depth -= kind == END ? 1 : 0;
    }
    return records;
  }

  /** Puts records in place of a file's own, with each sheet's place told anew. */
  static void replace(DirectoryNode root, List<Entry> records) throws IOException {
    List<Integer> starts = new ArrayList<>();
    int depth = 0;
    int at = 0;
    for (Entry record : records) {
      if (record.kind == BEGIN && depth++ == 0) {
        starts.add(at);
      }
      depth -= record.kind == END ? 1 : 0;
      at += HEAD + record.data.length;
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream(at);
    int sheet = 0;
    for (Entry record : records) {
      byte[] data = record.data.clone();
      if (record.kind == SHEET && ++sheet < starts.size()) {
        ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN).putInt(starts.get(sheet));
      }
      out.writeBytes(
          ByteBuffer.allocate(HEAD)
              .order(ByteOrder.LITTLE_ENDIAN)
              .putShort((short) record.kind)
              .putShort((short) data.length)
              .array());
      out.writeBytes(data);
    }
    String name = HSSFWorkbook.getWorkbookDirEntryName(root);
    root.getEntryCaseInsensitive(name).delete();
    root.createDocument(name, new ByteArrayInputStream(out.toByteArray()));
  }

  static DirectoryNode root(byte[] file) throws IOException {
    return new POIFSFileSystem(new ByteArrayInputStream(file)).getRoot();
  }
}
