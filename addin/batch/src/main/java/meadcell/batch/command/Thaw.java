package meadcell.batch.command;

import meadcell.batch.freeze.Thawing;
import meadcell.cellar.Cellar;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Frozen workbooks that came back. */
@Command(
    name = "thaw",
    header = "Puts the formulas back that freeze, or fill --write values, replaced.",
    description = {
      "",
      "Example: meadcell thaw for-the-bank/log.xlsx --out back",
      "",
      "A formula returns where its cell still holds what it gave, and is computed again from the"
          + " readings as they are now. A cell that someone changed or emptied stays as it is and is"
          + " listed. Where rows or columns were moved, inserted or deleted, so that a formula could"
          + " read the wrong cells, nothing on that sheet is thawed and all is listed. What is"
          + " listed stays on the sheet \"Meadcell formulas\".",
      ""
    })
public final class Thaw extends WorkbookCommand {
  @Option(
      names = "--refill-empty",
      description = "Also put formulas back into cells that were emptied.")
  private boolean refill;

  @Override
  Work work(Opened workbook) {
    Thawing.Thawed thawed = new Thawing(workbook.book(), Cellar.catalogue(), refill).run();
    return new Work(thawed.report(), thawed.isChanged());
  }
}
