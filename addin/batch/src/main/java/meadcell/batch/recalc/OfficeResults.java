package meadcell.batch.recalc;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
import meadcell.batch.calculation.Reads;
import meadcell.batch.calculation.Reproduction;
import meadcell.catalogue.Catalogue;
import meadcell.office.Office;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;

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

  /** Before the names of functions in .xlsx that came after its first version. */
  private static final String PREFIX = "_xlfn.";

  private static final Value NO_SUCH_NAME = new Value.Error("#NAME?");

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
      OfficeCopy question = new OfficeCopy(catalogue, unknown(copy, catalogue, formulas));
      List<Outcome> before = outcomes;
      for (int round = 0; round < ROUNDS; round++) {
        List<Outcome> after = new ArrayList<>(before);
        store(copy, formulas, after);
        ask(copy, question, foreign, formulas, after);
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
          return founded(book, catalogue, formulas, outcomes, after);
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

  /**
   * The outcomes without those that rest on what nobody computed: an office can take its error for
   * an answer, as IFERROR and COUNT do, and would reckon with nonsense.
   *
   * @param alone what came of each formula without the office, and does not rest on it
   */
  private static List<Outcome> founded(
      Book book,
      Catalogue catalogue,
      List<FormulaCell> formulas,
      List<Outcome> alone,
      List<Outcome> outcomes) {
    List<Reads.Area> lacking = new ArrayList<>();
    for (int i = 0; i < outcomes.size(); i++) {
      if (outcomes.get(i) instanceof Outcome.Beyond) {
        Place place = formulas.get(i).place();
        lacking.add(Reads.Area.of(formulas.get(i).sheet(), place));
      }
    }
    Calculation reading = new Calculation(book, catalogue, new CellSet());
    CellSet unfounded = new CellSet();
    new Affected(book, reading, new CellSet()).from(lacking).forEach(unfounded::add);
    List<Outcome> founded = new ArrayList<>(outcomes);
    for (int i = 0; i < outcomes.size(); i++) {
      if (alone.get(i) instanceof Outcome.Beyond
          && !(outcomes.get(i) instanceof Outcome.Beyond)
          && unfounded.contains(formulas.get(i))) {
        founded.set(i, new Outcome.Beyond("it rests on what cannot be computed here."));
      }
    }
    return founded;
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

  /** The functions that the office does not know. */
  private Set<String> unknown(Book book, Catalogue catalogue, List<FormulaCell> formulas)
      throws Office.Failed, IOException {
    Set<String> others = new HashSet<>();
    Set<String> usual = new HashSet<>();
    for (FormulaCell formula : formulas) {
      others.addAll(formula.reads().functions());
      usual.addAll(formula.reads().usual());
    }
    others.removeIf(function -> catalogue.find(function).isPresent());
    Set<String> unknown = new HashSet<>();
    try (Book copy = copy(book)) {
      unknown.addAll(unknown(copy, others, ending()));
    }
    // .xls stores a usual one only with as many arguments as it takes; .xlsx has two names for some
    Set<String> names = new HashSet<>(usual);
    usual.forEach(name -> names.add(PREFIX + name));
    try (Book blank = blank()) {
      Set<String> so = unknown(blank, names, "xlsx");
      usual.stream()
          .filter(name -> so.contains(name) && so.contains(PREFIX + name))
          .forEach(unknown::add);
    }
    return unknown;
  }

  /** Called with nothing, the office names none of those that it does not know. */
  private Set<String> unknown(Book question, Set<String> functions, String ending)
      throws Office.Failed, IOException {
    Set<String> unknown = new HashSet<>();
    if (functions.isEmpty()) {
      return unknown;
    }
    BookSheet sheet = question.sheets().get(0);
    int first = sheet.lastRow() + 1;
    List<String> all = List.copyOf(functions);
    for (int i = 0; i < all.size(); i++) {
      sheet.putFormula(new Place(first + i, 0), all.get(i) + "()");
    }
    try (Book answer = answer(bytes(question), ending)) {
      for (int i = 0; i < all.size(); i++) {
        CellContent content = answer.sheets().get(0).content(new Place(first + i, 0));
        if (content.value().equals(NO_SUCH_NAME)) {
          unknown.add(all.get(i));
        }
      }
    }
    return unknown;
  }

  private Book blank() throws IOException {
    try (Workbook workbook = WorkbookFactory.create(true);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      workbook.createSheet();
      workbook.write(bytes);
      return Books.open(bytes.toByteArray(), "question.xlsx", limits);
    }
  }

  /** Asks the office for the foreign formulas of a workbook as it stands now. */
  private void ask(
      Book book,
      OfficeCopy question,
      CellSet foreign,
      List<FormulaCell> formulas,
      List<Outcome> outcomes)
      throws Office.Failed, IOException {
    Map<FormulaCell, String> untold;
    byte[] asked;
    try (Book copy = copy(book)) {
      untold = question.prepare(copy, formulas.stream().filter(foreign::contains).toList());
      asked = bytes(copy);
    }
    try (Book answer = answer(asked, ending())) {
      for (int i = 0; i < outcomes.size(); i++) {
        FormulaCell formula = formulas.get(i);
        if (untold.containsKey(formula)) {
          outcomes.set(i, new Outcome.Beyond(untold.get(formula)));
        } else if (foreign.contains(formula)) {
          String sheet = book.sheets().get(formula.sheet()).name();
          outcomes.set(i, outcome(answer, sheet, formula.place()));
        }
      }
    }
  }

  /** The office's answer; its .xls can lose texts, its .ods takes numbers for truth values. */
  private Book answer(byte[] question, String from) throws Office.Failed, IOException {
    return Books.open(office.recalculated(question, from, "xlsx"), "answer.xlsx", limits);
  }

  private String ending() {
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
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
