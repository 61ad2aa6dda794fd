package meadcell.batch.book;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.security.GeneralSecurityException;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.apache.poi.hssf.record.FilePassRecord;
import org.apache.poi.hssf.record.RecordInputStream;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.Decryptor;
import org.apache.poi.poifs.crypt.EncryptionHeader;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.poifs.filesystem.FileMagic;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** The bytes of a workbook with the password's protection taken off, and how to put it on again. */
public final class Encryption {
  private static final String WORKBOOK = "Workbook";
  private static final String PACKAGE = "EncryptedPackage";
  private static final int RECORDS_BEFORE_PASS = 3;

  /** Protects bytes in the way that was found. */
  private interface Seal {
    byte[] apply(byte[] clear) throws IOException, GeneralSecurityException;
  }

  private final byte[] bytes;
  private final byte[] clear;
  private final Seal seal;

  private Encryption(byte[] bytes, byte[] clear, Seal seal) {
    this.bytes = bytes;
    this.clear = clear;
    this.seal = seal;
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
      DirectoryNode root = file.getRoot();
      if (root.hasEntryCaseInsensitive(PACKAGE)) {
        return ofPackage(bytes, file, passwords);
      }
      FilePassRecord pass = pass(root);
      return pass == null ? new Encryption(bytes, bytes, null) : ofXls(bytes, pass, passwords);
    } catch (GeneralSecurityException | IOException | RuntimeException e) {
      throw FileRefused.of(e);
    }
  }

  /** What the workbook holds. */
  public byte[] clear() {
    return clear;
  }

  public boolean isEncrypted() {
    return seal != null;
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
      return seal == null ? content : seal.apply(content);
    } catch (GeneralSecurityException e) {
      throw new IOException("The file cannot be protected again: " + e.getMessage(), e);
    }
  }

  private static String fitting(Decryptor decryptor, List<String> passwords)
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

  // ---- today's format: a whole package, encrypted -----------------------------------------

  private static Encryption ofPackage(byte[] bytes, POIFSFileSystem file, List<String> passwords)
      throws IOException, GeneralSecurityException, FileRefused {
    EncryptionInfo info = new EncryptionInfo(file);
    Decryptor decryptor = info.getDecryptor();
    String password = fitting(decryptor, passwords);
    byte[] clear = decryptor.getDataStream(file).readAllBytes();
    return new Encryption(bytes, clear, content -> encryptedPackage(content, info, password));
  }

  private static byte[] encryptedPackage(byte[] content, EncryptionInfo like, String password)
      throws IOException, GeneralSecurityException {
    EncryptionHeader header = like.getHeader();
    Encryptor encryptor =
        new EncryptionInfo(
                like.getEncryptionMode(),
                header.getCipherAlgorithm(),
                header.getHashAlgorithm(),
                header.getKeySize(),
                header.getBlockSize(),
                header.getChainingMode())
            .getEncryptor();
    encryptor.confirmPassword(password);
    try (POIFSFileSystem file = new POIFSFileSystem()) {
      try (OutputStream out = encryptor.getDataStream(file)) {
        out.write(content);
      }
      ByteArrayOutputStream bytes = new ByteArrayOutputStream(content.length + 8192);
      file.writeFilesystem(bytes);
      return bytes.toByteArray();
    }
  }

  // ---- the old format: encrypted record by record ------------------------------------------

  /** The record that begins the encryption, among the first; null where there is none. */
  private static FilePassRecord pass(DirectoryNode root) throws IOException {
    if (!root.hasEntryCaseInsensitive(WORKBOOK)) {
      return null; // of another kind, which its reader says
    }
    RecordInputStream records =
        new RecordInputStream(
            root.createDocumentInputStream(HSSFWorkbook.getWorkbookDirEntryName(root)));
    for (int i = 0; i < RECORDS_BEFORE_PASS && records.hasNextRecord(); i++) {
      records.nextRecord();
      if (records.getSid() == FilePassRecord.sid) {
        return new FilePassRecord(records);
      }
      records.readRemainder();
    }
    return null;
  }

  private static Encryption ofXls(byte[] bytes, FilePassRecord pass, List<String> passwords)
      throws IOException, GeneralSecurityException, FileRefused {
    EncryptionInfo info = pass.getEncryptionInfo();
    String password = fitting(info.getDecryptor(), passwords);
    EncryptionMode mode = info.getEncryptionMode();
    return new Encryption(
        bytes,
        rewritten(bytes, password, null, null),
        content -> rewritten(content, null, password, mode));
  }

  /** POI takes the passwords of this format from a variable of the thread. */
  private static byte[] rewritten(byte[] bytes, String before, String after, EncryptionMode mode)
      throws IOException {
    try {
      Biff8EncryptionKey.setCurrentUserPassword(before);
      try (HSSFWorkbook workbook = new HSSFWorkbook(new ByteArrayInputStream(bytes))) {
        workbook.setEncryptionMode(mode);
        Biff8EncryptionKey.setCurrentUserPassword(after);
        ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length + 8192);
        workbook.write(out);
        return out.toByteArray();
      }
    } finally {
      Biff8EncryptionKey.setCurrentUserPassword(null);
    }
  }
}
