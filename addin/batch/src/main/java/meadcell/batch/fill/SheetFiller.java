package meadcell.batch.fill;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.CellSet;
import meadcell.batch.layout.Ambiguous;
import meadcell.batch.layout.Grid;
import meadcell.batch.layout.Headings;
import meadcell.batch.layout.Labels;
import meadcell.batch.layout.Table;
import meadcell.batch.layout.Tables;
import meadcell.batch.plan.Header;
import meadcell.batch.plan.Names;
import meadcell.batch.plan.PlanFormula.Reference;
import meadcell.batch.plan.PlanFormula.Target;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Nearest;

/** Puts the formulas of a plan where they belong on one sheet, still without their results. */
final class SheetFiller {
  private final List<PlanRow> rows;
  private final Cells cells;
  private final Headings headings;
  private final Tables tables;
  private final Names names;
  private Tables turned;
  private final Labels labels;
  private final Inputs inputs;
  private final List<Written> written = new ArrayList<>();
  private final CellSet filled = new CellSet();
  private final Set<PlanRow> found = new HashSet<>();
  private final Map<PlanRow, Placement.Missing> missing = new HashMap<>();

  SheetFiller(List<PlanRow> rows, Names names, Catalogue catalogue, Cells cells) {
    this.rows = rows;
    this.cells = cells;
    this.names = names;
    Grid grid = new Grid(cells.sheet(), false);
    this.headings = new Headings(grid, names);
    this.tables = new Tables(grid, names, headings);
    this.labels = new Labels(cells.sheet(), headings, names);
    this.inputs = new Inputs(cells.sheet(), headings, labels, names, catalogue, this::isFilled);
  }

  Placement fill() {
    for (PlanRow row : rows) {
      try {
        if (row.formula().fillsColumn()) {
          fillColumns(row);
        } else {
          fillLabel(row);
        }
      } catch (Ambiguous e) {
        ambiguous(row, e);
      }
    }
    return new Placement(written, found, missing);
  }

  /** What stands more than once is found, if not filled. */
  private void ambiguous(PlanRow row, Ambiguous e) {
    found.add(row);
    cells.remark(Report.Code.NOT_FOUND, "", row.result() + ": " + e.getMessage() + ".");
  }

  private void fillColumns(PlanRow row) throws Ambiguous {
    Set<String> needed = needed(row, Target.ROW, Target.SO_FAR, Target.COLUMN);
    List<Table> fitting = tables(needed);
    if (fitting.isEmpty()) {
      missing(row, needed);
    }
    for (Table table : fitting) {
      found.add(row);
      Tables around = table.grid().isTurned() ? turned : tables;
      try {
        new ColumnFiller(row, table, around, inputs, cells).fill().forEach(this::written);
      } catch (Ambiguous e) { // the next table may be clear
        ambiguous(row, e);
      }
    }
  }

  /** The tables with these headers; where none reads down, those that lie across. */
  private List<Table> tables(Set<String> needed) throws Ambiguous {
    List<Table> down = tables.tables(needed);
    if (!down.isEmpty() || !Grid.mayTurn(cells.sheet())) {
      return down;
    }
    if (turned == null) {
      Grid grid = new Grid(cells.sheet(), true);
      turned = new Tables(grid, names, new Headings(grid, names));
    }
    return turned.tables(needed).stream().filter(table -> table.rows().size() > 1).toList();
  }

  private void fillLabel(PlanRow row) throws Ambiguous {
    String name = inputs.name(row.result());
    Labels.Value label = labels.labelled(name, null);
    if (label == null || label.inline() != null) {
      newLabel(row, name);
      return;
    }
    fillLabel(row, label);
  }

  /**
   * Puts a label for a result right of the first input, past all that stands there; not where its
   * name may be a slip for one that is there, or an input is not.
   */
  private void newLabel(PlanRow row, String name) throws Ambiguous {
    Labels.Value first = null;
    boolean isNear = Nearest.to(name, headings.written().keySet()).isPresent();
    for (Reference reference : row.formula().references()) {
      Labels.Value input = labels.labelled(inputs.name(reference.name()), null);
      first = first == null ? input : first;
      isNear |= input == null || reference.target() != Target.LABEL;
    }
    if (first == null || isNear) {
      missing(row, List.of(name));
      return;
    }
    BookSheet sheet = cells.sheet();
    int column = Math.max(sheet.lastColumn(first.label().row()), first.place().column()) + 2;
    Place label = new Place(first.label().row(), column);
    Place place = new Place(label.row(), column + 1);
    if (place.column() >= sheet.mostColumns() || sheet.isCovered(label) || sheet.isCovered(place)) {
      missing(row, List.of(name));
      return;
    }
    Value text = Value.of(row.result());
    sheet.putValue(label, text);
    sheet.copyStyle(first.label(), label, "");
    sheet.widen(column, row.result().length() + 2);
    cells
        .report()
        .changed(
            new Report.Change(
                sheet.name(), label, row.result(), "new label", "", Value.BLANK, text));
    Header header = Header.of(row.result());
    fillLabel(
        row, new Labels.Value(label, place, header.unit().orElse(null), header.strange(), null));
  }

