package meadcell.batch.book.zip;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Limits;
import meadcell.batch.book.Sax;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/** A zip package of which some parts are replaced and all others copied as they are stored. */
public final class PackageParts {
  /** Something that writes a part. */
  public interface Content {
    void write(OutputStream out) throws IOException;
  }

  private static final String TOO_LARGE =
      "The file unpacks to far more than its size, as one made to do harm would; if you know where"
          + " it comes from, --trust-large-files reads it.";

  private static final int LARGEST_PART = 1 << 29;

  /** Smaller parts may be packed as tightly as they like. */
  private static final int HARMLESS_SIZE = 1 << 20;

  /** Half the time of the usual level, for an eighth more bytes. */
  private static final int LEVEL = 3;

  /** 1980, the first moment a zip entry can bear: new parts have no time of their own. */
  private static final long NO_TIME = 315532800000L;

  private final ZipFile zip;
  private final Limits limits;
  private final Map<String, ZipArchiveEntry> entries =
      new TreeMap<>(String.CASE_INSENSITIVE_ORDER); // as the format has it

  public PackageParts(byte[] bytes, Limits limits) throws IOException {
    this.limits = limits;
    try {
      zip = ZipFile.builder().setSeekableByteChannel(new SeekableInMemoryByteChannel(bytes)).get();
    } catch (IOException e) {
      throw FileRefused.damaged("it is cut off, or was not stored as a whole", e);
    }
    for (ZipArchiveEntry entry : Collections.list(zip.getEntries())) {
      if (entries.put(entry.getName(), entry) != null && Sax.isXml(entry.getName())) {
        throw FileRefused.damaged("it holds its part " + entry.getName() + " twice", null);
      }
    }
    if (entries.size() > limits.mostParts()) {
      throw new FileRefused(TOO_LARGE);
    }
  }

  public Set<String> names() {
    return Collections.unmodifiableSet(entries.keySet());
  }

  public boolean has(String part) {
    return entries.containsKey(part);
  }

  public byte[] read(String part) throws IOException {
    ZipArchiveEntry entry = entries.get(part);
    if (entry == null) {
      throw FileRefused.damaged("it has no part " + part, null);
    }
    double ratio = entry.getCompressedSize() / (double) entry.getSize();
    if (entry.getSize() > HARMLESS_SIZE && ratio < limits.leastRatio()) {
      throw new FileRefused(TOO_LARGE);
    }
    if (entry.getSize() >= LARGEST_PART) {
      throw new FileRefused("The part " + entry.getName() + " is larger than 512 MB.");
    }
    try (InputStream in = zip.getInputStream(entry)) {
      byte[] bytes = in.readNBytes((int) entry.getSize());
      if (bytes.length < entry.getSize() || in.read() >= 0) {
        throw FileRefused.damaged("the size of its part " + entry.getName() + " is wrong", null);
      }
      return bytes;
    }
  }

  public String text(String part) throws IOException {
    return has(part) ? new String(read(part), StandardCharsets.UTF_8) : "";
  }

  /**
   * Writes the package.
   *
   * @param changed new content of parts, or null for one that goes; parts that are not there yet
   *     come last
   */
  public void write(Map<String, Content> changed, OutputStream out) throws IOException {
    Map<String, Content> pending = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
    pending.putAll(changed);
    try (ZipArchiveOutputStream target = new ZipArchiveOutputStream(out)) {
      target.setLevel(LEVEL);
      for (ZipArchiveEntry entry : Collections.list(zip.getEntriesInPhysicalOrder())) {
        if (!pending.containsKey(entry.getName())) {
          target.addRawArchiveEntry(entry, zip.getRawInputStream(entry));
          continue;
        }
        Content content = pending.remove(entry.getName());
        if (content != null) {
          put(target, entry.getName(), entry.getTime(), content);
        }
      }
      for (Map.Entry<String, Content> part : pending.entrySet()) {
        if (part.getValue() != null) {
          put(target, part.getKey(), NO_TIME, part.getValue());
        }
      }
    }
  }

  /** Writes the package as it is, but with no time of its own: equal content gives equal bytes. */
  public void writeTimeless(OutputStream out) throws IOException {
    try (ZipArchiveOutputStream target = new ZipArchiveOutputStream(out)) {
      for (ZipArchiveEntry entry : Collections.list(zip.getEntriesInPhysicalOrder())) {
        entry.setTime(NO_TIME);
        target.addRawArchiveEntry(entry, zip.getRawInputStream(entry));
      }
    }
  }

  private static void put(ZipArchiveOutputStream target, String name, long time, Content content)
      throws IOException {
    ZipArchiveEntry entry = new ZipArchiveEntry(name);
    entry.setTime(time);
    target.putArchiveEntry(entry);
    content.write(target);
    target.closeArchiveEntry();
  }
}
