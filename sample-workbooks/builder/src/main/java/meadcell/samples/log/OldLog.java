package meadcell.samples.log;

import meadcell.catalogue.Catalogue;
import meadcell.cellar.Cellar;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Builds {@code old-log.xlsx}: three seasons of an invented cellar, kept as such logs really are.
 */
public final class OldLog {
  private static final Catalogue CATALOGUE = Cellar.catalogue();

  private OldLog() {}

  /** The log. */
  public static XSSFWorkbook build() {
    LogWriter log = new LogWriter();
    readMe(log);
    OldBatches.write(log);
    OldBarrels.write(log);
    return log.workbook("Old log of Tarn Hollow, an invented cellar");
  }

  private static void readMe(LogWriter log) {
    log.sheet("Read me", 14, 90);
    log.title("Tarn Hollow, cellar log");
    log.blank();
    log.row("Tarn Hollow is invented: an upland cellar that never was, with invented batches.");
    log.row("The log is kept as such logs are: a block of facts, then readings as they came.");
    log.row("Fill it with the plan old-log-plan.xlsx.");
  }

  /** What a function of the catalogue gives. */
  static double number(String function, Object... arguments) {
    return (Double) CATALOGUE.get(function).call(arguments);
  }
}
