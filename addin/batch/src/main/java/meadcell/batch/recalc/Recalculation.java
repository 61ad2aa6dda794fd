package meadcell.batch.recalc;

import java.util.List;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.Calculation;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.calculation.Outcome;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;
import meadcell.office.Office;

/**
 * Computes again every formula that uses the catalogue's functions, and what rests on them. Each
 * goes by itself: what cannot be computed keeps its formula and its old value, and is reported.
 */
public final class Recalculation {
  /** Relative; programs differ in the last digits, and searches widen that. */
  private static final double ROUNDING = 1e-9;

  /** A second, in days: some files store times no finer. */
  private static final double SECOND = 1.2e-5;

  private final Book book;
  private final Catalogue catalogue;
  private final Report report;
  private final OfficeResults office;

  public Recalculation(Book book, Catalogue catalogue, Report report) {
    this(book, catalogue, report, null);
  }

  /**
   * A recalculation with an office's help.
   *
   * @param office computes what this tool cannot; may be null
   */
  public Recalculation(Book book, Catalogue catalogue, Report report, OfficeResults office) {
    this.book = book;
    this.catalogue = catalogue;
    this.report = report;
    this.office = office;
  }

  /** Computes again what uses the catalogue's functions. */
  public List<FormulaCell> run() {
    CellSet live = new CellSet();
    Calculation calculation = new Calculation(book, catalogue, live);
    List<FormulaCell> affected =
        new Affected(book, calculation, new CellSet()).from(f -> f.isOurs(catalogue));
    refresh(affected, calculation, live);
    return affected;
  }

  /**
   * Computes some formulas again.
   *
   * @param live receives them
   */
  public void refresh(List<FormulaCell> formulas, Calculation calculation, CellSet live) {
    formulas.stream().filter(f -> f.reads().canBeRead()).forEach(live::add);
    List<Outcome> outcomes = formulas.stream().map(calculation::outcome).toList();
    CellSet foreign = foreign(formulas, outcomes);
    if (office != null && !foreign.isEmpty()) {
      try {
        outcomes = office.complete(book, catalogue, formulas, live, foreign, outcomes);
      } catch (Office.Failed e) {
        report.remark(Report.Code.FILE, "", "", "", e.getMessage());
      }
    }
    for (int i = 0; i < formulas.size(); i++) {
      settle(formulas.get(i), outcomes.get(i));
    }
  }

  /** The formulas without functions of ours that were not computed. */
  private CellSet foreign(List<FormulaCell> formulas, List<Outcome> outcomes) {
    CellSet foreign = new CellSet();
    for (int i = 0; i < formulas.size(); i++) {
      if (outcomes.get(i) instanceof Outcome.Beyond && !formulas.get(i).isOurs(catalogue)) {
        foreign.add(formulas.get(i));
      }
    }
    return foreign;
  }

  private void settle(FormulaCell formula, Outcome outcome) {
    BookSheet sheet = book.sheets().get(formula.sheet());
    if (outcome instanceof Outcome.Beyond beyond) {
      report.remark(
          Report.Code.STALE,
          sheet.name(),
          formula.place().a1(),
          formula.content().formula(),
          "keeps its old value, because the formula cannot be computed here: " + beyond.reason());
    } else if (outcome instanceof Outcome.Refused refused) {
      store(sheet, formula, refused.error());
      for (PoiFunctions.Refused call : refused.calls()) {
        report.remark(
            Report.Code.REFUSED,
            sheet.name(),
            formula.place().a1(),
            call.function(),
            call.function() + ": " + call.refusal().getMessage());
      }
    } else if (outcome instanceof Outcome.Computed computed) {
      store(sheet, formula, computed.value());
    }
  }

  private void store(BookSheet sheet, FormulaCell formula, Value result) {
    if (isSame(formula.content(), result)) {
      report.unchanged();
      return;
    }
    sheet.putValue(formula.place(), result);
    report.changed(
        Report.Change.ofFormula(
            sheet.name(),
            formula.place().a1(),
            formula.content().formula(),
            formula.content().value(),
            result));
  }

  static boolean isSame(CellContent before, Value after) {
    if (!(before.value() instanceof Value.Number a && after instanceof Value.Number b)) {
      return after.equals(before.value());
    }
    double allowed =
        before.look() == CellContent.Look.DATE
            ? SECOND
            : ROUNDING * Math.max(Math.abs(a.number()), Math.abs(b.number()));
    return Math.abs(a.number() - b.number()) <= allowed;
  }
}
