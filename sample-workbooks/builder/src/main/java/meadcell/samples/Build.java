package meadcell.samples;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import meadcell.office.uno.RemoteOffice;
import meadcell.samples.cellar.CellarBook;
import meadcell.samples.log.OldLog;
import meadcell.samples.log.OldLogPlan;
import meadcell.samples.sheet.Book;
import meadcell.samples.week.FirstWeek;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Writes the logs, and the teaching workbooks in both formats from one description. */
public final class Build {
  /** The books by their files' names. */
  static final Map<String, Supplier<Book>> BOOKS =
      new TreeMap<>(
          Map.of(
              "cellar-book", CellarBook::build,
              "first-week", () -> FirstWeek.build(Locale.ENGLISH),
              "erste-woche", () -> FirstWeek.build(Locale.GERMAN)));

  /** The log and its plan, for the batch tool. */
  static final Map<String, Supplier<XSSFWorkbook>> LOGS =
      new TreeMap<>(Map.of("old-log", OldLog::build, "old-log-plan", OldLogPlan::build));

  private Build() {}

  /** Arguments: folder to write into, the extension. */
  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    for (Map.Entry<String, Supplier<XSSFWorkbook>> log : LOGS.entrySet()) {
      Files.write(folder.resolve(log.getKey() + ".xlsx"), xlsx(log.getValue().get()));
    }
    try (RemoteOffice office = new RemoteOffice()) {
      office.install(Path.of(args[1]));
      office.start();
      for (Map.Entry<String, Supplier<Book>> book : BOOKS.entrySet()) {
        XSSFWorkbook workbook = book.getValue().get().workbook();
        Computed.store(workbook, office);
        byte[] xlsx = xlsx(workbook);
        Files.write(folder.resolve(book.getKey() + ".xlsx"), xlsx);
        Files.write(
            folder.resolve(book.getKey() + ".ods"), OpenDocument.from(xlsx, workbook, office));
      }
    }
  }

  /** The same book always gives the same bytes. */
  static byte[] xlsx(XSSFWorkbook book) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    book.write(bytes);
    return Repacked.zip(bytes.toByteArray(), Fonts::ordered);
  }
}
