package meadcell.batch.recalc;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Limits;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.Calculation;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.calculation.Live;
import meadcell.batch.calculation.Outcome;
import meadcell.batch.calculation.Reproduction;
import meadcell.catalogue.Catalogue;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;
import meadcell.office.Office;

/**
 * Has an office compute the formulas of one workbook that this tool cannot. The office gets a copy
 * in which the functions that it lacks have given way to their results.
 */
public final class OfficeResults {
  /** Formulas of this tool and of the office may rest on each other in turn, this often. */
  private static final int ROUNDS = 6;

  /** Errors that are a result; any other is the office's way to say that it cannot compute. */
  private static final Set<String> RESULTS =
      Set.of("#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NUM!", "#N/A");

  private final Office office;
  private final String name;
  private final boolean secret;
  private final Limits limits;

  /**
   * The results of one workbook.
   *
   * @param name the workbook's file name
   * @param secret whether it must not lie about in the clear, not even for the office
   * @param limits how far it may unpack
   */
  public OfficeResults(Office office, String name, boolean secret, Limits limits) {
    this.office = office;
    this.name = name;
    this.secret = secret;
    this.limits = limits;
  }

  /**
   * Completes the results of a workbook's formulas.
   *
   * @param live the formulas that were computed
   * @param foreign those that only the office can compute
   * @param outcomes what came of each formula
   * @return the same with the results of the office, and of what rests on them
   */
  List<Outcome> complete(
      Book book,
      Catalogue catalogue,
      List<FormulaCell> formulas,
      CellSet live,
      CellSet foreign,
      List<Outcome> outcomes)
      throws Office.Failed {
    if (secret) {
      throw new Office.Failed(
          "The file is protected by a password, so LibreOffice gets no copy of it.");
    }
    Live own =
        (sheet, row, col) -> live.isLive(sheet, row, col) && !foreign.contains(sheet, row, col);
    try (Book copy = copy(book)) {
      List<Outcome> before = outcomes;
      for (int round = 0; round < ROUNDS; round++) {
        List<Outcome> after = new ArrayList<>(before);
        store(copy, formulas, after);
        askOffice(copy, catalogue, foreign, formulas, after);
        store(copy, formulas, after);
        Calculation calculation = new Calculation(copy, catalogue, own);
        boolean settled = true;
        for (int i = 0; i < after.size(); i++) {
          FormulaCell formula = formulas.get(i);
          boolean isOurs = formula.isOurs(catalogue);
          if (foreign.contains(formula)) {
            settled &= !isOurs || after.get(i).shown().equals(before.get(i).shown());
          } else {
            after.set(i, calculation.outcome(formula));
            settled &= !isOurs || wasSeen(copy, formula, after.get(i));
            if (isOurs && after.get(i) instanceof Outcome.Beyond) { // with more than ours in it
              foreign.add(formula);
              settled = false;
            }
          }
        }
        if (settled) {
          return after;
        }
        before = after;
      }
    } catch (IOException e) {
      throw new Office.Failed("The copy for LibreOffice could not be made: " + e.getMessage());
    }
    throw new Office.Failed(
        "Formulas for LibreOffice and the cellar functions rest on each other more than "
            + ROUNDS
            + " times over.");
  }

  /** Whether the office reckoned with this result. */
  private static boolean wasSeen(Book copy, FormulaCell formula, Outcome outcome) {
    CellContent seen = copy.sheets().get(formula.sheet()).content(formula.place());
    return outcome.shown().map(value -> Reproduction.isSame(seen, value)).orElse(true);
  }

  private static void store(Book book, List<FormulaCell> formulas, List<Outcome> outcomes) {
    for (int i = 0; i < outcomes.size(); i++) {
      FormulaCell formula = formulas.get(i);
      BookSheet sheet = book.sheets().get(formula.sheet());
      outcomes.get(i).shown().ifPresent(value -> sheet.putValue(formula.place(), value));
    }
  }

