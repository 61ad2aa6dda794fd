package meadcell.samples.log;

import java.time.LocalDate;

/** The old log's sheet of barrels. */
final class OldBarrels {
  private OldBarrels() {}

  static void write(LogWriter log) {
    log.sheet("Barrels", 16, 12, 12, 34);
    log.title("Barrels");
    log.blank();
    dropsBarrel(log);
    dipsBarrel(log);
    weighedBarrel(log);
  }

  private static void sizes(
      LogWriter log, String cask, String before, double head, double bilge, double length) {
    log.label("Cask", cask);
    log.label("Held before", before);
    log.label("Head (cm)", head);
    log.label("Bilge (cm)", bilge);
    log.label("Length (cm)", length);
  }

  /** Topped by the distance from the bung hole's outside. */
  private static void dropsBarrel(LogWriter log) {
    double[] inside = {49, 59.5, 79};
    double stave = 2.7;
    sizes(log, "T1", "rye spirit", inside[0], inside[1], inside[2]);
    log.label("Stave (cm)", stave);
    log.blank();
    log.header("Date", "Drop (cm)", "Temp", "Remarks");
    double full = OldLog.number("BARREL.VOLUME", inside[0], inside[1], inside[2]);
    LocalDate filled = LocalDate.parse("2023-02-20");
    double missing = 0.4;
    for (int day = 0; day <= 420; day += 30) {
      double dip = OldLog.number("BARREL.DIP", inside[0], inside[1], inside[2], full - missing);
      double drop = Math.round(10 * (inside[1] - dip + stave)) / 10.0;
      Object typed = day == 150 ? drop + " cm" : day == 270 ? "could not see" : (Object) drop;
      log.row(filled.plusDays(day), typed, 11.0 + day % 4, day == 210 ? "topped" : null);
      missing = day == 210 ? 0.5 : missing + full * 0.055 * 30 / 365;
    }
    log.blank();
    log.blank();
  }

  /** Dipped with the stick in inches that came with the cask. */
  private static void dipsBarrel(LogWriter log) {
    double[] inside = {40.5, 49, 67};
    sizes(log, "T2", "chestnut-wood vermouth", inside[0], inside[1], inside[2]);
    log.blank();
    log.header("Date", "Dip (in)", "Temp", "Remarks");
    double full = OldLog.number("BARREL.VOLUME", inside[0], inside[1], inside[2]);
    LocalDate filled = LocalDate.parse("2023-03-06");
    double contents = full - 0.6;
    for (int day = 0; day <= 270; day += 45) {
      double dip = OldLog.number("BARREL.DIP", inside[0], inside[1], inside[2], contents);
      Object typed = Math.round(dip / 2.54 * 8) / 8.0;
      log.row(filled.plusDays(day), typed, 12.0, day == 135 ? "sample drawn at the nail" : null);
      contents -= full * 0.075 * 45 / 365;
    }
    log.blank();
    log.blank();
  }

  /** Stands on a pallet scale. */
  private static void weighedBarrel(LogWriter log) {
    double[] inside = {52, 64, 78};
    sizes(log, "T3", "nothing, new oak", inside[0], inside[1], inside[2]);
    log.label("Wet empty (kg)", 56.5);
    log.label("Density (kg/L)", 1.006);
    log.blank();
    log.header("Date", "Gross (kg)", "Temp", "Remarks");
    double contents = OldLog.number("BARREL.VOLUME", inside[0], inside[1], inside[2]) - 0.5;
    LocalDate filled = LocalDate.parse("2024-02-12");
    for (int day = 0; day <= 300; day += 60) {
      double gross = 56.5 + 1.006 * contents;
      log.row(filled.plusDays(day), Math.round(gross * 2) / 2.0, 11.5, null);
      contents -= 225 * 0.04 * 60 / 365;
    }
  }
}
