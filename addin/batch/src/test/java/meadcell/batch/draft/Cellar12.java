package meadcell.batch.draft;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import meadcell.batch.TestBooks;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Twelve logs of a season at Tarn Hollow, an invented cellar, each kept in another layout. All
 * readings are invented.
 */
final class Cellar12 {
  /** A ferment's falling gravity, read every fourth day. */
  static final double[] GRAVITY = {
    1.102, 1.096, 1.081, 1.060, 1.041, 1.027, 1.017, 1.010, 1.005, 1.002, 1.000, 0.999
  };

  static final double[] CELSIUS = {18, 20, 22.5, 23, 22, 20.5, 19, 18, 17, 16.5, 16, 15.5};
  static final double ORIGINAL = 1.104;
  private static final int FIRST_DAY = 45566; // 2024-10-01

  private Cellar12() {}

  static Path write(int number, Path folder) throws IOException {
    return switch (number) {
      case 1 -> plain(folder);
      case 2 -> german(folder);
      case 3 -> american(folder);
      case 4 -> across(folder);
      case 5 -> inline(folder);
      case 6 -> withoutGap(folder);
      case 7 -> headerAgain(folder);
      case 8 -> rowForEachBatch(folder);
      case 9 -> barrelInInches(folder);
      case 10 -> scale(folder);
      case 11 -> oechsle(folder);
      case 12 -> sulfiteAsCsv(folder);
      default -> throw new IllegalArgumentException("log " + number);
    };
  }

  static double day(int reading) {
    return FIRST_DAY + 4.0 * reading;
  }

  static double fahrenheit(int reading) {
    return Math.round(CELSIUS[reading] * 1.8 + 32);
  }

  private static Sheet sheet(String name) {
    return new XSSFWorkbook().createSheet(name);
  }

  private static Path save(Sheet sheet, Path folder, String name) throws IOException {
    try (Workbook book = sheet.getWorkbook()) {
      return TestBooks.save(book, folder.resolve(name));
    }
  }

  private static Path plain(Path folder) throws IOException {
    Sheet sheet = sheet("Heather");
    rows(sheet, 0, row("Heather traditional"), row("OG", ORIGINAL), row("Expected FG", 0.998));
    rows(sheet, 4, row("Date", "SG", "Temp (°C)", "Remarks"));
    for (int i = 0; i < GRAVITY.length; i++) {
      rows(sheet, 5 + i, row(day(i), GRAVITY[i], CELSIUS[i], i == 2 ? "lively" : null));
    }
    return save(sheet, folder, "01-plain.xlsx");
  }

  /** Words and decimal commas of a German cellar. */
  private static Path german(Path folder) throws IOException {
    Sheet sheet = sheet("Sauerkirsche");
    rows(sheet, 0, row("Sauerkirschmet"), row("Stammdichte:", "1,104"), row());
    rows(sheet, 4, row("Datum", "Spindel", "Temperatur", "Bemerkung"));
    for (int i = 0; i < GRAVITY.length; i++) {
      String gravity = String.format(Locale.GERMANY, "%.4f", GRAVITY[i]);
      rows(sheet, 5 + i, row(day(i), gravity, CELSIUS[i]));
    }
    return save(sheet, folder, "02-german.xlsx");
  }

  /** °F in a row of units, in an old file format. */
  private static Path american(Path folder) throws IOException {
    try (HSSFWorkbook book = new HSSFWorkbook()) {
      Sheet sheet = book.createSheet("Bochet");
      rows(
          sheet,
          0,
          row("Buckwheat bochet"),
          row("O.G.", ORIGINAL),
          row("Hydrometer calibration", 60, "°F"));
      rows(sheet, 4, row("Day", "Hydrometer", "Sample temp"), row(null, null, "(deg F)"));
      for (int i = 0; i < GRAVITY.length; i++) {
        rows(sheet, 6 + i, row(4 * i, GRAVITY[i], fahrenheit(i)));
      }
      return TestBooks.save(book, folder.resolve("03-american.xls"));
    }
  }

  /** Dates stand across. */
  private static Path across(Path folder) throws IOException {
    Sheet sheet = sheet("Across");
    Object[][] lines = new Object[3][GRAVITY.length + 1];
    lines[0][0] = "Date";
    lines[1][0] = "SG";
    lines[2][0] = "Temp (°C)";
    for (int i = 0; i < GRAVITY.length; i++) {
      lines[0][i + 1] = day(i);
      lines[1][i + 1] = GRAVITY[i];
      lines[2][i + 1] = CELSIUS[i];
    }
    rows(sheet, 0, row("OG", ORIGINAL), row());
    rows(sheet, 3, lines);
    return save(sheet, folder, "04-across.xlsx");
  }

  /** The original gravity behind its label, the temperature behind each reading. */
  private static Path inline(Path folder) throws IOException {
    Sheet sheet = sheet("Notes");
    rows(sheet, 0, row("Heather, small tank"), row("OG: " + ORIGINAL), row());
    rows(sheet, 4, row("Date", "Gravity"));
    for (int i = 0; i < GRAVITY.length; i++) {
      String note = String.format(Locale.ROOT, "%.3f @ %.1fC", GRAVITY[i], CELSIUS[i]);
      rows(sheet, 5 + i, row(day(i), note));
    }
    return save(sheet, folder, "05-inline.xlsx");
  }

