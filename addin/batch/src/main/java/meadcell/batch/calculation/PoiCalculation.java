package meadcell.batch.calculation;

import java.util.List;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.CellError;
import meadcell.batch.book.Place;
import org.apache.poi.hssf.usermodel.HSSFEvaluationWorkbook;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.formula.EvaluationCell;
import org.apache.poi.ss.formula.EvaluationName;
import org.apache.poi.ss.formula.EvaluationSheet;
import org.apache.poi.ss.formula.EvaluationWorkbook;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.formula.FormulaParsingWorkbook;
import org.apache.poi.ss.formula.IStabilityClassifier;
import org.apache.poi.ss.formula.WorkbookEvaluator;
import org.apache.poi.ss.formula.atp.AnalysisToolPak;
import org.apache.poi.ss.formula.eval.BoolEval;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.NotImplementedException;
import org.apache.poi.ss.formula.eval.NumericValueEval;
import org.apache.poi.ss.formula.eval.StringEval;
import org.apache.poi.ss.formula.eval.ValueEval;
import org.apache.poi.ss.formula.ptg.NamePtg;
import org.apache.poi.ss.formula.ptg.NameXPtg;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.ss.formula.udf.AggregatingUDFFinder;
import org.apache.poi.ss.formula.udf.UDFFinder;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFEvaluationWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * POI's evaluator over a workbook of which only some formulas are computed. Every other formula
 * stands for its stored result, so that what POI cannot compute elsewhere never stops it.
 */
public final class PoiCalculation implements Book.Calculation {
  private final List<? extends BookSheet> sheets;
  private final Book.Live live;
  private final WorkbookEvaluator evaluator;
  private final View view;

  /**
   * A calculation.
   *
   * @param sheets where the cells are
   * @param names a workbook of the same sheets, asked for their names and for defined ones only
   */
  public PoiCalculation(
      List<? extends BookSheet> sheets, Workbook names, PoiFunctions functions, Book.Live live) {
    this.sheets = sheets;
    this.live = live;
    this.view = new View(names, functions);
    this.evaluator = new WorkbookEvaluator(view, IStabilityClassifier.TOTALLY_IMMUTABLE, null);
    evaluator.setIgnoreMissingWorkbooks(true);
  }

  @Override
  public Object result(int sheet, Place place) throws Book.CannotCalculate {
    EvaluationCell cell = view.getSheet(sheet).getCell(place.row(), place.column());
    try {
      return plain(evaluator.evaluate(cell));
    } catch (NotImplementedException e) {
      Throwable root = e;
      while (root.getCause() != null) {
        root = root.getCause();
      }
      throw new Book.CannotCalculate(root.getMessage());
    } catch (FormulaParseException e) {
      throw new Book.CannotCalculate(
          "the formula cannot be read; check its brackets, signs and separators.");
    } catch (RuntimeException | StackOverflowError e) {
      // POI has its own gaps; each costs one cell, which its owner is told of
      throw new Book.CannotCalculate(e.getMessage() == null ? e.toString() : e.getMessage());
    }
  }

  @Override
  public Reads reads(int sheet, Place place) {
    EvaluationCell cell = view.getSheet(sheet).getCell(place.row(), place.column());
    try {
      return new FormulaReader(view.names).tokens(view.getFormulaTokens(cell), sheet);
    } catch (FormulaParseException e) {
      String formula = ((CellView) cell).content.formula();
      return new FormulaReader(view.names).text(formula, sheet, e.getMessage());
    }
  }

  private static Object plain(ValueEval value) throws Book.CannotCalculate {
    if (value == ErrorEval.CIRCULAR_REF_ERROR) {
      throw new Book.CannotCalculate("it rests on itself.");
    }
    if (value instanceof BoolEval truth) {
      return truth.getBooleanValue();
    }
    if (value instanceof NumericValueEval number) {
      return number.getNumberValue();
    }
    if (value instanceof StringEval text) {
      return text.getStringValue();
    }
    return new CellError(((ErrorEval) value).getErrorString());
  }

  /** The workbook as the evaluator sees it. */
  private final class View implements EvaluationWorkbook {
    private final EvaluationWorkbook names;
    private final FormulaTokens tokens;
    private final UDFFinder functions;
    private final SheetView[] views = new SheetView[sheets.size()];

    View(Workbook workbook, PoiFunctions functions) {
      this.functions = new AggregatingUDFFinder(functions, AnalysisToolPak.instance);
      this.names =
          workbook instanceof XSSFWorkbook xssf
              ? XSSFEvaluationWorkbook.create(xssf)
              : HSSFEvaluationWorkbook.create((HSSFWorkbook) workbook);
      this.tokens = new FormulaTokens((FormulaParsingWorkbook) names);
    }

    @Override
    public EvaluationSheet getSheet(int sheetIndex) {
      if (views[sheetIndex] == null) {
        views[sheetIndex] = new SheetView(sheetIndex);
      }
      return views[sheetIndex];
    }

    @Override
    public int getSheetIndex(EvaluationSheet sheet) {
      return ((SheetView) sheet).index;
    }

