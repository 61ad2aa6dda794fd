package meadcell.samples;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** A zip file whose bytes depend on nothing but its content. */
final class Repacked {
  /**
   * Local time, so no zone comes in; just behind the start of the zip format's clock, which Java
   * would put into a field of its own.
   */
  private static final LocalDateTime TIME = LocalDateTime.of(1980, 1, 1, 0, 0, 2);

  /** The type of an OpenDocument file must lie uncompressed at its front. */
  private static final String MIMETYPE = "mimetype";

  private static final Comparator<String> MIMETYPE_FIRST =
      Comparator.comparing((String name) -> !name.equals(MIMETYPE))
          .thenComparing(Comparator.naturalOrder());

  private Repacked() {}

  /**
   * The same entries, sorted, at one fixed time.
   *
   * @param change what to store for an entry's name and content; null leaves it out
   */
  static byte[] zip(byte[] zip, BiFunction<String, byte[], byte[]> change) throws IOException {
    Map<String, byte[]> entries = new TreeMap<>(MIMETYPE_FIRST);
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        byte[] content = change.apply(entry.getName(), in.readAllBytes());
        if (content != null) {
          entries.put(entry.getName(), content);
        }
      }
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
        out.putNextEntry(entry(entry.getKey(), entry.getValue()));
        out.write(entry.getValue());
        out.closeEntry();
      }
    }
    return bytes.toByteArray();
  }

  private static ZipEntry entry(String name, byte[] content) {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(TIME);
    if (name.equals(MIMETYPE)) {
      CRC32 crc = new CRC32();
      crc.update(content);
      entry.setMethod(ZipEntry.STORED);
      entry.setSize(content.length);
      entry.setCrc(crc.getValue());
    }
    return entry;
  }
}
