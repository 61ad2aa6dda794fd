package meadcell.batch.fill;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.CellError;
import meadcell.batch.book.Place;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.batch.plan.Plan;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.recalc.OfficeResults;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;

/** Fills one workbook by a plan. */
public final class Filler {
  /**
   * How to fill.
   *
   * @param overwrite also cells in which a person typed something
   * @param values numbers instead of live formulas
   * @param protectedToo also sheets that their author protected
   * @param office computes what rests on the filled cells and this tool cannot; may be null
   */
  public record Options(
      boolean overwrite, boolean values, boolean protectedToo, OfficeResults office) {}

  private final Book book;
  final Plan plan;
  final PoiFunctions functions;
  final Options options;
  final Report report = new Report();
  final OwnCells own;
  final Notes notes = new Notes();
  final List<Written> written = new ArrayList<>();
  final CellSet live = new CellSet();
  final Set<PlanRow> found = new LinkedHashSet<>();
  final Map<PlanRow, String> missing = new HashMap<>();

  public Filler(Book book, Plan plan, PoiFunctions functions, Options options) {
    this.book = book;
    this.plan = plan;
    this.functions = functions;
    this.options = options;
    this.own = new OwnCells(book);
  }

  /** Fills the workbook in memory. */
  public Report run() {
    find();
    compute();
    own.store(book);
    return report;
  }

  /** Puts the formulas where they belong, without their results. */
  public void find() {
    book.caveats().forEach(caveat -> report.remark(Report.Code.FILE, "", "", "", caveat));
    for (int index = 0; index < book.sheets().size(); index++) {
      BookSheet sheet = book.sheets().get(index);
      List<PlanRow> rows = plan.rows().stream().filter(row -> row.isFor(sheet.name())).toList();
      if (!rows.isEmpty()) {
        new SheetFiller(this, index, sheet, rows).fill();
      }
    }
  }

  /** Whether the workbook now differs from what it was. */
  public boolean isChanged() {
    return notes.areChanged() || !report.changes().isEmpty();
  }

  /** The lines of the plan that found their place in this workbook. */
  public Set<PlanRow> found() {
    return found;
  }

  /** Why a line of the plan found no place in this workbook. */
  public String whyNotFound(PlanRow row) {
    return missing.getOrDefault(row, "no sheet has the name \"" + row.sheet() + "\".");
  }

  // ---- results ----------------------------------------------------------------------------

  private void compute() {
    Book.Calculation calculation = book.calculation(functions, live);
    List<Affected.FormulaCell> dependents =
        new Affected(book, calculation, live).from(written.stream().map(Written::area).toList());
    dependents.stream()
        .filter(formula -> formula.reads().canBeRead())
        .forEach(f -> live.add(f.sheet(), f.place().row(), f.place().column()));
    functions.takeRefused();
    List<Object> results = new ArrayList<>(written.size());
    for (Written cell : written) {
      Object result;
      try {
        result = calculation.result(cell.sheet(), cell.place());
      } catch (Book.CannotCalculate e) {
        result = new CellError(e.getMessage());
      }
      results.add(result);
    }
    Map<String, String> reasons = new HashMap<>();
    for (PoiFunctions.Refused refused : functions.takeRefused()) {
      String cell = refused.sheet() + "!" + new Place(refused.row(), refused.column());
      reasons.putIfAbsent(cell, refused.refusal().getMessage());
    }
    for (int i = 0; i < written.size(); i++) {
      Written cell = written.get(i);
      if (results.get(i) instanceof CellError error) {
        String reason =
            reasons.getOrDefault(
                cell.sheet() + "!" + cell.place(),
                error.text().startsWith("#")
                    ? "a cell that it rests on has no value (" + error + ")."
                    : error.text());
        refuse(cell, reason);
      } else {
        settle(cell, results.get(i));
      }
    }
    new Recalculation(book, functions, report, options.office())
        .refresh(dependents, book.calculation(functions, live), live);
  }

  /** A result that is an error is not left in the log; its cell says why instead. */
  private void refuse(Written cell, String reason) {
    BookSheet sheet = book.sheets().get(cell.sheet());
    sheet.clear(cell.place());
    if (!cell.before().isBlank()) {
      report.changed(cell.changeTo(null, sheet));
    }
    String sentence = cell.row().result() + " stays empty: " + reason;
    report.remark(
        Report.Code.LEFT_EMPTY, sheet.name(), cell.place().a1(), cell.formula(), sentence);
    notes.mark(sheet, cell.place(), sentence);
  }

  private void settle(Written cell, Object result) {
    BookSheet sheet = book.sheets().get(cell.sheet());
    boolean sameValue = result.equals(cell.before().value());
    boolean sameFormula = options.values() ? !cell.before().isFormula() : cell.isSameFormula();
    if (options.values()) {
      sheet.clear(cell.place());
      sheet.putValue(cell.place(), result);
    } else if (!sameValue || !sameFormula) {
      sheet.putValue(cell.place(), result);
    }
    own.add(
        sheet,
        cell.place(),
        new CellContent(result, options.values() ? null : cell.formula(), CellContent.Look.PLAIN));
    if (sameValue && sameFormula) {
      report.unchanged();
    } else {
      report.changed(cell.changeTo(result, sheet));
    }
    if (cell.note().isEmpty()) {
      notes.unmark(sheet, cell.place());
    } else {
      report.remark(
          Report.Code.UNDERSTOOD, sheet.name(), cell.place().a1(), cell.formula(), cell.note());
      notes.mark(sheet, cell.place(), cell.note());
    }
  }
}
