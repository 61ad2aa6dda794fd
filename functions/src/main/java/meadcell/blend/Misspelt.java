package meadcell.blend;

import static java.util.Locale.ROOT;

import java.util.List;
import java.util.regex.Pattern;
import meadcell.catalogue.Nearest;
import meadcell.catalogue.Refusal;
import meadcell.transfers.TransferLog;

/** Lots that a table beside the log of transfers names. */
final class Misspelt {
  private static final Pattern MARK = Pattern.compile("\\d|(?U)\\b\\p{L}\\b");

  private Misspelt() {}

  /**
   * A table may name other lots too; one that differs from a known one in a number or letter by
   * itself, as Tank A and Tank B do, is another.
   */
  static void refuse(TransferLog log, String lot, String table, int row) {
    List<String> alike =
        log.names().stream().filter(name -> marks(name).equals(marks(lot))).toList();
    if (Nearest.to(lot, alike).isPresent()) {
      throw Refusal.unknownName(BlendReason.NOT_IN_TRANSFERS, lot, alike)
          .with("row", row)
          .with("table", table);
    }
  }

  private static List<String> marks(String name) {
    return MARK.matcher(name).results().map(found -> found.group().toLowerCase(ROOT)).toList();
  }
}