    @Override
    public Ptg[] getFormulaTokens(EvaluationCell cell) {
      CellView viewed = (CellView) cell;
      int row = viewed.getRowIndex();
      int column = viewed.getColumnIndex();
      if (viewed.isPartOfArrayFormulaGroup()) { // one formula, not copied down
        row = viewed.getArrayFormulaRange().getFirstRow();
        column = viewed.getArrayFormulaRange().getFirstColumn();
      }
      return tokens.of(viewed.content.formula(), viewed.sheet.index, row, column);
    }

    @Override
    public UDFFinder getUDFFinder() {
      return functions;
    }

    @Override
    public String getSheetName(int sheetIndex) {
      return names.getSheetName(sheetIndex);
    }

    @Override
    public int getSheetIndex(String sheetName) {
      return names.getSheetIndex(sheetName);
    }

    @Override
    public ExternalSheet getExternalSheet(int externSheetIndex) {
      return names.getExternalSheet(externSheetIndex);
    }

    @Override
    public ExternalSheet getExternalSheet(String first, String last, int externalWorkbookNumber) {
      return names.getExternalSheet(first, last, externalWorkbookNumber);
    }

    @Override
    public int convertFromExternSheetIndex(int externSheetIndex) {
      return names.convertFromExternSheetIndex(externSheetIndex);
    }

    @Override
    public ExternalName getExternalName(int externSheetIndex, int externNameIndex) {
      return names.getExternalName(externSheetIndex, externNameIndex);
    }

    @Override
    public ExternalName getExternalName(String name, String sheet, int externalWorkbookNumber) {
      return names.getExternalName(name, sheet, externalWorkbookNumber);
    }

    @Override
    public EvaluationName getName(NamePtg namePtg) {
      return names.getName(namePtg);
    }

    @Override
    public EvaluationName getName(String name, int sheetIndex) {
      boolean isFunction = functions.findFunction(name) != null; // asked for at every call
      return isFunction ? null : names.getName(name, sheetIndex);
    }

    @Override
    public String resolveNameXText(NameXPtg ptg) {
      return names.resolveNameXText(ptg);
    }

    @Override
    public SpreadsheetVersion getSpreadsheetVersion() {
      return names.getSpreadsheetVersion();
    }

    @Override
    public void clearAllCachedResultValues() {
      // nothing is kept here
    }
  }

  private final class SheetView implements PoiFunction.Arrays, EvaluationSheet {
    private final int index;
    private final BookSheet sheet;

    SheetView(int index) {
      this.index = index;
      this.sheet = sheets.get(index);
    }

    @Override
    public EvaluationCell getCell(int row, int column) {
      if (row < 0 || column < 0) {
        return null;
      }
      Place place = new Place(row, column);
      CellContent content = sheet.content(place);
      boolean isNothing = content.value() == null && !content.isFormula();
      return isNothing ? null : new CellView(this, place, content);
    }

    @Override
    public boolean isInArray(int row, int column) {
      return sheet.array(new Place(row, column)) != null;
    }

    @Override
    public void clearAllCachedResultValues() {
      // nothing is kept here
    }

    @Override
    public int getLastRowNum() {
      return sheet.lastRow();
    }

    @Override
    public boolean isRowHidden(int row) {
      return sheet.isHidden(row);
    }
  }

  /** A cell; a formula that is not live looks like the plain value it last gave, if it has one. */
  private final class CellView implements EvaluationCell {
    private record Key(int sheet, Place place) {}

    private final SheetView sheet;
    private final Place place;
    private final CellContent content;

    CellView(SheetView sheet, Place place, CellContent content) {
      this.sheet = sheet;
      this.place = place;
      this.content = content;
    }

    @Override
    public Object getIdentityKey() {
      return new Key(sheet.index, place);
    }

    @Override
    public EvaluationSheet getSheet() {
      return sheet;
    }

    @Override
    public int getRowIndex() {
      return place.row();
    }

    @Override
    public int getColumnIndex() {
      return place.column();
    }

    @Override
    public CellType getCellType() {
      boolean isComputed =
          content.isFormula()
              && (content.value() == null || live.isLive(sheet.index, place.row(), place.column()));
      return isComputed ? CellType.FORMULA : getCachedFormulaResultType();
    }

    @Override
    public CellType getCachedFormulaResultType() {
      Object value = content.value();
      return value instanceof Double
          ? CellType.NUMERIC
          : value instanceof String
              ? CellType.STRING
              : value instanceof Boolean
                  ? CellType.BOOLEAN
                  : value instanceof CellError ? CellType.ERROR : CellType.BLANK;
    }

    @Override
    public double getNumericCellValue() {
      return (Double) content.value();
    }

    @Override
    public String getStringCellValue() {
      return (String) content.value();
    }

    @Override
    public boolean getBooleanCellValue() {
      return (Boolean) content.value();
    }

    @Override
    public int getErrorCellValue() {
      return SheetError.code((CellError) content.value());
    }

    @Override
    public CellRangeAddress getArrayFormulaRange() {
      BookSheet.Span span = sheet.sheet.array(place);
      return new CellRangeAddress(
          span.first().row(), span.last().row(), span.first().column(), span.last().column());
    }

    @Override
    public boolean isPartOfArrayFormulaGroup() {
      return sheet.sheet.array(place) != null;
    }
  }
}
