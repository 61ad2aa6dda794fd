package meadcell.batch.book.xls;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import meadcell.batch.book.Place;
import meadcell.batch.book.xls.Biff.Entry;
import org.apache.poi.hssf.record.RecordInputStream;
import org.apache.poi.hssf.record.SSTRecord;
import org.apache.poi.hssf.util.RKUtil;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.formula.SharedFormula;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.util.LittleEndianByteArrayInputStream;

/** What the cells of one sheet hold, in words that are the same however it is stored. */
final class XlsCells {
  /** A cell: its style; its formula, or nothing; its value. */
  record Cell(int style, String formula, String value) {}

  private static final int FORMULA = 0x0006;
  private static final int STRING = 0x0207;
  private static final int SHARED = 0x04BC;
  private static final int ARRAY = 0x0221;
  private static final int TABLE = 0x0236;
  private static final int BLANK = 0x0201;
  private static final int BLANKS = 0x00BE;
  private static final int NUMBER = 0x0203;
  private static final int RK = 0x027E;
  private static final int RKS = 0x00BD;
  private static final int BOOLEAN = 0x0205;
  private static final int LABEL = 0x0204;
  private static final int RICH_LABEL = 0x00D6;
  private static final int SHARED_TEXT = 0x00FD;
  private static final int TEXTS = 0x00FC;

  /** The records that cells are stored in. */
  static final List<Integer> KINDS =
      List.of(
          FORMULA,
          STRING,
          SHARED,
          ARRAY,
          TABLE,
          BLANK,
          BLANKS,
          NUMBER,
          RK,
          RKS,
          BOOLEAN,
          LABEL,
          RICH_LABEL,
          SHARED_TEXT);

  private static final byte REFERS_TO_SHARED = 0x01;
  private static final int TOKENS = 20;
  private static final HexFormat HEX = HexFormat.of();

  private final SSTRecord texts;
  private final Map<Place, Cell> cells = new HashMap<>();
  private final Map<Place, Entry> groups = new HashMap<>();

  private XlsCells(SSTRecord texts) {
    this.texts = texts;
  }

  /** The texts that all sheets share, from all records of a file. */
  static SSTRecord texts(List<Entry> records) {
    ByteArrayOutputStream found = new ByteArrayOutputStream();
    boolean isInside = false;
    for (Entry record : records) {
      isInside = record.kind() == TEXTS || isInside && record.kind() == Biff.CONTINUE;
      if (isInside) {
        int length = record.data().length;
        found.writeBytes(
            new byte[] {
              (byte) record.kind(), (byte) (record.kind() >> 8), (byte) length, (byte) (length >> 8)
            });
        found.writeBytes(record.data());
      }
    }
    if (found.size() == 0) {
      return new SSTRecord();
    }
    RecordInputStream in = new RecordInputStream(new ByteArrayInputStream(found.toByteArray()));
    in.nextRecord();
    return new SSTRecord(in);
  }

  static Map<Place, Cell> of(XlsParts sheet, SSTRecord texts) {
    XlsCells reader = new XlsCells(texts);
    Place last = null;
    for (Entry record : sheet.records()) {
      switch (record.kind()) {
        case FORMULA -> last = new Place(record.number(0), record.number(2));
        case SHARED, ARRAY, TABLE -> reader.groups.put(last, record);
        default -> {}
      }
    }
    for (Entry record : sheet.records()) {
      if (record.kind() == STRING) {
        reader.cells.computeIfPresent(
            last, (place, cell) -> new Cell(cell.style, cell.formula, text(record)));
      } else if (KINDS.contains(record.kind()) && record.kind() != SHARED) {
        last = reader.read(record);
      }
    }
    return reader.cells;
  }

  private static String text(Entry record) {
    RecordInputStream in = stream(record);
    return "text " + in.readString();
  }

