package meadcell.batch.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import meadcell.batch.book.Book;
import meadcell.batch.book.Books;
import meadcell.batch.book.Encryption;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Limits;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How workbooks are read that are protected or very large. */
final class InputOptions {
  @Option(
      names = "--password-file",
      paramLabel = "FILE",
      converter = FirstLine.class,
      description =
          "Also take .xlsx, .xlsm and .xls files that are protected by a password. Results, if any"
              + " are written, are protected by it again. The first line of FILE is the password.")
  private String password; // never itself on the command line, where others see it

  @Option(
      names = "--trust-large-files",
      description =
          "Also read files that unpack to more than a hundred times their size or into more than"
              + " 1000 parts, as a file made to do harm would.")
  private boolean trustLarge;

  /** Reads a workbook's file. */
  Encryption read(Path file) throws FileRefused {
    byte[] bytes;
    try {
      bytes = Files.readAllBytes(file);
    } catch (IOException e) {
      throw new FileRefused(
          Files.isDirectory(file)
              ? file + " is a folder; name the workbooks in it."
              : FileTrouble.sentence(e),
          e);
    }
    return Encryption.open(bytes, password);
  }

  /** Opens what such a file holds. */
  Book open(Encryption source, Path file) throws FileRefused {
    return Books.open(source.clear(), file.getFileName().toString(), limits());
  }

  /** How far files may unpack. */
  Limits limits() {
    return trustLarge ? Limits.NONE : Limits.USUAL;
  }

  /** The first line of the named file. */
  static final class FirstLine implements ITypeConverter<String> {
    @Override
    public String convert(String file) {
      if (Files.isDirectory(Path.of(file))) {
        throw new TypeConversionException(file + " is a folder where a file is due; name a file.");
      }
      try {
        String password = Files.readString(Path.of(file)).lines().findFirst().orElse("");
        if (password.isEmpty()) {
          throw new TypeConversionException("the first line of " + file + " is empty");
        }
        return password;
      } catch (IOException e) {
        throw new TypeConversionException(
            "the password file cannot be read. " + FileTrouble.sentence(e));
      }
    }
  }
}
