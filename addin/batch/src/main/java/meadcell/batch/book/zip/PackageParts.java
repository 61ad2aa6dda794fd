package meadcell.batch.book.zip;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import meadcell.batch.book.xlsx.TagScanner;
import meadcell.batch.book.xlsx.XlsxSheetXml;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import org.apache.poi.openxml4j.util.ZipSecureFile;

/** A zip package of which some parts are replaced and all others copied as they are stored. */
public final class PackageParts {
  /** Something that writes a part. */
  public interface Content {
    void write(OutputStream out) throws IOException;
  }

  public static final String TOO_LARGE =
      "The file unpacks to far more than its size, as one made to do harm would; if you know where"
          + " it comes from, --trust-large-files reads it.";

  private static final String CONTENT_TYPES = "[Content_Types].xml";
  private static final int LARGEST_PART = 1 << 29;

  /** Smaller parts may be packed as tightly as they like. */
  private static final int HARMLESS_SIZE = 1 << 20;

  private final ZipFile zip;
  private final Map<String, ZipArchiveEntry> entries =
      new TreeMap<>(String.CASE_INSENSITIVE_ORDER); // as the format has it
  private final Map<String, byte[]> replaced = new HashMap<>();

  public PackageParts(byte[] bytes) throws IOException {
    zip = open(bytes);
    Collections.list(zip.getEntries()).forEach(entry -> entries.put(entry.getName(), entry));
  }

  public static ZipFile open(byte[] bytes) throws IOException {
    return ZipFile.builder().setSeekableByteChannel(new SeekableInMemoryByteChannel(bytes)).get();
  }

  /** The parts whose content type ends so. */
  public List<String> ofType(String contentTypeEnd) throws IOException {
    List<String> found = new ArrayList<>();
    TagScanner tags = new TagScanner(XlsxSheetXml.inUtf8(read(CONTENT_TYPES)));
    while (tags.next()) {
      if (tags.is("Override") && tags.attribute("ContentType").endsWith(contentTypeEnd)) {
        found.add(tags.attribute("PartName").substring(1));
      }
    }
    return found;
  }

  public boolean has(String part) {
    return entries.containsKey(part);
  }

  public byte[] read(String part) throws IOException {
    ZipArchiveEntry entry = entries.get(part);
    if (entry == null) {
      throw new IOException("it has no part " + part);
    }
    double ratio = entry.getCompressedSize() / (double) entry.getSize();
    if (entry.getSize() > HARMLESS_SIZE && ratio < ZipSecureFile.getMinInflateRatio()) {
      throw new IOException(TOO_LARGE);
    }
    try (InputStream in = zip.getInputStream(entry)) {
      byte[] bytes = in.readNBytes(LARGEST_PART);
      if (bytes.length == LARGEST_PART) {
        throw new IOException("the part " + part + " is larger than 512 MB");
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
      for (ZipArchiveEntry entry : Collections.list(zip.getEntriesInPhysicalOrder())) {
        byte[] bytes = replaced.get(entry.getName());
        if (bytes == null) {
          target.addRawArchiveEntry(entry, zip.getRawInputStream(entry));
        } else {
          put(target, entry, stream -> stream.write(bytes));
        }
      }
    }
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
