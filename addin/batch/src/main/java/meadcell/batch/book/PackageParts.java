package meadcell.batch.book;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/** A zip package of which some parts are replaced and all others copied as they are stored. */
final class PackageParts {
  private static final int LARGEST_PART = 1 << 29;

  private final ZipFile zip;
  private final Map<String, byte[]> replaced = new HashMap<>();

  PackageParts(byte[] bytes) throws IOException {
    zip = ZipFile.builder().setSeekableByteChannel(new SeekableInMemoryByteChannel(bytes)).get();
  }

  boolean has(String part) {
    return zip.getEntry(part) != null;
  }

  byte[] read(String part) throws IOException {
    ZipArchiveEntry entry = zip.getEntry(part);
    if (entry == null) {
      throw new IOException("it has no part " + part);
    }
    try (InputStream in = zip.getInputStream(entry)) {
      byte[] bytes = in.readNBytes(LARGEST_PART);
      if (bytes.length == LARGEST_PART) {
        throw new IOException("the part " + part + " is larger than 512 MB");
      }
      return bytes;
    }
  }

  String text(String part) throws IOException {
    return has(part) ? new String(read(part), StandardCharsets.UTF_8) : "";
  }

  void replace(String part, byte[] bytes) {
    replaced.put(part, bytes);
  }

  void write(OutputStream out) throws IOException {
    try (ZipArchiveOutputStream target = new ZipArchiveOutputStream(out)) {
      for (ZipArchiveEntry entry : Collections.list(zip.getEntriesInPhysicalOrder())) {
        byte[] bytes = replaced.get(entry.getName());
        if (bytes == null) {
          target.addRawArchiveEntry(entry, zip.getRawInputStream(entry));
        } else {
          ZipArchiveEntry changed = new ZipArchiveEntry(entry.getName());
          changed.setTime(entry.getTime());
          target.putArchiveEntry(changed);
          target.write(bytes);
          target.closeArchiveEntry();
        }
      }
    }
  }
}
