package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import meadcell.batch.book.Place;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;
import org.apache.poi.ss.formula.ptg.AbstractFunctionPtg;
import org.apache.poi.ss.formula.ptg.AreaPtgBase;
import org.apache.poi.ss.formula.ptg.NamePtg;
import org.apache.poi.ss.formula.ptg.NameXPxg;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.ss.formula.ptg.Pxg;
import org.apache.poi.ss.formula.ptg.Pxg3D;
import org.apache.poi.ss.formula.ptg.RefPtgBase;

/** Finds what a formula reads, from its tokens or, where POI cannot parse it, from its text. */
final class FormulaReader {
  private static final int DEEPEST_NAME = 20;
  private static final Set<String> READS_ANYTHING = Set.of("INDIRECT", "OFFSET");
  private final PoiWorkbook workbook;
  private final List<Reads.Area> areas = new ArrayList<>();
  private final Set<String> functions = new HashSet<>();
  private final Set<String> usual = new HashSet<>();
  private boolean anything;

  FormulaReader(PoiWorkbook workbook) {
    this.workbook = workbook;
  }

  Reads tokens(Ptg[] tokens, int sheet) {
    read(tokens, sheet, 0);
    return new Reads(areas, anything, functions, usual, "");
  }

  /** The references that a formula's text shows. */
  Reads text(String formula, int sheet, String problem) {
    FormulaScanner tokens = new FormulaScanner(formula, Dialect.EXCEL);
    int there = sheet;
    boolean isElsewhere = false; // in another workbook
    String name = "";
    Place corner = null;
    while (tokens.next()) {
      switch (tokens.kind()) {
        case BRACKETED -> isElsewhere = true;
        case NAME -> name = tokens.text();
        case QUOTED -> name = tokens.inside().replace("''", "'");
        case CELL -> {
          Place cell = new Place(tokens.row(), tokens.column());
          if (!tokens.isBefore(':')) {
            add(isElsewhere ? -1 : there, corner == null ? cell : corner, cell);
            there = sheet;
            isElsewhere = false;
          }
          corner = tokens.isBefore(':') ? cell : null;
        }
        case FUNCTION -> (tokens.text().contains(".") ? functions : usual).add(tokens.text());
        default -> {
          if (tokens.is('!')) {
            there = workbook.getSheetIndex(name);
          } else if (!tokens.is(':')) {
            there = sheet;
            isElsewhere = false;
            corner = null;
          }
        }
      }
    }
    return new Reads(areas, anything, functions, usual, problem);
  }

  private void add(int sheet, Place a, Place b) {
    add(
        sheet,
        Math.min(a.row(), b.row()),
        Math.max(a.row(), b.row()),
        Math.min(a.column(), b.column()),
        Math.max(a.column(), b.column()));
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
      } else if (token instanceof AbstractFunctionPtg function && !function.isExternalFunction()) {
        usual.add(function.getName());
        anything |= READS_ANYTHING.contains(function.getName());
      }
    }
  }

  /** A name on its own is a defined name of the workbook, or else an add-in's function. */
  private void named(String name, int sheet, int depth) {
    PoiName defined = workbook.getName(name, sheet);
    if (defined == null) {
      functions.add(name);
    } else {
      definition(defined, sheet, depth);
    }
  }

  private void definition(PoiName name, int sheet, int depth) {
    if (name != null && name.hasFormula() && depth < DEEPEST_NAME) {
      anything |= name.moves();
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
