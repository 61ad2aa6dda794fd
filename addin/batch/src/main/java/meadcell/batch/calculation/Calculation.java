package meadcell.batch.calculation;

import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.IntStream;
import meadcell.batch.book.Book;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.catalogue.Catalogue;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.formula.IStabilityClassifier;
import org.apache.poi.ss.formula.WorkbookEvaluator;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.BoolEval;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.NumericValueEval;
import org.apache.poi.ss.formula.eval.StringEval;
import org.apache.poi.ss.formula.eval.ValueEval;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;

/**
 * POI's evaluator over a workbook as it stands now, of which only some formulas are computed; after
 * a change a new calculation is needed. Every other formula stands for its stored result, so that
 * what POI cannot compute elsewhere never stops it. Sheets are meant by their position.
 */
public final class Calculation {
  private final WorkbookEvaluator evaluator;
  private final PoiFunctions functions;
  private final PoiWorkbook workbook;

  public Calculation(Book book, Catalogue catalogue, Live live) {
    this(book, new PoiFunctions(catalogue), live);
  }

  Calculation(Book book, PoiFunctions functions, Live live) {
    this.functions = functions;
    this.workbook = new PoiWorkbook(book, functions, live);
    this.evaluator = new WorkbookEvaluator(workbook, IStabilityClassifier.TOTALLY_IMMUTABLE, null);
    evaluator.setIgnoreMissingWorkbooks(true);
  }

  /** Computes a cell's formula. */
  public Outcome outcome(FormulaCell formula) {
    return formula.reads().canBeRead()
        ? outcome(formula.sheet(), formula.place())
        : new Outcome.Beyond(formula.reads().problem());
  }

  /** Computes the formula of a cell that has one. */
  public Outcome outcome(int sheet, Place place) {
    PoiCell cell = workbook.getSheet(sheet).getCell(place.row(), place.column());
    try {
      return outcome(evaluator.evaluate(cell), sheet, place);
    } catch (Unproven e) {
      return new Outcome.Beyond(e.seenFrom(cell));
    } catch (FormulaParseException e) {
      return new Outcome.Beyond("it is written in a way that is not known here.");
    } catch (UncheckedIOException e) {
      throw e; // the file, not the formula
    } catch (RuntimeException | StackOverflowError e) {
      // POI has its own gaps; each costs one cell, which its owner is told of
      return new Outcome.Beyond("it is more than this tool can compute.");
    }
  }

  private Outcome outcome(ValueEval result, int sheet, Place place) {
    if (result == ErrorEval.CIRCULAR_REF_ERROR) {
      return new Outcome.Beyond("it rests on itself.");
    }
    Value value = value(result);
    List<PoiFunctions.Refused> calls = functions.refusedIn(sheet, place.row(), place.column());
    return !(value instanceof Value.Error error) || calls.isEmpty()
        ? new Outcome.Computed(value)
        : new Outcome.Refused(error, calls);
  }

  private static Value value(ValueEval value) {
    if (value instanceof BoolEval truth) {
      return Value.of(truth.getBooleanValue());
    }
    if (value instanceof NumericValueEval number) {
      return Value.of(number.getNumberValue());
    }
    return value instanceof ErrorEval error
        ? new Value.Error(error.getErrorString())
        : Value.of(value instanceof StringEval text ? text.getStringValue() : "");
  }

  /**
   * All that a cell's formula gives, by rows, of which the cell may show one; nothing if unknown.
   */
  public List<List<Value>> all(int sheet, Place place) {
    CellReference cell =
        new CellReference(workbook.getSheetName(sheet), place.row(), place.column(), false, false);
    CellRangeAddress region =
        new CellRangeAddress(place.row(), place.row(), place.column(), place.column());
    try {
      ValueEval result = evaluator.evaluateList(PoiWorkbook.ALL + "()", cell, region);
      if (result == ErrorEval.CIRCULAR_REF_ERROR) {
        return List.of();
      }
      if (!(result instanceof AreaEval area) || result instanceof RefusedArea) {
        return List.of(List.of(value(result instanceof RefusedArea no ? no.error() : result)));
      }
      return IntStream.range(0, area.getHeight())
          .mapToObj(
              row ->
                  IntStream.range(0, area.getWidth())
                      .mapToObj(column -> value(area.getRelativeValue(row, column)))
                      .toList())
          .toList();
    } catch (UncheckedIOException e) {
      throw e; // the file, not the formula
    } catch (RuntimeException | StackOverflowError e) {
      return List.of(); // unproven, or one of POI's own gaps
    }
  }

  /** What a cell's formula reads. */
  public Reads reads(int sheet, Place place) {
    PoiCell cell = workbook.getSheet(sheet).getCell(place.row(), place.column());
    FormulaReader reader = new FormulaReader(workbook);
    try {
      return reader.tokens(workbook.written(cell), sheet);
    } catch (FormulaParseException e) {
      return reader.text(cell.formula(), sheet, "it is written in a way that is not known here.");
    }
  }
}
