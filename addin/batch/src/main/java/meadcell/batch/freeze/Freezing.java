package meadcell.batch.freeze;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;

/**
 * Replaces the catalogue's formulas by their values, computed again, and keeps the formulas on a
 * sheet of their own. All other formulas stay.
 */
public final class Freezing {
  private Freezing() {}

  public static Report run(Book book, Catalogue catalogue) {
    Report computed = new Report();
    List<FormulaCell> affected = new Recalculation(book, catalogue, computed).run();
    Report report = new Report(computed.notes());
    computed.remarks().forEach(report::remark);
    List<FormulaCell> formulas = new ArrayList<>();
    for (FormulaCell formula : affected) {
      if (formula.isOurs(catalogue) && hasValue(book, formula)) {
        CellContent content = book.sheets().get(formula.sheet()).content(formula.place());
        formulas.add(new FormulaCell(formula.sheet(), formula.place(), content, formula.reads()));
      }
    }
    if (!formulas.isEmpty()) {
      Keeping kept = new Keeping(book, catalogue);
      formulas.removeIf(formula -> !kept.canKeep(formula) && leave(book, formula, report));
      kept.keep(formulas);
      formulas.forEach(formula -> freeze(book, formula, report));
    }
    Set<String> frozen = new HashSet<>();
    report.changes().forEach(change -> frozen.add(change.sheet() + "!" + change.cell()));
    computed.changes().stream()
        .filter(change -> !frozen.contains(change.sheet() + "!" + change.cell()))
        .forEach(report::changed);
    return report;
  }

  /** Whether a value is left of the formula; of an array's, in all its cells. */
  private static boolean hasValue(Book book, FormulaCell formula) {
    BookSheet sheet = book.sheets().get(formula.sheet());
    Span array = sheet.array(formula.place());
    return array == null
        ? !sheet.content(formula.place()).value().isBlank()
        : IntStream.rangeClosed(array.first().row(), array.last().row())
            .allMatch(
                row ->
                    IntStream.rangeClosed(array.first().column(), array.last().column())
                        .noneMatch(
                            column -> sheet.content(new Place(row, column)).value().isBlank()));
  }

  private static boolean leave(Book book, FormulaCell formula, Report report) {
    report.remark(
        Report.Code.KEPT,
        book.sheets().get(formula.sheet()).name(),
        formula.place().a1(),
        formula.content().formula(),
        "keeps its formula, because that could not be put back as it is later.");
    return true;
  }

  private static void freeze(Book book, FormulaCell formula, Report report) {
    BookSheet sheet = book.sheets().get(formula.sheet());
    if (sheet.content(formula.place()).isFormula()) { // an array goes with its first cell
      sheet.freeze(formula.place());
    }
    report.changed(
        Report.Change.ofFormula(
            sheet.name(),
            formula.place(),
            "",
            new Value.Text(formula.content().formula()),
            formula.content().value()));
  }
}
