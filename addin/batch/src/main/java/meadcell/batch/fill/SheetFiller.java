package meadcell.batch.fill;

import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.plan.PlanFormula;
import meadcell.batch.plan.PlanFormula.Target;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.plan.Unit;
import meadcell.batch.report.Report;
import meadcell.catalogue.Nearest;

/** Puts the formulas of a plan where they belong on one sheet, still without their results. */
final class SheetFiller {
  /** Characters; enough for most numbers. */
  private static final int NARROWEST = 10;

  private final Filler filler;
  private final Report report;
  private final OwnCells own;
  private final Notes notes;
  private final int index;
  private final BookSheet sheet;
  private final List<PlanRow> rows;
  private final SheetMap map;

  SheetFiller(Filler filler, int index, BookSheet sheet, List<PlanRow> rows) {
    this.filler = filler;
    this.report = filler.report;
    this.own = filler.own;
    this.notes = filler.notes;
    this.index = index;
    this.sheet = sheet;
    this.rows = rows;
    this.map = new SheetMap(sheet, filler.plan.names());
  }

  void fill() {
    if (sheet.isProtected() && !filler.options.protectedToo()) {
      remark(Report.Code.FILE, "", "The sheet is protected; nothing was filled on it.");
      filler.found.addAll(rows);
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
    return filler.plan.names().read(written).name();
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
      filler.found.add(row);
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
    String absent = needed.stream().filter(name -> !known.contains(name)).findFirst().orElse(null);
    Optional<String> near = absent == null ? Optional.empty() : Nearest.to(absent, known);
    String sentence =
        absent == null
            ? "no row has all of its headers: " + String.join(", ", needed) + "."
            : "\"" + asWritten(absent, row) + "\" was not found.";
    if (near.isPresent()) {
      sentence += " Did you mean \"" + near.get() + "\"?";
      remark(Report.Code.NOT_FOUND, "", row.result() + ": " + sentence);
    }
    filler.missing.merge(
        row, sentence, (first, next) -> next.contains("Did you mean") ? next : first);
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
    StringBuilder understood = new StringBuilder();
    String problem = "";
    boolean anyValue = false;
    Map<PlanFormula.Reference, Input> inputs = new IdentityHashMap<>(fixed);
    for (Map.Entry<PlanFormula.Reference, Table.Column> entry : columns.entrySet()) {
      Input input = cell(entry.getKey(), entry.getValue(), place.row());
      inputs.put(entry.getKey(), input);
      anyValue |= !input.isBlank();
      problem = problem.isEmpty() ? input.problem() : problem;
      understood
          .append(understood.isEmpty() || input.note().isEmpty() ? "" : " ")
          .append(input.note());
    }
    if (!anyValue) {
      clearOwn(row, place, found);
      notes.unmark(sheet, place);
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
    return put(row, place, formula, understood.toString(), found);
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
    return Input.read(
        sheet, place, place.a1(), column.unit(), reference, filler.functions.catalogue());
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
    return Input.read(sheet, place, place.fixed(), unit, reference, filler.functions.catalogue());
  }

  private void fillLabel(PlanRow row) throws SheetMap.Ambiguous {
    Place place = map.labelled(name(row.result()), null);
    if (place == null) {
      missing(row, List.of(name(row.result())));
      return;
    }
    filler.found.add(row);
    Map<PlanFormula.Reference, Input> inputs = new IdentityHashMap<>();
    StringBuilder understood = new StringBuilder();
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
      understood
          .append(understood.isEmpty() || input.note().isEmpty() ? "" : " ")
          .append(input.note());
    }
    String formula = row.formula().with(reference -> inputs.get(reference).formula());
    String found = "label \"" + row.result() + "\"";
    if (!put(row, place, formula, understood.toString(), found)) {
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
    boolean same = Written.isSame(formula, before.formula());
    boolean free =
        before.isBlank() || same || own.isOwn(sheet, place, before) || filler.options.overwrite();
    BookSheet.Span array = sheet.array(place);
    boolean isPartOfMore = array != null && !array.first().equals(array.last());
    if (!free || isPartOfMore) {
      return false;
    }
    if (!same) {
      sheet.putFormula(place, formula);
      sheet.copyStyle(new Place(place.row(), place.column() - 1), place, row.format());
    }
    filler.live.add(index, place.row(), place.column());
    filler.written.add(new Written(index, place, row, found, formula, before, note));
    return true;
  }

  private void leaveEmpty(Place place, String sentence) {
    report.remark(Report.Code.LEFT_EMPTY, sheet.name(), place.a1(), "", sentence);
    notes.mark(sheet, place, sentence);
  }

  private void changeTo(PlanRow row, Place place, String found, CellContent before, Object after) {
    report.changed(
        new Report.Change(
            sheet.name(), place.a1(), row.result(), found, "", before.value(), after));
  }
}
