package meadcell.batch.fill;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.CellError;
import meadcell.batch.book.CellSet;
import meadcell.batch.book.Place;
import meadcell.batch.book.Reads;
import meadcell.batch.plan.Plan;
import meadcell.batch.plan.PlanFormula;
import meadcell.batch.plan.PlanFormula.Target;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.plan.Unit;
import meadcell.batch.poi.CatalogueFunctions;
import meadcell.batch.recalc.Affected;
import meadcell.batch.recalc.OfficeResults;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;
import meadcell.catalogue.Nearest;

/** Fills one workbook by a plan. */
public final class Filler {
  private static final String AUTHOR = "Meadcell";

  /** Characters; enough for most numbers. */
  private static final int NARROWEST = 10;

  /**
   * How to fill.
   *
   * @param overwrite also cells in which a person typed something
   * @param values numbers instead of live formulas
   * @param protectedToo also sheets that their author protected
   * @param office computes what rests on the filled cells and this tool cannot; may be null
   */
  public record Options(
      boolean overwrite, boolean values, boolean protectedToo, OfficeResults office) {}

  /** A result cell of this run. */
  private record Written(
      int sheet,
      Place place,
      PlanRow row,
      String found,
      String formula,
      CellContent before,
      String note) {
    Reads.Area area() {
      return new Reads.Area(sheet, place.row(), place.row(), place.column(), place.column());
    }
  }

  private final Book book;
  private final Plan plan;
  private final CatalogueFunctions functions;
  private final Options options;
  private final Report report = new Report();
  private final OwnCells own;
  private final List<Written> written = new ArrayList<>();
  private final CellSet live = new CellSet();
  private final Set<PlanRow> found = new LinkedHashSet<>();
  private final Map<PlanRow, String> missing = new HashMap<>();
  private boolean notesChanged;

  public Filler(Book book, Plan plan, CatalogueFunctions functions, Options options) {
    this.book = book;
    this.plan = plan;
    this.functions = functions;
    this.options = options;
    this.own = new OwnCells(book);
  }

  /** Fills the workbook in memory. */
  public Report run() {
    find();
    compute();
    own.store(book);
    return report;
  }

  /** Puts the formulas where they belong, without their results. */
  public void find() {
    book.caveats().forEach(caveat -> report.remark(Report.Code.FILE, "", "", "", caveat));
    for (int index = 0; index < book.sheets().size(); index++) {
      BookSheet sheet = book.sheets().get(index);
      List<PlanRow> rows = plan.rows().stream().filter(row -> row.isFor(sheet.name())).toList();
      if (!rows.isEmpty()) {
        new SheetFiller(index, sheet, rows).fill();
      }
    }
  }

  /** Whether the workbook now differs from what it was. */
  public boolean isChanged() {
    return notesChanged || !report.changes().isEmpty();
  }

  /** The lines of the plan that found their place in this workbook. */
  public Set<PlanRow> found() {
    return found;
  }

  /** Why a line of the plan found no place in this workbook. */
  public String whyNotFound(PlanRow row) {
    return missing.getOrDefault(row, "no sheet has the name \"" + row.sheet() + "\".");
  }

  // ---- one sheet --------------------------------------------------------------------------

  /** Puts the formulas of one sheet. */
  private final class SheetFiller {
    private final int index;
    private final BookSheet sheet;
    private final List<PlanRow> rows;
    private final SheetMap map;

    SheetFiller(int index, BookSheet sheet, List<PlanRow> rows) {
      this.index = index;
      this.sheet = sheet;
      this.rows = rows;
      this.map = new SheetMap(sheet, plan.names());
    }

    void fill() {
      if (sheet.isProtected() && !options.protectedToo()) {
        remark(Report.Code.FILE, "", "The sheet is protected; nothing was filled on it.");
        found.addAll(rows);
        return;
      }
      for (PlanRow row : rows) {
        try {
          if (row.formula().fillsColumn()) {
            fillColumns(row);
          } else {
            fillLabel(row);
          }
        } catch (SheetMap.Ambiguous e) {
          ambiguous(row, e);
        }
      }
    }

