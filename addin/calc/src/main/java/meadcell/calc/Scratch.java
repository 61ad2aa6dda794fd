package meadcell.calc;

import com.sun.star.beans.PropertyValue;
import com.sun.star.beans.UnknownPropertyException;
import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XIndexAccess;
import com.sun.star.container.XNamed;
import com.sun.star.frame.XComponentLoader;
import com.sun.star.frame.XStorable;
import com.sun.star.io.SequenceInputStream;
import com.sun.star.io.SequenceOutputStream;
import com.sun.star.io.XSequenceOutputStream;
import com.sun.star.lang.WrappedTargetException;
import com.sun.star.sheet.FormulaResult;
import com.sun.star.sheet.XArrayFormulaRange;
import com.sun.star.sheet.XCellRangeAddressable;
import com.sun.star.sheet.XSheetCellCursor;
import com.sun.star.sheet.XSheetCellRange;
import com.sun.star.sheet.XSpreadsheet;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.table.CellAddress;
import com.sun.star.table.XCell;
import com.sun.star.table.XCellRange;
import com.sun.star.text.XText;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.uno.XComponentContext;
import com.sun.star.util.XCloseable;
import com.sun.star.util.XProtectable;

/**
 * A copy of a document in memory, in which Calc computes the parts of one cell's formula at that
 * cell's own place. The user's document stays as it is.
 */
final class Scratch implements AutoCloseable {
  private static final String STREAM = "private:stream";

  private final XSpreadsheetDocument copy;
  private final CellAddress place;
  private final XCell cell;

  /** How far the cell lies inside its array formula. */
  private int rowInArray;

  private int columnInArray;

  /** What Calc computes or finds: a value as an add-in is given it, or an error as it shows. */
  record Found(Object value, String error) {
    boolean isError() {
      return !error.isEmpty();
    }
  }

  /** The sheet is protected with a password. */
  static final class Locked extends Exception {
    private static final long serialVersionUID = 1;

    Locked(Throwable cause) {
      super(cause);
    }
  }

  Scratch(XComponentContext context, XSpreadsheetDocument document, CellAddress place)
      throws com.sun.star.uno.Exception, Locked {
    this.place = place;
    copy = copy(context, document);
    boolean isReady = false;
    try {
      XSpreadsheet sheet = sheet(place.Sheet);
      try {
        as(XProtectable.class, sheet).unprotect("");
      } catch (com.sun.star.lang.IllegalArgumentException e) {
        throw new Locked(e);
      }
      cell = sheet.getCellByPosition(place.Column, place.Row);
      clear(sheet);
      isReady = true;
    } finally {
      if (!isReady) {
        close();
      }
    }
  }

  private static XSpreadsheetDocument copy(XComponentContext context, XSpreadsheetDocument document)
      throws com.sun.star.uno.Exception {
    XSequenceOutputStream out = SequenceOutputStream.create(context);
    PropertyValue filter = property("FilterName", "calc8");
    as(XStorable.class, document)
        .storeToURL(STREAM, new PropertyValue[] {filter, property("OutputStream", out)});
    Object desktop =
        context
            .getServiceManager()
            .createInstanceWithContext("com.sun.star.frame.Desktop", context);
    return as(
        XSpreadsheetDocument.class,
        as(XComponentLoader.class, desktop)
            .loadComponentFromURL(
                STREAM,
                "_blank",
                0,
                new PropertyValue[] {
                  filter,
                  property(
                      "InputStream",
                      SequenceInputStream.createStreamFromSequence(context, out.getWrittenBytes())),
                  property("Hidden", true)
                }));
  }

  /** Empties the cell; one of an array formula cannot be changed alone. */
  private void clear(XSpreadsheet sheet) {
    XSheetCellCursor cursor = sheet.createCursorByRange(as(XSheetCellRange.class, cell));
    if (cell.getFormula().startsWith("{")) {
      cursor.collapseToCurrentArray();
      var area = as(XCellRangeAddressable.class, cursor).getRangeAddress();
      rowInArray = place.Row - area.StartRow;
      columnInArray = place.Column - area.StartColumn;
      as(XArrayFormulaRange.class, cursor).setArrayFormula("");
    }
  }

  int rowInArray() {
    return rowInArray;
  }

  int columnInArray() {
    return columnInArray;
  }

  private XSpreadsheet sheet(int index) throws com.sun.star.uno.Exception {
    return as(XSpreadsheet.class, as(XIndexAccess.class, copy.getSheets()).getByIndex(index));
  }

