package meadcell.batch.book.ods;

import static meadcell.batch.book.ods.OdsNames.OFFICE;
import static meadcell.batch.book.ods.OdsNames.TABLE;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import org.w3c.dom.Attr;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** A sheet of an OpenDocument spreadsheet. */
final class OdsSheet implements BookSheet {
  private static final int MILLIMETRES_A_CHARACTER = 2;
  private static final int MOST_COLUMNS = 16_384; // from LibreOffice 7.4 on
  private static final String ARRAY_ROWS = "number-matrix-rows-spanned";
  private static final String ARRAY_COLUMNS = "number-matrix-columns-spanned";

  private final OdsBook book;
  private final Element table;
  private final OdsGrid grid;

  @SuppressWarnings("IdentityHashMapUsage") // each element is a cell of its own
  private final Map<Element, CellContent> known = new IdentityHashMap<>();

  private List<Span> arrays;

  OdsSheet(OdsBook book, Element table) {
    this.book = book;
    this.table = table;
    this.grid = new OdsGrid(table);
  }

  Element table() {
    return table;
  }

  @Override
  public String name() {
    return table.getAttributeNS(TABLE, "name");
  }

  @Override
  public boolean isProtected() {
    return table.getAttributeNS(TABLE, "protected").equals("true");
  }

  @Override
  public int lastRow() {
    return grid.lastRow();
  }

  @Override
  public int lastColumn(int row) {
    return grid.lastColumn(row);
  }

  @Override
  public CellContent content(Place place) {
    Element cell = grid.cell(place.row(), place.column());
    if (cell == null || !cell.hasAttributes() && !cell.hasChildNodes()) {
      return CellContent.BLANK;
    }
    CellContent content = known.computeIfAbsent(cell, this::read);
    Span array = content.isFormula() ? null : array(place);
    return array == null // the file has an array's formula in its first cell only
        ? content
        : new CellContent(content.value(), content(array.first()).formula(), content.look());
  }

  private CellContent read(Element cell) {
    String formula = cell.getAttributeNS(TABLE, "formula");
    String type = cell.getAttributeNS(OFFICE, "value-type");
    CellContent.Look look =
        switch (type) {
          case "percentage" -> CellContent.Look.PERCENT;
          case "date", "time" -> CellContent.Look.DATE;
          default -> CellContent.Look.PLAIN;
        };
    return new CellContent(
        OdsValues.read(cell, type, book.nullDate()),
        formula.isEmpty() ? null : OpenFormula.toA1(formula),
        look);
  }

  @Override
  public Place mergedEnd(Place place) {
    Element cell = grid.cell(place.row(), place.column());
    return cell == null
        ? place
        : new Place(
            place.row() + OdsNames.number(cell, TABLE, "number-rows-spanned") - 1,
            place.column() + OdsNames.number(cell, TABLE, "number-columns-spanned") - 1);
  }

  @Override
  public boolean isCovered(Place place) {
    Element cell = grid.cell(place.row(), place.column());
    return cell != null && OdsNames.is(cell, TABLE, "covered-table-cell");
  }

  @Override
  public boolean isHidden(int row) {
    Element line = grid.row(row);
    String visibility = line == null ? "" : line.getAttributeNS(TABLE, "visibility");
    return visibility.equals("collapse") || visibility.equals("filter");
  }

  @Override
  public Span array(Place place) {
    if (arrays == null) {
      arrays = findArrays();
    }
    return arrays.isEmpty()
        ? null
        : arrays.stream().filter(span -> span.contains(place)).findFirst().orElse(null);
  }

  private List<Span> findArrays() {
    List<Span> found = new ArrayList<>();
    for (int row = 0; row <= lastRow(); row++) {
      for (int column = 0; column <= lastColumn(row); column++) {
        Element cell = grid.cell(row, column);
        if (cell != null && cell.hasAttributeNS(TABLE, ARRAY_ROWS)) {
          int lastRow = row + OdsNames.number(cell, TABLE, ARRAY_ROWS) - 1;
          int lastColumn = column + OdsNames.number(cell, TABLE, ARRAY_COLUMNS) - 1;
          found.add(new Span(new Place(row, column), new Place(lastRow, lastColumn)));
        }
      }
    }
    return found;
  }

