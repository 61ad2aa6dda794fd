package meadcell.blend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import meadcell.catalogue.Nearest;
import meadcell.transfers.TransferLog;

/** What was added and changed one property, by day. */
final class Additions {
  static final String EVERYTHING = "everything";

  /**
   * An addition.
   *
   * @param lot index of what it went into
   * @param day a whole day: in which order things were done on it nobody tells
   */
  record Addition(int lot, double day, int row) {}

  private final List<Addition> byDay = new ArrayList<>();

  Additions(
      TransferLog log, List<AdditionRow> rows, List<AnalysisRow> analyses, Property property) {
    for (AdditionRow row : rows) {
      if (changes(row, analyses, property)) {
        OptionalInt lot = log.indexOf(row.vessel());
        if (lot.isPresent()) {
          byDay.add(new Addition(lot.getAsInt(), Math.floor(row.day()), row.row()));
        } else {
          Misspelt.refuse(log, row.vessel(), "additions", row.row());
        }
      }
    }
    byDay.sort(Comparator.comparingDouble(Addition::day));
  }

  private static boolean changes(AdditionRow row, List<AnalysisRow> analyses, Property property) {
    return row.property().equalsIgnoreCase(EVERYTHING)
        || property.isNamed(row.property())
        || isMisspelt(row.property(), analyses, property);
  }

  private static boolean isMisspelt(String name, List<AnalysisRow> analyses, Property property) {
    return Nearest.to(name, List.of(property.name())).isPresent()
        && analyses.stream().noneMatch(row -> row.property().equalsIgnoreCase(name));
  }

  List<Addition> byDay() {
    return byDay;
  }

  /** {@return the last addition to a liquid up to the end of a day; null where there is none} */
  Addition latest(int lot, double day) {
    Addition latest = null;
    for (Addition addition : byDay) {
      if (addition.lot() == lot && addition.day() <= day) {
        latest = addition;
      }
    }
    return latest;
  }
}
