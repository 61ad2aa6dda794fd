package meadcell.batch.book;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.DateTimeException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import meadcell.batch.book.ods.OdsBook;
import meadcell.batch.book.xls.XlsBook;
import meadcell.batch.book.xlsx.XlsxBook;
import meadcell.batch.book.zip.PackageParts;
import meadcell.batch.calculation.PoiFunctions;
import org.apache.poi.EncryptedDocumentException;
import org.apache.poi.openxml4j.util.ZipSecureFile;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.poifs.filesystem.FileMagic;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** Opens workbooks of every kind, from bytes in memory. */
public final class Books {
  private static final double LEAST_RATIO = 0.01; // what POI takes
  private static final long MOST_PARTS = 1000;
  private static final List<String> READERS =
      List.of("org.apache.poi", "org.apache.xmlbeans", "org.openxmlformats");
  private static final String EXCEPTION_NAMES = "^([\\w.$]+(Exception|Error): )+(error: )?";
  private static final Pattern UNCLEAR =
      Pattern.compile(
          "\\bnull\\b|Index -?\\d|Cannot invoke|For input string|\\bclass \\w|Exception");
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
  public static Book open(byte[] bytes, String fileName, PoiFunctions functions)
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
          return new XlsBook(root, functions);
        }
      }
    } catch (EncryptedDocumentException e) {
      throw new FileRefused("The file is protected by a password; save it without one first.", e);
    } catch (IOException | RuntimeException e) {
      throw damaged(e);
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
      boolean reader = isReader(cause.getClass().getName()) || isReader(thrower(cause));
      boolean unreadable =
          cause instanceof NumberFormatException
              || cause instanceof DateTimeException
              || cause instanceof IOException;
      if (reader || unreadable) {
        return damaged(cause);
      }
    }
    throw e;
  }

  static FileRefused damaged(Throwable e) {
    String why = firstSentence(e);
    boolean isLarge = why.equals(PackageParts.TOO_LARGE);
    return new FileRefused(isLarge ? why : "The file is damaged: " + why + ".", e);
  }

  private static boolean isReader(String type) {
    return READERS.stream().anyMatch(type::startsWith);
  }

  /** The class that threw it, itself or through one of Java's own. */
  private static String thrower(Throwable e) {
    return Arrays.stream(e.getStackTrace())
        .map(StackTraceElement::getClassName)
        .filter(name -> !name.startsWith("java.") && !name.startsWith("jdk."))
        .findFirst()
        .orElse("");
  }

  /** Whether files are read that unpack to far more than their size. */
  public static void trustLargeFiles(boolean trusted) {
    ZipSecureFile.setMinInflateRatio(trusted ? 0 : LEAST_RATIO);
    ZipSecureFile.setMaxFileCount(trusted ? Integer.MAX_VALUE : MOST_PARTS);
  }

  /** What the reader of a file format says, unless only programmers understand it. */
  private static String firstSentence(Throwable e) {
    String message = e.getMessage() == null ? "" : e.getMessage();
    if (message.contains("Zip bomb")
        || message.contains("malicious")
        || message.equals(PackageParts.TOO_LARGE)) {
      return PackageParts.TOO_LARGE;
    }
    String sentence = message.lines().findFirst().orElse("").replaceFirst(EXCEPTION_NAMES, "");
    boolean isOfJava = e instanceof RuntimeException && e.getClass().getName().startsWith("java.");
    boolean isClear = !isOfJava && !sentence.isBlank() && !UNCLEAR.matcher(sentence).find();
    return isClear ? sentence.replaceFirst("\\.$", "") : "a part of it cannot be understood";
  }
}
