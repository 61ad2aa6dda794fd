package meadcell.batch.book;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.security.GeneralSecurityException;
import java.util.Arrays;
import java.util.List;
import org.apache.poi.hssf.record.FilePassRecord;
import org.apache.poi.hssf.record.RecordInputStream;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** An old binary workbook, encrypted record by record. */
record EncryptedRecords(byte[] clear, EncryptionMode mode, String password)
    implements Encryption.Protection {
  private static final String WORKBOOK = "Workbook";
  private static final int RECORDS_BEFORE_PASS = 3;

  /** The workbook in a file, or null where there is none that is encrypted. */
  static EncryptedRecords in(POIFSFileSystem file, byte[] bytes, List<String> passwords)
      throws IOException, GeneralSecurityException {
    FilePassRecord pass = pass(file.getRoot());
    if (pass == null) {
      return null;
    }
    EncryptionInfo info = pass.getEncryptionInfo();
    String password = Encryption.fitting(info.getDecryptor(), passwords);
    byte[] records = ClearRecords.of(stream(file.getRoot()), info);
    byte[] clear = withRecords(rewritten(bytes, password, null, null), records);
    return new EncryptedRecords(clear, info.getEncryptionMode(), password);
  }

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

  private static byte[] stream(DirectoryNode root) throws IOException {
    String name = HSSFWorkbook.getWorkbookDirEntryName(root);
    try (InputStream in = root.createDocumentInputStream(name)) {
      return in.readAllBytes();
    }
  }

  private static boolean hasRecords(POIFSFileSystem file, byte[] records) throws IOException {
    byte[] stream = stream(file.getRoot()); // filled up to the size of a block
    return stream.length >= records.length
        && Arrays.equals(stream, 0, records.length, records, 0, records.length);
  }

  /** The file, with the records as they were where POI has written others. */
  private static byte[] withRecords(byte[] bytes, byte[] records) throws IOException {
    try (POIFSFileSystem file = new POIFSFileSystem(new ByteArrayInputStream(bytes))) {
      if (hasRecords(file, records)) {
        return bytes;
      }
      file.createOrUpdateDocument(new ByteArrayInputStream(records), WORKBOOK);
      ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length);
      file.writeFilesystem(out);
      return out.toByteArray();
    }
  }

  @Override
  public byte[] sealed(byte[] content) throws IOException, GeneralSecurityException {
    byte[] sealed = rewritten(content, null, password, mode);
    try (POIFSFileSystem file = new POIFSFileSystem(new ByteArrayInputStream(sealed));
        POIFSFileSystem wanted = new POIFSFileSystem(new ByteArrayInputStream(content))) {
      EncryptionInfo info = pass(file.getRoot()).getEncryptionInfo();
      Encryption.fitting(info.getDecryptor(), List.of(password));
      if (!hasRecords(wanted, ClearRecords.of(stream(file.getRoot()), info))) {
        throw new FileRefused(
            "This .xls cannot be put under its password again without harm; save it as .xlsx, or"
                + " without the password, and use that.");
      }
    }
    return sealed;
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
