package meadcell.office.uno;

import static meadcell.office.uno.RemoteOffice.as;

import com.sun.star.beans.PropertyValue;
import com.sun.star.container.XNameAccess;
import com.sun.star.frame.XModel;
import com.sun.star.frame.XStorable;
import com.sun.star.lang.XComponent;
import com.sun.star.sheet.FillDirection;
import com.sun.star.sheet.XArrayFormulaRange;
import com.sun.star.sheet.XCalculatable;
import com.sun.star.sheet.XCellRangeAddressable;
import com.sun.star.sheet.XCellRangeData;
import com.sun.star.sheet.XCellRangeFormula;
import com.sun.star.sheet.XCellSeries;
import com.sun.star.sheet.XSheetCellCursor;
import com.sun.star.sheet.XSpreadsheet;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.sheet.XUsedAreaCursor;
import com.sun.star.table.XCell;
import com.sun.star.table.XCellRange;
import com.sun.star.text.XText;
import com.sun.star.util.XCloseable;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** A spreadsheet in the office, at the level of its first sheet's cells. */
public final class Workbook implements AutoCloseable {
  /** A column that no test uses. */
  private static final int ERRORS = 99;

  private final XComponent document;
  private final XSpreadsheet sheet;

  Workbook(XComponent document) throws com.sun.star.uno.Exception {
    this(document, sheets(document).getElementNames()[0]);
  }

  private Workbook(XComponent document, String sheet) throws com.sun.star.uno.Exception {
    this.document = document;
    this.sheet = as(XSpreadsheet.class, sheets(document).getByName(sheet));
  }

  private static XNameAccess sheets(XComponent document) {
    return as(XNameAccess.class, as(XSpreadsheetDocument.class, document).getSheets());
  }

  /** The names of all sheets. */
  public List<String> sheets() {
    return List.of(sheets(document).getElementNames());
  }

  /** The same spreadsheet, at the level of another sheet's cells. */
  public Workbook sheet(String name) throws com.sun.star.uno.Exception {
    return new Workbook(document, name);
  }

  /** Where it is stored; empty if it never was. */
  public String url() {
    return as(XModel.class, document).getURL();
  }

  public XComponent document() {
    return document;
  }

  public XCell cell(String address) throws com.sun.star.uno.Exception {
    return range(address).getCellByPosition(0, 0);
  }

  private XCellRange range(String address) {
    return sheet.getCellRangeByName(address);
  }

  private XCellRange range(int column, int row, int columns, int rows)
      throws com.sun.star.uno.Exception {
    return sheet.getCellRangeByPosition(column, row, column + columns - 1, row + rows - 1);
  }

  /** Types formulas, numbers or texts into one column, downwards from its first cell. */
  public void type(int column, String... entries) throws com.sun.star.uno.Exception {
    String[][] rows = new String[entries.length][];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = new String[] {entries[i]};
    }
    as(XCellRangeFormula.class, range(column, 0, 1, rows.length)).setFormulaArray(rows);
  }

  /** Copies a range's first row down over it, as a user drags it. */
  public void fillDown(String address) {
    as(XCellSeries.class, range(address)).fillAuto(FillDirection.TO_BOTTOM, 1);
  }

  /** Enters an array formula. */
  public void typeArray(String address, String formula) {
    as(XArrayFormulaRange.class, range(address)).setArrayFormula(formula);
  }

  /** Empties a range. */
  public void clear(String address) {
    typeArray(address, "");
  }

  /** What a range holds: Double, String, void where there is an error. */
  public Object[][] values(String address) {
    return as(XCellRangeData.class, range(address)).getDataArray();
  }

  /** What a column holds. */
  public Object[] column(int column, int rows) throws com.sun.star.uno.Exception {
    Object[][] cells = as(XCellRangeData.class, range(column, 0, 1, rows)).getDataArray();
    Object[] values = new Object[rows];
    for (int i = 0; i < rows; i++) {
      values[i] = cells[i][0];
    }
    return values;
  }

  /** The office's numbers of the errors in a column, 0 where there is none. */
  public int[] errors(int column, int rows) throws com.sun.star.uno.Exception {
    String[] formulas = new String[rows];
    for (int i = 0; i < rows; i++) {
      String cell = "INDIRECT(ADDRESS(" + (i + 1) + ";" + (column + 1) + "))";
      formulas[i] = "=IF(ISERROR(" + cell + ");ERRORTYPE(" + cell + ");0)";
    }
    type(ERRORS, formulas);
    return Arrays.stream(column(ERRORS, rows)).mapToInt(n -> ((Double) n).intValue()).toArray();
  }

  /** How many rows are in use. */
  public int rows() {
    XSheetCellCursor cursor = sheet.createCursor();
    as(XUsedAreaCursor.class, cursor).gotoEndOfUsedArea(false);
    return as(XCellRangeAddressable.class, cursor).getRangeAddress().EndRow + 1;
  }

  /** A cell as the user sees it. */
  public String shown(String address) throws com.sun.star.uno.Exception {
    return as(XText.class, cell(address)).getString();
  }

  /** Protects the sheet; an empty password is none. */
  public void protect(String password) {
    as(com.sun.star.util.XProtectable.class, sheet).protect(password);
  }

  public void recalculate() {
    as(XCalculatable.class, document).calculateAll();
  }

  /** Stores a copy in the format of a named filter. */
  public void store(Path file, String filter) throws com.sun.star.uno.Exception {
    as(XStorable.class, document)
        .storeToURL(
            file.toUri().toString(),
            new PropertyValue[] {RemoteOffice.property("FilterName", filter)});
  }

  @Override
  public void close() throws com.sun.star.uno.Exception {
    as(XCloseable.class, document).close(true);
  }
}
