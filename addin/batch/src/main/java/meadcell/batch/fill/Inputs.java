package meadcell.batch.fill;

import java.util.Set;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Place;
import meadcell.batch.plan.Names;
import meadcell.batch.plan.PlanFormula.Reference;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Nearest;
import meadcell.catalogue.Unit;

/**
 * Finds what the references of a plan stand for on one sheet.
 *
 * @param filled the cells that this run fills, as they become known
 */
record Inputs(
    BookSheet sheet,
    Headings headings,
    Labels labels,
    Names names,
    Catalogue catalogue,
    Set<Place> filled) {

  /** The one name of a header or label in any of its spellings. */
  String name(String written) {
    return names.read(written).name();
  }

  Table.Column column(Reference reference, Table table) {
    return table.columns().get(name(reference.name()));
  }

  /** One cell of a column. */
  Input cell(Reference reference, Table.Column column, int row) {
    Place place = new Place(row, column.index());
    boolean isFilled = filled.contains(place);
    return Input.read(sheet, isFilled, place, place.a1(), column.unit(), reference, catalogue);
  }

  Input wholeColumn(Reference reference, Table table) {
    Table.Column column = column(reference, table);
    if (table.rows().isEmpty()) {
      return Input.problem("the table in row " + (table.headerRow() + 1) + " has no rows.");
    }
    Place first = new Place(table.rows().get(0), column.index());
    Place last = new Place(table.lastRow(), column.index());
    return Input.range(first, last, column.unit(), reference);
  }

  /**
   * A labelled cell.
   *
   * @param table the one it serves, or null
   */
  Input label(Reference reference, Table table) throws Ambiguous {
    String name = name(reference.name());
    Place place = labels.labelled(name, table);
    if (place == null) {
      String hint =
          Nearest.to(name, headings.names())
              .map(near -> " Did you mean \"" + near + "\"?")
              .orElse("");
      return Input.problem("the label \"" + reference.name() + "\" is not on this sheet." + hint);
    }
    Unit unit = labels.labelOf(name, place).unit().orElse(null);
    boolean isFilled = filled.contains(place);
    return Input.read(sheet, isFilled, place, place.fixed(), unit, reference, catalogue);
  }
}
