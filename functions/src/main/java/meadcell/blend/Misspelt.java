package meadcell.blend;

import java.util.List;
import meadcell.catalogue.Nearest;
import meadcell.catalogue.Refusal;
import meadcell.transfers.TransferLog;

/** Lots that a table beside the log of transfers names. */
final class Misspelt {
  private Misspelt() {}

  /** A table may name other lots too; one that differs from a known one in a number is another. */
  static void refuse(TransferLog log, String lot, String table, int row) {
    List<String> alike =
        log.names().stream().filter(name -> digits(name).equals(digits(lot))).toList();
    if (Nearest.to(lot, alike).isPresent()) {
      throw Refusal.unknownName(BlendReason.NOT_IN_TRANSFERS, lot, alike)
          .with("row", row)
          .with("table", table);
    }
  }

  private static String digits(String name) {
    return name.replaceAll("\\D", "");
  }
}
