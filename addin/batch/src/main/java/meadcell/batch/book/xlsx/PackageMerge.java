package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import meadcell.batch.book.zip.PackageParts;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;

/**
 * One workbook package out of two: changed parts from what POI wrote, changed sheets as given,
 * everything else from the original, compressed bytes and all.
 */
final class PackageMerge {
  /** 1980, the first moment a zip entry can bear: new parts have no time of their own. */
  private static final long NO_TIME = 315532800000L;

  private final byte[] original;
  private final byte[] written;

  PackageMerge(byte[] original, byte[] written) {
    this.original = original;
    this.written = written;
  }

  void write(Set<String> changed, Map<String, PackageParts.Content> sheets, OutputStream out)
      throws IOException {
    try (ZipFile before = PackageParts.open(original);
        ZipFile after = PackageParts.open(written);
        ZipArchiveOutputStream zip = new ZipArchiveOutputStream(out)) {
      Set<String> old = names(before);
      Set<String> all = names(after);
      boolean isIndexChanged =
          !old.containsAll(all) || changed.stream().anyMatch(name -> !all.contains(name));
      for (ZipArchiveEntry entry : Collections.list(before.getEntries())) {
        String name = entry.getName();
        ZipArchiveEntry now = after.getEntry(name);
        boolean isIndex =
            name.equals("[Content_Types].xml")
                || name.endsWith(".rels")
                    && !relations(before, entry).equals(relations(after, now));
        boolean isReplaced = changed.contains(name) || isIndexChanged && isIndex;
        ZipArchiveEntry replacement = isReplaced ? now : null;
        if (sheets.containsKey(name)) {
          PackageParts.put(zip, entry, sheets.get(name));
        } else if (replacement != null) {
          replacement.setTime(entry.getTime());
          zip.addRawArchiveEntry(replacement, after.getRawInputStream(replacement));
        } else if (!changed.contains(name)) {
          zip.addRawArchiveEntry(entry, before.getRawInputStream(entry));
        }
      }
      for (ZipArchiveEntry entry : Collections.list(after.getEntries())) {
        if (!old.contains(entry.getName())) {
          entry.setTime(NO_TIME);
          PackageParts.Content sheet = sheets.get(entry.getName());
          if (sheet == null) {
            zip.addRawArchiveEntry(entry, after.getRawInputStream(entry));
          } else {
            PackageParts.put(zip, entry, sheet);
          }
        }
      }
    }
  }

  /** What a list of relations says; the same can be written in many ways. */
  private static Set<String> relations(ZipFile zip, ZipArchiveEntry list) throws IOException {
    Set<String> relations = new TreeSet<>();
    if (list != null) {
      byte[] xml = XlsxSheetXml.inUtf8(zip.getInputStream(list).readAllBytes());
      for (TagScanner tags = new TagScanner(xml); tags.next(); ) {
        relations.add(tags.attribute("Id") + " " + tags.attribute("Type"));
      }
    }
    return relations;
  }

  private static Set<String> names(ZipFile zip) {
    Set<String> names = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    Collections.list(zip.getEntries()).forEach(entry -> names.add(entry.getName()));
    return names;
  }
}
