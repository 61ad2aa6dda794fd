package meadcell.batch.fill;

import java.util.function.Predicate;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Place;
import meadcell.batch.fill.Input.Cell;
import meadcell.batch.layout.Ambiguous;
import meadcell.batch.layout.Headings;
import meadcell.batch.layout.Labels;
import meadcell.batch.layout.Table;
import meadcell.batch.plan.Names;
import meadcell.batch.plan.PlanFormula.Reference;
import meadcell.batch.plan.PlanFormula.Target;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Kind;

/**
 * Finds what the references of a plan stand for on one sheet.
 *
 * @param isFilled whether this run has filled a cell
 */
record Inputs(
    BookSheet sheet,
    Headings headings,
    Labels labels,
    Names names,
    Catalogue catalogue,
    Predicate<Place> isFilled) {

  /** The one name of a header or label in any of its spellings. */
  String name(String written) {
    return names.read(written).name();
  }

  Table.Column column(Reference reference, Table table) {
    return table.columns().get(name(reference.name()));
  }

  /** Whether it is another in each row. */
  boolean isByRow(Reference reference) {
    return reference.target() == Target.ROW || reference.target() == Target.SO_FAR;
  }

  /**
   * What a reference stands for in one row of a table.
   *
   * @param from the row from which on a column is taken so far
   */
  Input cell(Reference reference, Table.Column column, Table table, int from, int row) {
    Place place = table.place(row, column.index());
    Cell cell = new Cell(place, place.a1(), column.unit(), column.strange(), null);
    Input input = Input.read(sheet, isFilled.test(place), cell, reference, catalogue);
    if (reference.target() == Target.ROW || !input.problem().isEmpty()) {
      return input;
    }
    String typed = sheet.content(place).typedText();
    boolean isText =
        typed != null
            && reference.use().filter(use -> use.arg().kind() == Kind.NUMBERS).isPresent();
    if (isText) {
      return Input.problem(
          reference.name() + " in " + place + " is \"" + typed + "\"; a number is due.");
    }
    Place first = table.place(from, column.index());
    return Input.range(first.fixed() + ":" + place.a1(), cell, reference);
  }

  Input wholeColumn(Reference reference, Table table) {
    Table.Column column = column(reference, table);
    if (table.rows().isEmpty()) {
      return Input.problem("the table in " + table.where() + " has no rows.");
    }
    Place first = table.place(table.rows().get(0), column.index());
    Place last = table.place(table.lastRow(), column.index());
    Cell cell = new Cell(first, "", column.unit(), column.strange(), null);
    return Input.range(first.fixed() + ":" + last.fixed(), cell, reference);
  }

  /**
   * A labelled cell.
   *
   * @param table the one it serves, or null
   */
  Input label(Reference reference, Table table) throws Ambiguous {
    String name = name(reference.name());
    Labels.Value value = labels.labelled(name, table);
    if (value == null) {
      return Input.problem(
          "the label \""
              + reference.name()
              + "\" is not on this sheet."
              + Suggestion.of(name, headings.written()));
    }
    Place place = value.place();
    Cell cell = new Cell(place, place.fixed(), value.unit(), value.strange(), value.inline());
    return Input.read(sheet, isFilled.test(place), cell, reference, catalogue);
  }
}
