package meadcell.batch.recalc;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.CellError;
import meadcell.batch.book.CellSet;
import meadcell.batch.book.Place;
import meadcell.batch.poi.CatalogueFunctions;
import meadcell.batch.recalc.Affected.FormulaCell;
import meadcell.batch.report.Report;

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
  private final CatalogueFunctions functions;
  private final Report report;

  public Recalculation(Book book, CatalogueFunctions functions, Report report) {
    this.book = book;
    this.functions = functions;
    this.report = report;
  }

  /** Whether a formula calls one of the catalogue's functions. */
  public static boolean isOurs(FormulaCell formula, CatalogueFunctions functions) {
    return formula.reads().functions().stream()
        .anyMatch(name -> functions.catalogue().find(name).isPresent());
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
    Map<FormulaCell, Object> results = new HashMap<>();
    for (FormulaCell formula : formulas) {
      BookSheet sheet = book.sheets().get(formula.sheet());
      if (!formula.reads().canBeRead()) {
        stale(sheet, formula, formula.reads().problem());
        continue;
      }
      try {
        results.put(formula, calculation.result(formula.sheet(), formula.place()));
      } catch (Book.CannotCalculate e) {
        stale(sheet, formula, e.getMessage());
      }
    }
    results.forEach(this::settle);
    for (CatalogueFunctions.Refused refused : functions.takeRefused()) {
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

  private void stale(BookSheet sheet, FormulaCell formula, String reason) {
    report.remark(
        Report.Code.STALE,
        sheet.name(),
        formula.place().a1(),
        formula.content().formula(),
        "keeps its old value, because the formula cannot be computed here: " + reason);
  }

  private void settle(FormulaCell formula, Object result) {
    Object before = formula.content().value();
    if (isSame(formula.content(), result)) {
      report.unchanged();
      return;
    }
    BookSheet sheet = book.sheets().get(formula.sheet());
    sheet.putValue(formula.place(), result);
    report.changed(
        new Report.Change(
            sheet.name(),
            formula.place().a1(),
            "",
            "formula",
            formula.content().formula(),
            before,
            result));
  }

  private static boolean isSame(CellContent before, Object after) {
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
