package meadcell.batch.freeze;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;

/** Replaces the catalogue's formulas by their values, computed again. All other formulas stay. */
public final class Freezing {
  private Freezing() {}

  public static Report run(Book book, Catalogue catalogue) {
    Report computed = new Report();
    List<FormulaCell> affected = new Recalculation(book, catalogue, computed).run();
    Report report = new Report(computed.notes());
    computed.remarks().forEach(report::remark);
    Set<String> frozen = new HashSet<>();
    for (FormulaCell formula : affected) {
      BookSheet sheet = book.sheets().get(formula.sheet());
      CellContent content = sheet.content(formula.place());
      boolean hasValue = !content.value().isBlank(); // else nothing would be left of the formula
      if (content.isFormula() && hasValue && formula.isOurs(catalogue)) {
        sheet.freeze(formula.place());
        frozen.add(sheet.name() + "!" + formula.place());
        report.changed(
            Report.Change.ofFormula(
                sheet.name(),
                formula.place().a1(),
                "",
                new Value.Text(content.formula()),
                content.value()));
      }
    }
    computed.changes().stream()
        .filter(change -> !frozen.contains(change.sheet() + "!" + change.cell()))
        .forEach(report::changed);
    return report;
  }
}
