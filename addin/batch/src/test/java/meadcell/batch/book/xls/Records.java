package meadcell.batch.book.xls;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import meadcell.batch.book.Place;
import org.apache.poi.poifs.filesystem.DirectoryNode;

/** The records of an {@code .xls} file, to change and to look at. */
public final class Records {
  public static final int BEGIN = Biff.BEGIN;
  private static final int VIEW = 0x023E;
  private static final int OBJECT = 0x005D;
  private static final int OBJECT_LENGTH = 26;
  private static final int CHART_UNITS = 0x1001;

  private Records() {}

  /** One record. */
  public static final class Each {
    public int kind;
    public byte[] data;

    public Each(int kind, byte[] data) {
      this.kind = kind;
      this.data = data;
    }
  }

  /** Rewrites a file with other records. */
  public static void edit(Path file, Consumer<List<Each>> change) throws IOException {
    DirectoryNode root = Biff.root(Files.readAllBytes(file));
    List<Each> records = new ArrayList<>();
    Biff.records(root).forEach(record -> records.add(new Each(record.kind(), record.data())));
    change.accept(records);
    Biff.replace(root, records.stream().map(each -> new Biff.Entry(each.kind, each.data)).toList());
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    root.getFileSystem().writeFilesystem(out);
    Files.write(file, out.toByteArray());
  }

  /** How many records of a kind a file has. */
  public static long count(Path file, int kind) throws IOException {
    return Biff.records(Biff.root(Files.readAllBytes(file))).stream()
        .filter(record -> record.kind() == kind)
        .count();
  }

  /** Formula tokens of each cell of a sheet. */
  public static String formula(Path file, int sheet, String a1) throws IOException {
    List<Biff.Entry> records = Biff.records(Biff.root(Files.readAllBytes(file)));
    Map<Place, XlsCells.Cell> cells =
        XlsCells.of(XlsParts.of(records).get(sheet + 1), XlsCells.texts(records));
    return cells.get(Place.of(a1)).formula();
  }

  /** Whether the first record begins the file. */
  public static boolean isSound(Path file) throws IOException {
    XlsParts.of(Biff.records(Biff.root(Files.readAllBytes(file))));
    return true;
  }

  /**
   * Puts a chart on the first sheet: a beginning-of-file record of its own kind, and an end, within
   * the sheet, behind the object that shows it.
   */
  public static void addChart(List<Each> records) {
    int at = 0;
    while (records.get(at).kind != VIEW) {
      at++;
    }
    byte[] object = new byte[OBJECT_LENGTH];
    byte[] head = {0x15, 0, 0x12, 0, 5, 0, (byte) at, 0, 0x11, 0x60}; // of kind 5, a chart
    System.arraycopy(head, 0, object, 0, head.length);
    byte[] begin = records.get(0).data.clone();
    begin[2] = XlsParts.CHART;
    records.addAll(
        at,
        List.of(
            new Each(OBJECT, object),
            new Each(BEGIN, begin),
            new Each(CHART_UNITS, new byte[] {0, (byte) at}),
            new Each(Biff.END, new byte[0])));
  }
}
