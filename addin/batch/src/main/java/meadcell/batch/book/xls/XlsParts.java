package meadcell.batch.book.xls;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.xls.Biff.Entry;

/**
 * What lies between a beginning-of-file record and its end ([MS-XLS] 2.1.7): what all sheets share,
 * a sheet, or a chart inside of one.
 */
record XlsParts(int kind, List<Entry> records, List<XlsParts> inner) {
  static final int CHART = 0x0020;

  /** The parts of a file: first what all sheets share, then each sheet. */
  static List<XlsParts> of(List<Entry> records) throws IOException {
    List<XlsParts> all = new ArrayList<>();
    Deque<XlsParts> open = new ArrayDeque<>();
    for (Entry record : records) {
      switch (record.kind()) {
        case Biff.BEGIN -> {
          XlsParts part = new XlsParts(record.number(2), new ArrayList<>(), new ArrayList<>());
          (open.isEmpty() ? all : open.peek().inner).add(part);
          open.push(part);
        }
        case Biff.END -> open.pop();
        case Biff.CONTINUE -> lengthen(open.peek().records, record);
        default -> open.peek().records.add(record);
      }
    }
    if (!open.isEmpty() || all.isEmpty()) {
      throw FileRefused.damaged("it ends in the middle of a sheet", null);
    }
    return all;
  }

  private static void lengthen(List<Entry> records, Entry more) throws IOException {
    if (records.isEmpty()) {
      throw FileRefused.damaged("a record goes on that did not begin", null);
    }
    Entry last = records.remove(records.size() - 1);
    ByteArrayOutputStream data = new ByteArrayOutputStream();
    data.writeBytes(last.data());
    data.writeBytes(more.data());
    records.add(new Entry(last.kind(), data.toByteArray()));
  }

  boolean hasCharts() {
    return inner.stream().anyMatch(part -> part.kind == CHART);
  }

  List<Entry> ofKind(int wanted) {
    return records.stream().filter(record -> record.kind() == wanted).toList();
  }
}
