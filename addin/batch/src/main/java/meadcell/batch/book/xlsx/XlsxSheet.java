package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import meadcell.batch.book.poi.PoiSheet;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/**
 * A sheet of an {@code .xlsx} workbook. POI has it without its cells; they are here, read and
 * written in a tenth of the memory.
 */
final class XlsxSheet implements BookSheet {
  private final XlsxBook book;
  private final XSSFSheet frame;
  private final PoiSheet rest;
  private final XlsxCells cells;
  private final Map<Integer, Integer> widths = new HashMap<>();
  private boolean changed;
  private boolean notesChanged;

  XlsxSheet(XlsxBook book, XSSFSheet frame, XlsxCells cells) {
    this.book = book;
    this.frame = frame;
    this.rest = new PoiSheet(book, frame);
    this.cells = cells;
  }

  XSSFSheet frame() {
    return frame;
  }

  boolean isChanged() {
    return changed;
  }

  boolean areNotesChanged() {
    return notesChanged;
  }

  @Override
  public String name() {
    return rest.name();
  }

  @Override
  public boolean isProtected() {
    return rest.isProtected();
  }

  @Override
  public Place mergedEnd(Place place) {
    return rest.mergedEnd(place);
  }

  @Override
  public boolean isCovered(Place place) {
    return rest.isCovered(place);
  }

  // ---- reading ----------------------------------------------------------------------------

  @Override
  public int lastRow() {
    return cells.height() - 1;
  }

  @Override
  public int lastColumn(int row) {
    XlsxCells.Line line = cells.line(row);
    return line == null || line.count() == 0 ? -1 : line.column(line.count() - 1);
  }

  @Override
  public boolean isHidden(int row) {
    XlsxCells.Line line = cells.line(row);
    return line != null && line.isHidden;
  }

  @Override
  public CellContent content(Place place) {
    XlsxCell cell = cells.cell(place.row(), place.column());
    if (cell == null) {
      return CellContent.BLANK;
    }
    String formula = cell.formula;
    if (formula == null && !cells.arrays().isEmpty()) {
      XlsxCells.Array array = cells.array(place);
      formula = array == null ? null : array.formula();
    }
    return cell.value instanceof Value.Number
        ? new CellContent(cell.value, formula, book.look(cell.style))
        : cell.value.isBlank() && formula == null
            ? CellContent.BLANK
            : new CellContent(cell.value, formula, CellContent.Look.PLAIN);
  }

  @Override
  public Span array(Place place) {
    XlsxCells.Array array = cells.arrays().isEmpty() ? null : cells.array(place);
    return array == null ? null : array.span();
  }

  // ---- writing ----------------------------------------------------------------------------

  private XlsxCell cellToWrite(Place place) {
    changed = true;
    cells.lineToWrite(place.row()).isChanged = true;
    XlsxCell cell = cells.cellToWrite(place.row(), place.column());
    cell.isChanged = true;
    return cell;
  }

  @Override
  public void putFormula(Place place, String formula) {
    XlsxCell cell = cellToWrite(place);
    changeFormula(cell, place, formula);
    cell.value = Value.BLANK;
  }

  @Override
  public void putArray(Span span, String formula) {
    putFormula(span.first(), formula);
    cells.arrays().add(new XlsxCells.Array(span, formula));
  }

  private void changeFormula(XlsxCell cell, Place place, String formula) {
    if (cell.isFirstOfShared) {
      unshare(cell.shared);
    }
    if (cell.formula != null && formula == null) {
      book.removeCalculationChain(); // one that lists a cell without a formula needs a repair
    }
    cells.arrays().removeIf(array -> array.span().contains(place));
    cell.formula = formula;
    cell.isFormulaChanged = true;
  }

  /** Gives each cell that shares a formula its own, before the first one's is changed. */
  private void unshare(int number) {
    for (int row = 0; row < cells.height(); row++) {
      XlsxCells.Line line = cells.line(row);
      for (int i = 0; line != null && i < line.count(); i++) {
        if (line.cell(i).shared == number) {
          Place place = new Place(row, line.column(i));
          XlsxCell cell = cellToWrite(place);
          if (cell.isFormulaUnclear) {
            throw new UncheckedIOException(
                FileRefused.damaged("the shared formula in " + place + " cannot be read", null));
          }
          cell.isFormulaChanged = true;
          cell.shared = XlsxCell.NOT_SHARED;
          cell.isFirstOfShared = false;
        }
      }
    }
  }

  @Override
  public void putValue(Place place, Value value) {
    cellToWrite(place).value = value;
  }

  @Override
  public void freeze(Place place) {
    XlsxCell cell = cellToWrite(place);
    Span array = array(place);
    Place first = array == null ? place : array.first();
    changeFormula(array == null ? cell : cellToWrite(first), first, null);
  }

  @Override
  public void clear(Place place) {
    XlsxCell cell = cellToWrite(place);
    changeFormula(cell, place, null);
    cell.value = Value.BLANK;
  }

  @Override
  public void copyStyle(Place from, Place to, String format) {
    XlsxCell target = cells.cell(to.row(), to.column());
    if (target == null || target.style != book.plainStyle()) {
      return;
    }
    XlsxCell source = cells.cell(from.row(), from.column());
    int style = book.style(source == null ? book.plainStyle() : source.style, format);
    if (style != target.style) {
      cellToWrite(to).style = style;
    }
  }

  @Override
  public void widen(int column, int characters) {
    widths.put(column, characters);
    changed = true;
  }

  // ---- notes ------------------------------------------------------------------------------

  @Override
  public Optional<Note> note(Place place) {
    return rest.note(place);
  }

  @Override
  public void putNote(Place place, Note note) {
    rest.putNote(place, note);
    noteChanged();
  }

  @Override
  public void removeNote(Place place) {
    rest.removeNote(place);
    noteChanged();
  }

  private void noteChanged() {
    changed = true;
    notesChanged = true;
  }

  /** Writes the sheet's XML with what was changed. */
  void write(byte[] original, OutputStream out) throws IOException {
    Map<String, String> links = new TreeMap<>();
    var sheet = frame.getCTWorksheet();
    if (sheet.isSetDrawing()) {
      links.put("drawing", link("drawing", sheet.getDrawing().getId()));
    }
    if (sheet.isSetLegacyDrawing()) {
      links.put("legacyDrawing", link("legacyDrawing", sheet.getLegacyDrawing().getId()));
    }
    XlsxSheetXml.write(original, cells, widths, links, out);
  }

  private static String link(String element, String id) {
    return "<"
        + element
        + " xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\""
        + " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\" r:id=\""
        + id
        + "\"/>";
  }
}
