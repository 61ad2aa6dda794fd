package meadcell.batch.book.xlsx;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.formula.FormulaParser;
import org.apache.poi.ss.formula.FormulaRenderer;
import org.apache.poi.ss.formula.FormulaType;
import org.apache.poi.ss.formula.SharedFormula;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.xssf.usermodel.XSSFEvaluationWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Formulas of one sheet that are stored once for a range, in its first cell. */
final class SharedFormulas {
  private record First(int row, int column, String formula, Ptg[] tokens) {}

  private final Supplier<XSSFWorkbook> workbook;
  private final int sheet;
  private XSSFEvaluationWorkbook names;
  private final Map<Integer, First> known = new HashMap<>();

  /** Those of one sheet; the workbook, for its names, is asked for where there are any. */
  SharedFormulas(Supplier<XSSFWorkbook> workbook, int sheet) {
    this.workbook = workbook;
    this.sheet = sheet;
  }

  /** Gives a cell its own formula, where it stores only the number of the shared one. */
  void read(XlsxCell cell, int row, int column) {
    names = names == null ? XSSFEvaluationWorkbook.create(workbook.get()) : names;
    if (!cell.formula.isEmpty()) {
      cell.isFirstOfShared = true;
      known.put(cell.shared, new First(row, column, cell.formula, tokens(cell.formula, row)));
      return;
    }
    First first = known.get(cell.shared);
    if (first != null && first.tokens != null) {
      Ptg[] moved =
          new SharedFormula(names.getSpreadsheetVersion())
              .convertSharedFormulas(first.tokens, row - first.row, column - first.column);
      cell.formula = FormulaRenderer.toFormulaString(names, moved);
    } else {
      cell.formula = first == null ? "" : first.formula; // not computed, only looked through
      cell.isFormulaUnclear = true;
    }
  }

  private Ptg[] tokens(String formula, int row) {
    try {
      return FormulaParser.parse(formula, names, FormulaType.CELL, sheet, row);
    } catch (FormulaParseException | IllegalArgumentException | StackOverflowError e) {
      return null;
    }
  }
}
