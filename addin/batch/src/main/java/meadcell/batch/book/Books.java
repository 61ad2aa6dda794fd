package meadcell.batch.book;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.stream.Collectors;

/** Opens workbooks of every format, from bytes in memory. */
public final class Books {
  private static final List<Format> FORMATS =
      ServiceLoader.load(Format.class, Books.class.getClassLoader()).stream()
          .map(ServiceLoader.Provider::get)
          .toList();

  private Books() {}

  /** Opens a workbook that unpacks as far as workbooks usually do. */
  public static Book open(byte[] bytes, String fileName) throws FileRefused {
    return open(bytes, fileName, Limits.USUAL);
  }

  /**
   * Opens a workbook. Whatever it cannot read, then or later, is thrown as {@link FileRefused},
   * later in an {@link java.io.UncheckedIOException}.
   *
   * @throws FileRefused when it is not one, with the reason for its owner
   */
  public static Book open(byte[] bytes, String fileName, Limits limits) throws FileRefused {
    if (bytes.length == 0) {
      throw new FileRefused("The file is empty.");
    }
    Format format =
        format(fileName)
            .orElseThrow(() -> new FileRefused("Only " + endings() + " files are read."));
    if (!format.fits(bytes)) {
      throw new FileRefused("The file is not the kind of workbook that its name says.");
    }
    try {
      return new GuardedBook(format.read(bytes, limits));
    } catch (IOException | RuntimeException e) {
      throw FileRefused.of(e);
    }
  }

  /** Whether a file is only read, and its workbook written as {@code .xlsx}. */
  public static boolean isOnlyRead(String fileName) {
    return format(fileName).filter(Format::isOnlyRead).isPresent();
  }

  /** The name of the file that the workbook in a file is written as. */
  public static String written(String fileName) {
    return isOnlyRead(fileName)
        ? fileName.substring(0, fileName.lastIndexOf('.')) + ".xlsx"
        : fileName;
  }

  private static Optional<Format> format(String fileName) {
    String ending = ending(fileName);
    return FORMATS.stream().filter(known -> known.endings().contains(ending)).findFirst();
  }

  private static String ending(String fileName) {
    return fileName.substring(fileName.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  /** {@code .xlsx, .xls and .ods}. */
  private static String endings() {
    String all =
        FORMATS.stream()
            .flatMap(format -> format.endings().stream())
            .map(ending -> "." + ending)
            .collect(Collectors.joining(", "));
    return all.replaceFirst(", ([^,]*)$", " and $1");
  }
}