  private static byte[] bytes(Book book) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    book.write(bytes);
    return bytes.toByteArray();
  }

  private Book copy(Book book) throws IOException {
    return Books.open(bytes(book), name, limits);
  }

  private void askOffice(
      Book book,
      Catalogue catalogue,
      CellSet foreign,
      List<FormulaCell> formulas,
      List<Outcome> outcomes)
      throws Office.Failed, IOException {
    byte[] question;
    try (Book frozen = copy(book)) {
      freeze(frozen, catalogue, foreign, mixed(formulas, catalogue, foreign));
      question = bytes(frozen);
    }
    String from = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    try (Book answer = // the office's .xls can lose texts, its .ods takes numbers for truth values
        Books.open(office.recalculated(question, from, "xlsx"), "answer.xlsx", limits)) {
      for (int i = 0; i < outcomes.size(); i++) {
        FormulaCell formula = formulas.get(i);
        if (foreign.contains(formula)) {
          String sheet = book.sheets().get(formula.sheet()).name();
          outcomes.set(i, outcome(answer, sheet, formula.place()));
        }
      }
    }
  }

  /**
   * Puts results in place of every formula with functions that no office may know. A result stands
   * there as a formula, too: an empty text is not a blank, and an office tells the two apart.
   */
  private static void freeze(
      Book book, Catalogue catalogue, CellSet foreign, List<FormulaCell> mixed) {
    Calculation calculation = new Calculation(book, catalogue, new CellSet());
    for (FormulaCell formula : new Affected(book, calculation, foreign).formulas()) {
      BookSheet sheet = book.sheets().get(formula.sheet());
      if (!formula.reads().functions().isEmpty()) {
        if (sheet.content(formula.place()).isFormula()) { // arrays go as a whole
          sheet.freeze(formula.place());
        }
        put(sheet, formula.place(), literal(formula.content().value()));
      }
    }
    for (FormulaCell formula : mixed) {
      BookSheet sheet = book.sheets().get(formula.sheet());
      if (sheet.array(formula.place()) == null) {
        put(sheet, formula.place(), withoutOurs(formula, book, catalogue));
      }
    }
  }

  private static void put(BookSheet sheet, Place place, String formula) {
    if (!formula.isEmpty()) {
      sheet.putFormula(place, formula);
    }
  }

  /** Another formula in the place of one. */
  private record Supposed(int sheet, Place place, String formula) implements Live {
    @Override
    public boolean isLive(int otherSheet, int row, int column) {
      return sheet == otherSheet && place.equals(new Place(row, column));
    }

    @Override
    public CellContent taken(int otherSheet, Place other, CellContent held) {
      return sheet == otherSheet && place.equals(other)
          ? new CellContent(held.value(), formula, held.look())
          : held;
    }
  }

  /**
   * A formula with the results of our functions in their places. Functions that fill several cells
   * stay: the office says that it does not know them.
   */
  private static String withoutOurs(FormulaCell formula, Book book, Catalogue catalogue) {
    String text = formula.content().formula();
    StringBuilder rest = new StringBuilder();
    FormulaScanner tokens = new FormulaScanner(text, Dialect.EXCEL);
    int from = -1;
    int depth = 0;
    while (tokens.next()) {
      boolean isFunction = tokens.kind() == FormulaScanner.Kind.FUNCTION;
      if (from < 0 && isFunction && givesOneCell(catalogue, tokens.text())) {
        from = tokens.start();
        depth = 0;
      } else if (from < 0) {
        rest.append(tokens.text());
      } else {
        depth += tokens.kind() == FormulaScanner.Kind.OPEN ? 1 : 0;
        depth -= tokens.kind() == FormulaScanner.Kind.CLOSE ? 1 : 0;
        if (depth == 0) {
          String call = text.substring(from, tokens.end());
          Live supposed = new Supposed(formula.sheet(), formula.place(), call);
          Outcome outcome =
              new Calculation(book, catalogue, supposed).outcome(formula.sheet(), formula.place());
          String literal = outcome.shown().map(OfficeResults::literal).orElse("");
          rest.append(literal.isEmpty() ? call : literal);
          from = -1;
        }
      }
    }
    return rest.toString();
  }

  private static boolean givesOneCell(Catalogue catalogue, String name) {
    return catalogue.find(name).filter(function -> function.result().isScalar()).isPresent();
  }

  /** A result as a formula; empty where there is none. */
  private static String literal(Value value) {
    if (value instanceof Value.Number number) {
      return Double.toString(number.number());
    }
    if (value instanceof Value.Text text) {
      return '"' + text.text().replace("\"", "\"\"") + '"';
    }
    if (value instanceof Value.Truth) {
      return value + "()";
    }
    return !(value instanceof Value.Error error)
        ? ""
        : switch (error.code()) {
          case "#N/A" -> "NA()";
          case "#DIV/0!" -> "1/0";
          default -> "SQRT(-1)"; // the office's own way to refuse
        };
  }

  /** Formulas for the office that call our functions, too. */
  private static List<FormulaCell> mixed(
      List<FormulaCell> formulas, Catalogue catalogue, CellSet foreign) {
    return formulas.stream()
        .filter(formula -> foreign.contains(formula) && formula.isOurs(catalogue))
        .toList();
  }

  private static Outcome outcome(Book answer, String sheetName, Place place) {
    for (BookSheet sheet : answer.sheets()) {
      if (sheet.name().equals(sheetName)) {
        CellContent content = sheet.content(place);
        if (content.value() instanceof Value.Error error && !RESULTS.contains(error.code())) {
          return new Outcome.Beyond("LibreOffice gives " + error + ".");
        }
        return new Outcome.Computed(content.value().isBlank() ? Value.of("") : content.value());
      }
    }
    return new Outcome.Beyond("LibreOffice has no such sheet.");
  }
}
