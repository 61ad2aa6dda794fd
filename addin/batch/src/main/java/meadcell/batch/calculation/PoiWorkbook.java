package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.DefinedName;
import meadcell.batch.book.NamedTable;
import meadcell.batch.book.Place;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.formula.EvaluationCell;
import org.apache.poi.ss.formula.EvaluationSheet;
import org.apache.poi.ss.formula.EvaluationWorkbook;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.formula.FormulaParsingWorkbook;
import org.apache.poi.ss.formula.OperationEvaluationContext;
import org.apache.poi.ss.formula.SheetIdentifier;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.ValueEval;
import org.apache.poi.ss.formula.functions.FreeRefFunction;
import org.apache.poi.ss.formula.ptg.Area3DPxg;
import org.apache.poi.ss.formula.ptg.FuncVarPtg;
import org.apache.poi.ss.formula.ptg.NamePtg;
import org.apache.poi.ss.formula.ptg.NameXPtg;
import org.apache.poi.ss.formula.ptg.NameXPxg;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.ss.formula.ptg.Ref3DPxg;
import org.apache.poi.ss.formula.udf.AggregatingUDFFinder;
import org.apache.poi.ss.formula.udf.UDFFinder;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Table;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellReference;

/**
 * Any workbook as POI's formula parser and evaluator see it. Sheets and other workbooks are kept by
 * their names in parsed formulas, never by numbers of a file format.
 */
final class PoiWorkbook implements EvaluationWorkbook, FormulaParsingWorkbook {
  /** To POI, every formula is the call of one function without a name, which computes it. */
  private static final Ptg UNNAMED = new NameXPxg("");

  private static final Ptg COMPUTE = FuncVarPtg.create("", 1);

  /** The function that gives all of what the formula of its cell gives. */
  static final String ALL = "all";

  private final List<? extends BookSheet> sheets;
  private final PoiSheetView[] views;
  private final List<PoiName> names = new ArrayList<>();
  private final List<DefinedName> defined;
  private final List<NamedTable> tables;
  private final SpreadsheetVersion version;
  private final PoiFunctions ours;
  private final Unusual unusual;
  private final Library library = new Library();

  /** By formula, why it cannot be computed here. */
  private final Map<Object, Unproven> unproven = new HashMap<>();

  /** By array formula, all of its result, for which POI asks at each of its cells. */
  private final Map<Object, ValueEval> arrays = new HashMap<>();

  /** The formulas that are being computed: those that rest on each other. */
  private final Set<Object> working = new HashSet<>();

  private final ParsedFormulas parsed = new ParsedFormulas(this);

  /** What other workbooks are called in formulas; they are never opened. */
  private final List<String> others = new ArrayList<>();

  PoiWorkbook(Book book, PoiFunctions functions, Live live) {
    this.sheets = book.sheets();
    this.views = new PoiSheetView[sheets.size()];
    for (int i = 0; i < views.length; i++) {
      views[i] = new PoiSheetView(i, sheets.get(i), live);
    }
    this.defined = book.names();
    for (int i = 0; i < defined.size(); i++) {
      names.add(new PoiName(defined.get(i), i, this));
    }
    this.tables = book.tables();
    boolean isOld = book.mostRows() <= SpreadsheetVersion.EXCEL97.getMaxRows();
    this.version = isOld ? SpreadsheetVersion.EXCEL97 : SpreadsheetVersion.EXCEL2007;
    this.ours = functions;
    this.unusual = new Unusual(book.settings());
  }

  @Override
  public SpreadsheetVersion getSpreadsheetVersion() {
    return version;
  }

  @Override
  public UDFFinder getUDFFinder() {
    return new AggregatingUDFFinder() { // the evaluator casts it
      private final FreeRefFunction one = PoiWorkbook.this::compute;
      private final FreeRefFunction whole = PoiWorkbook.this::all;

      @Override
      public FreeRefFunction findFunction(String name) {
        return name.equals(ALL) ? whole : one;
      }
    };
  }

  private ValueEval compute(ValueEval[] none, OperationEvaluationContext context) {
    Place place = new Place(context.getRowIndex(), context.getColumnIndex());
    PoiSheetView sheet = views[context.getSheetIndex()];
    PoiCell cell = sheet.getCell(place.row(), place.column());
    try {
      sheet.obstacle(place).ifPresent(PoiWorkbook::stop);
      return result(cell, context);
    } catch (Unproven e) {
      throw e.in(cell);
    }
  }

  private ValueEval all(ValueEval[] none, OperationEvaluationContext context) {
    PoiCell cell =
        views[context.getSheetIndex()].getCell(context.getRowIndex(), context.getColumnIndex());
    return new Evaluation(library, ours, unusual, context)
        .value(parsed(cell), cell.isPartOfArrayFormulaGroup());
  }

