package meadcell.batch.recalc;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.Affected;
import meadcell.batch.calculation.Calculation;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.calculation.Live;
import meadcell.batch.calculation.Reads;
import meadcell.catalogue.Catalogue;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;

/**
 * Makes of a workbook's copy what an office can compute: functions that it lacks give way to their
 * results. A formula in which some are left is not asked for, as IFERROR takes their error for an
 * answer.
 *
 * @param unknown functions that neither the catalogue nor the office knows, also of the usual ones
 */
record OfficeCopy(Catalogue catalogue, Set<String> unknown) {
  /** As long as a formula may be in an office. */
  private static final int LONGEST = 8192;

  /** Nearly as long as a text in one may be. */
  private static final int PIECE = 250;

  /**
   * Prepares a copy.
   *
   * @param asked the formulas that the office is asked for
   * @return why it cannot be asked for some of them
   */
  Map<FormulaCell, String> prepare(Book book, List<FormulaCell> asked) {
    CellSet open = new CellSet();
    asked.forEach(open::add);
    freeze(book, open);
    Map<Anchor, String> texts = new LinkedHashMap<>();
    Map<Anchor, Optional<String>> reasons = new HashMap<>();
    Map<FormulaCell, String> untold = new HashMap<>();
    for (FormulaCell formula : asked) {
      Anchor anchor = anchor(formula, book);
      if (!reasons.containsKey(anchor)) {
        String text =
            formula.isOurs(catalogue)
                ? withoutOurs(formula, anchor, book)
                : formula.content().formula();
        if (!text.equals(formula.content().formula())) {
          texts.put(anchor, text);
        }
        reasons.put(anchor, lacking(formula, anchor, text, book));
      }
      reasons.get(anchor).ifPresent(reason -> untold.put(formula, reason));
    }
    texts.forEach((anchor, text) -> anchor.put(book, text));
    return untold;
  }

  /** Where a formula stands, an array formula with its first cell. */
  private record Anchor(int sheet, Place place) {
    void put(Book book, String formula) {
      BookSheet there = book.sheets().get(sheet);
      Span array = there.array(place);
      if (array == null) {
        there.putFormula(place, formula);
      } else {
        there.freeze(place); // .xls keeps the array formula that is there
        there.putArray(array, formula);
      }
    }
  }

  private static Anchor anchor(FormulaCell formula, Book book) {
    Span array = book.sheets().get(formula.sheet()).array(formula.place());
    return new Anchor(formula.sheet(), array == null ? formula.place() : array.first());
  }

  /**
   * Puts results in place of every other formula with functions that no office may know. A result
   * stands there as a formula, too: an empty text is not a blank, and an office tells the two
   * apart.
   */
  private void freeze(Book book, CellSet open) {
    Calculation reading = new Calculation(book, catalogue, new CellSet());
    for (FormulaCell formula : new Affected(book, reading, open).formulas()) {
      BookSheet sheet = book.sheets().get(formula.sheet());
      if (!formula.reads().functions().isEmpty()) {
        if (sheet.content(formula.place()).isFormula()) { // arrays go as a whole
          sheet.freeze(formula.place());
        }
        String result = literal(formula.content().value());
        if (!result.isEmpty()) {
          sheet.putFormula(formula.place(), result);
        }
      }
    }
  }

  private Optional<String> lacking(FormulaCell formula, Anchor anchor, String text, Book book) {
    Reads reads =
        text.equals(formula.content().formula())
            ? formula.reads()
            : new Calculation(book, catalogue, new Supposed(anchor, text))
                .reads(anchor.sheet, anchor.place);
    Optional<String> ours =
        reads.functions().stream()
            .filter(function -> catalogue.find(function).isPresent())
            .findFirst();
    return ours.map(name -> name + " stands in it with what only LibreOffice can compute.")
        .or(
            () ->
                Stream.concat(reads.functions().stream(), reads.usual().stream())
                    .filter(unknown::contains)
                    .findFirst()
                    .map(name -> "LibreOffice does not know its function " + name + " either."));
  }

  /** Another formula in the place of one. */
  private record Supposed(Anchor there, String formula) implements Live {
    @Override
    public boolean isLive(int sheet, int row, int column) {
      return isThere(sheet, new Place(row, column));
    }

    @Override
    public CellContent taken(int sheet, Place place, CellContent held) {
      return isThere(sheet, place) ? new CellContent(held.value(), formula, held.look()) : held;
    }

    private boolean isThere(int sheet, Place place) {
      return there.equals(new Anchor(sheet, place));
    }
  }

  /** A formula with the results of our functions in their places, where there are results. */
  private String withoutOurs(FormulaCell formula, Anchor anchor, Book book) {
    String text = formula.content().formula();
    StringBuilder rest = new StringBuilder();
    FormulaScanner tokens = new FormulaScanner(text, Dialect.EXCEL);
    int from = -1;
    int depth = 0;
    while (tokens.next()) {
      boolean isFunction = tokens.kind() == FormulaScanner.Kind.FUNCTION;
      if (from < 0 && isFunction && catalogue.find(tokens.text()).isPresent()) {
        from = tokens.start();
        depth = 0;
      } else if (from < 0) {
        rest.append(tokens.text());
      } else {
        depth += tokens.kind() == FormulaScanner.Kind.OPEN ? 1 : 0;
        depth -= tokens.kind() == FormulaScanner.Kind.CLOSE ? 1 : 0;
        if (depth == 0) {
          String call = text.substring(from, tokens.end());
          List<List<Value>> result =
              new Calculation(book, catalogue, new Supposed(anchor, call))
                  .all(anchor.sheet, anchor.place);
          String literal = literal(result);
          rest.append(literal.isEmpty() ? call : literal);
          from = -1;
        }
      }
    }
    return rest.length() > LONGEST ? text : rest.toString();
  }

  /** A result as a formula; empty where it cannot be written so. */
  private static String literal(List<List<Value>> rows) {
    List<Value> values = rows.stream().flatMap(List::stream).distinct().toList();
    if (values.size() == 1
        && (rows.size() == 1 && rows.get(0).size() == 1 || values.get(0).isError())) {
      return literal(values.get(0));
    }
    boolean isArray = values.stream().noneMatch(value -> value.isError() || isLong(value));
    if (values.isEmpty() || !isArray) {
      return "";
    }
    return rows.stream()
        .map(row -> row.stream().map(OfficeCopy::literal).collect(Collectors.joining(",")))
        .collect(Collectors.joining(";", "{", "}"));
  }

  /** A text in pieces, as a formula holds no longer ones. */
  private static String quoted(String text) {
    String piece = '"' + text.substring(0, cut(text)).replace("\"", "\"\"") + '"';
    return cut(text) == text.length()
        ? piece
        : "(" + piece + "&" + quoted(text.substring(cut(text))) + ")";
  }

  private static boolean isLong(Value value) {
    return value instanceof Value.Text text && text.text().length() > PIECE;
  }

  private static int cut(String text) {
    int end = Math.min(text.length(), PIECE);
    boolean isInside = end < text.length() && Character.isLowSurrogate(text.charAt(end));
    return isInside ? end - 1 : end;
  }

  private static String literal(Value value) {
    if (value instanceof Value.Number number) {
      return Double.toString(number.number());
    }
    if (value instanceof Value.Text text) {
      return quoted(text.text());
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
}
