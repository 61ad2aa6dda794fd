package meadcell.batch.report;

import java.lang.module.ModuleDescriptor.Version;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import meadcell.batch.book.Book;

/**
 * Where a workbook's numbers come from, in document properties that every office shows: the version
 * that filled it last, each plan with its checksum and the version that filled by it, and a date if
 * the caller gave one. Nothing is read from a clock, so that equal input stays equal bytes.
 *
 * @param version this tool's version
 * @param plan the plan's file name
 * @param checksum the SHA-256 of the plan
 * @param date as the caller gave it; null for none
 */
public record Origin(String version, String plan, String checksum, String date) {
  /** Where {@code fill} remembers its own cells. */
  public static final String CELLS = "Meadcell cells";

  private static final String VERSION = "Meadcell version";
  private static final String PLANS = "Meadcell plans";
  private static final String DATE = "Meadcell date";
  private static final Pattern PLAN =
      Pattern.compile("(?<name>[^;]+) \\(SHA-256 (?<sum>[0-9a-f]{64}), version (?<by>[0-9.]+)\\)");

  /** Whether an earlier run filled cells of the workbook. */
  public static boolean isFilled(Book book) {
    return book.property(CELLS).filter(text -> !text.isBlank()).isPresent();
  }

  /**
   * {@return the oldest version that filled cells of the workbook and says so}
   *
   * @param book a filled workbook; none if it was filled before versions were written
   */
  public static Optional<String> oldestVersion(Book book) {
    return Optional.of(book.property(PLANS).orElse(""))
        .map(PLAN::matcher)
        .flatMap(
            plans ->
                plans
                    .results()
                    .map(found -> found.group(3))
                    .map(Version::parse)
                    .sorted()
                    .findFirst())
        .map(Version::toString);
  }

  /**
   * Writes the properties of a workbook that this tool filled.
   *
   * @param isChanged whether this run changed cells
   * @return whether a property changed
   */
  public boolean store(Book book, boolean isChanged) {
    if (!isFilled(book)) {
      return false;
    }
    String plans = plans(book.property(PLANS).orElse(""));
    if (!isChanged
        && version.equals(book.property(VERSION).orElse(""))
        && plans.equals(book.property(PLANS).orElse(""))) {
      return false;
    }
    book.property(VERSION, version);
    book.property(PLANS, plans);
    if (date != null || book.property(DATE).isPresent()) {
      book.property(DATE, date == null ? "none given" : date);
    }
    return true;
  }

  private String plans(String before) {
    Map<String, String> all = new TreeMap<>();
    Matcher found = PLAN.matcher(before);
    while (found.find()) {
      all.put(found.group("name").strip(), found.group().strip());
    }
    String name = plan.replace(';', ',');
    all.put(name, name + " (SHA-256 " + checksum + ", version " + version + ")");
    return all.values().stream().collect(Collectors.joining("; "));
  }
}