  /** A ferment, and directly below it the cask that it went into. */
  private static Path withoutGap(Path folder) throws IOException {
    Sheet sheet = sheet("Log");
    rows(
        sheet,
        0,
        row("OG", ORIGINAL, null, "Head (cm)", 50, "Bilge (cm)", 62, "Length (cm)", 80),
        row());
    rows(sheet, 3, row("Date", "SG", "Temp (°C)"));
    for (int i = 0; i < GRAVITY.length; i++) {
      rows(sheet, 4 + i, row(day(i), GRAVITY[i], CELSIUS[i]));
    }
    rows(sheet, 4 + GRAVITY.length, row("Date", "Drop (cm)"));
    for (int i = 0; i < 6; i++) {
      rows(sheet, 5 + GRAVITY.length + i, row(day(20 + i), 2.5 + 0.5 * i));
    }
    return save(sheet, folder, "06-without-gap.xlsx");
  }

  /** The header is written again on the next page. */
  private static Path headerAgain(Path folder) throws IOException {
    Sheet sheet = sheet("Pages");
    rows(sheet, 0, row("Original gravity", ORIGINAL), row());
    int at = 3;
    for (int i = 0; i < GRAVITY.length; i++) {
      if (i % 6 == 0) {
        rows(sheet, at++, row("Date", "Specific gravity", "Temp. °C"));
      }
      rows(sheet, at++, row(day(i), GRAVITY[i], CELSIUS[i]));
    }
    return save(sheet, folder, "07-header-again.xlsx");
  }

  static final double[][] BATCHES = { // OG, FG, litres, kg of honey, % water in it
    {1.104, 0.998, 620, 205, 18.0}, {1.096, 1.004, 400, 122, 17.4}, {1.110, 1.016, 300, 104, 17.0}
  };

  private static Path rowForEachBatch(Path folder) throws IOException {
    Sheet sheet = sheet("2024");
    rows(sheet, 0, row("Batch", "OG", "FG", "Volume (L)", "Honey (kg)", "Moisture (%)"));
    for (int i = 0; i < BATCHES.length; i++) {
      double[] b = BATCHES[i];
      rows(sheet, 1 + i, row("TH-" + (i + 1), b[0], b[1], b[2], b[3], b[4]));
    }
    return save(sheet, folder, "08-a-row-a-batch.xlsx");
  }

  static final double[] DROP_IN = {0.75, 1, 1.25, 1.5, 1.25, 1.75};
  static final double[] DIP_IN = {23.25, 23, 22.75, 22.5, 22.75, 22.25};

  /** Inches beside the sizes, and in a row of units. */
  private static Path barrelInInches(Path folder) throws IOException {
    Sheet sheet = sheet("Cask 3");
    rows(
        sheet,
        0,
        row("Head diameter", 20, "in"),
        row("Bilge diameter", 24, "in"),
        row("Inside length", 32, "in"));
    rows(sheet, 4, row("Date", "Wet depth", "Drop"), row(null, "[in]", "[in]"));
    for (int i = 0; i < DROP_IN.length; i++) {
      rows(sheet, 6 + i, row(day(30 + 7 * i), DIP_IN[i], DROP_IN[i]));
    }
    return save(sheet, folder, "09-inches.xlsx");
  }

  static final double[] GROSS_KG = {279.5, 278.6, 277.9, 279.4, 278.7, 278.0};

  private static Path scale(Path folder) throws IOException {
    Sheet sheet = sheet("Scale");
    rows(sheet, 0, row("Wet empty (kg)", 54.0), row("Density (kg/L)", 1.008), row());
    rows(sheet, 4, row("Date", "Gross (kg)"));
    for (int i = 0; i < GROSS_KG.length; i++) {
      rows(sheet, 5 + i, row(day(30 + 7 * i), GROSS_KG[i]));
    }
    return save(sheet, folder, "10-scale.xlsx");
  }

  /** All but the last, which lies below water. */
  static final int OECHSLE_READINGS = GRAVITY.length - 1;

  static double oechsle(int reading) {
    return Math.round(1000 * (GRAVITY[reading] - 1));
  }

  private static Path oechsle(Path folder) throws IOException {
    Sheet sheet = sheet("Mostgewicht");
    rows(sheet, 0, row("Stammdichte (°Oe)", 104), row("Ziel-FG", 0.998), row());
    rows(sheet, 4, row("Tag", "Mostgewicht", "Temp (°C)"));
    for (int i = 0; i < OECHSLE_READINGS; i++) {
      rows(sheet, 5 + i, row(4 * i, oechsle(i), CELSIUS[i]));
    }
    return save(sheet, folder, "11-oechsle.xlsx");
  }

  static final double[] FREE = {38, 34, 31, 28, 35, 32};
  static final double[] PH = {3.42, 3.42, 3.44, 3.45, 3.45, 3.46};

  private static Path sulfiteAsCsv(Path folder) throws IOException {
    StringBuilder text = new StringBuilder("Datum;freie SO2 (mg/L);pH-Wert;Bemerkung\n");
    for (int i = 0; i < FREE.length; i++) {
      text.append(
          String.format(Locale.GERMANY, "%02d.11.2024;%.0f;%.2f;%n", 1 + 4 * i, FREE[i], PH[i]));
    }
    return Files.write(
        folder.resolve("12-sulfit.csv"), text.toString().getBytes(StandardCharsets.UTF_8));
  }
}
