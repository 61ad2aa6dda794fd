package meadcell.catalogue;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;

/**
 * Day numbers as dates, as spreadsheets count: 1 is 1899-12-31 (OpenDocument 1.3 part 4, 3.4 with
 * the usual null date).
 */
final class Day {
  private static final LocalDateTime NULL_DATE = LocalDateTime.of(1899, 12, 30, 0, 0);

  /** From 1954 to 2173; other numbers count days from an own beginning, or are none. */
  private static final Range DATED = Range.between(20000, 100000);

  private Day() {}

  static boolean isDated(double number) {
    return DATED.contains(number);
  }

  /** {@return the date as ISO 8601 writes it, with hour and minute where it has them} */
  static String text(double number) {
    long minutes = Math.round(number * 24 * 60);
    LocalDateTime time = NULL_DATE.plus(minutes, ChronoUnit.MINUTES);
    String date = time.toLocalDate().toString();
    return minutes % (24 * 60) == 0 ? date : date + " " + time.toLocalTime();
  }
}