  private static RecordInputStream stream(Entry record) {
    byte[] all = new byte[record.data().length + 4];
    all[0] = (byte) record.kind();
    all[1] = (byte) (record.kind() >> 8);
    all[2] = (byte) record.data().length;
    all[3] = (byte) (record.data().length >> 8);
    System.arraycopy(record.data(), 0, all, 4, record.data().length);
    RecordInputStream in = new RecordInputStream(new ByteArrayInputStream(all));
    in.nextRecord();
    return in;
  }

  private Place read(Entry record) {
    byte[] data = record.data();
    Place place = new Place(record.number(0), record.number(2));
    switch (record.kind()) {
      case BLANKS -> {
        for (int at = 4; at + 4 <= data.length; at += 2) {
          put(place.row(), place.column() + (at - 4) / 2, record.number(at), "");
        }
      }
      case RKS -> {
        for (int at = 4; at + 8 <= data.length; at += 6) {
          put(place.row(), place.column() + (at - 4) / 6, record.number(at), rk(data, at + 2));
        }
      }
      case FORMULA ->
          cells.put(
              place, new Cell(record.number(4), formula(place, data), HEX.formatHex(data, 6, 14)));
      case BLANK -> put(place.row(), place.column(), record.number(4), "");
      case RK -> put(place.row(), place.column(), record.number(4), rk(data, 6));
      case NUMBER -> put(place.row(), place.column(), record.number(4), HEX.formatHex(data, 6, 14));
      case SHARED_TEXT ->
          put(
              place.row(),
              place.column(),
              record.number(4),
              sharedText(record.number(6) | record.number(8) << 16));
      case ARRAY, TABLE -> {
        return place;
      }
      default ->
          put(place.row(), place.column(), record.number(4), HEX.formatHex(data, 6, data.length));
    }
    return place;
  }

  private void put(int row, int column, int style, String value) {
    cells.put(new Place(row, column), new Cell(style, "", value));
  }

  private String sharedText(int index) {
    boolean isThere = index >= 0 && index < texts.getNumUniqueStrings();
    return isThere ? "text " + texts.getString(index).getDebugInfo() : "no text";
  }

  private static String rk(byte[] data, int at) {
    int packed =
        data[at] & 0xFF
            | (data[at + 1] & 0xFF) << 8
            | (data[at + 2] & 0xFF) << 16
            | data[at + 3] << 24;
    long bits = Long.reverseBytes(Double.doubleToRawLongBits(RKUtil.decodeNumber(packed)));
    return HEX.toHexDigits(bits);
  }

  /** A formula's tokens; of one that is stored for several cells, as if it were this cell's own. */
  private String formula(Place place, byte[] data) {
    if (data.length < TOKENS + 7 || data[TOKENS + 2] != REFERS_TO_SHARED) {
      return HEX.formatHex(data, TOKENS, data.length);
    }
    int row = data[TOKENS + 3] & 0xFF | (data[TOKENS + 4] & 0xFF) << 8;
    int column = data[TOKENS + 5] & 0xFF | (data[TOKENS + 6] & 0xFF) << 8;
    Entry group = groups.get(new Place(row, column));
    if (group == null) {
      return HEX.formatHex(data, TOKENS, data.length);
    }
    byte[] stored = group.data();
    if (group.kind() != SHARED) {
      return group.kind() + " " + HEX.formatHex(stored);
    }
    int length = stored[8] & 0xFF | (stored[9] & 0xFF) << 8;
    Ptg[] tokens = Ptg.readTokens(length, new LittleEndianByteArrayInputStream(stored, 10));
    Ptg[] own =
        new SharedFormula(SpreadsheetVersion.EXCEL97)
            .convertSharedFormulas(tokens, place.row(), place.column());
    byte[] written = new byte[2 + Ptg.getEncodedSize(own)];
    int size = Ptg.serializePtgs(own, written, 2);
    written[0] = (byte) size;
    written[1] = (byte) (size >> 8);
    return HEX.formatHex(Arrays.copyOf(written, written.length));
  }
}
