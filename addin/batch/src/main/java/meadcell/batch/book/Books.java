package meadcell.batch.book;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.DateTimeException;
import java.util.Locale;
import meadcell.batch.poi.CatalogueFunctions;
import org.apache.poi.EncryptedDocumentException;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.openxml4j.util.ZipSecureFile;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.poifs.filesystem.FileMagic;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** Opens workbooks of every kind, from bytes in memory. */
public final class Books {
  private static final double LEAST_RATIO = 0.01; // what POI takes
  private static final long MOST_PARTS = 1000;
  private static final String ENCRYPTED = "EncryptedPackage";

  private Books() {}

  /** The file name endings that are opened. */
  public static boolean isKnown(String fileName) {
    String name = fileName.toLowerCase(Locale.ROOT);
    return name.endsWith(".xlsx")
        || name.endsWith(".xlsm")
        || name.endsWith(".xls")
        || name.endsWith(".ods");
  }

  /**
   * Opens a workbook.
   *
   * @throws FileRefused when it is not one, with the reason for its owner
   */
  public static Book open(byte[] bytes, String fileName, CatalogueFunctions functions)
      throws FileRefused {
    if (bytes.length == 0) {
      throw new FileRefused("The file is empty.");
    }
    String name = fileName.toLowerCase(Locale.ROOT);
    FileMagic magic = FileMagic.valueOf(bytes);
    try {
      if (magic == FileMagic.OOXML && (name.endsWith(".xlsx") || name.endsWith(".xlsm"))) {
        return new XlsxBook(bytes);
      }
      if (magic == FileMagic.OOXML && name.endsWith(".ods")) {
        return new OdsBook(bytes); // both are zip packages
      }
      if (magic == FileMagic.OLE2) {
        DirectoryNode root = new POIFSFileSystem(new ByteArrayInputStream(bytes)).getRoot();
        if (root.hasEntryCaseInsensitive(ENCRYPTED)) {
          throw new EncryptedDocumentException(ENCRYPTED);
        }
        if (name.endsWith(".xls")) {
          return new XlsBook(new HSSFWorkbook(root, true), functions);
        }
      }
    } catch (EncryptedDocumentException e) {
      throw new FileRefused("The file is protected by a password; save it without one first.", e);
    } catch (IOException | RuntimeException e) {
      String why = firstSentence(e);
      boolean isLarge = why.equals(PackageParts.TOO_LARGE);
      throw new FileRefused(isLarge ? why : "The file is damaged: " + why, e);
    }
    throw new FileRefused(
        isKnown(fileName)
            ? "The file is not the kind of workbook that its name says."
            : "Only .xlsx, .xlsm, .xls and .ods files are read.");
  }

  /**
   * A damage that shows only when a part is read or copied: the readers of the file formats throw
   * it. Anything else is a fault of ours, and thrown again.
   */
  public static FileRefused damage(RuntimeException e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      String type = cause.getClass().getName();
      boolean reader = type.startsWith("org.apache.poi") || type.startsWith("org.apache.xmlbeans");
      boolean unreadable =
          cause instanceof NumberFormatException || cause instanceof DateTimeException;
      if (reader || unreadable) {
        return new FileRefused("The file is damaged: " + firstSentence(cause), e);
      }
    }
    throw e;
  }

  /** Whether files are read that unpack to far more than their size. */
  public static void trustLargeFiles(boolean trusted) {
    ZipSecureFile.setMinInflateRatio(trusted ? 0 : LEAST_RATIO);
    ZipSecureFile.setMaxFileCount(trusted ? Integer.MAX_VALUE : MOST_PARTS);
  }

  private static String firstSentence(Throwable e) {
    String message = e.getMessage();
    if (message != null && (message.contains("Zip bomb") || message.contains("malicious"))) {
      return PackageParts.TOO_LARGE;
    }
    return message == null ? e.getClass().getSimpleName() : message.lines().findFirst().orElse("");
  }
}
