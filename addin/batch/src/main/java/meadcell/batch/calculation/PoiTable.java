package meadcell.batch.calculation;

import meadcell.batch.book.NamedTable;
import meadcell.batch.book.Place;
import org.apache.poi.ss.usermodel.Table;
import org.apache.poi.ss.usermodel.TableStyleInfo;
import org.apache.poi.ss.util.CellReference;

/** A table as POI's formula parser sees it. */
record PoiTable(NamedTable table, String sheet) implements Table {
  @Override
  public int getStartColIndex() {
    return table.span().first().column();
  }

  @Override
  public int getStartRowIndex() {
    return table.span().first().row();
  }

  @Override
  public int getEndColIndex() {
    return table.span().last().column();
  }

  @Override
  public int getEndRowIndex() {
    return table.span().last().row();
  }

  @Override
  public String getName() {
    return table.name();
  }

  @Override
  public String getStyleName() {
    return "";
  }

  @Override
  public int findColumnIndex(String header) {
    for (int i = 0; i < table.columns().size(); i++) {
      if (table.columns().get(i).equalsIgnoreCase(header.replaceAll("'(.)", "$1"))) {
        return i;
      }
    }
    return -1;
  }

  @Override
  public String getSheetName() {
    return sheet;
  }

  @Override
  public boolean isHasTotalsRow() {
    return table.totalRows() > 0;
  }

  @Override
  public int getTotalsRowCount() {
    return table.totalRows();
  }

  @Override
  public int getHeaderRowCount() {
    return table.headerRows();
  }

  @Override
  public TableStyleInfo getStyle() {
    return null;
  }

  @Override
  public boolean contains(CellReference cell) {
    return sheet.equals(cell.getSheetName())
        && table.span().contains(new Place(cell.getRow(), cell.getCol()));
  }
}
