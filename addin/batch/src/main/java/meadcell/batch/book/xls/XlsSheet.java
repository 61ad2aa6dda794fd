package meadcell.batch.book.xls;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.RichTextString;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;

/** A sheet of an {@code .xls} workbook. */
final class XlsSheet implements BookSheet {
  /** Widths are counted in parts of a character. */
  private static final int WIDTH_UNIT = 256;

  private final XlsBook book;
  private final Sheet sheet;
  private final Map<Place, Note> notes;
  private final boolean hasCharts;
  private final Changes changes = new Changes();
  private List<CellRangeAddress> merged; // the tool merges and splits none

  /**
   * A sheet.
   *
   * @param stored its records in the file, or null if it is new
   */
  XlsSheet(XlsBook book, Sheet sheet, XlsParts stored) {
    this.book = book;
    this.sheet = sheet;
    this.notes = stored == null ? new HashMap<>() : XlsNotes.of(stored);
    this.hasCharts = stored != null && stored.hasCharts();
  }

  Changes changes() {
    return changes;
  }

  @Override
  public String name() {
    return sheet.getSheetName();
  }

  @Override
  public boolean isProtected() {
    return sheet.getProtect();
  }

  @Override
  public int lastRow() {
    return sheet.getLastRowNum();
  }

  @Override
  public int lastColumn(int row) {
    Row line = sheet.getRow(row);
    return line == null ? -1 : line.getLastCellNum() - 1;
  }

  private Cell cell(Place place) {
    Row line = sheet.getRow(place.row());
    return line == null ? null : line.getCell(place.column());
  }

  private Cell cellToWrite(Place place) {
    Row line = sheet.getRow(place.row());
    if (line == null) {
      line = sheet.createRow(place.row());
    }
    Cell cell = line.getCell(place.column());
    if (cell == null) {
      changes.cells.add(place);
      cell = line.createCell(place.column());
      CellStyle around =
          line.isFormatted() ? line.getRowStyle() : sheet.getColumnStyle(place.column());
      if (around != null && around.getDataFormat() != XlsStyles.GENERAL) {
        cell.setCellStyle(around);
      }
    }
    return cell;
  }

  private Cell cellToChange(Place place) {
    changes.cells.add(place);
    return cellToWrite(place);
  }

  @Override
  public CellContent content(Place place) {
    Cell cell = cell(place);
    if (cell == null) {
      return CellContent.BLANK;
    }
    CellType type = cell.getCellType();
    String formula = null;
    if (type == CellType.FORMULA) {
      formula = formula(cell);
      type = cell.getCachedFormulaResultType();
    }
    return switch (type) {
      case NUMERIC ->
          new CellContent(
              Value.of(cell.getNumericCellValue()),
              formula,
              book.styles().look(cell.getCellStyle().getIndex()));
      case STRING -> plain(Value.of(cell.getStringCellValue()), formula);
      case BOOLEAN -> plain(Value.of(cell.getBooleanCellValue()), formula);
      case ERROR ->
          plain(
              new Value.Error(FormulaError.forInt(cell.getErrorCellValue()).getString()), formula);
      default -> formula == null ? CellContent.BLANK : plain(Value.BLANK, formula);
    };
  }

  private static CellContent plain(Value value, String formula) {
    return new CellContent(value, formula, CellContent.Look.PLAIN);
  }

  /** A formula, or nothing where POI has no words for it, as for the cells of a what-if table. */
  private static String formula(Cell cell) {
    try {
      return cell.getCellFormula();
    } catch (RuntimeException e) {
      return "";
    }
  }

  @Override
  public boolean isHidden(int row) {
    Row line = sheet.getRow(row);
    return line != null && line.getZeroHeight();
  }

  @Override
  public Span array(Place place) {
    Cell cell = cell(place);
    if (cell == null || !cell.isPartOfArrayFormulaGroup()) {
      return null;
    }
    CellRangeAddress range = cell.getArrayFormulaRange();
    return new Span(
        new Place(range.getFirstRow(), range.getFirstColumn()),
        new Place(range.getLastRow(), range.getLastColumn()));
  }

  @Override
  public Place mergedEnd(Place place) {
    CellRangeAddress range = mergedAt(place);
    return range == null ? place : new Place(range.getLastRow(), range.getLastColumn());
  }

  @Override
  public boolean isCovered(Place place) {
    CellRangeAddress range = mergedAt(place);
    return range != null && !place.equals(new Place(range.getFirstRow(), range.getFirstColumn()));
  }

  private CellRangeAddress mergedAt(Place place) {
    if (merged == null) {
      merged = sheet.getMergedRegions();
    }
    for (CellRangeAddress range : merged) {
      if (range.isInRange(place.row(), place.column())) {
        return range;
      }
    }
    return null;
  }

