package meadcell.batch.book;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.apache.poi.poifs.crypt.Decryptor;
import org.apache.poi.poifs.filesystem.FileMagic;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** The bytes of a workbook with the password's protection taken off, and how to put it on again. */
public final class Encryption {
  /** One way of protecting a file. */
  interface Protection {
    /** What the file holds. */
    byte[] clear();

    /** Other content protected in the same way. */
    byte[] sealed(byte[] content) throws IOException, GeneralSecurityException;
  }

  private final byte[] bytes;
  private final byte[] clear;
  private final Protection protection; // null for none

  private Encryption(byte[] bytes, byte[] clear, Protection protection) {
    this.bytes = bytes;
    this.clear = clear;
    this.protection = protection;
  }

  /**
   * Takes the protection off, if there is any.
   *
   * @param password may be null
   * @throws FileRefused when the password does not fit
   */
  public static Encryption open(byte[] bytes, String password) throws FileRefused {
    if (bytes.length == 0 || FileMagic.valueOf(bytes) != FileMagic.OLE2) {
      return new Encryption(bytes, bytes, null);
    }
    // the programs' own password stands where only changes are restricted, and nobody is asked
    List<String> passwords =
        Stream.of(password, Decryptor.DEFAULT_PASSWORD).filter(Objects::nonNull).toList();
    try (POIFSFileSystem file = new POIFSFileSystem(new ByteArrayInputStream(bytes))) {
      Protection found = EncryptedPackage.in(file, passwords);
      found = found == null ? EncryptedRecords.in(file, bytes, passwords) : found;
      return new Encryption(bytes, found == null ? bytes : found.clear(), found);
    } catch (GeneralSecurityException | IOException | RuntimeException e) {
      throw FileRefused.of(e);
    }
  }

  /** What the workbook holds. */
  public byte[] clear() {
    return clear;
  }

  public boolean isEncrypted() {
    return protection != null;
  }

  /** Whether it holds some content and is protected, or not, like another file. */
  public boolean holds(byte[] content, Encryption like) {
    return isEncrypted() == like.isEncrypted() && Arrays.equals(clear, content);
  }

  /** New content under the same protection; the same bytes for the same content. */
  public byte[] sealed(byte[] content) throws IOException {
    if (content == clear) {
      return bytes;
    }
    try {
      return protection == null ? content : protection.sealed(content);
    } catch (GeneralSecurityException e) {
      throw new IOException("The file cannot be protected again: " + e.getMessage(), e);
    }
  }

  /** The password that fits. */
  static String fitting(Decryptor decryptor, List<String> passwords)
      throws FileRefused, GeneralSecurityException {
    for (String password : passwords) {
      if (decryptor.verifyPassword(password)) {
        return password;
      }
    }
    throw new FileRefused(
        passwords.size() == 1
            ? "The file is protected by a password; --password-file FILE opens it."
            : "The file is protected by another password than the one given.");
  }
}
