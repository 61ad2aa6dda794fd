package meadcell.batch.recalc;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Setting;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.Calculation;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.calculation.Live;
import meadcell.batch.calculation.Outcome;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.batch.calculation.Reproduction;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;
import meadcell.office.Office;

/**
 * Computes again every formula that uses the catalogue's functions, and what rests on them. Each
 * goes by itself: what cannot be computed keeps its formula and its old value, and is reported.
 */
public final class Recalculation {
  private static final String ADVICE =
      " Open it and save it in a spreadsheet program with the cellar functions, or use"
          + " --with-office.";

  /** How the note at a cell begins that keeps its old value. */
  private static final String LEFT = "Not computed again: ";

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

  /** The same without help. */
  public Recalculation withoutOffice() {
    return new Recalculation(book, catalogue, report);
  }

  /** Computes again what uses the catalogue's functions. */
  public List<FormulaCell> run() {
    Calculation reading = new Calculation(book, catalogue, new CellSet());
    Affected formulas = new Affected(book, reading, new CellSet());
    formulas.formulas().forEach(new Misspelt(book, catalogue, report)::tell);
    List<FormulaCell> affected = formulas.from(f -> f.isOurs(catalogue));
    if (!affected.isEmpty()) {
      tellOfRounding(book, report);
    }
    List<Outcome> outcomes = outcomes(affected, Map.of());
    for (int i = 0; i < affected.size(); i++) {
      settle(affected.get(i), outcomes.get(i));
    }
    return affected;
  }

  /** Says that an office would round results that are not rounded here. */
  public static void tellOfRounding(Book book, Report report) {
    if (book.settings().contains(Setting.AS_SHOWN)) {
      report.remark(
          Report.Code.FILE,
          "",
          "",
          "",
          "The workbook calculates with numbers as they are shown; results of cellar functions are"
              + " stored in full here, and a spreadsheet program rounds them when it calculates.");
    }
  }

  /** Formulas to compute, except those whose stored results are not reproduced. */
  private record Except(CellSet live, Map<Reproduction.Cell, String> strange) implements Live {
    @Override
    public boolean isLive(int sheet, int row, int column) {
      return live.isLive(sheet, row, column);
    }

    @Override
    public Optional<String> obstacle(int sheet, Place place) {
      return Optional.ofNullable(strange.get(new Reproduction.Cell(sheet, place)));
    }
  }

  /**
   * Computes some formulas again; stores nothing.
   *
   * @param before what cells held that were written to since the results were stored
   */
  public List<Outcome> outcomes(
      List<FormulaCell> formulas, Map<Reproduction.Cell, CellContent> before) {
    boolean isAsShown = book.settings().contains(Setting.AS_SHOWN);
    CellSet live = new CellSet();
    Map<Reproduction.Cell, String> strange = new HashMap<>();
    Reproduction reproduction = new Reproduction(book, catalogue, before);
    for (FormulaCell formula : formulas) {
      live.add(formula);
      boolean isStored = !formula.content().value().isBlank();
      if (isAsShown && !formula.isOurs(catalogue)) {
        strange.put(
            new Reproduction.Cell(formula.sheet(), formula.place()),
            Setting.AS_SHOWN.sentence() + ".");
      } else if (isStored && !formula.isOurs(catalogue)) {
        reproduction
            .obstacle(formula)
            .ifPresent(
                reason ->
                    strange.put(new Reproduction.Cell(formula.sheet(), formula.place()), reason));
      }
    }
    Calculation calculation = new Calculation(book, catalogue, new Except(live, strange));
    List<Outcome> outcomes = formulas.stream().map(calculation::outcome).toList();
    CellSet foreign = foreign(formulas, outcomes);
    if (office != null && !foreign.isEmpty()) {
      try {
        return office.complete(book, catalogue, formulas, live, foreign, outcomes);
      } catch (Office.Failed e) {
        report.remark(Report.Code.FILE, "", "", "", e.getMessage());
      }
    }
    return outcomes;
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

  /** Stores a result, or says at the cell and in the report that there is none. */
  public void settle(FormulaCell formula, Outcome outcome) {
    BookSheet sheet = book.sheets().get(formula.sheet());
    if (outcome instanceof Outcome.Beyond beyond) {
      String sentence =
          "keeps its old value, because "
              + called(formula.content().formula())
              + " cannot be computed here: "
              + beyond.reason()
              + (office == null ? ADVICE : "");
      report.remark(
          Report.Code.STALE,
          sheet.name(),
          formula.place().a1(),
          formula.content().formula(),
          sentence);
      report.notes().markOneOfMany(sheet, formula.place(), LEFT, sentence);
      return;
    }
    report.notes().unmark(sheet, formula.place(), LEFT);
    if (outcome instanceof Outcome.Refused refused) {
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

  /** The functions that a formula calls, for people. */
  private static String called(String formula) {
    Set<String> functions = new LinkedHashSet<>();
    FormulaScanner tokens = new FormulaScanner(formula, Dialect.EXCEL);
    while (tokens.next()) {
      if (tokens.kind() == FormulaScanner.Kind.FUNCTION) {
        functions.add(tokens.text().replaceFirst("(?i)^_xl(fn|l)\\.(_xlws\\.)?", ""));
      }
    }
    return functions.isEmpty() ? "the formula" : "its formula with " + String.join(", ", functions);
  }

  private void store(BookSheet sheet, FormulaCell formula, Value result) {
    if (Reproduction.isSame(formula.content(), result)) {
      report.unchanged();
      return;
    }
    sheet.putValue(formula.place(), result);
    report.changed(
        Report.Change.ofFormula(
            sheet.name(),
            formula.place(),
            formula.content().formula(),
            formula.content().value(),
            result));
  }
}
