package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.CheckRow;
import meadcell.catalogue.LiteralCall;
import meadcell.catalogue.Nearest;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;
import org.apache.poi.hssf.usermodel.HSSFEvaluationWorkbook;
import org.apache.poi.hssf.usermodel.HSSFFormulaEvaluator;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.formula.FormulaParser;
import org.apache.poi.ss.formula.FormulaType;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.ValueEval;
import org.apache.poi.ss.formula.functions.FreeRefFunction;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellReference;

/**
 * Single formulas outside any workbook of the user's: nested calls, arithmetic and the proven
 * functions of spreadsheets work as in a cell.
 */
public final class Calculator {
  private static final String SHEET = "calculator";
  private static final String ASKED = "formula.asked";

  /** A value ({@code Double}, {@code String}, rows of them), or an error and the reason. */
  public record Answer(Object value, String error, String why) {
    public boolean isValue() {
      return error == null;
    }
  }

  private final PoiFunctions functions;
  private final Sheet sheet;
  private final HSSFFormulaEvaluator evaluator;
  private final HSSFEvaluationWorkbook names;
  private final Library library = new Library();
  private Formula asked;
  private final CellReference home = new CellReference(SHEET, 0, 0, false, false);

  public Calculator(Catalogue catalogue) {
    functions = new PoiFunctions(catalogue);
    HSSFWorkbook workbook = new HSSFWorkbook(); // starts in half the time of an XSSF one
    workbook.addToolPack(this::function);
    sheet = workbook.createSheet(SHEET);
    evaluator = workbook.getCreationHelper().createFormulaEvaluator();
    names = HSSFEvaluationWorkbook.create(workbook);
  }

  private static final String EMPTY = "\"\"";

  /** Evaluates an expression as a user types it: with or without =, arguments by ; or ,. */
  public Answer evaluate(String expression) {
    String typed = expression.strip().replaceFirst("^=", "");
    StringBuilder formula = new StringBuilder();
    Set<String> separators = new HashSet<>();
    FormulaScanner tokens = new FormulaScanner(typed, Dialect.PLAN);
    FormulaScanner.Kind before = null;
    ArrayRows rows = new ArrayRows();
    while (tokens.next()) {
      if (isEmptyPlace(before, tokens.kind())) {
        formula.append(EMPTY);
      }
      rows.take(tokens.kind(), formula);
      before = tokens.kind() == FormulaScanner.Kind.SPACE ? before : tokens.kind();
      formula.append(Dialect.EXCEL.written(tokens));
      if (tokens.kind() == FormulaScanner.Kind.SEPARATOR) {
        separators.add(tokens.text());
      }
    }
    if (separators.size() > 1) { // then a comma may be meant as a decimal mark
      return new Answer(
          null,
          "#NAME?",
          "The arguments are separated by ; and by , in one formula. Use one of them, and a point"
              + " as the decimal mark.");
    }
    try {
      return formula(formula.toString());
    } catch (FormulaParseException e) {
      return new Answer(
          null, "#NAME?", "The formula cannot be read; check its brackets, quotes and separators.");
    }
  }

  /** The rows of an array constant, filled up to one width: POI reads no others. */
  private static final class ArrayRows {
    private final List<Integer> ends = new ArrayList<>();
    private final List<Integer> widths = new ArrayList<>();
    private int width;

    /** Takes the next token of {@code formula}, before it is appended. */
    void take(FormulaScanner.Kind kind, StringBuilder formula) {
      switch (kind) {
        case ARRAY_OPEN -> width = 1;
        case ARRAY_CELL -> width++;
        case ARRAY_ROW -> endRow(formula);
        case ARRAY_CLOSE -> {
          endRow(formula);
          int widest = Collections.max(widths);
          for (int row = ends.size() - 1; row >= 0; row--) {
            formula.insert(ends.get(row), ("," + EMPTY).repeat(widest - widths.get(row)));
          }
          ends.clear();
          widths.clear();
        }
        default -> {}
      }
    }

