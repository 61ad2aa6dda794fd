package meadcell.batch.book;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/**
 * One workbook package out of two: changed parts from what POI wrote, everything else from the
 * original, compressed bytes and all.
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

  void write(Set<String> changed, OutputStream out) throws IOException {
    try (ZipFile before = open(original);
        ZipFile after = open(written);
        ZipArchiveOutputStream zip = new ZipArchiveOutputStream(out)) {
      Set<String> parts = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
      Collections.list(before.getEntries()).forEach(entry -> parts.add(entry.getName()));
      boolean partsAdded =
          Collections.list(after.getEntries()).stream()
              .anyMatch(entry -> !parts.contains(entry.getName()));
      for (ZipArchiveEntry entry : Collections.list(before.getEntries())) {
        String name = entry.getName();
        ZipArchiveEntry replacement = after.getEntry(name);
        boolean isIndex = name.equals("[Content_Types].xml") || name.endsWith(".rels");
        if (replacement != null && (changed.contains(name) || partsAdded && isIndex)) {
          replacement.setTime(entry.getTime());
          zip.addRawArchiveEntry(replacement, after.getRawInputStream(replacement));
        } else if (replacement != null || !changed.contains(name)) {
          zip.addRawArchiveEntry(entry, before.getRawInputStream(entry));
        }
      }
      for (ZipArchiveEntry entry : Collections.list(after.getEntries())) {
        if (!parts.contains(entry.getName())) {
          entry.setTime(NO_TIME);
          zip.addRawArchiveEntry(entry, after.getRawInputStream(entry));
        }
      }
    }
  }

  private static ZipFile open(byte[] bytes) throws IOException {
    return ZipFile.builder().setSeekableByteChannel(new SeekableInMemoryByteChannel(bytes)).get();
  }
}
