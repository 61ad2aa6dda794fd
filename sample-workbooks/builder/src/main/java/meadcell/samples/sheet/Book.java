package meadcell.samples.sheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.cellar.Cellar;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.FormulaEvaluator;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A workbook under construction. */
public final class Book {
  /** Fixed, so that the same book gives the same bytes. */
  private static final Date CREATED = Date.from(Instant.parse("2026-11-01T00:00:00Z"));

  /** Functions of Excel 2019. */
  private static final Pattern NEWER = Pattern.compile("\\b(MAXIFS|MINIFS|TEXTJOIN)\\(");

  final XSSFWorkbook workbook = new XSSFWorkbook();
  final Styles styles = new Styles(workbook);
  final PoiFunctions functions = new PoiFunctions(Cellar.catalogue());
  private final List<Page> pages = new ArrayList<>();
  final Map<XSSFCell, Field> fields = new LinkedHashMap<>();
  private final List<Runnable> formulas = new ArrayList<>();
  private final List<Runnable> formulaNames = new ArrayList<>();
  private boolean keeping;
  private String alarm = "";
  private final List<Log.Lacking> lacking = new ArrayList<>();
  String check = "Please check";
  String oneOf = "One of:";

  public Book(String title) {
    workbook.addToolPack(functions);
    workbook.addToolPack(new OfficeErrors());
    workbook.getProperties().getCoreProperties().setTitle(title);
    workbook.getProperties().getCoreProperties().setCreator("Meadcell");
    workbook.getProperties().getCoreProperties().setCreated(Optional.of(CREATED));
    workbook
        .getProperties()
        .getExtendedProperties()
        .getUnderlyingProperties()
        .setApplication("Meadcell");
  }

  /**
   * From now on what is typed keeps the unit named in the cell {@code kept}, while results are
   * shown in that of {@code units}: names of typed cells stand for what they are in the latter.
   */
  public Book keeping() {
    keeping = true;
    styles.keepRows();
    return this;
  }

  /** The book's language, and what stands above what may not be typed, and before a few words. */
  public Book speaking(Locale language, String checkTitle, String oneOfThese) {
    workbook
        .getProperties()
        .getCoreProperties()
        .getUnderlyingProperties()
        .setLanguageProperty(language.toLanguageTag());
    check = checkTitle;
    oneOf = oneOfThese;
    return this;
  }

  /** Remembers what the rows of a log may lack. */
  void lacking(Log.Lacking log) {
    lacking.add(log);
  }

  /** What the rows of each log may lack. */
  public List<Log.Lacking> lacking() {
    return lacking;
  }

  /**
   * From now on the sentence below a page's title gives way to this formula, unless it is blank.
   */
  public Book heeding(String formula) {
    alarm = formula;
    return this;
  }

  String leading(String lead) {
    return alarm.isEmpty()
        ? lead
        : "=IF(" + alarm + "<>\"\"," + alarm + ",\"" + lead.replace("\"", "\"\"") + "\")";
  }

  boolean isKeeping() {
    return keeping;
  }

  /** A new sheet with these column widths, in characters. */
  public Page page(String title, int... widths) {
    Page page = new Page(this, title, widths);
    pages.add(page);
    return page;
  }

  public XSSFWorkbook workbook() {
    return workbook;
  }

  /** What each cell holds that is typed or worked out. */
  public Map<XSSFCell, Field> fields() {
    return Collections.unmodifiableMap(fields);
  }

  /** A name for a formula, which may use names that are given later. */
  public void formulaName(String name, String formula) {
    Name defined = workbook.createName();
    defined.setNameName(name);
    defined.setRefersToFormula("0");
    formulaNames.add(() -> defined.setRefersToFormula(prefixed(formula)));
  }

  void name(String name, String reference) {
    Name defined = workbook.createName();
    defined.setNameName(name);
    defined.setRefersToFormula(reference);
  }

  void name(String name, Cell cell) {
    name(name, address(cell));
  }

  /** A name for a typed value, in the unit that results are shown in; blank while that is. */
  void name(String name, Cell cell, Field field, Look look) {
    if (keeping && look == Look.INPUT && field.isDimensional()) {
      String at = address(cell);
      formulaName(name, "IF(" + at + "=\"\",\"\"," + field.scaled(at) + ")");
    } else {
      name(name, cell);
    }
  }

  private static String address(Cell cell) {
    return new CellReference(
            cell.getSheet().getSheetName(), cell.getRowIndex(), cell.getColumnIndex(), true, true)
        .formatAsString();
  }

  /** Writes a formula; functions newer than the file format get the prefix it asks for. */
  static void formula(XSSFCell cell, String formula) {
    cell.setCellFormula(prefixed(formula));
  }

  static String prefixed(String formula) {
    return NEWER.matcher(formula).replaceAll("_xlfn.$1(");
  }

  /** Formulas are set when all names are known. */
  void later(Runnable formula) {
    formulas.add(formula);
  }

  /** Computes every formula, draws the charts, and finishes each sheet. */
  public Book finish() {
    formulaNames.forEach(Runnable::run);
    formulas.forEach(Runnable::run);
    evaluate();
    return laidOut();
  }

  /** The same, but leaves it to an office to compute. */
  public Book draft() {
    formulaNames.forEach(Runnable::run);
    formulas.forEach(Runnable::run);
    return laidOut();
  }

  private Book laidOut() {
    pages.forEach(Page::finish);
    if (keeping) {
      workbook.forEach(Book::keepRows);
    }
    workbook.setActiveSheet(0);
    return this;
  }

  /**
   * Fixes the height of rows with formulas: where an office chooses heights while it loads a file,
   * it works out all cells for it, and then once more.
   */
  private static void keepRows(Sheet sheet) {
    if (((XSSFSheet) sheet).getTables().isEmpty()) {
      for (Row row : sheet) {
        if (!((XSSFRow) row).getCTRow().getCustomHeight()) {
          row.setHeight(sheet.getDefaultRowHeight());
        }
      }
    }
  }

  /**
   * Computes every formula, so that the file shows numbers wherever it is opened.
   *
   * @throws IllegalStateException naming every cell that has none
   */
  public void evaluate() {
    functions.forget();
    FormulaEvaluator evaluator = workbook.getCreationHelper().createFormulaEvaluator();
    List<String> problems = new ArrayList<>();
    for (Sheet sheet : workbook) {
      for (Row row : sheet) {
        for (Cell cell : row) {
          problem(evaluator, cell)
              .ifPresent(
                  problem ->
                      problems.add(
                          sheet.getSheetName() + "!" + cell.getAddress() + ": " + problem));
        }
      }
    }
    if (!problems.isEmpty()) {
      throw new IllegalStateException(String.join("\n", problems));
    }
  }

  private Optional<String> problem(FormulaEvaluator evaluator, Cell cell) {
    functions.takeRefused();
    try {
      if (evaluator.evaluateFormulaCell(cell) != CellType.ERROR) {
        return Optional.empty();
      }
    } catch (RuntimeException e) {
      return Optional.of(cell.getCellFormula() + " fails: " + e);
    }
    return Optional.of(
        cell.getCellFormula()
            + functions.takeRefused().stream()
                .map(refused -> ": " + refused.refusal().getMessage())
                .findFirst()
                .orElse(""));
  }
}