    private void ambiguous(PlanRow row, SheetMap.Ambiguous e) {
      remark(Report.Code.NOT_FOUND, "", row.result() + ": " + e.getMessage() + ".");
    }

    private void remark(Report.Code code, String cell, String sentence) {
      report.remark(code, sheet.name(), cell, "", sentence);
    }

    private String name(String written) {
      return plan.names().read(written).name();
    }

    /** The headers, or labels, that must be there already, through results of earlier lines. */
    private Set<String> needed(PlanRow row, Target... targets) {
      Set<String> needed = new LinkedHashSet<>();
      for (PlanFormula.Reference reference : row.formula().references()) {
        if (List.of(targets).contains(reference.target())) {
          String name = name(reference.name());
          PlanRow earlier = earlier(name, row);
          needed.addAll(earlier == null ? Set.of(name) : needed(earlier, targets));
        }
      }
      return needed;
    }

    private PlanRow earlier(String result, PlanRow before) {
      for (PlanRow row : rows.subList(0, rows.indexOf(before))) {
        if (name(row.result()).equals(result)) {
          return row;
        }
      }
      return null;
    }

    private void fillColumns(PlanRow row) throws SheetMap.Ambiguous {
      Set<String> needed = needed(row, Target.ROW, Target.COLUMN);
      List<Table> tables = map.tables(needed);
      if (tables.isEmpty()) {
        missing(row, needed);
      }
      for (Table table : tables) {
        found.add(row);
        try {
          fillColumn(row, table);
        } catch (SheetMap.Ambiguous e) { // the next table may be clear
          ambiguous(row, e);
        }
      }
    }

    /** Notes a line that finds nothing here; it may still find its place on another sheet. */
    private void missing(PlanRow row, Collection<String> needed) {
      Set<String> known = map.names();
      String absent =
          needed.stream().filter(name -> !known.contains(name)).findFirst().orElse(null);
      Optional<String> near = absent == null ? Optional.empty() : Nearest.to(absent, known);
      String sentence =
          absent == null
              ? "no row has all of its headers: " + String.join(", ", needed) + "."
              : "\"" + asWritten(absent, row) + "\" was not found.";
      if (near.isPresent()) {
        sentence += " Did you mean \"" + near.get() + "\"?";
        remark(Report.Code.NOT_FOUND, "", row.result() + ": " + sentence);
      }
      missing.merge(row, sentence, (first, next) -> next.contains("Did you mean") ? next : first);
    }

    private String asWritten(String name, PlanRow row) {
      return row.formula().references().stream()
          .map(PlanFormula.Reference::name)
          .filter(written -> name(written).equals(name))
          .findFirst()
          .orElse(name);
    }

    // ---- columns ----

    private void fillColumn(PlanRow row, Table table) throws SheetMap.Ambiguous {
      Map<PlanFormula.Reference, Input> fixed = new IdentityHashMap<>();
      String problem = "";
      for (PlanFormula.Reference reference : row.formula().references()) {
        Input input =
            switch (reference.target()) {
              case LABEL -> label(reference, table);
              case COLUMN -> wholeColumn(reference, table);
              case ROW -> null;
            };
        if (input != null) {
          fixed.put(reference, input);
          problem = problem.isEmpty() ? input.problem() : problem;
          if (!input.note().isEmpty()) {
            remark(Report.Code.UNDERSTOOD, "", input.note());
          }
        }
      }
      Place header = resultHeader(row, table);
      String found = "column \"" + row.result() + "\" from " + header;
      if (!problem.isEmpty()) {
        for (int r : table.rows()) {
          clearOwn(row, new Place(r, header.column()), found);
        }
        leaveEmpty(header, row.result() + " stays empty: " + problem);
        return;
      }
      Map<PlanFormula.Reference, Table.Column> columns = new LinkedHashMap<>();
      for (PlanFormula.Reference reference : row.formula().references()) {
        if (reference.target() == Target.ROW) {
          columns.put(reference, column(reference, table));
        }
      }
      int typed = 0;
      Place firstTyped = null;
      for (int r : table.rows()) {
        Place place = new Place(r, header.column());
        if (!fillCell(row, columns, place, fixed, found)) {
          firstTyped = typed++ == 0 ? place : firstTyped;
        }
      }
      if (typed > 0) {
        remark(
            Report.Code.KEPT,
            firstTyped.a1(),
            typed
                + (typed == 1 ? " cell" : " cells")
                + " of "
                + row.result()
                + " hold what a person typed; not touched (--overwrite replaces them).");
      }
    }