  /** What one value is. */
  Found value(String expression) {
    cell.setFormula("=" + expression);
    if (cell.getError() != 0) {
      return new Found(null, as(XText.class, cell).getString());
    }
    boolean isText = Integer.valueOf(FormulaResult.STRING).equals(property("FormulaResultType2"));
    return new Found(isText ? as(XText.class, cell).getString() : (Object) cell.getValue(), "");
  }

  /** A whole number that Calc computes; some other one where it cannot. */
  private int number(String expression, int otherwise) {
    return value(expression).value() instanceof Double number ? number.intValue() : otherwise;
  }

  int rows(String expression) {
    return number("ROWS(" + expression + ")", 1);
  }

  int columns(String expression) {
    return number("COLUMNS(" + expression + ")", 1);
  }

  /** An expression as the user would type it, in the office's language. */
  String local(String expression) {
    cell.setFormula("=" + expression);
    String shown = (String) property("FormulaLocal");
    return shown.startsWith("=") ? shown.substring(1) : expression;
  }

  /** Cells that an expression refers to; none where it refers to nothing in this document. */
  Area area(String expression) throws com.sun.star.uno.Exception {
    if (number("ISREF(" + expression + ")", 0) == 0) {
      return null;
    }
    String first = "INDEX(" + expression + ";1;1)";
    int sheet = number("SHEET(" + expression + ")", 0);
    int row = number("ROW(" + first + ")", 0);
    int column = number("COLUMN(" + first + ")", 0);
    if (sheet == 0 || row == 0 || column == 0) {
      return null;
    }
    int rows = rows(expression);
    int columns = columns(expression);
    XSpreadsheet found = sheet(sheet - 1);
    return new Area(
        found.getCellRangeByPosition(column - 1, row - 1, column + columns - 2, row + rows - 2),
        sheet - 1 == place.Sheet ? "" : as(XNamed.class, found).getName() + ".",
        column - 1,
        row - 1,
        rows,
        columns);
  }

  /** Of a column or row of cells, the one in the formula's own row or column; null if none is. */
  Area own(Area area) throws com.sun.star.uno.Exception {
    int down = area.columns() == 1 ? place.Row - area.row() : 0;
    int right = area.columns() == 1 ? 0 : place.Column - area.column();
    boolean isLine = area.columns() == 1 || area.rows() == 1;
    return isLine && down >= 0 && down < area.rows() && right >= 0 && right < area.columns()
        ? area.cell(down, right)
        : null;
  }

  /** An area of the copy's cells. */
  record Area(XCellRange range, String sheet, int column, int row, int rows, int columns) {
    /** {@code B2} or {@code Log.B2:B9}. */
    String name() {
      String last = rows > 1 || columns > 1 ? ":" + name(rows - 1, columns - 1) : "";
      return sheet + name(0, 0) + last;
    }

    private String name(int down, int right) {
      StringBuilder letters = new StringBuilder();
      for (int c = column + right; c >= 0; c = c / 26 - 1) {
        letters.insert(0, (char) ('A' + c % 26));
      }
      return letters.append(row + down + 1).toString();
    }

    /** The same with the sheet, as a formula names it. */
    String fullName() {
      return "$'" + named().replace("'", "''") + "'." + name(0, 0);
    }

    private String named() {
      return as(XNamed.class, as(XSheetCellRange.class, range).getSpreadsheet()).getName();
    }

    Area cell(int down, int right) throws com.sun.star.uno.Exception {
      return new Area(
          range.getCellRangeByPosition(right, down, right, down),
          sheet,
          column + right,
          row + down,
          1,
          1);
    }

    /** A cell as it shows. */
    String shown(int down, int right) throws com.sun.star.uno.Exception {
      return as(XText.class, range.getCellByPosition(right, down)).getString();
    }

    boolean isError(int down, int right) throws com.sun.star.uno.Exception {
      return range.getCellByPosition(right, down).getError() != 0;
    }

    /** Its cells as an add-in is given them: blank ones as empty texts. */
    Object[][] values() {
      return as(com.sun.star.sheet.XCellRangeData.class, range).getDataArray();
    }
  }

  private Object property(String name) {
    try {
      return as(XPropertySet.class, cell).getPropertyValue(name);
    } catch (UnknownPropertyException | WrappedTargetException e) {
      throw new com.sun.star.uno.RuntimeException(e, name);
    }
  }

  private static PropertyValue property(String name, Object value) {
    PropertyValue property = new PropertyValue();
    property.Name = name;
    property.Value = value;
    return property;
  }

  @Override
  public void close() throws com.sun.star.uno.Exception {
    as(XCloseable.class, copy).close(true);
  }

  static <T> T as(Class<T> type, Object object) {
    return UnoRuntime.queryInterface(type, object);
  }
}
