package meadcell.batch.recalc;

import java.util.List;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.CellError;
import meadcell.batch.book.Place;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.Affected.FormulaCell;
import meadcell.batch.calculation.Beyond;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.batch.report.Report;
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
  private final PoiFunctions functions;
  private final Report report;
  private final OfficeResults office;

  public Recalculation(Book book, PoiFunctions functions, Report report) {
    this(book, functions, report, null);
  }

  /**
   * A recalculation with an office's help.
   *
   * @param office computes what this tool cannot; may be null
   */
  public Recalculation(Book book, PoiFunctions functions, Report report, OfficeResults office) {
    this.book = book;
    this.functions = functions;
    this.report = report;
    this.office = office;
  }

  /** Whether a formula calls one of the catalogue's functions. */
  public static boolean isOurs(FormulaCell formula, PoiFunctions functions) {
    return formula.reads().functions().stream()
        .anyMatch(name -> functions.findFunction(name) != null);
  }

  /** Computes again what uses the catalogue's functions. */
  public List<FormulaCell> run() {
    CellSet live = new CellSet();
    Book.Calculation calculation = book.calculation(functions, live);
    List<FormulaCell> affected =
        new Affected(book, calculation, new CellSet()).from(f -> isOurs(f, functions));
    refresh(affected, calculation, live);
    return affected;
  }

  /**
   * Computes some formulas again.
   *
   * @param live receives them
   */
  public void refresh(List<FormulaCell> formulas, Book.Calculation calculation, CellSet live) {
    for (FormulaCell formula : formulas) {
      if (formula.reads().canBeRead()) {
        live.add(formula.sheet(), formula.place().row(), formula.place().column());
      }
    }
    functions.takeRefused();
    Object[] outcomes = formulas.stream().map(f -> outcome(f, calculation)).toArray();
    List<PoiFunctions.Refused> allRefused = functions.takeRefused();
    CellSet foreign = foreign(formulas, outcomes);
    if (office != null && !foreign.isEmpty()) {
      try {
        outcomes = office.complete(book, functions, formulas, live, foreign, outcomes);
        allRefused = functions.takeRefused();
      } catch (Office.Failed e) {
        report.remark(Report.Code.FILE, "", "", "", e.getMessage());
      }
    }
    for (int i = 0; i < outcomes.length; i++) {
      settle(formulas.get(i), outcomes[i]);
    }
    for (PoiFunctions.Refused refused : allRefused) {
      BookSheet sheet = book.sheets().get(refused.sheet());
      Place place = new Place(refused.row(), refused.column());
      if (sheet.content(place).value() instanceof CellError) {
        report.remark(
            Report.Code.REFUSED,
            sheet.name(),
            place.a1(),
            refused.function(),
            refused.function() + ": " + refused.refusal().getMessage());
      }
    }
  }

  /** The result of a formula, or {@link Beyond}. */
  static Object outcome(FormulaCell formula, Book.Calculation calculation) {
    if (!formula.reads().canBeRead()) {
      return new Beyond(formula.reads().problem());
    }
    try {
      return calculation.result(formula.sheet(), formula.place());
    } catch (Book.CannotCalculate e) {
      return new Beyond(e.getMessage());
    }
  }

  /** The formulas without functions of ours that were not computed. */
  private CellSet foreign(List<FormulaCell> formulas, Object[] outcomes) {
    CellSet foreign = new CellSet();
    for (int i = 0; i < outcomes.length; i++) {
      FormulaCell formula = formulas.get(i);
      if (outcomes[i] instanceof Beyond && !isOurs(formula, functions)) {
        foreign.add(formula.sheet(), formula.place().row(), formula.place().column());
      }
    }
    return foreign;
  }

  private void settle(FormulaCell formula, Object outcome) {
    BookSheet sheet = book.sheets().get(formula.sheet());
    if (outcome instanceof Beyond beyond) {
      report.remark(
          Report.Code.STALE,
          sheet.name(),
          formula.place().a1(),
          formula.content().formula(),
          "keeps its old value, because the formula cannot be computed here: " + beyond.reason());
      return;
    }
    if (isSame(formula.content(), outcome)) {
      report.unchanged();
      return;
    }
    sheet.putValue(formula.place(), outcome);
    report.changed(
        Report.Change.ofFormula(
            sheet.name(),
            formula.place().a1(),
            formula.content().formula(),
            formula.content().value(),
            outcome));
  }

  static boolean isSame(CellContent before, Object after) {
    if (!(before.value() instanceof Double a && after instanceof Double b)) {
      return after.equals(before.value());
    }
    double allowed =
        before.look() == CellContent.Look.DATE
            ? SECOND
            : ROUNDING * Math.max(Math.abs(a), Math.abs(b));
    return Math.abs(a - b) <= allowed;
  }
}