    /** The result's column of a table: the one that is there, or a new one beside it. */
    private Place resultHeader(PlanRow row, Table table) throws SheetMap.Ambiguous {
      String name = name(row.result());
      Table.Column column = table.columns().get(name);
      if (column != null) {
        return new Place(table.headerRow(), column.index());
      }
      Place header = new Place(table.headerRow(), map.freeColumn(table));
      sheet.putValue(header, row.result());
      sheet.copyStyle(new Place(table.headerRow(), table.lastColumn()), header, "");
      sheet.widen(header.column(), Math.max(NARROWEST, row.result().length() + 2));
      map.addColumn(table, header.column(), row.result());
      report.changed(
          new Report.Change(
              sheet.name(), header.a1(), row.result(), "new column", "", null, row.result()));
      return header;
    }

    /** Fills one cell of a column; false where a person's own value stands there. */
    private boolean fillCell(
        PlanRow row,
        Map<PlanFormula.Reference, Table.Column> columns,
        Place place,
        Map<PlanFormula.Reference, Input> fixed,
        String found) {
      StringBuilder notes = new StringBuilder();
      String problem = "";
      boolean anyValue = false;
      Map<PlanFormula.Reference, Input> inputs = new IdentityHashMap<>(fixed);
      for (Map.Entry<PlanFormula.Reference, Table.Column> entry : columns.entrySet()) {
        Input input = cell(entry.getKey(), entry.getValue(), place.row());
        inputs.put(entry.getKey(), input);
        anyValue |= !input.isBlank();
        problem = problem.isEmpty() ? input.problem() : problem;
        notes.append(notes.isEmpty() || input.note().isEmpty() ? "" : " ").append(input.note());
      }
      if (!anyValue) {
        clearOwn(row, place, found);
        unmark(place);
        return true;
      }
      if (!problem.isEmpty()) {
        if (!clearOwn(row, place, found)) {
          return false;
        }
        leaveEmpty(place, row.result() + " stays empty: " + problem);
        return true;
      }
      String formula = row.formula().with(reference -> inputs.get(reference).formula());
      return put(row, place, formula, notes.toString(), found);
    }

    /** Empties a cell of ours; false where it holds something else. */
    private boolean clearOwn(PlanRow row, Place place, String found) {
      CellContent before = sheet.content(place);
      if (before.isBlank()) {
        return true;
      }
      if (!own.isOwn(sheet, place, before)) {
        return false;
      }
      changeTo(row, place, found, before, null);
      sheet.clear(place);
      return true;
    }

    private Input cell(PlanFormula.Reference reference, Table.Column column, int row) {
      Place place = new Place(row, column.index());
      return Input.read(sheet, place, place.a1(), column.unit(), reference, functions.catalogue());
    }

    private Table.Column column(PlanFormula.Reference reference, Table table) {
      return table.columns().get(name(reference.name()));
    }

    private Input wholeColumn(PlanFormula.Reference reference, Table table) {
      Table.Column column = column(reference, table);
      if (table.rows().isEmpty()) {
        return Input.problem("the table in row " + (table.headerRow() + 1) + " has no rows.");
      }
      Place first = new Place(table.rows().get(0), column.index());
      Place last = new Place(table.lastRow(), column.index());
      return Input.range(first, last, column.unit(), reference);
    }