  private ValueEval result(PoiCell cell, OperationEvaluationContext context) {
    Object formula = cell.formulaKey();
    if (unproven.containsKey(formula)) { // POI keeps results only
      throw unproven.get(formula);
    }
    if (arrays.containsKey(formula)) {
      return arrays.get(formula);
    }
    if (!working.add(formula)) {
      return ErrorEval.CIRCULAR_REF_ERROR;
    }
    boolean isArray = cell.isPartOfArrayFormulaGroup();
    Evaluation evaluation = new Evaluation(library, ours, unusual, context);
    try {
      ValueEval result = evaluation.result(parsed(cell), isArray);
      if (isArray && !evaluation.hangsOnPlace()) {
        arrays.put(formula, result);
      }
      return result;
    } catch (Unproven e) {
      if (!evaluation.hangsOnPlace()) {
        unproven.put(formula, e);
      }
      throw e;
    } finally {
      working.remove(formula);
    }
  }

  private Formula parsed(PoiCell cell) {
    try {
      return Formula.of(written(cell));
    } catch (FormulaParseException e) {
      throw new Unproven("it is written in a way that is not known here.");
    }
  }

  private static void stop(String obstacle) {
    throw new Unproven(obstacle);
  }

  @Override
  public PoiSheetView getSheet(int index) {
    return views[index];
  }

  @Override
  public int getSheetIndex(EvaluationSheet sheet) {
    return ((PoiSheetView) sheet).index();
  }

  @Override
  public int getSheetIndex(String name) {
    for (int i = 0; i < views.length; i++) {
      if (sheets.get(i).name().equalsIgnoreCase(name)) {
        return i;
      }
    }
    return -1;
  }

  @Override
  public String getSheetName(int index) {
    return sheets.get(index).name();
  }

  @Override
  public Ptg[] getFormulaTokens(EvaluationCell cell) {
    return new Ptg[] {UNNAMED, COMPUTE};
  }

  /** The tokens of what is written in a cell. */
  Ptg[] written(PoiCell viewed) {
    int row = viewed.getRowIndex();
    int column = viewed.getColumnIndex();
    if (viewed.isPartOfArrayFormulaGroup()) { // one formula, not copied down
      row = viewed.getArrayFormulaRange().getFirstRow();
      column = viewed.getArrayFormulaRange().getFirstColumn();
    }
    return parsed.of(viewed.formula(), viewed.getSheet().index(), row, column);
  }

  @Override
  public void clearAllCachedResultValues() {
    // nothing is kept here
  }

  @Override
  public PoiName getName(NamePtg token) {
    return names.get(token.getIndex());
  }

  /** A sheet's own name hides the workbook's; a function's hides both. */
  @Override
  public PoiName getName(String name, int sheet) {
    if (names.isEmpty() || ours.findFunction(name) != null) { // asked for at every call
      return null;
    }
    for (int i = 0; i < names.size(); i++) {
      if (defined.get(i).sheet() == sheet && defined.get(i).name().equalsIgnoreCase(name)) {
        return names.get(i);
      }
    }
    return sheet == DefinedName.ANYWHERE ? null : getName(name, DefinedName.ANYWHERE);
  }

  @Override
  public Table getTable(String name) {
    for (NamedTable table : tables) {
      if (table.name().equalsIgnoreCase(name)) {
        return new PoiTable(table, getSheetName(table.sheet()));
      }
    }
    return null;
  }

  @Override
  public Ptg getNameXPtg(String name, SheetIdentifier sheet) {
    if (sheet == null) {
      return new NameXPxg(name); // a function, known or not
    }
    String own = sheet.getSheetIdentifier() == null ? null : sheet.getSheetIdentifier().getName();
    return sheet.getBookName() == null
        ? new NameXPxg(own, name)
        : new NameXPxg(number(sheet.getBookName()), own, name);
  }

  @Override
  public Ptg get3DReferencePtg(CellReference cell, SheetIdentifier sheet) {
    return sheet.getBookName() == null
        ? new Ref3DPxg(sheet, cell)
        : new Ref3DPxg(number(sheet.getBookName()), sheet, cell);
  }

  @Override
  public Ptg get3DReferencePtg(AreaReference area, SheetIdentifier sheet) {
    return sheet.getBookName() == null
        ? new Area3DPxg(sheet, area)
        : new Area3DPxg(number(sheet.getBookName()), sheet, area);
  }

  private int number(String book) {
    if (!others.contains(book)) {
      others.add(book);
    }
    return others.indexOf(book) + 1;
  }

  @Override
  public ExternalSheet getExternalSheet(String first, String last, int number) {
    String book = number > 0 ? others.get(number - 1) : null;
    return last == null || last.equals(first)
        ? new ExternalSheet(book, first)
        : new ExternalSheetRange(book, first, last);
  }

  @Override
  public ExternalName getExternalName(String name, String sheet, int number) {
    return new ExternalName(name, -1, 0); // its workbook is not there
  }

  @Override
  public Name createName() {
    throw byNumber();
  }

  @Override
  public ExternalSheet getExternalSheet(int number) {
    throw byNumber();
  }

  @Override
  public int convertFromExternSheetIndex(int number) {
    throw byNumber();
  }

  @Override
  public ExternalName getExternalName(int sheet, int name) {
    throw byNumber();
  }

  @Override
  public String resolveNameXText(NameXPtg token) {
    throw byNumber();
  }

  @Override
  public int getExternalSheetIndex(String sheet) {
    throw byNumber();
  }

  @Override
  public int getExternalSheetIndex(String book, String sheet) {
    throw byNumber();
  }

  private static UnsupportedOperationException byNumber() {
    return new UnsupportedOperationException("formulas are parsed with names only");
  }
}
