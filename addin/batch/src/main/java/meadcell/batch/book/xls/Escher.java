package meadcell.batch.book.xls;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import meadcell.batch.book.xls.Biff.Entry;

/** The drawings of a sheet ([MS-ODRAW] 2.2.1): records in records, over the borders of others. */
final class Escher {
  private static final int SHAPE = 0xF00A;
  private static final int HEAD = 8;

  private Escher() {}

  /** How many shapes they have. */
  static int shapes(List<Entry> drawings) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    drawings.forEach(drawing -> all.writeBytes(drawing.data()));
    ByteBuffer bytes = ByteBuffer.wrap(all.toByteArray()).order(ByteOrder.LITTLE_ENDIAN);
    int shapes = 0;
    while (bytes.remaining() >= HEAD) {
      boolean isContainer = (bytes.getShort() & 0xF) == 0xF;
      int kind = bytes.getShort() & 0xFFFF;
      int length = bytes.getInt();
      shapes += kind == SHAPE ? 1 : 0;
      if (!isContainer) { // what a container holds comes next
        bytes.position(Math.min(bytes.limit(), bytes.position() + Math.max(0, length)));
      }
    }
    return shapes;
  }
}
