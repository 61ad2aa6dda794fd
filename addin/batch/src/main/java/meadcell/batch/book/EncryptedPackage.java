package meadcell.batch.book;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.security.GeneralSecurityException;
import java.util.List;
import org.apache.poi.poifs.crypt.Decryptor;
import org.apache.poi.poifs.crypt.EncryptionHeader;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** A workbook of today, encrypted as a whole. */
record EncryptedPackage(byte[] clear, EncryptionInfo info, String password)
    implements Encryption.Protection {
  private static final String ENTRY = "EncryptedPackage";

  /** The package in a file, or null where there is none. */
  static EncryptedPackage in(POIFSFileSystem file, List<String> passwords)
      throws IOException, GeneralSecurityException {
    if (!file.getRoot().hasEntryCaseInsensitive(ENTRY)) {
      return null;
    }
    EncryptionInfo info = new EncryptionInfo(file);
    Decryptor decryptor = info.getDecryptor();
    String password = Encryption.fitting(decryptor, passwords);
    return new EncryptedPackage(decryptor.getDataStream(file).readAllBytes(), info, password);
  }

  @Override
  public byte[] sealed(byte[] content) throws IOException, GeneralSecurityException {
    EncryptionHeader header = info.getHeader();
    Encryptor encryptor =
        new EncryptionInfo(
                info.getEncryptionMode(),
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
}
