package meadcell.batch.check;

import java.util.LinkedHashSet;
import java.util.regex.Pattern;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Place;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.Calculation;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.calculation.Reads;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;

/** Looks through a workbook for what its owner should see; changes nothing on file. */
public final class Inspection {
  private static final Pattern ASKS_FOR_BLANKS =
      Pattern.compile("ISBLANK|COUNT|ISNUMBER|=\"\"|<>\"\"", Pattern.CASE_INSENSITIVE);

  private final Book book;
  private final Catalogue catalogue;
  private final Report report = new Report();

  public Inspection(Book book, Catalogue catalogue) {
    this.book = book;
    this.catalogue = catalogue;
  }

  /** All findings. */
  public Report run() {
    Calculation calculation = new Calculation(book, catalogue, new CellSet());
    for (FormulaCell formula : new Affected(book, calculation, new CellSet()).formulas()) {
      if (formula.isOurs(catalogue)) {
        blankInputs(formula);
      }
    }
    book.sheets().forEach(new Gravities(catalogue, report)::check);
    Report results = new Report();
    new Recalculation(book, catalogue, results).run();
    results.remarks().forEach(report::remark);
    for (Report.Change change : results.changes()) {
      report.remark(
          Report.Code.STALE,
          change.sheet(),
          change.cell(),
          change.formula(),
          "shows "
              + (change.before().isBlank() ? "nothing" : change.before())
              + "; computed again it is "
              + change.after()
              + ".");
    }
    return report;
  }

  private void remark(Report.Code code, FormulaCell formula, String sentence) {
    report.remark(
        code,
        book.sheets().get(formula.sheet()).name(),
        formula.place().a1(),
        formula.content().formula(),
        sentence);
  }

  /** A formula that asks for blanks itself is meant to meet them. */
  private void blankInputs(FormulaCell formula) {
    if (ASKS_FOR_BLANKS.matcher(formula.content().formula()).find()) {
      return;
    }
    for (Reads.Area area : new LinkedHashSet<>(formula.reads().areas())) {
      Place place = new Place(area.firstRow(), area.firstColumn());
      BookSheet sheet = book.sheets().get(area.sheet());
      if (area.size() == 1 && sheet.content(place).isBlank()) {
        String where = area.sheet() == formula.sheet() ? place.a1() : sheet.name() + "!" + place;
        remark(Report.Code.BLANK_INPUT, formula, "its input " + where + " is blank.");
      }
    }
  }
}
