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
}
