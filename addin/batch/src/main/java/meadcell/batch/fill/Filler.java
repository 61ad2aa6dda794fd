package meadcell.batch.fill;

import static java.util.stream.Collectors.partitioningBy;

import java.util.List;
import java.util.Map;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.freeze.Keeping;
import meadcell.batch.plan.Plan;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.recalc.OfficeResults;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;
import meadcell.batch.report.ReportSheet;
import meadcell.catalogue.Catalogue;

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

  /**
   * What filling did.
   *
   * @param isChanged whether the workbook now differs from what it was
   */
  public record Filled(Report report, Placement placement, boolean isChanged) {}

  private final Book book;
  private final Plan plan;
  private final Catalogue catalogue;
  private final Options options;
  private final Report report = new Report();
  private final OwnCells own;

  public Filler(Book book, Plan plan, Catalogue catalogue, Options options) {
    this.book = book;
    this.plan = plan;
    this.catalogue = catalogue;
    this.options = options;
    this.own = new OwnCells(book);
  }

  /** Fills the workbook in memory. */
  public Filled run() {
    book.caveats().forEach(caveat -> report.remark(Report.Code.FILE, "", "", "", caveat));
    Placement placement = place();
    if (!placement.written().isEmpty()) {
      Recalculation.tellOfRounding(book, report);
    }
    List<FormulaCell> computed =
        new Results(book, catalogue, options, report, own).compute(placement.written());
    own.store(book);
    boolean isKept = options.values() && !computed.isEmpty() && keep(computed);
    return new Filled(report, placement, isKept || report.isChanged());
  }

  /** Keeps the formulas whose results now stand in their places. */
  private boolean keep(List<FormulaCell> replaced) {
    Keeping keeping = new Keeping(book, catalogue);
    Map<Boolean, List<FormulaCell>> kept =
        replaced.stream().collect(partitioningBy(keeping::canKeep));
    for (FormulaCell formula : kept.get(false)) {
      report.remark(
          Report.Code.FILE,
          book.sheets().get(formula.sheet()).name(),
          formula.place().a1(),
          formula.content().formula(),
          "holds a value whose formula could not be kept; thaw will not put it back.");
    }
    return keeping.keep(kept.get(true));
  }

  /** Puts the formulas where they belong, without their results. */
  public Placement place() {
    Placement all = Placement.NOWHERE;
    for (int index = 0; index < book.sheets().size(); index++) {
      BookSheet sheet = book.sheets().get(index);
      List<PlanRow> rows = plan.rows().stream().filter(row -> row.isFor(sheet.name())).toList();
      if (!rows.isEmpty() && !ReportSheet.is(sheet.name()) && !Keeping.isPlace(sheet.name())) {
        Cells cells = new Cells(sheet, index, own, report, options.overwrite());
        all = all.and(place(rows, cells));
      }
    }
    return all;
  }

  private Placement place(List<PlanRow> rows, Cells cells) {
    if (cells.sheet().isProtected() && !options.protectedToo()) {
      cells.remark(
          Report.Code.PROTECTED,
          "",
          "The sheet is protected; nothing was filled on it (--ignore-protection fills it).");
      return Placement.NOWHERE.having(rows);
    }
    return new SheetFiller(rows, plan.names(), catalogue, cells).fill();
  }
}
