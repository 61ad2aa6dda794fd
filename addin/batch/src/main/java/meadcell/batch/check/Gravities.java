package meadcell.batch.check;

import java.util.Locale;
import java.util.Set;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Figures;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;

/** Looks for gravities that cannot be what was read. */
record Gravities(Catalogue catalogue, Report report) {
  private static final Set<String> HEADERS = Set.of("sg", "gravity", "hydrometer", "fg");
  private static final Range PLAUSIBLE = Quantity.SPECIFIC_GRAVITY.plausible().orElseThrow();

  /**
   * A rise that no ferment shows between two readings, and no hydrometer misses (common practice,
   * no source).
   */
  private static final double STEP = 0.02;

  void check(BookSheet sheet) {
    for (int row = 0; row <= sheet.lastRow(); row++) {
      for (int column = 0; column <= sheet.lastColumn(row); column++) {
        String header = sheet.content(new Place(row, column)).typedText();
        if (header != null && HEADERS.contains(header.strip().toLowerCase(Locale.ROOT))) {
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
      if (!PLAUSIBLE.contains(gravity)) {
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
