package meadcell.batch.fill;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.Calculation;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.calculation.Outcome;
import meadcell.batch.calculation.Reproduction;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;

/** The results of the formulas that filling put into a workbook, and of what rests on them. */
record Results(
    Book book, Catalogue catalogue, Filler.Options options, Report report, OwnCells own) {

  /**
   * Computes and stores the results. What rests on a formula that only an office can compute waits
   * for what that rests on.
   */
  void compute(List<Written> written) {
    CellSet filled = new CellSet();
    Map<Reproduction.Cell, CellContent> before = new HashMap<>();
    for (Written cell : written) {
      filled.add(cell.sheet(), cell.place());
      before.put(new Reproduction.Cell(cell.sheet(), cell.place()), cell.before());
    }
    Calculation reading = new Calculation(book, catalogue, filled);
    List<FormulaCell> dependents =
        new Affected(book, reading, filled).from(written.stream().map(Written::area).toList());
    Recalculation recalculation = new Recalculation(book, catalogue, report, options.office());
    List<FormulaCell> formulas = new ArrayList<>();
    written.forEach(cell -> formulas.add(formula(cell, reading)));
    formulas.addAll(dependents);
    List<Outcome> first = recalculation.withoutOffice().outcomes(formulas, before);
    List<Written> waiting = new ArrayList<>();
    for (int i = 0; i < written.size(); i++) {
      if (first.get(i) instanceof Outcome.Beyond && options.office() != null) {
        waiting.add(written.get(i));
      } else {
        settle(written.get(i), first.get(i));
      }
    }
    formulas.clear();
    waiting.forEach(cell -> formulas.add(formula(cell, reading)));
    formulas.addAll(dependents);
    List<Outcome> second = recalculation.outcomes(formulas, before);
    for (int i = 0; i < formulas.size(); i++) {
      if (i < waiting.size()) {
        settle(waiting.get(i), second.get(i));
      } else {
        recalculation.settle(formulas.get(i), second.get(i));
      }
    }
  }

  private FormulaCell formula(Written cell, Calculation reading) {
    CellContent content = book.sheets().get(cell.sheet()).content(cell.place());
    return new FormulaCell(
        cell.sheet(), cell.place(), content, reading.reads(cell.sheet(), cell.place()));
  }

  private void settle(Written cell, Outcome outcome) {
    if (outcome instanceof Outcome.Beyond beyond) {
      refuse(cell, beyond.reason());
    } else if (outcome instanceof Outcome.Refused refused) {
      refuse(cell, refused.calls().get(0).refusal().getMessage());
    } else if (outcome instanceof Outcome.Computed computed) {
      if (computed.value().isError()) {
        refuse(cell, "a cell that it rests on has no value (" + computed.value() + ").");
      } else {
        settle(cell, computed.value());
      }
    }
  }

  /** A result that is an error is not left in the log; its cell says why instead. */
  private void refuse(Written cell, String reason) {
    BookSheet sheet = book.sheets().get(cell.sheet());
    sheet.clear(cell.place());
    if (!cell.before().isBlank()) {
      report.changed(cell.changeTo(Value.BLANK, sheet));
    }
    String sentence = cell.row().result() + " stays empty: " + reason;
    report.remark(
        Report.Code.LEFT_EMPTY, sheet.name(), cell.place().a1(), cell.formula(), sentence);
    report.notes().mark(sheet, cell.place(), sentence);
  }

  private void settle(Written cell, Value result) {
    BookSheet sheet = book.sheets().get(cell.sheet());
    boolean sameValue = result.equals(cell.before().value());
    boolean sameFormula = options.values() ? !cell.before().isFormula() : cell.isSameFormula();
    if (options.values()) {
      sheet.clear(cell.place());
      sheet.putValue(cell.place(), result);
    } else if (!sameValue || !sameFormula) {
      sheet.putValue(cell.place(), result);
    }
    String formula = options.values() ? null : cell.formula();
    own.add(sheet, cell.place(), new CellContent(result, formula, CellContent.Look.PLAIN));
    if (options.values()) { // which thawing may put back
      own.add(sheet, cell.place(), new CellContent(result, cell.formula(), CellContent.Look.PLAIN));
    }
    if (sameValue && sameFormula) {
      report.unchanged();
    } else {
      report.changed(cell.changeTo(result, sheet));
    }
    if (cell.note().isEmpty()) {
      report.notes().unmark(sheet, cell.place());
    } else {
      report.remark(
          Report.Code.UNDERSTOOD, sheet.name(), cell.place().a1(), cell.formula(), cell.note());
      report.notes().mark(sheet, cell.place(), cell.note());
    }
  }
}
