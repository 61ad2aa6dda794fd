package meadcell.batch.book.csv;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.Book;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Format;
import meadcell.batch.book.Limits;
import meadcell.batch.book.xlsx.XlsxFormat;
import meadcell.batch.book.zip.PackageParts;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.openxml4j.exceptions.InvalidFormatException;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Texts between separators. A number or a date becomes one where it can mean only one thing; where
 * semicolons separate, a comma may be the decimal mark, as in German spreadsheets.
 */
public final class CsvFormat implements Format {
  private static final String SHEET = "Log";
  private static final Pattern POINT = Pattern.compile("[+-]?(\\d+(\\.\\d+)?|\\.\\d+)");
  private static final Pattern COMMA = Pattern.compile("[+-]?\\d+,\\d+");
  private static final Pattern ISO_TIME =
      Pattern.compile("(\\d{4}-\\d{2}-\\d{2})[ T](\\d{2}):(\\d{2})(?::00)?");
  private static final Pattern ISO_DATE = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");
  private static final Pattern GERMAN_DATE = Pattern.compile("(\\d{1,2})\\.(\\d{1,2})\\.(\\d{4})");

  @Override
  public List<String> endings() {
    return List.of("csv");
  }

  @Override
  public boolean fits(byte[] bytes) {
    for (byte b : bytes) {
      if (b == 0) {
        return false;
      }
    }
    return true;
  }

  @Override
  public boolean isOnlyRead() {
    return true;
  }

  @Override
  public Book read(byte[] bytes, Limits limits) throws IOException {
    String text = text(bytes);
    char separator = separator(text);
    try (XSSFWorkbook book = new XSSFWorkbook();
        CSVParser parser =
            CSVParser.parse(
                text,
                CSVFormat.DEFAULT
                    .builder()
                    .setDelimiter(separator)
                    .setIgnoreEmptyLines(false)
                    .get())) {
      book.getProperties().getCoreProperties().setCreated("1970-01-01T00:00:00Z");
      CellStyle date = book.createCellStyle();
      date.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
      CellStyle time = book.createCellStyle();
      time.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd hh:mm"));
      Sheet sheet = book.createSheet(SHEET);
      for (CSVRecord line : parser) {
        Row row = sheet.createRow(sheet.getPhysicalNumberOfRows());
        for (int column = 0; column < line.size(); column++) {
          if (!line.get(column).isBlank()) {
            String typed = line.get(column).strip();
            put(row.createCell(column), typed, separator, time(typed).isPresent() ? time : date);
          }
        }
      }
      ByteArrayOutputStream written = new ByteArrayOutputStream();
      book.write(written);
      ByteArrayOutputStream timeless = new ByteArrayOutputStream();
      new PackageParts(written.toByteArray(), Limits.NONE).writeTimeless(timeless);
      return new XlsxFormat().read(timeless.toByteArray(), limits);
    } catch (InvalidFormatException e) {
      throw new IllegalStateException(e); // the day that is written above
    } catch (IllegalArgumentException | UncheckedIOException e) {
      throw FileRefused.damaged("its quotes do not close where they should", e);
    }
  }

  private static void put(Cell cell, String text, char separator, CellStyle style) {
    Optional<LocalDate> day = date(text);
    Optional<LocalDateTime> time = time(text);
    if (time.isPresent()) {
      cell.setCellValue(time.get());
      cell.setCellStyle(style);
    } else if (day.isPresent()) {
      cell.setCellValue(day.get());
      cell.setCellStyle(style);
    } else if (POINT.matcher(text).matches() && !isCode(text)) {
      cell.setCellValue(Double.parseDouble(text));
    } else if (separator == ';' && COMMA.matcher(text).matches()) {
      cell.setCellValue(Double.parseDouble(text.replace(',', '.')));
    } else {
      cell.setCellValue(text);
    }
  }

  /** A number with zeros in front is a name. */
  private static boolean isCode(String text) {
    return text.matches("[+-]?0\\d.*");
  }

  /** A day and a time of it to the minute, as loggers write it. */
  private static Optional<LocalDateTime> time(String text) {
    Matcher time = ISO_TIME.matcher(text);
    if (!time.matches()) {
      return Optional.empty();
    }
    try {
      LocalTime ofDay =
          LocalTime.of(Integer.parseInt(time.group(2)), Integer.parseInt(time.group(3)));
      return date(time.group(1)).map(day -> day.atTime(ofDay));
    } catch (DateTimeException notATime) {
      return Optional.empty();
    }
  }

  private static Optional<LocalDate> date(String text) {
    Matcher iso = ISO_DATE.matcher(text);
    if (iso.matches()) {
      return date(iso.group(1), iso.group(2), iso.group(3));
    }
    Matcher german = GERMAN_DATE.matcher(text);
    return german.matches()
        ? date(german.group(3), german.group(2), german.group(1))
        : Optional.empty();
  }

  private static Optional<LocalDate> date(String year, String month, String day) {
    try {
      return Optional.of(
          LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day)));
    } catch (DateTimeException notADay) {
      return Optional.empty();
    }
  }

  /** UTF-8, with or without its mark, or what Windows wrote before. */
  private static String text(byte[] bytes) {
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException notUtf8) {
      text = new String(bytes, Charset.forName("windows-1252"));
    }
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  /** The one of the usual separators that the first lines have most of. */
  private static char separator(String text) {
    String head = text.lines().limit(20).reduce("", (all, line) -> all + line + "\n");
    char best = ',';
    long most = -1;
    for (char candidate : new char[] {';', '\t', ','}) {
      long count = head.chars().filter(c -> c == candidate).count();
      if (count > most) {
        best = candidate;
        most = count;
      }
    }
    return best;
  }
}