  private Element cellToWrite(Place place) {
    Element cell = grid.ownCell(place.row(), place.column());
    known.remove(cell);
    return cell;
  }

  @Override
  public void putFormula(Place place, String formula) {
    clear(place);
    cellToWrite(place).setAttributeNS(TABLE, "table:formula", OpenFormula.fromA1(formula));
  }

  @Override
  public void putArray(Span span, String formula) {
    putFormula(span.first(), formula);
    Element cell = cellToWrite(span.first());
    int rows = span.last().row() - span.first().row() + 1;
    int columns = span.last().column() - span.first().column() + 1;
    cell.setAttributeNS(TABLE, "table:" + ARRAY_ROWS, String.valueOf(rows));
    cell.setAttributeNS(TABLE, "table:" + ARRAY_COLUMNS, String.valueOf(columns));
    arrays = null;
  }

  @Override
  public void putValue(Place place, Value value) {
    OdsValues.write(cellToWrite(place), value);
  }

  @Override
  public void freeze(Place place) {
    Element cell = cellToWrite(place);
    cell.removeAttributeNS(TABLE, "formula");
    cell.removeAttributeNS(TABLE, ARRAY_ROWS);
    cell.removeAttributeNS(TABLE, ARRAY_COLUMNS);
    arrays = null;
  }

  @Override
  public void clear(Place place) {
    Element cell = cellToWrite(place);
    cell.removeAttributeNS(TABLE, "formula");
    OdsValues.remove(cell);
  }

  @Override
  public Runnable keep(Place place) {
    Node before = cellToWrite(place).cloneNode(true);
    return () -> {
      Element cell = cellToWrite(place);
      while (cell.hasAttributes()) {
        cell.removeAttributeNode((Attr) cell.getAttributes().item(0));
      }
      while (cell.hasChildNodes()) {
        cell.removeChild(cell.getFirstChild());
      }
      for (int i = 0; i < before.getAttributes().getLength(); i++) {
        cell.setAttributeNodeNS((Attr) before.getAttributes().item(i).cloneNode(true));
      }
      while (before.hasChildNodes()) {
        cell.appendChild(before.getFirstChild());
      }
      arrays = null;
    };
  }

  @Override
  public int mostColumns() {
    return MOST_COLUMNS;
  }

  @Override
  public void copyStyle(Place from, Place to, String format) {
    Element target = cellToWrite(to);
    Element source = grid.cell(from.row(), from.column());
    if (!book.styles().isGeneral(grid.style(to.row(), to.column()))) {
      return;
    }
    String own = target.getAttributeNS(TABLE, "style-name");
    String neighbour = source == null ? "" : source.getAttributeNS(TABLE, "style-name");
    String wanted = book.styles().cell(OdsStyles.isPlain(own) ? neighbour : own, format);
    if (!wanted.isEmpty() && !wanted.equals(own)) {
      target.setAttributeNS(TABLE, "table:style-name", wanted);
    }
  }

  @Override
  public void widen(int column, int characters) {
    grid.ownColumn(column)
        .setAttributeNS(
            TABLE, "table:style-name", book.styles().column(characters * MILLIMETRES_A_CHARACTER));
  }

  @Override
  public Optional<Note> note(Place place) {
    Element cell = grid.cell(place.row(), place.column());
    return cell == null ? Optional.empty() : OdsNotes.read(cell);
  }

  @Override
  public void putNote(Place place, Note note) {
    OdsNotes.put(cellToWrite(place), note);
  }

  @Override
  public void removeNote(Place place) {
    if (note(place).isPresent()) {
      OdsNotes.remove(cellToWrite(place));
    }
  }
}