  @Override
  public void putFormula(Place place, String formula) {
    Cell cell = cellToChange(place);
    if (cell.getCellType() == CellType.FORMULA) {
      cell.setBlank(); // a shared formula's first cell hands it on before it goes
    }
    cell.setCellFormula(formula);
  }

  @Override
  public void putArray(Span span, String formula) {
    sheet.setArrayFormula(
        formula,
        new CellRangeAddress(
            span.first().row(), span.last().row(), span.first().column(), span.last().column()));
    for (int row = span.first().row(); row <= span.last().row(); row++) {
      for (int column = span.first().column(); column <= span.last().column(); column++) {
        changes.cells.add(new Place(row, column));
      }
    }
  }

  @Override
  public void putValue(Place place, Value value) {
    Cell cell = cellToWrite(place);
    if (cell.getCellType() == CellType.FORMULA) {
      changes.values.add(place);
    } else {
      changes.cells.add(place);
    }
    if (value instanceof Value.Number plain) {
      cell.setCellValue(plain.number());
    } else if (value instanceof Value.Truth truth) {
      cell.setCellValue(truth.isTrue());
    } else if (value instanceof Value.Error error) {
      cell.setCellErrorValue(FormulaError.forString(error.code()).getCode());
    } else if (value instanceof Value.Text text) {
      cell.setCellValue(text.text());
    }
  }

  @Override
  public void freeze(Place place) {
    Cell cell = cellToChange(place);
    if (!cell.isPartOfArrayFormulaGroup()) {
      Value value = content(place).value();
      cell.setBlank();
      putValue(place, value);
      return;
    }
    Map<Place, Value> values = new LinkedHashMap<>();
    for (var address : cell.getArrayFormulaRange()) {
      Place each = new Place(address.getRow(), address.getColumn());
      changes.cells.add(each);
      values.put(each, content(each).value());
    }
    sheet.removeArrayFormula(cell);
    values.forEach(this::putValue);
  }

  @Override
  public void clear(Place place) {
    cellToChange(place).setBlank();
  }

  @Override
  public Runnable keep(Place place) {
    Cell cell = cellToWrite(place);
    CellStyle style = cell.getCellStyle();
    String formula = cell.getCellType() == CellType.FORMULA ? formula(cell) : null;
    Value value = content(place).value();
    RichTextString text =
        cell.getCellType() == CellType.STRING ? cell.getRichStringCellValue() : null;
    boolean wasChanged = changes.cells.contains(place);
    return () -> {
      Cell now = cellToWrite(place);
      now.setBlank();
      if (formula != null) {
        now.setCellFormula(formula);
      }
      if (text == null) {
        putValue(place, value);
      } else {
        now.setCellValue(text);
      }
      now.setCellStyle(style);
      if (!wasChanged) {
        changes.cells.remove(place); // so that it is compared with what it was
      }
    };
  }

  @Override
  public int mostColumns() {
    return SpreadsheetVersion.EXCEL97.getMaxColumns();
  }

  @Override
  public void copyStyle(Place from, Place to, String format) {
    Cell target = cell(to);
    Cell source = cell(from);
    if (target == null) {
      return;
    }
    if (target.getCellStyle().getIndex() != XlsStyles.PLAIN) {
      if (target.getCellStyle().getDataFormat() != XlsStyles.GENERAL) {
        return;
      }
      source = target;
    }
    int like = source == null ? XlsStyles.PLAIN : source.getCellStyle().getIndex();
    changes.cells.add(to);
    int style = book.styles().like(like, format);
    target.setCellStyle(book.workbook.getCellStyleAt(style));
  }

  @Override
  public void widen(int column, int characters) {
    if (sheet.getColumnWidth(column) == WIDTH_UNIT * sheet.getDefaultColumnWidth()) {
      changes.widened.add(column);
      sheet.setColumnWidth(column, WIDTH_UNIT * characters);
    }
  }

  /** POI takes all drawings of a sheet apart to put one in, and charts do not survive it. */
  @Override
  public boolean canHoldNotes() {
    return !hasCharts;
  }

  @Override
  public Optional<Note> note(Place place) {
    return Optional.ofNullable(notes.get(place));
  }

  @Override
  public void putNote(Place place, Note note) {
    removeNote(place);
    Comment comment = XlsDrawings.note(book.workbook, sheet, place, note);
    cellToWrite(place).setCellComment(comment);
    notes.put(place, note);
    changes.notes.add(place);
  }

  @Override
  public void removeNote(Place place) {
    if (notes.remove(place) != null) {
      changes.notes.add(place);
      cellToWrite(place).removeCellComment();
    }
  }
}
