package meadcell.batch.fill;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.layout.Ambiguous;
import meadcell.batch.layout.Table;
import meadcell.batch.layout.Tables;
import meadcell.batch.plan.PlanFormula.Reference;
import meadcell.batch.plan.PlanFormula.Target;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.report.Report;

/** Puts one line of a plan into one table, as a column of formulas still without results. */
final class ColumnFiller {
  /** Characters; enough for most numbers. */
  private static final int NARROWEST = 10;

  private final PlanRow row;
  private final Table table;
  private final Tables tables;
  private final Inputs inputs;
  private final Cells cells;
  private final List<Written> written = new ArrayList<>();

  /** The row from which on columns are taken so far: below the last in which one is blank. */
  private int from = -1;

  private int typed;
  private Place firstTyped;

  ColumnFiller(PlanRow row, Table table, Tables tables, Inputs inputs, Cells cells) {
    this.row = row;
    this.table = table;
    this.tables = tables;
    this.inputs = inputs;
    this.cells = cells;
  }

  /** The cells that now hold the formula. */
  List<Written> fill() throws Ambiguous {
    Operands fixed = fixed();
    Table.Column result = header();
    Place header = table.place(table.headerRow(), result.index());
    String found = "column \"" + row.result() + "\" from " + header;
    ResultUnit unit = ResultUnit.of(row, result);
    String problem = fixed.problem().isEmpty() ? unit.problem() : fixed.problem();
    if (!problem.isEmpty()) {
      table.rows().forEach(r -> cells.clearOwn(row, table.place(r, result.index()), found));
      cells.leaveEmpty(header, row.result() + " stays empty: " + problem);
      return written;
    }
    Map<Reference, Table.Column> columns = new LinkedHashMap<>();
    for (Reference reference : row.formula().references()) {
      if (inputs.isByRow(reference)) {
        columns.put(reference, inputs.column(reference, table));
      }
    }
    table.rows().forEach(r -> fill(r, result, unit, columns, fixed, found));
    if (typed > 0) {
      cells.remark(
          Report.Code.KEPT,
          firstTyped.a1(),
          typed
              + (typed == 1 ? " cell" : " cells")
              + " of "
              + row.result()
              + " hold what a person typed; not touched (--overwrite replaces them).");
    }
    return written;
  }

  /** What is the same in all rows. */
  private Operands fixed() throws Ambiguous {
    Operands fixed = new Operands();
    for (Reference reference : row.formula().references()) {
      if (!inputs.isByRow(reference)) {
        Input input =
            reference.target() == Target.LABEL
                ? inputs.label(reference, table)
                : inputs.wholeColumn(reference, table);
        fixed.add(reference, input);
        if (!input.note().isEmpty()) {
          cells.remark(Report.Code.UNDERSTOOD, "", input.note());
        }
      }
    }
    return fixed;
  }

  /** The result's column of the table: the one that is there, or a new one beside it. */
  private Table.Column header() throws Ambiguous {
    Table.Column column = table.columns().get(inputs.name(row.result()));
    if (column != null) {
      return column;
    }
    BookSheet sheet = cells.sheet();
    int free = tables.freeColumn(table);
    Place header = table.place(table.headerRow(), free);
    Value text = Value.of(row.result());
    sheet.putValue(header, text);
    sheet.copyStyle(table.place(table.headerRow(), table.lastColumn()), header, "");
    if (!table.grid().isTurned()) {
      sheet.widen(header.column(), Math.max(NARROWEST, row.result().length() + 2));
    }
    tables.addColumn(table, free, row.result());
    cells
        .report()
        .changed(
            new Report.Change(
                sheet.name(), header, row.result(), "new column", "", Value.BLANK, text));
    return table.columns().get(inputs.name(row.result()));
  }

  private void fill(
      int at,
      Table.Column result,
      ResultUnit unit,
      Map<Reference, Table.Column> columns,
      Operands fixed,
      String found) {
    Place place = table.place(at, result.index());
    Operands operands = new Operands();
    from = from < 0 ? at : from;
    int start = from;
    for (Map.Entry<Reference, Table.Column> entry : columns.entrySet()) {
      Reference reference = entry.getKey();
      Input input = inputs.cell(reference, entry.getValue(), table, start, at);
      operands.add(reference, input);
      if (reference.target() == Target.SO_FAR && !input.problem().isEmpty()) {
        from = -1;
      }
    }
    operands.addQuietly(fixed);
    if (!operands.isAnyFilled()) {
      cells.clearOwn(row, place, found);
      cells.unmark(place);
    } else if (operands.problem().isEmpty()) {
      String formula = unit.convert(operands.in(row.formula()));
      Place like = table.place(at, result.index() - 1);
      Written cell = cells.put(row, place, like, formula, operands.note(), found);
      if (cell == null) {
        keep(place);
      } else {
        written.add(cell);
      }
    } else if (cells.clearOwn(row, place, found)) {
      cells.leaveEmpty(place, row.result() + " stays empty: " + operands.problem());
    } else {
      keep(place);
    }
  }

  /** A person's own value stands there. */
  private void keep(Place place) {
    firstTyped = typed++ == 0 ? place : firstTyped;
  }
}
