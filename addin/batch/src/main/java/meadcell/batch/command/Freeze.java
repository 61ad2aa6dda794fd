package meadcell.batch.command;

import meadcell.batch.freeze.Freezing;
import meadcell.batch.report.Report;
import meadcell.cellar.Cellar;
import picocli.CommandLine.Command;

/** Workbooks for someone without the functions. */
@Command(
    name = "freeze",
    header = "Replaces the cellar functions' formulas by their values.",
    description = {
      "",
      "Example: meadcell freeze log.xlsx --out for-the-bank",
      "",
      "The values are computed again first. All other formulas stay. The sheet \"Meadcell formulas\""
          + " keeps what was replaced; \"meadcell thaw\" puts it back.",
      ""
    })
public final class Freeze extends WorkbookCommand {
  @Override
  Work work(Opened workbook) {
    Report report = Freezing.run(workbook.book(), Cellar.catalogue());
    return new Work(report, report.isChanged());
  }
}
