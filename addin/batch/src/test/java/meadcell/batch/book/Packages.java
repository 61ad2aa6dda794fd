package meadcell.batch.book;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Zip packages, part by part. */
public final class Packages {
  private Packages() {}

  public static Map<String, byte[]> parts(byte[] zip) throws IOException {
    Map<String, byte[]> parts = new TreeMap<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        parts.put(entry.getName(), in.readAllBytes());
      }
    }
    return parts;
  }

  /** A package of these parts. */
  public static byte[] zip(Map<String, byte[]> parts) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> part : parts.entrySet()) {
        ZipEntry entry = new ZipEntry(part.getKey());
        entry.setTimeLocal(java.time.LocalDateTime.of(1980, 1, 1, 0, 0));
        out.putNextEntry(entry);
        out.write(part.getValue());
      }
    }
    return bytes.toByteArray();
  }
}
