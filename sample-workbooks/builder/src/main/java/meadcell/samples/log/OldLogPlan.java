package meadcell.samples.log;

import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Builds {@code old-log-plan.xlsx}, the plan for {@link OldLog}. */
public final class OldLogPlan {
  private OldLogPlan() {}

  /** The plan. */
  public static XSSFWorkbook build() {
    LogWriter plan = new LogWriter();
    plan.sheet("Fill", 12, 20, 62, 10, 60);
    plan.header("Sheet", "Result", "Formula", "Format", "Note");
    plan.row(
        "??-2?",
        "True SG",
        "GRAVITY.CORRECT([SG]; [Temp]; ; {OG})",
        "0.0000",
        "The hydrometer at 20 °C, with the alcohol that the must has by then.");
    plan.row("??-2?", "ABV", "ALCOHOL.ABV({OG}; [True SG])", "0.0", "% vol");
    plan.row(
        "??-2?",
        "Sugar left (g/L)",
        "ALCOHOL.SUGARLEFT({OG}; [True SG])",
        "0",
        "Fermentable sugar, not extract; the best guess.");
    plan.row(
        "HH-*",
        "OG by the honey",
        "HONEY.GRAVITY({Volume}; {Honey}; {Moisture %})",
        "0.000",
        "What the honey alone would have given, to compare with the reading.");
    plan.row(
        "Barrels",
        "Headspace (L)",
        "BARREL.HEADSPACE({Head}; {Bilge}; {Length}; [Drop]; {Stave})",
        "0.0",
        "Drops were measured from the outside of the bung hole.");
    plan.row(
        "Barrels",
        "Holds (L)",
        "BARREL.CONTENTS({Head}; {Bilge}; {Length}; [Dip])",
        "0.0",
        "The stick is in inches; the plan need not care.");
    plan.row(
        "Barrels",
        "Weighs (L)",
        "BARREL.BYWEIGHT([Gross]; {Wet empty}; {Density})",
        "0.0",
        "Wet empty weight: the wood drinks several kilograms.");
    plan.sheet("Names", 14, 14, 14, 14);
    plan.row("SG", "Hydrometer", "Reading", "Gravity");
    plan.row("Temp", "Temperature", "T");
    plan.row("OG", "Original gravity", "Starting gravity");
    return plan.workbook("Plan for the old log of Tarn Hollow, an invented cellar");
  }
}
