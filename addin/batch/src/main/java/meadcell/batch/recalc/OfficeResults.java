package meadcell.batch.recalc;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.CellError;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Place;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.Affected.FormulaCell;
import meadcell.batch.calculation.Beyond;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.batch.office.Office;

/**
 * Has an office compute the formulas of one workbook that this tool cannot. The office gets a copy
 * in which the functions that it lacks have given way to their results.
 */
public final class OfficeResults {
  /** Formulas of this tool and of the office may rest on each other in turn, this often. */
  private static final int ROUNDS = 4;

  private final Office office;
  private final String name;
  private final boolean secret;

  /**
   * The results of one workbook.
   *
   * @param name the workbook's file name
   * @param secret whether it must not lie about in the clear, not even for the office
   */
  public OfficeResults(Office office, String name, boolean secret) {
    this.office = office;
    this.name = name;
    this.secret = secret;
  }

  /**
   * Completes the results of a workbook's formulas.
   *
   * @param live the formulas that were computed
   * @param foreign those that only the office can compute
   * @param outcomes the result, or {@link Beyond}, of each formula
   * @return the same with the results of the office, and of what rests on them
   */
  Object[] complete(
      Book book,
      PoiFunctions functions,
      List<FormulaCell> formulas,
      CellSet live,
      CellSet foreign,
      Object[] outcomes)
      throws Office.Failed {
    if (secret) {
      throw new Office.Failed(
          "The file is protected by a password, so LibreOffice gets no copy of it.");
    }
    Book.Live own =
        (sheet, row, col) -> live.isLive(sheet, row, col) && !foreign.contains(sheet, row, col);
    try (Book copy = copy(book, functions)) {
      Object[] before = outcomes;
      for (int round = 0; round < ROUNDS; round++) {
        Object[] after = before.clone();
        store(copy, formulas, after);
        askOffice(copy, functions, foreign, formulas, after);
        store(copy, formulas, after);
        functions.takeRefused();
        functions.forget();
        Book.Calculation calculation = copy.calculation(functions, own);
        boolean settled = true;
        for (int i = 0; i < after.length; i++) {
          FormulaCell formula = formulas.get(i);
          if (!contains(foreign, formula)) {
            after[i] = Recalculation.outcome(formula, calculation);
            settled &=
                !Recalculation.isOurs(formula, functions) || wasSeen(copy, formula, after[i]);
          }
        }
        if (settled) {
          return after;
        }
        before = after;
      }
    } catch (IOException | FileRefused e) {
      throw new Office.Failed("The copy for LibreOffice could not be made: " + e.getMessage());
    }
    throw new Office.Failed(
        "Formulas for LibreOffice and the cellar functions rest on each other more than "
            + ROUNDS
            + " times over.");
  }

  /** Whether the office reckoned with this result. */
  private static boolean wasSeen(Book copy, FormulaCell formula, Object outcome) {
    CellContent seen = copy.sheets().get(formula.sheet()).content(formula.place());
    return outcome instanceof Beyond || Recalculation.isSame(seen, outcome);
  }

  private static boolean contains(CellSet set, FormulaCell formula) {
    return set.contains(formula.sheet(), formula.place().row(), formula.place().column());
  }

  private static void store(Book book, List<FormulaCell> formulas, Object[] outcomes) {
    for (int i = 0; i < outcomes.length; i++) {
      if (!(outcomes[i] instanceof Beyond)) {
        FormulaCell formula = formulas.get(i);
        book.sheets().get(formula.sheet()).putValue(formula.place(), outcomes[i]);
      }
    }
  }

  private static byte[] bytes(Book book) throws IOException, FileRefused {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    book.write(bytes);
    return bytes.toByteArray();
  }

  private Book copy(Book book, PoiFunctions functions) throws IOException, FileRefused {
    return Books.open(bytes(book), name, functions);
  }

  private void askOffice(
      Book book,
      PoiFunctions functions,
      CellSet foreign,
      List<FormulaCell> formulas,
      Object[] outcomes)
      throws Office.Failed, IOException, FileRefused {
    byte[] question;
    try (Book frozen = copy(book, functions)) {
      freeze(frozen, functions, foreign);
      question = bytes(frozen);
    }
    String from = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    String to = from.equals("ods") ? "ods" : "xlsx"; // the office's .xls can lose texts
    try (Book answer =
        Books.open(office.recalculated(question, from, to), "answer." + to, functions)) {
      for (int i = 0; i < outcomes.length; i++) {
        FormulaCell formula = formulas.get(i);
        if (contains(foreign, formula)) {
          String sheet = book.sheets().get(formula.sheet()).name();
          outcomes[i] = outcome(answer, sheet, formula.place());
        }
      }
    }
  }

  /** Puts results in place of every formula with functions that no office may know. */
  private static void freeze(Book book, PoiFunctions functions, CellSet foreign) {
    Book.Calculation calculation = book.calculation(functions, new CellSet());
    for (FormulaCell formula : new Affected(book, calculation, foreign).formulas()) {
      BookSheet sheet = book.sheets().get(formula.sheet());
      boolean isFormula = sheet.content(formula.place()).isFormula(); // arrays go as a whole
      if (isFormula && !formula.reads().functions().isEmpty()) {
        sheet.freeze(formula.place());
      }
    }
  }

  private static Object outcome(Book answer, String sheetName, Place place) {
    for (BookSheet sheet : answer.sheets()) {
      if (sheet.name().equals(sheetName)) {
        CellContent content = sheet.content(place);
        if (content.value() instanceof CellError error && !isKnown(error)) {
          return new Beyond("LibreOffice gives " + error + ".");
        }
        return content.value() == null ? "" : content.value();
      }
    }
    return new Beyond("LibreOffice has no such sheet.");
  }

  /** Whether an error is a result, not the office's way to say that it cannot read the formula. */
  private static boolean isKnown(CellError error) {
    return error.text().startsWith("#") && !error.text().equals("#NAME?");
  }
}