    // ---- labels ----

    private Input label(PlanFormula.Reference reference, Table table) throws SheetMap.Ambiguous {
      String name = name(reference.name());
      Place place = map.labelled(name, table);
      if (place == null) {
        String hint =
            Nearest.to(name, map.names()).map(near -> " Did you mean \"" + near + "\"?").orElse("");
        return Input.problem("the label \"" + reference.name() + "\" is not on this sheet." + hint);
      }
      Unit unit = map.labelOf(name, place).unit().orElse(null);
      return Input.read(sheet, place, place.fixed(), unit, reference, functions.catalogue());
    }

    private void fillLabel(PlanRow row) throws SheetMap.Ambiguous {
      Place place = map.labelled(name(row.result()), null);
      if (place == null) {
        missing(row, List.of(name(row.result())));
        return;
      }
      found.add(row);
      Map<PlanFormula.Reference, Input> inputs = new IdentityHashMap<>();
      StringBuilder notes = new StringBuilder();
      for (PlanFormula.Reference reference : row.formula().references()) {
        Input input =
            reference.target() == Target.LABEL
                ? label(reference, null)
                : wholeColumn(reference, onlyTable(row));
        if (!input.problem().isEmpty()) {
          leaveEmpty(place, row.result() + " stays empty: " + input.problem());
          return;
        }
        inputs.put(reference, input);
        notes.append(notes.isEmpty() || input.note().isEmpty() ? "" : " ").append(input.note());
      }
      String formula = row.formula().with(reference -> inputs.get(reference).formula());
      String found = "label \"" + row.result() + "\"";
      if (!put(row, place, formula, notes.toString(), found)) {
        remark(
            Report.Code.KEPT,
            place.a1(),
            row.result() + " holds what a person typed; not touched (--overwrite replaces it).");
      }
    }

    private Table onlyTable(PlanRow row) throws SheetMap.Ambiguous {
      Set<String> needed = needed(row, Target.COLUMN);
      List<Table> tables = map.tables(needed);
      if (tables.size() != 1) {
        throw new SheetMap.Ambiguous(
            tables.size() + " tables on the sheet have the headers " + String.join(", ", needed));
      }
      return tables.get(0);
    }

    // ---- cells ----

    private boolean put(PlanRow row, Place place, String formula, String note, String found) {
      CellContent before = sheet.content(place);
      boolean same = isSame(formula, before.formula());
      boolean free =
          before.isBlank() || same || own.isOwn(sheet, place, before) || options.overwrite();
      BookSheet.Span array = sheet.array(place);
      boolean isPartOfMore = array != null && !array.first().equals(array.last());
      if (!free || isPartOfMore) {
        return false;
      }
      if (!same) {
        sheet.putFormula(place, formula);
        sheet.copyStyle(new Place(place.row(), place.column() - 1), place, row.format());
      }
      live.add(index, place.row(), place.column());
      written.add(new Written(index, place, row, found, formula, before, note));
      return true;
    }

    private void leaveEmpty(Place place, String sentence) {
      report.remark(Report.Code.LEFT_EMPTY, sheet.name(), place.a1(), "", sentence);
      mark(sheet, place, sentence);
    }

    private void unmark(Place place) {
      Filler.this.unmark(sheet, place);
    }

    private void changeTo(
        PlanRow row, Place place, String found, CellContent before, Object after) {
      report.changed(
          new Report.Change(
              sheet.name(), place.a1(), row.result(), found, "", before.value(), after));
    }
  }

  // ---- notes ------------------------------------------------------------------------------

  private void mark(BookSheet sheet, Place place, String text) {
    BookSheet.Note note = new BookSheet.Note(AUTHOR, text);
    var before = sheet.note(place);
    if (before.isEmpty() || before.get().author().equals(AUTHOR) && !before.get().equals(note)) {
      sheet.putNote(place, note);
      notesChanged = true;
    }
  }

