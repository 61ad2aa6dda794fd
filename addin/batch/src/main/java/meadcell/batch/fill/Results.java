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
import meadcell.batch.calculation.Reads;
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
   *
   * @return the formulas that gave a result
   */
  List<FormulaCell> compute(List<Written> written) {
    CellSet filled = new CellSet();
    written.forEach(cell -> filled.add(cell.sheet(), cell.place()));
    Calculation reading = new Calculation(book, catalogue, filled);
    Affected affected = new Affected(book, reading, filled);
    affected.from(formula -> formula.isOurs(catalogue) && isUncomputed(formula));
    List<FormulaCell> dependents = affected.from(written.stream().map(Written::area).toList());
    Recalculation recalculation = new Recalculation(book, catalogue, report, options.office());
    List<FormulaCell> formulas = new ArrayList<>();
    Map<String, Reads> read = new HashMap<>();
    written.forEach(cell -> formulas.add(formula(cell, reading, read)));
    boolean isAnyStored = formulas.stream().anyMatch(cell -> !cell.content().value().isBlank());
    Map<Reproduction.Cell, CellContent> before =
        isAnyStored || !dependents.isEmpty() ? before(written) : Map.of();
    formulas.addAll(dependents);
    List<Outcome> first = recalculation.withoutOffice().outcomes(formulas, before);
    List<FormulaCell> computed = new ArrayList<>();
    List<Written> waiting = new ArrayList<>();
    for (int i = 0; i < written.size(); i++) {
      if (first.get(i) instanceof Outcome.Beyond && options.office() != null) {
        waiting.add(written.get(i));
      } else {
        settle(written.get(i), first.get(i));
        addIfComputed(formulas.get(i), first.get(i), computed);
      }
    }
    formulas.clear();
    waiting.forEach(cell -> formulas.add(formula(cell, reading, read)));
    formulas.addAll(dependents);
    List<Outcome> second = recalculation.outcomes(formulas, before);
    for (int i = 0; i < formulas.size(); i++) {
      if (i < waiting.size()) {
        settle(waiting.get(i), second.get(i));
        addIfComputed(formulas.get(i), second.get(i), computed);
      } else {
        recalculation.settle(formulas.get(i), second.get(i));
      }
    }
    return computed;
  }

  /** What cells held before they were filled, for stored results that rest on it. */
  private static Map<Reproduction.Cell, CellContent> before(List<Written> written) {
    Map<Reproduction.Cell, CellContent> before = new HashMap<>();
    for (Written cell : written) {
      before.put(new Reproduction.Cell(cell.sheet(), cell.place()), cell.before());
    }
    return before;
  }

  /**
   * A cell that was filled. Which functions its formula calls is read once for a line of the plan
   * on a sheet; which cells, only the sheet asks that keeps the formulas of values.
   */
  private FormulaCell formula(Written cell, Calculation reading, Map<String, Reads> read) {
    CellContent content = book.sheets().get(cell.sheet()).content(cell.place());
    if (options.values()) {
      return new FormulaCell(
          cell.sheet(), cell.place(), content, reading.reads(cell.sheet(), cell.place()));
    }
    String line = cell.sheet() + " " + cell.row().where();
    Reads functions = read.get(line);
    if (functions == null) {
      functions = reading.reads(cell.sheet(), cell.place()).withoutAreas();
      read.put(line, functions);
    }
    return new FormulaCell(cell.sheet(), cell.place(), content, functions);
  }

  /** A program without the functions puts this in place of every result. */
  private static boolean isUncomputed(FormulaCell formula) {
    return formula.content().value().equals(Input.UNCOMPUTED);
  }

  private static void addIfComputed(
      FormulaCell formula, Outcome outcome, List<FormulaCell> computed) {
    if (outcome instanceof Outcome.Computed result && !result.value().isError()) {
      computed.add(formula);
    }
  }

  private void settle(Written cell, Outcome outcome) {
    if (outcome instanceof Outcome.Beyond beyond) {
      refuse(cell, outcome, beyond.reason());
    } else if (outcome instanceof Outcome.Refused refused) {
      refuse(cell, outcome, refused.calls().get(0).refusal().getMessage());
    } else if (outcome instanceof Outcome.Computed computed) {
      if (computed.value().isError()) {
        refuse(cell, outcome, "a cell that it rests on has no value (" + computed.value() + ").");
      } else {
        settle(cell, computed.value());
      }
    }
  }

  /** A result that is an error is not left in the log; its cell says why instead. */
  private void refuse(Written cell, Outcome outcome, String reason) {
    BookSheet sheet = book.sheets().get(cell.sheet());
    if (cell.restore() != null) {
      restore(cell, sheet, outcome, reason);
      return;
    }
    sheet.clear(cell.place());
    if (!cell.before().isBlank()) {
      report.changed(cell.changeTo(Value.BLANK, sheet));
    }
    String sentence = cell.row().result() + " stays empty: " + reason;
    report.remark(
        Report.Code.LEFT_EMPTY, sheet.name(), cell.place().a1(), cell.formula(), sentence);
    report.notes().mark(sheet, cell.place(), sentence);
  }

  /** What a person put there is never deleted; a formula of theirs shows that it was refused. */
  private void restore(Written cell, BookSheet sheet, Outcome outcome, String reason) {
    cell.restore().run();
    Value shown = outcome.shown().orElse(cell.before().value());
    if (cell.isSameFormula() && !shown.equals(cell.before().value())) {
      sheet.putValue(cell.place(), shown);
      report.changed(cell.changeTo(shown, sheet));
    }
    report.remark(
        Report.Code.KEPT,
        sheet.name(),
        cell.place().a1(),
        cell.formula(),
        cell.row().result() + " keeps what a person put there: " + reason);
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
