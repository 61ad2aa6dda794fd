package meadcell.batch.recalc;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import meadcell.batch.book.Book;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Nearest;

/** Tells of functions that are likely the catalogue's, misspelt. */
final class Misspelt {
  private final Book book;
  private final Catalogue catalogue;
  private final Report report;

  /** What was meant by each unknown name, as a sentence; empty where nothing is near. */
  private final Map<String, String> hints = new HashMap<>();

  Misspelt(Book book, Catalogue catalogue, Report report) {
    this.book = book;
    this.catalogue = catalogue;
    this.report = report;
  }

  /** A name with a dot that is near one of ours is ours, mistyped; others may be anybody's. */
  void tell(FormulaCell formula) {
    for (String name : formula.reads().functions()) {
      if (catalogue.find(name).isPresent()) {
        continue;
      }
      String family = name.substring(0, Math.max(0, name.indexOf('.'))).toUpperCase(Locale.ROOT);
      String hint = hints.computeIfAbsent(name, this::hint);
      if (!hint.isEmpty() || catalogue.families().containsKey(family)) {
        report.remark(
            Report.Code.UNKNOWN_FUNCTION,
            book.sheets().get(formula.sheet()).name(),
            formula.place().a1(),
            formula.content().formula(),
            "the function " + name + " is not known." + hint);
      }
    }
  }

  private String hint(String name) {
    return Nearest.to(name, catalogue.names())
        .map(near -> " Did you mean " + near + "?")
        .orElse("");
  }
}
