package meadcell.batch.check;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Place;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.Calculation;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.calculation.Reads;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Origin;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.ChangedNumber;

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
    Map<String, FormulaCell> ours = new HashMap<>();
    Calculation calculation = new Calculation(book, catalogue, new CellSet());
    for (FormulaCell formula : new Affected(book, calculation, new CellSet()).formulas()) {
      if (formula.isOurs(catalogue)) {
        blankInputs(formula);
        ours.put(name(formula) + "!" + formula.place().a1(), formula);
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
    if (Origin.isFilled(book)) {
      String version = Origin.oldestVersion(book).orElse("");
      Stream.concat(
              results.changes().stream().map(change -> change.sheet() + "!" + change.cell()),
              results.remarks().stream().map(remark -> remark.sheet() + "!" + remark.cell()))
          .distinct()
          .filter(ours::containsKey)
          .forEach(cell -> olderNumbers(ours.get(cell), version));
    }
    return report;
  }

  private String name(FormulaCell formula) {
    return book.sheets().get(formula.sheet()).name();
  }

  private void remark(Report.Code code, FormulaCell formula, String sentence) {
    report.remark(code, name(formula), formula.place().a1(), formula.content().formula(), sentence);
  }

  /** Why a cell that this tool once filled may not hold what it gives now. */
  private void olderNumbers(FormulaCell formula, String version) {
    Set<String> told = new HashSet<>();
    for (ChangedNumber change : ChangedNumber.all()) {
      if (formula.calls(change.function())
          && change.isAfter(version)
          && told.add(change.function() + change.version())) {
        remark(
            Report.Code.OLDER,
            formula,
            "was computed by "
                + (version.isEmpty()
                    ? "a version that did not say its number"
                    : "version " + version)
                + "; "
                + change.function()
                + " gives other numbers "
                + change
                + ". fill again, with the same plan, computes it anew.");
      }
    }
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
