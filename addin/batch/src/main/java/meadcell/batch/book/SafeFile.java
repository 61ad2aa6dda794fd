package meadcell.batch.book;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.util.EnumSet;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import org.apache.commons.io.input.CloseShieldInputStream;
import org.xml.sax.SAXException;

/**
 * Puts a finished file in place, so that at every moment there is either the old file or the new
 * one: a temporary file beside the target, read back, then moved over it.
 */
public final class SafeFile {
  /** Something that writes a file's content. */
  public interface Content {
    void write(OutputStream out) throws IOException;
  }

  private static final Set<PosixFilePermission> WRITING =
      EnumSet.of(
          PosixFilePermission.OWNER_WRITE,
          PosixFilePermission.GROUP_WRITE,
          PosixFilePermission.OTHERS_WRITE);

  private SafeFile() {}

  /** Refuses a file that another program has open. */
  public static void requireUnlocked(Path file) throws FileRefused {
    String name = file.getFileName().toString();
    for (String lock : new String[] {"~$" + name, ".~lock." + name + "#"}) {
      if (Files.exists(file.resolveSibling(lock))) {
        throw new FileRefused(
            "The file is open in another program (" + lock + " lies beside it); close it first.");
      }
    }
  }

  /** The file that a symbolic link leads to, or the file itself. */
  public static Path real(Path file) throws IOException {
    return Files.isSymbolicLink(file) && Files.exists(file) ? file.toRealPath() : file;
  }

  /** Refuses to replace a file that its owner protected, or that has other names. */
  private static void requireReplaceable(Path file) throws IOException {
    PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
    boolean isProtected =
        view != null && view.readAttributes().permissions().stream().noneMatch(WRITING::contains);
    if (isProtected || !Files.isWritable(file)) {
      throw new FileRefused(
          "The file " + file + " is write-protected; take the protection off, or use --out DIR.");
    }
    if (view != null && (int) Files.getAttribute(file, "unix:nlink") > 1) {
      throw new FileRefused(
          "The file "
              + file
              + " has a second name (a hard link), which would keep what it holds now; use --out"
              + " DIR.");
    }
  }

  /**
   * Writes {@code target} in one step.
   *
   * @param like lends its permissions where the target is new
   * @param backup receives the file that is replaced, once the new one is whole; null for none
   */
  public static void write(Path target, Path like, Path backup, Content content)
      throws IOException, FileRefused {
    boolean exists = Files.exists(target);
    if (exists) {
      requireReplaceable(target);
    }
    Path folder = target.toAbsolutePath().getParent();
    Path temporary = Files.createTempFile(folder, ".meadcell-", ".tmp");
    try {
      try (FileOutputStream file = new FileOutputStream(temporary.toFile())) {
        BufferedOutputStream out = new BufferedOutputStream(file, 1 << 16);
        content.write(out);
        out.flush();
        file.getFD().sync();
      }
      readBack(temporary);
      if (exists) {
        copyOwner(target, temporary);
      }
      copyPermissions(exists ? target : like, temporary);
      if (backup != null) {
        Files.copy(target, backup, StandardCopyOption.COPY_ATTRIBUTES);
      }
      move(temporary, target);
    } finally {
      Files.deleteIfExists(temporary);
    }
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static void copyOwner(Path from, Path to) throws IOException {
    PosixFileAttributeView source = Files.getFileAttributeView(from, PosixFileAttributeView.class);
    PosixFileAttributeView target = Files.getFileAttributeView(to, PosixFileAttributeView.class);
    if (source == null || target == null) {
      return;
    }
    PosixFileAttributes wanted = source.readAttributes();
    PosixFileAttributes now = target.readAttributes();
    try {
      if (!now.group().equals(wanted.group())) {
        target.setGroup(wanted.group());
      }
      if (!now.owner().equals(wanted.owner())) {
        target.setOwner(wanted.owner());
      }
    } catch (IOException e) {
      throw new FileRefused(
          "The file " + from + " is not yours, and would become it; use --out DIR.", e);
    }
  }

  private static void copyPermissions(Path from, Path to) throws IOException {
    PosixFileAttributeView source = Files.getFileAttributeView(from, PosixFileAttributeView.class);
    PosixFileAttributeView target = Files.getFileAttributeView(to, PosixFileAttributeView.class);
    if (source != null && target != null && Files.exists(from)) {
      target.setPermissions(source.readAttributes().permissions());
    }
  }

  /** Reads one part. */
  private interface Reader {
    boolean read(InputStream xml) throws IOException, SAXException;
  }

  /**
   * What was written must be a whole archive of well-formed parts. What the quick parser is not
   * certain of, another decides.
   */
  private static void readBack(Path file) throws IOException, FileRefused {
    byte[] start;
    try (InputStream in = Files.newInputStream(file)) {
      start = in.readNBytes(2);
    }
    if (start.length < 2 || start[0] != 'P' || start[1] != 'K') {
      return; // a binary workbook has no parts
    }
    try {
      if (!areRead(file, QuickXml::isWellFormed)) {
        areRead(file, Sax::isWellFormed);
      }
    } catch (SAXException | ZipException e) {
      throw new FileRefused(
          "The result cannot be read back and was not stored: "
              + e.getMessage()
              + "; the workbook may be damaged where no cell shows it.",
          e);
    }
  }

  private static boolean areRead(Path file, Reader reader) throws IOException, SAXException {
    try (ZipInputStream zip =
        new ZipInputStream(new BufferedInputStream(Files.newInputStream(file), 1 << 16))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        if (Sax.isXml(entry.getName()) && !reader.read(CloseShieldInputStream.wrap(zip))) {
          return false;
        }
        zip.transferTo(OutputStream.nullOutputStream()); // at its end the checksum is compared
      }
    }
    return true;
  }
}
