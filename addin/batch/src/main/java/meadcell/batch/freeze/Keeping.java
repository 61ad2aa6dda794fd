package meadcell.batch.freeze;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.calculation.FormulaCell;
import meadcell.batch.calculation.Reads;
import meadcell.catalogue.Catalogue;

/** Keeps formulas, whose results are to stand in their places, on the workbook's sheet for them. */
public final class Keeping {
  /** Characters; no format holds a longer formula. */
  private static final int LONGEST_FORMULA = 8000;

  /** Characters; no format holds a longer text. */
  private static final int LONGEST_TEXT = 32_000;

  private final Book book;
  private final FormulaSheet sheet;
  private final Addresses addresses;
  private final Moves moves;

  /** Of a workbook, which gets the sheet if it has none. */
  public Keeping(Book book, Catalogue catalogue) {
    this.book = book;
    this.sheet = FormulaSheet.in(book, catalogue);
    this.addresses = new Addresses(book);
    this.moves = new Moves(addresses);
  }

  /** Whether a sheet is the one that keeps formulas, which is no part of the log. */
  public static boolean isPlace(String sheetName) {
    return FormulaSheet.is(sheetName);
  }

  /** Whether a formula can be put back as it is, should it be replaced by what it gives. */
  public boolean canKeep(FormulaCell formula) {
    String written = formula.content().formula();
    return written.length() <= LONGEST_FORMULA
        && addresses.follower(formula.reads().areas()).length() <= LONGEST_FORMULA
        && sheet.holds(written);
  }

  /**
   * Keeps formulas that {@link #canKeep} says can be kept, with what their cells hold now.
   *
   * @return whether anything was not kept before
   */
  public boolean keep(List<FormulaCell> formulas) {
    Map<Reads.Area, FormulaSheet.Line> known = new HashMap<>();
    Map<Reads.Area, FormulaSheet.Line> moved = new HashMap<>();
    List<FormulaSheet.Line> lines = sheet.lines();
    CellSet frozen = sheet.frozen(lines);
    for (FormulaSheet.Line line : lines) {
      addresses
          .sheet(line.frozen().sheet())
          .ifPresent(there -> known.put(Addresses.area(there, line.frozen().place()), line));
      line.cellNow().forEach(area -> moved.put(area, line));
    }
    formulas.forEach(frozen::add);
    Landmarks landmarks = new Landmarks(book, frozen);
    Set<Integer> taken =
        lines.stream().map(FormulaSheet.Line::row).collect(Collectors.toCollection(HashSet::new));
    boolean changed = false;
    int free = FormulaSheet.FIRST;
    for (FormulaCell formula : formulas) {
      Reads.Area cell = Addresses.area(formula.sheet(), formula.place());
      Frozen wanted = frozen(formula, landmarks);
      FormulaSheet.Line before = known.get(cell);
      if (before != null && before.frozen().equals(wanted) && !moves.isMoved(before)) {
        continue;
      }
      FormulaSheet.Line other = moved.get(cell);
      if (other != null && !other.equals(before)) {
        sheet.clear(other); // its formula is kept anew, at its new place
        taken.remove(other.row());
      }
      while (before == null && taken.contains(free)) {
        free++;
      }
      int row = before == null ? free : before.row();
      if (row >= book.mostRows()) {
        throw FormulaSheet.refused(
            "The workbook has more formulas to keep than a sheet of its format has rows; save it"
                + " as .xlsx or .ods first.");
      }
      taken.add(row);
      CellContent key = landmarks.key(formula.sheet(), formula.place().row());
      sheet.write(row, formula, wanted, key);
      changed = true;
    }
    return changed;
  }

  private Frozen frozen(FormulaCell formula, Landmarks landmarks) {
    BookSheet there = book.sheets().get(formula.sheet());
    Span array = there.array(formula.place());
    List<Reads.Area> reads = formula.reads().areas();
    Frozen frozen =
        new Frozen(
            there.name(),
            formula.place(),
            formula.content().formula(),
            array == null ? "" : array.first() + ":" + array.last(),
            there.content(formula.place()).value(),
            landmarks.row(formula.sheet(), formula.place().row()),
            landmarks.column(formula.sheet(), formula.place()),
            addresses.of(reads),
            labels(formula.sheet(), formula.place(), reads, landmarks));
    return Label.written(frozen.labels()).length() <= LONGEST_TEXT ? frozen : withoutLabels(frozen);
  }

  private static Frozen withoutLabels(Frozen frozen) {
    return new Frozen(
        frozen.sheet(),
        frozen.place(),
        frozen.formula(),
        frozen.array(),
        frozen.gave(),
        frozen.row(),
        frozen.column(),
        frozen.reads(),
        List.of(Label.NONE));
  }

  /** The columns that a formula reads, and the rows other than its own. */
  private static List<Label> labels(
      int sheet, Place place, List<Reads.Area> reads, Landmarks landmarks) {
    List<Label> labels = new ArrayList<>();
    for (Reads.Area area : reads) {
      Place first = new Place(area.firstRow(), area.firstColumn());
      labels.add(landmarks.column(area.sheet(), first));
      labels.add(
          area.sheet() == sheet && first.row() == place.row()
              ? Label.NONE
              : landmarks.row(area.sheet(), first.row()));
    }
    return labels.isEmpty() ? List.of(Label.NONE) : labels;
  }
}
