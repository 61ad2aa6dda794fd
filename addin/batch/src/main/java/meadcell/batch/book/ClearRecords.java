package meadcell.batch.book;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.apache.poi.hssf.record.FilePassRecord;
import org.apache.poi.hssf.record.crypto.Biff8DecryptingStream;
import org.apache.poi.poifs.crypt.EncryptionInfo;

/**
 * The records of an encrypted {@code .xls} ([MS-XLS] 2.2.10), decrypted one by one and otherwise as
 * they stand in the file, whatever POI's model of a workbook knows of them.
 */
final class ClearRecords {
  private static final int BEGIN = 0x0809;
  private static final int END = 0x000A;
  private static final int SHEET = 0x0085;
  private static final int INDEX = 0x020B;
  private static final int HEAD = 4;

  private static final int TEXT_PLACES = 0x00FF;

  /** In an index, the places of blocks of rows stand behind the numbers of rows. */
  private static final int INDEX_START = HEAD + 12;

  /** Every so often comes the place of a text, and where in its record that is. */
  private static final int TEXT_PLACES_START = HEAD + 2;

  private static final int TEXT_PLACES_STEP = 8;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private int missing;
  private int depth;

  private ClearRecords() {}

  /** The records of a stream, up to the end of the last sheet, without what encrypted them. */
  static byte[] of(byte[] stream, EncryptionInfo info) throws IOException {
    ClearRecords records = new ClearRecords();
    ByteBuffer bytes = ByteBuffer.wrap(stream).order(ByteOrder.LITTLE_ENDIAN);
    while (records.missing == 0) {
      int kind = bytes.getShort() & 0xFFFF;
      byte[] data = new byte[bytes.getShort() & 0xFFFF];
      bytes.get(data);
      if (kind == FilePassRecord.sid) {
        records.missing = HEAD + data.length;
      } else {
        records.add(kind, data);
      }
    }
    int start = bytes.position();
    InputStream rest = new ByteArrayInputStream(stream, start, stream.length - start);
    Biff8DecryptingStream in = new Biff8DecryptingStream(rest, start, info);
    while (in.available() >= HEAD) {
      int kind = in.readRecordSID();
      if (records.depth == 0 && kind != BEGIN) {
        break; // what follows the last sheet is filling
      }
      byte[] data = new byte[in.readDataSize()];
      int plain = kind == SHEET ? Integer.BYTES : 0;
      in.readPlain(data, 0, plain);
      in.readFully(data, plain, data.length - plain);
      records.add(kind, data);
    }
    return records.out.toByteArray();
  }

  private void add(int kind, byte[] data) {
    depth += kind == BEGIN ? 1 : kind == END ? -1 : 0;
    ByteBuffer written = ByteBuffer.allocate(HEAD + data.length).order(ByteOrder.LITTLE_ENDIAN);
    written.putShort((short) kind).putShort((short) data.length).put(data);
    switch (kind) {
      case SHEET -> move(written, HEAD, data.length);
      case INDEX -> move(written, INDEX_START, Integer.BYTES);
      case TEXT_PLACES -> move(written, TEXT_PLACES_START, TEXT_PLACES_STEP);
      default -> {}
    }
    out.writeBytes(written.array());
  }

  /** Tells places in the file anew. */
  private void move(ByteBuffer record, int start, int step) {
    for (int at = start; at + Integer.BYTES <= record.limit(); at += step) {
      int place = record.getInt(at);
      record.putInt(at, place == 0 ? 0 : place - missing);
    }
  }
}
