package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.formula.EvaluationName;
import org.apache.poi.ss.formula.ptg.AbstractFunctionPtg;
import org.apache.poi.ss.formula.ptg.AreaPtgBase;
import org.apache.poi.ss.formula.ptg.NamePtg;
import org.apache.poi.ss.formula.ptg.NameXPxg;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.ss.formula.ptg.Pxg;
import org.apache.poi.ss.formula.ptg.Pxg3D;
import org.apache.poi.ss.formula.ptg.RefPtgBase;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellReference;

/** Finds what a formula reads, from its tokens or, where POI cannot parse it, from its text. */
final class FormulaReader {
  private static final int DEEPEST_NAME = 20;
  private static final Set<String> READS_ANYTHING = Set.of("INDIRECT", "OFFSET");
  private static final Pattern REFERENCE =
      Pattern.compile(
          "\"[^\"]*\"|(?:(?:'([^']+)'|([A-Za-z0-9_.]+))!)?"
              + "(?<![A-Za-z0-9_.$])(\\$?[A-Z]{1,3}\\$?[1-9][0-9]{0,6}"
              + "(?::\\$?[A-Z]{1,3}\\$?[1-9][0-9]{0,6})?)(?![A-Za-z0-9_.(])");
  private static final Pattern CALL =
      Pattern.compile("([A-Za-z_][A-Za-z0-9_]*\\.[A-Za-z0-9_.]+)\\(");

  private final PoiWorkbook workbook;
  private final List<Reads.Area> areas = new ArrayList<>();
  private final Set<String> functions = new HashSet<>();
  private boolean anything;

  FormulaReader(PoiWorkbook workbook) {
    this.workbook = workbook;
  }

  Reads tokens(Ptg[] tokens, int sheet) {
    read(tokens, sheet, 0);
    return new Reads(areas, anything, functions, "");
  }

  /** The references that a formula's text shows. */
  Reads text(String formula, int sheet, String problem) {
    Matcher reference = REFERENCE.matcher(formula);
    while (reference.find()) {
      if (reference.group(3) != null) {
        String name = reference.group(1) == null ? reference.group(2) : reference.group(1);
        int there = name == null ? sheet : workbook.getSheetIndex(name);
        AreaReference area =
            new AreaReference(reference.group(3), workbook.getSpreadsheetVersion());
        CellReference first = area.getFirstCell();
        CellReference last = area.getLastCell();
        add(there, first.getRow(), last.getRow(), first.getCol(), last.getCol());
      }
    }
    Matcher call = CALL.matcher(formula);
    while (call.find()) {
      functions.add(call.group(1));
    }
    return new Reads(areas, anything, functions, problem);
  }

  private void add(int sheet, int firstRow, int lastRow, int firstColumn, int lastColumn) {
    if (sheet >= 0) {
      areas.add(new Reads.Area(sheet, firstRow, lastRow, firstColumn, lastColumn));
    }
  }

  private void read(Ptg[] tokens, int sheet, int depth) {
    for (Ptg token : tokens) {
      if (token instanceof RefPtgBase ref) {
        for (int there : sheets(token, sheet)) {
          add(there, ref.getRow(), ref.getRow(), ref.getColumn(), ref.getColumn());
        }
      } else if (token instanceof AreaPtgBase area) {
        for (int there : sheets(token, sheet)) {
          add(
              there,
              area.getFirstRow(),
              area.getLastRow(),
              area.getFirstColumn(),
              area.getLastColumn());
        }
      } else if (token instanceof NameXPxg name) {
        named(name.getNameName(), sheet, depth);
      } else if (token instanceof NamePtg name) {
        definition(workbook.getName(name), sheet, depth);
      } else if (token instanceof AbstractFunctionPtg function
          && READS_ANYTHING.contains(function.getName())) {
        anything = true;
      }
    }
  }

  /** A name on its own is a defined name of the workbook, or else an add-in's function. */
  private void named(String name, int sheet, int depth) {
    EvaluationName defined = workbook.getName(name, sheet);
    if (defined == null) {
      functions.add(name);
    } else {
      definition(defined, sheet, depth);
    }
  }

  private void definition(EvaluationName name, int sheet, int depth) {
    if (name != null && name.hasFormula() && depth < DEEPEST_NAME) {
      read(name.getNameDefinition(), sheet, depth + 1);
    } else if (name != null && name.isFunctionName()) {
      functions.add(name.getNameText());
    }
  }

  /** The sheets a reference is for; none where it points into another workbook. */
  private List<Integer> sheets(Ptg token, int own) {
    if (token instanceof Pxg named) {
      if (named.getExternalWorkbookNumber() > 0 || named.getSheetName() == null) {
        return List.of();
      }
      int first = workbook.getSheetIndex(named.getSheetName());
      boolean range = named instanceof Pxg3D deep && deep.getLastSheetName() != null;
      int last = range ? workbook.getSheetIndex(((Pxg3D) named).getLastSheetName()) : first;
      return java.util.stream.IntStream.rangeClosed(first, last).boxed().toList();
    }
    return List.of(own);
  }
}
