package meadcell.batch.command;

import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;
import meadcell.cellar.Cellar;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** New numbers for formulas that are already there. */
@Command(
    name = "recalc",
    header = "Computes again what uses the cellar functions, and what rests on it.",
    description = {
      "",
      "Example: meadcell recalc logs/*.xlsx --out recalculated",
      "",
      "Spreadsheet programs show stored values when they open a file. After readings were changed"
          + " by a script, or after a new version of the functions, this stores the new ones. Every"
          + " other cell is left as it is. A formula that cannot be computed here keeps its old"
          + " value and is listed; --with-office has LibreOffice compute it.",
      ""
    })
public final class Recalc extends WorkbookCommand {
  @Mixin private OfficeOption office;

  @Override
  Work work(Opened workbook) {
    Report report = new Report();
    workbook
        .book()
        .caveats()
        .forEach(caveat -> report.remark(Report.Code.FILE, "", "", "", caveat));
    new Recalculation(
            workbook.book(), Cellar.catalogue(), report, office.resultsFor(workbook, input))
        .run();
    return new Work(report, report.isChanged());
  }

  @Override
  void finish() {
    office.close();
  }
}
