package meadcell.batch.check;

import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Figures;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.Calculation;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.calculation.Reads;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Nearest;
import meadcell.catalogue.Refusal;

/** Looks through a workbook for what its owner should see; changes nothing on file. */
public final class Inspection {
  private static final Set<String> GRAVITY_HEADERS = Set.of("sg", "gravity", "hydrometer", "fg");

  // bounds for a second look, common practice, no source
  private static final double LEAST_GRAVITY = 0.98;
  private static final double MOST_GRAVITY = 1.2;

  private static final Pattern ASKS_FOR_BLANKS =
      Pattern.compile("ISBLANK|COUNT|ISNUMBER|=\"\"|<>\"\"", Pattern.CASE_INSENSITIVE);

  /**
   * A rise that no ferment shows between two readings, and no hydrometer misses (common practice,
   * no source).
   */
  private static final double STEP = 0.02;

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
      unknownFunctions(formula);
      if (formula.isOurs(catalogue)) {
        blankInputs(formula);
      }
    }
    book.sheets().forEach(this::mistypedGravities);
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

  /** A name with a dot that is near one of ours is ours, mistyped; others may be anybody's. */
  private void unknownFunctions(FormulaCell formula) {
    for (String name : formula.reads().functions()) {
      if (catalogue.find(name).isPresent()) {
        continue;
      }
      String family = name.substring(0, Math.max(0, name.indexOf('.'))).toUpperCase(Locale.ROOT);
      String hint =
          Nearest.to(name, catalogue.names()).map(near -> " Did you mean " + near + "?").orElse("");
      if (!hint.isEmpty() || catalogue.families().containsKey(family)) {
        remark(
            Report.Code.UNKNOWN_FUNCTION,
            formula,
            "the function " + name + " is not known." + hint);
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

  // ---- readings ---------------------------------------------------------------------------

  private void mistypedGravities(BookSheet sheet) {
    for (int row = 0; row <= sheet.lastRow(); row++) {
      for (int column = 0; column <= sheet.lastColumn(row); column++) {
        String header = sheet.content(new Place(row, column)).typedText();
        if (header != null && GRAVITY_HEADERS.contains(header.strip().toLowerCase(Locale.ROOT))) {
          column(sheet, row + 1, column);
        }
      }
    }
  }

  private void column(BookSheet sheet, int firstRow, int column) {
    Double previous = null;
    for (int row = firstRow; row <= sheet.lastRow(); row++) {
      Place place = new Place(row, column);
      CellContent content = sheet.content(place);
      if (content.typedText() != null
          && content.typedText().chars().noneMatch(Character::isDigit)) {
        return; // another table begins
      }
      if (content.isFormula() || !(content.value() instanceof Value.Number reading)) {
        continue;
      }
      double gravity = reading.number();
      Double next = next(sheet, row + 1, column);
      if (gravity < LEAST_GRAVITY || gravity > MOST_GRAVITY) {
        mistyped(
            sheet,
            place,
            Figures.of(gravity) + " is no specific gravity of a mead; " + remedy(gravity));
      } else if (previous != null
          && next != null
          && Math.abs(gravity - (previous + next) / 2) > STEP + Math.abs(previous - next)) {
        mistyped(
            sheet,
            place,
            Figures.of(gravity)
                + " stands between "
                + Figures.of(previous)
                + " and "
                + Figures.of(next)
                + "; it may be mistyped.");
      }
      previous = gravity;
    }
  }

  private String remedy(double gravity) {
    try {
      Object read = catalogue.get("GRAVITY.READ").call(Figures.of(gravity));
      return "fill reads it as " + Figures.of((Double) read) + ": type it so.";
    } catch (Refusal e) {
      return "type it as the hydrometer shows it, 1.087 for example.";
    }
  }

  private static Double next(BookSheet sheet, int fromRow, int column) {
    for (int row = fromRow; row <= sheet.lastRow(); row++) {
      if (sheet.content(new Place(row, column)).value() instanceof Value.Number next) {
        return next.number();
      }
    }
    return null;
  }

  private void mistyped(BookSheet sheet, Place place, String sentence) {
    report.remark(Report.Code.MISTYPED, sheet.name(), place.a1(), "", sentence);
  }
}
