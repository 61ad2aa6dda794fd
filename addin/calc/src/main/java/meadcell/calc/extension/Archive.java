package meadcell.calc.extension;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** A zip or jar whose bytes depend on nothing but its content: entries sorted, one fixed time. */
public final class Archive {
  /** 1 January 1980, where the zip format's clock starts: local time, so no zone comes in. */
  private static final LocalDateTime TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

  private final Map<String, byte[]> entries = new TreeMap<>();

  public Archive add(String name, byte[] content) {
    entries.put(name, content);
    return this;
  }

  byte[] get(String name) {
    return entries.get(name);
  }

  /** Adds the entries of a zip. */
  Archive addZip(Path zip) throws IOException {
    try (ZipInputStream in = new ZipInputStream(Files.newInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        add(entry.getName(), in.readAllBytes());
      }
    }
    return this;
  }

  /** Adds the files of a folder, and of the folders in it. */
  public Archive addAll(String prefix, Path folder) throws IOException {
    return add(prefix, folder, Integer.MAX_VALUE, "");
  }

  /** Adds the files with this ending that lie in a folder itself. */
  Archive addFolder(String prefix, Path folder, String ending) throws IOException {
    return add(prefix, folder, 1, ending);
  }

  private Archive add(String prefix, Path folder, int depth, String ending) throws IOException {
    try (Stream<Path> files = Files.walk(folder, depth)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String name = folder.relativize(file).toString().replace('\\', '/');
        if (name.endsWith(ending)) {
          add(prefix + name, Files.readAllBytes(file));
        }
      }
    }
    return this;
  }

  public byte[] bytes() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
        ZipEntry item = new ZipEntry(entry.getKey());
        item.setTimeLocal(TIME);
        zip.putNextEntry(item);
        zip.write(entry.getValue());
        zip.closeEntry();
      }
    }
    return bytes.toByteArray();
  }
}
