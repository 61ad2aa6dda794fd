package meadcell.batch.book.zip;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.Deflater;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Limits;
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

  private final ZipFile zip;
  private final Limits limits;
  private final Map<String, ZipArchiveEntry> entries =
      new TreeMap<>(String.CASE_INSENSITIVE_ORDER); // as the format has it
  private final Map<String, byte[]> replaced = new HashMap<>();

  public PackageParts(byte[] bytes, Limits limits) throws IOException {
    this.zip = open(bytes);
    this.limits = limits;
    Collections.list(zip.getEntries()).forEach(entry -> entries.put(entry.getName(), entry));
    if (entries.size() > limits.mostParts()) {
      throw new FileRefused(TOO_LARGE);
    }
  }

  public static ZipFile open(byte[] bytes) throws IOException {
    return ZipFile.builder().setSeekableByteChannel(new SeekableInMemoryByteChannel(bytes)).get();
  }

  public boolean has(String part) {
    return entries.containsKey(part);
  }

  public byte[] read(String part) throws IOException {
    ZipArchiveEntry entry = entries.get(part);
    if (entry == null) {
      throw FileRefused.damaged("it has no part " + part, null);
    }
    return read(entry);
  }

  private byte[] read(ZipArchiveEntry entry) throws IOException {
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

  public void replace(String part, byte[] bytes) {
    replaced.put(entries.get(part).getName(), bytes);
  }

  public void write(OutputStream out) throws IOException {
    try (ZipArchiveOutputStream target = new ZipArchiveOutputStream(out)) {
      for (ZipArchiveEntry entry : inOrder()) {
        byte[] bytes = replaced.get(entry.getName());
        if (bytes == null) {
          target.addRawArchiveEntry(entry, zip.getRawInputStream(entry));
        } else {
          put(target, entry, stream -> stream.write(bytes));
        }
      }
    }
  }

  /** Writes the same parts unpacked, each within the limits. */
  public void writeUnpacked(OutputStream out) throws IOException {
    try (ZipArchiveOutputStream target = new ZipArchiveOutputStream(out)) {
      target.setLevel(Deflater.NO_COMPRESSION);
      for (ZipArchiveEntry entry : inOrder()) {
        byte[] bytes = replaced.get(entry.getName());
        byte[] content = bytes == null ? read(entry) : bytes;
        put(target, entry, stream -> stream.write(content));
      }
    }
  }

  private List<ZipArchiveEntry> inOrder() {
    return Collections.list(zip.getEntriesInPhysicalOrder());
  }

  /** Writes new content under an entry's name and time. */
  public static void put(ZipArchiveOutputStream target, ZipArchiveEntry like, Content content)
      throws IOException {
    ZipArchiveEntry changed = new ZipArchiveEntry(like.getName());
    changed.setTime(like.getTime());
    target.putArchiveEntry(changed);
    content.write(target);
    target.closeArchiveEntry();
  }
}
