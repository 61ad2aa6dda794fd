package meadcell.batch.command;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.calculation.Affected.FormulaCell;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;
import picocli.CommandLine.Command;

/** Workbooks for someone without the functions. */
@Command(
    name = "freeze",
    header = "Replaces the cellar functions' formulas by their values.",
    description = {
      "",
      "Example: meadcell freeze log.xlsx --out for-the-bank",
      "",
      "The values are computed again first. All other formulas stay.",
      ""
    })
public final class Freeze extends WorkbookCommand {
  @Override
  Work work(Opened workbook) {
    Book book = workbook.book();
    PoiFunctions functions = workbook.functions();
    Report report = new Report();
    Report computed = new Report();
    List<FormulaCell> affected = new Recalculation(book, functions, computed).run();
    computed.remarks().forEach(report::remark);
    Set<String> frozen = new HashSet<>();
    for (FormulaCell formula : affected) {
      BookSheet sheet = book.sheets().get(formula.sheet());
      CellContent content = sheet.content(formula.place());
      boolean hasValue = content.value() != null; // else nothing would be left of the formula
      if (content.isFormula() && hasValue && Recalculation.isOurs(formula, functions)) {
        sheet.freeze(formula.place());
        frozen.add(sheet.name() + "!" + formula.place());
        report.changed(
            Report.Change.ofFormula(
                sheet.name(), formula.place().a1(), "", content.formula(), content.value()));
      }
    }
    computed.changes().stream()
        .filter(change -> !frozen.contains(change.sheet() + "!" + change.cell()))
        .forEach(report::changed);
    return new Work(report, !report.changes().isEmpty());
  }
}