    private void endRow(StringBuilder formula) {
      ends.add(formula.length());
      widths.add(width);
      width = 1;
    }
  }

  /** An empty place of an array constant, which POI cannot read. */
  private static boolean isEmptyPlace(FormulaScanner.Kind before, FormulaScanner.Kind kind) {
    return switch (kind) {
      case ARRAY_CELL, ARRAY_ROW, ARRAY_CLOSE ->
          before == FormulaScanner.Kind.ARRAY_OPEN
              || before == FormulaScanner.Kind.ARRAY_CELL
              || before == FormulaScanner.Kind.ARRAY_ROW;
      default -> false;
    };
  }

  private Answer formula(String formula) {
    functions.takeRefused();
    asked = Formula.of(FormulaParser.parse(formula, names, FormulaType.CELL, 0, 0));
    try {
      ValueEval result =
          evaluator
              ._getWorkbookEvaluator()
              .evaluateList(ASKED + "()", home, new CellRangeAddress(0, 0, 0, 0));
      ErrorEval error =
          result instanceof RefusedArea refused
              ? refused.error()
              : result instanceof ErrorEval plain ? plain : null;
      if (error != null) {
        List<PoiFunctions.Refused> refused = functions.takeRefused();
        String why =
            refused.isEmpty()
                ? "The formula itself gives this error."
                : refused.get(0).refusal().getMessage();
        return new Answer(null, error.getErrorString(), why);
      }
      return new Answer(CellValues.shown(result), null, null);
    } catch (Unproven e) {
      return new Answer(null, "#NAME?", why(e));
    }
  }

  /** To POI, every formula is the call of one function. */
  private FreeRefFunction function(String name) {
    return name.equalsIgnoreCase(ASKED)
        ? (none, context) ->
            new Evaluation(library, functions, Unusual.NOTHING, context).whole(asked)
        : functions.findFunction(name);
  }

  private String why(Unproven e) {
    String name = e.unknownFunction();
    if (name.isEmpty()) {
      return "It cannot be computed here: " + e.getMessage();
    }
    String hint =
        Nearest.to(name, functions.catalogue().names())
            .map(near -> " Did you mean " + near + "?")
            .orElse("");
    return "The function \"" + name + "\" is not known." + hint;
  }

  /** A check value through real cells: ranges are laid out on a sheet. */
  public CheckRow.Verdict check(CheckRow row) {
    while (sheet.getLastRowNum() >= 0) {
      sheet.removeRow(sheet.getRow(sheet.getLastRowNum()));
    }
    LiteralCall call = LiteralCall.parse(row.call());
    StringBuilder formula = new StringBuilder(call.function()).append('(');
    String separator = "";
    int free = 1;
    for (Object argument : call.arguments()) {
      formula.append(separator);
      separator = ",";
      if (argument instanceof Object[][] cells) {
        formula.append(layOut(cells, free));
        free += cells.length + 1;
      } else if (argument instanceof String text) {
        formula.append('"').append(text.replace("\"", "\"\"")).append('"');
      } else if (argument != null) {
        formula.append(argument);
      }
    }
    evaluator.clearAllCachedResultValues();
    Answer answer = formula(formula.append(')').toString());
    return row.verdict(answer.isValue() ? answer.value() : answer.error() + " " + answer.why());
  }

  private String layOut(Object[][] cells, int top) {
    int width = 0;
    for (int i = 0; i < cells.length; i++) {
      Row row = sheet.createRow(top + i);
      width = Math.max(width, cells[i].length);
      for (int j = 0; j < cells[i].length; j++) {
        Cell cell = row.createCell(j + 1);
        if (cells[i][j] instanceof Double number) {
          cell.setCellValue(number);
        } else if (!"".equals(cells[i][j])) {
          cell.setCellValue((String) cells[i][j]);
        }
      }
    }
    return new CellRangeAddress(top, top + cells.length - 1, 1, width).formatAsString();
  }
}
