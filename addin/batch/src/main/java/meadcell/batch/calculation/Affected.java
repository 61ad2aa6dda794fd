package meadcell.batch.calculation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;

/** The formulas of a workbook that rest, directly or through others, on some of its cells. */
public final class Affected {
  /** Larger areas are kept as areas; smaller ones are looked up cell by cell. */
  private static final int LARGE = 64;

  private record Address(int sheet, int row, int column) {}

  private final List<FormulaCell> formulas = new ArrayList<>();
  private final Map<Address, List<FormulaCell>> readers = new HashMap<>();

  /** By sheet, those whose readers are not known to be affected; many formulas read the same. */
  private final Map<Integer, Map<Reads.Area, List<FormulaCell>>> largeAreas = new HashMap<>();

  private final CellSet known = new CellSet();
  private final Deque<Address> pending = new ArrayDeque<>();
  private final List<FormulaCell> affected = new ArrayList<>();

  /** Reads every formula of the workbook, but those in {@code skipped}. */
  public Affected(Book book, Calculation calculation, CellSet skipped) {
    for (int index = 0; index < book.sheets().size(); index++) {
      BookSheet sheet = book.sheets().get(index);
      for (int row = 0; row <= sheet.lastRow(); row++) {
        for (int column = 0; column <= sheet.lastColumn(row); column++) {
          Place place = new Place(row, column);
          CellContent content = sheet.content(place);
          if (content.isFormula() && !skipped.contains(index, row, column)) {
            register(new FormulaCell(index, place, content, calculation.reads(index, place)));
          }
        }
      }
    }
  }

  private void register(FormulaCell formula) {
    formulas.add(formula);
    for (Reads.Area area : formula.reads().areas()) {
      if (area.size() > LARGE) {
        largeAreas
            .computeIfAbsent(area.sheet(), sheet -> new LinkedHashMap<>())
            .computeIfAbsent(area, key -> new ArrayList<>(1))
            .add(formula);
        continue;
      }
      for (int row = area.firstRow(); row <= area.lastRow(); row++) {
        for (int column = area.firstColumn(); column <= area.lastColumn(); column++) {
          readers
              .computeIfAbsent(new Address(area.sheet(), row, column), key -> new ArrayList<>(1))
              .add(formula);
        }
      }
    }
  }

  /** All formulas, in the order of the sheets. */
  public List<FormulaCell> formulas() {
    return formulas;
  }

  /** The formulas for which a condition holds, and those that rest on them. */
  public List<FormulaCell> from(Predicate<FormulaCell> condition) {
    formulas.stream().filter(condition).forEach(this::affect);
    return spread();
  }

  /** The formulas that rest on some cells. */
  public List<FormulaCell> from(List<Reads.Area> changed) {
    if (formulas.isEmpty()) {
      return affected;
    }
    for (Reads.Area cell : changed) {
      pending.add(new Address(cell.sheet(), cell.firstRow(), cell.firstColumn()));
    }
    return spread();
  }

  /** All that rests on the pending cells; what may read anything rests on them, too. */
  private List<FormulaCell> spread() {
    if (!pending.isEmpty()) {
      formulas.stream().filter(formula -> formula.reads().anything()).forEach(this::affect);
    }
    while (!pending.isEmpty()) {
      Address cell = pending.poll();
      readers.getOrDefault(cell, List.of()).forEach(this::affect);
      largeAreas
          .getOrDefault(cell.sheet, Map.of())
          .entrySet()
          .removeIf(large -> reaches(cell, large.getKey(), large.getValue()));
    }
    return affected;
  }

  private boolean reaches(Address cell, Reads.Area area, List<FormulaCell> readers) {
    boolean isIn = area.contains(cell.sheet, cell.row, cell.column);
    if (isIn) {
      readers.forEach(this::affect);
    }
    return isIn;
  }

  private void affect(FormulaCell formula) {
    int row = formula.place().row();
    int column = formula.place().column();
    if (!known.contains(formula.sheet(), row, column)) {
      known.add(formula.sheet(), row, column);
      affected.add(formula);
      pending.add(new Address(formula.sheet(), row, column));
    }
  }
}
