package meadcell.batch.calculation;

import java.util.Optional;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import org.apache.poi.ss.formula.EvaluationSheet;

/** A sheet as POI's evaluator sees it. */
final class PoiSheetView implements EvaluationSheet, PoiFunction.Arrays {
  private final int index;
  private final BookSheet sheet;
  private final Live live;

  PoiSheetView(int index, BookSheet sheet, Live live) {
    this.index = index;
    this.sheet = sheet;
    this.live = live;
  }

  int index() {
    return index;
  }

  String name() {
    return sheet.name();
  }

  /** Why a formula must not be computed, or nothing. */
  Optional<String> obstacle(Place place) {
    return live.obstacle(index, place);
  }

  boolean isLive(Place place) {
    return live.isLive(index, place.row(), place.column());
  }

  /** The cells of the array formula that the cell is part of, or null. */
  Span array(Place place) {
    return sheet.array(place);
  }

  @Override
  public PoiCell getCell(int row, int column) {
    if (row < 0 || column < 0) {
      return null;
    }
    Place place = new Place(row, column);
    CellContent content = live.taken(index, place, sheet.content(place));
    boolean isNothing = content.value().isBlank() && !content.isFormula();
    return isNothing ? null : new PoiCell(this, place, content);
  }

  @Override
  public boolean isInArray(int row, int column) {
    return array(new Place(row, column)) != null;
  }

  @Override
  public void clearAllCachedResultValues() {
    // nothing is kept here
  }

  @Override
  public int getLastRowNum() {
    return sheet.lastRow();
  }

  @Override
  public boolean isRowHidden(int row) {
    return sheet.isHidden(row);
  }
}
