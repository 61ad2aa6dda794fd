package meadcell.batch.calculation;

import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import org.apache.poi.ss.formula.EvaluationCell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.util.CellRangeAddress;

/**
 * A cell as POI's evaluator sees it; a formula that is not live looks like the plain value it last
 * gave, if it has one.
 */
final class PoiCell implements EvaluationCell {
  private record Key(int sheet, Place place) {
    @Override
    public boolean equals(Object object) {
      return object instanceof Key other && sheet == other.sheet && place.equals(other.place);
    }

    @Override
    public int hashCode() {
      return 31 * sheet + place.hashCode();
    }
  }

  private final PoiSheetView sheet;
  private final Place place;
  private final CellContent content;

  PoiCell(PoiSheetView sheet, Place place, CellContent content) {
    this.sheet = sheet;
    this.place = place;
    this.content = content;
  }

  String address() {
    return sheet.name() + "!" + place;
  }

  String formula() {
    return content.formula();
  }

  /** The same for all cells of one array formula. */
  Object formulaKey() {
    Span array = sheet.array(place);
    return new Key(sheet.index(), array == null ? place : array.first());
  }

  @Override
  public Object getIdentityKey() {
    return new Key(sheet.index(), place);
  }

  @Override
  public PoiSheetView getSheet() {
    return sheet;
  }

  @Override
  public int getRowIndex() {
    return place.row();
  }

  @Override
  public int getColumnIndex() {
    return place.column();
  }

  @Override
  public CellType getCellType() {
    boolean isComputed = content.isFormula() && (content.value().isBlank() || sheet.isLive(place));
    return isComputed ? CellType.FORMULA : getCachedFormulaResultType();
  }

  @Override
  public CellType getCachedFormulaResultType() {
    Value value = content.value();
    return value instanceof Value.Number
        ? CellType.NUMERIC
        : value instanceof Value.Text
            ? CellType.STRING
            : value instanceof Value.Truth
                ? CellType.BOOLEAN
                : value.isError() ? CellType.ERROR : CellType.BLANK;
  }

  @Override
  public double getNumericCellValue() {
    return ((Value.Number) content.value()).number();
  }

  @Override
  public String getStringCellValue() {
    return ((Value.Text) content.value()).text();
  }

  @Override
  public boolean getBooleanCellValue() {
    return ((Value.Truth) content.value()).isTrue();
  }

  @Override
  public int getErrorCellValue() {
    return SheetError.code((Value.Error) content.value());
  }

  @Override
  public CellRangeAddress getArrayFormulaRange() {
    Span span = sheet.array(place);
    return new CellRangeAddress(
        span.first().row(), span.last().row(), span.first().column(), span.last().column());
  }

  @Override
  public boolean isPartOfArrayFormulaGroup() {
    return sheet.array(place) != null;
  }
}
