package meadcell.batch.calculation;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.catalogue.Catalogue;

/**
 * Whether this tool gets from the stored inputs what a formula had as its stored result. What it
 * cannot reproduce it must not replace: the program that stored it may compute otherwise.
 */
public final class Reproduction {
  /** Relative; programs differ in the last digits, and searches widen that. */
  private static final double ROUNDING = 1e-9;

  /** A second, in days: some files store times no finer. */
  private static final double SECOND = 1.2e-5;

  private static final Set<String> INVALID = Set.of("#NUM!", "#REF!");

  /** A cell of one of the sheets. */
  public record Cell(int sheet, Place place) {}

  private final Calculation calculation;
  private Cell current;

  /**
   * A reproduction from what a workbook holds now.
   *
   * @param before what cells held that were written to since
   */
  public Reproduction(Book book, Catalogue catalogue, Map<Cell, CellContent> before) {
    calculation =
        new Calculation(
            book,
            catalogue,
            new Live() {
              @Override
              public boolean isLive(int sheet, int row, int column) {
                return current.equals(new Cell(sheet, new Place(row, column)));
              }

              @Override
              public CellContent taken(int sheet, Place place, CellContent held) {
                return before.isEmpty() ? held : before.getOrDefault(new Cell(sheet, place), held);
              }
            });
  }

  /** Why a formula's stored result is not reproduced; nothing if it is. */
  public Optional<String> obstacle(FormulaCell formula) {
    current = new Cell(formula.sheet(), formula.place());
    Outcome outcome = calculation.outcome(formula);
    if (outcome instanceof Outcome.Beyond beyond) {
      return Optional.of(beyond.reason());
    }
    return isSame(formula.content(), outcome.shown().orElseThrow())
        ? Optional.empty()
        : Optional.of("from the same inputs, this tool gets another value than the stored one.");
  }

  /** Whether two results are one, but for rounding. */
  public static boolean isSame(CellContent before, Value after) {
    Value stored = numbered(before.value());
    Value now = numbered(after);
    if (!(stored instanceof Value.Number a && now instanceof Value.Number b)) {
      return now.equals(stored);
    }
    double allowed =
        before.look() == CellContent.Look.DATE
            ? SECOND
            : ROUNDING * Math.max(Math.abs(a.number()), Math.abs(b.number()));
    return Math.abs(a.number() - b.number()) <= allowed;
  }

  /** Some files have no truth values and fewer kinds of errors. */
  private static Value numbered(Value value) {
    if (value instanceof Value.Truth truth) {
      return Value.of(truth.isTrue() ? 1.0 : 0.0);
    }
    boolean isInvalid =
        value instanceof Value.Error error
            && (INVALID.contains(error.code()) || error.code().startsWith("Err:"));
    return isInvalid ? new Value.Error("#VALUE!") : value;
  }
}