  private void unmark(BookSheet sheet, Place place) {
    if (sheet.note(place).filter(note -> note.author().equals(AUTHOR)).isPresent()) {
      sheet.removeNote(place);
      notesChanged = true;
    }
  }

  // ---- results ----------------------------------------------------------------------------

  private void compute() {
    Book.Calculation calculation = book.calculation(functions, live);
    List<Affected.FormulaCell> dependents =
        new Affected(book, calculation, live).from(written.stream().map(Written::area).toList());
    dependents.stream()
        .filter(formula -> formula.reads().canBeRead())
        .forEach(f -> live.add(f.sheet(), f.place().row(), f.place().column()));
    functions.takeRefused();
    List<Object> results = new ArrayList<>(written.size());
    for (Written cell : written) {
      Object result;
      try {
        result = calculation.result(cell.sheet, cell.place);
      } catch (Book.CannotCalculate e) {
        result = new CellError(e.getMessage());
      }
      results.add(result);
    }
    Map<String, String> reasons = new HashMap<>();
    for (CatalogueFunctions.Refused refused : functions.takeRefused()) {
      String cell = refused.sheet() + "!" + new Place(refused.row(), refused.column());
      reasons.putIfAbsent(cell, refused.refusal().getMessage());
    }
    for (int i = 0; i < written.size(); i++) {
      Written cell = written.get(i);
      if (results.get(i) instanceof CellError error) {
        String reason =
            reasons.getOrDefault(
                cell.sheet + "!" + cell.place,
                error.text().startsWith("#")
                    ? "a cell that it rests on has no value (" + error + ")."
                    : error.text());
        refuse(cell, reason);
      } else {
        settle(cell, results.get(i));
      }
    }
    new Recalculation(book, functions, report, options.office())
        .refresh(dependents, book.calculation(functions, live), live);
  }

  /** A result that is an error is not left in the log; its cell says why instead. */
  private void refuse(Written cell, String reason) {
    BookSheet sheet = book.sheets().get(cell.sheet);
    sheet.clear(cell.place);
    if (!cell.before.isBlank()) {
      report.changed(change(cell, sheet, null));
    }
    String sentence = cell.row.result() + " stays empty: " + reason;
    report.remark(Report.Code.LEFT_EMPTY, sheet.name(), cell.place.a1(), cell.formula, sentence);
    mark(sheet, cell.place, sentence);
  }

  private void settle(Written cell, Object result) {
    BookSheet sheet = book.sheets().get(cell.sheet);
    boolean sameValue = result.equals(cell.before.value());
    boolean sameFormula =
        options.values() ? !cell.before.isFormula() : isSame(cell.formula, cell.before.formula());
    if (options.values()) {
      sheet.clear(cell.place);
      sheet.putValue(cell.place, result);
    } else if (!sameValue || !sameFormula) {
      sheet.putValue(cell.place, result);
    }
    own.add(
        sheet,
        cell.place,
        new CellContent(result, options.values() ? null : cell.formula, CellContent.Look.PLAIN));
    if (sameValue && sameFormula) {
      report.unchanged();
    } else {
      report.changed(change(cell, sheet, result));
    }
    if (cell.note.isEmpty()) {
      unmark(sheet, cell.place);
    } else {
      report.remark(Report.Code.UNDERSTOOD, sheet.name(), cell.place.a1(), cell.formula, cell.note);
      mark(sheet, cell.place, cell.note);
    }
  }

  /** Some files keep no blanks between arguments. */
  private static boolean isSame(String formula, String stored) {
    return stored != null && formula.replace(" ", "").equals(stored.replace(" ", ""));
  }

  private Report.Change change(Written cell, BookSheet sheet, Object after) {
    return new Report.Change(
        sheet.name(),
        cell.place.a1(),
        cell.row.result(),
        cell.found,
        cell.formula,
        cell.before.value(),
        after);
  }
}