  private void fillLabel(PlanRow row, Labels.Value label) throws Ambiguous {
    Place place = label.place();
    found.add(row);
    Operands operands = new Operands();
    for (Reference reference : row.formula().references()) {
      operands.add(
          reference,
          reference.target() == Target.LABEL
              ? inputs.label(reference, null)
              : inputs.wholeColumn(reference, onlyTable(row)));
    }
    ResultUnit unit = ResultUnit.of(row, label.unit(), label.strange());
    String problem = operands.problem().isEmpty() ? unit.problem() : operands.problem();
    if (!problem.isEmpty()) {
      cells.leaveEmpty(place, row.result() + " stays empty: " + problem);
      return;
    }
    String where = "label \"" + row.result() + "\"";
    String formula = unit.convert(operands.in(row.formula()));
    Place like = new Place(place.row(), place.column() - 1);
    Written cell = cells.put(row, place, like, formula, operands.note(), where);
    if (cell == null) {
      cells.remark(
          Report.Code.KEPT,
          place.a1(),
          row.result() + " holds what a person typed; not touched (--overwrite replaces it).");
    } else {
      written(cell);
    }
  }

  private void written(Written cell) {
    written.add(cell);
    filled.add(cell.sheet(), cell.place());
  }

  private boolean isFilled(Place place) {
    return filled.contains(cells.index(), place.row(), place.column());
  }

  private Table onlyTable(PlanRow row) throws Ambiguous {
    Set<String> needed = needed(row, Target.COLUMN);
    List<Table> fitting = tables(needed);
    if (fitting.size() != 1) {
      throw new Ambiguous(
          fitting.size() + " tables on the sheet have the headers " + String.join(", ", needed));
    }
    return fitting.get(0);
  }

  /** The headers, or labels, that must be there already, through results of earlier lines. */
  private Set<String> needed(PlanRow row, Target... targets) {
    Set<String> needed = new LinkedHashSet<>();
    for (Reference reference : row.formula().references()) {
      if (List.of(targets).contains(reference.target())) {
        String name = inputs.name(reference.name());
        PlanRow earlier = earlier(name, row);
        needed.addAll(earlier == null ? Set.of(name) : needed(earlier, targets));
      }
    }
    return needed;
  }

  private PlanRow earlier(String result, PlanRow before) {
    for (PlanRow row : rows.subList(0, rows.indexOf(before))) {
      if (inputs.name(row.result()).equals(result)) {
        return row;
      }
    }
    return null;
  }

  /** Notes a line that finds nothing here; it may still find its place on another sheet. */
  private void missing(PlanRow row, Collection<String> needed) {
    Map<String, String> known = headings.written();
    String absent =
        needed.stream()
            .filter(name -> known.keySet().stream().noneMatch(n -> isSame(name, n)))
            .findFirst()
            .orElse(null);
    String sentence =
        absent == null
            ? "no row has all of its headers: "
                + needed.stream().map(name -> asWritten(name, row)).collect(joining(", "))
                + "."
            : "\"" + asWritten(absent, row) + "\" was not found." + Suggestion.of(absent, known);
    boolean isNear = sentence.contains("Did you mean");
    if (isNear) {
      cells.remark(Report.Code.NOT_FOUND, "", row.result() + ": " + sentence);
    }
    missing.put(row, new Placement.Missing(sentence, isNear));
  }

  private boolean isSame(String name, String known) {
    return known.equals(name) || names.areSynonyms(name, names.read(known));
  }

  private String asWritten(String name, PlanRow row) {
    return row.formula().references().stream()
        .map(Reference::name)
        .filter(written -> inputs.name(written).equals(name))
        .findFirst()
        .orElse(name);
  }
}
