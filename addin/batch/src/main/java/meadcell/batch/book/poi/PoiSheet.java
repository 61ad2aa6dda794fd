package meadcell.batch.book.poi;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.CreationHelper;
import org.apache.poi.ss.usermodel.Drawing;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;

/** A sheet that Apache POI reads and writes. */
public final class PoiSheet implements BookSheet {
  /** Widths are counted in parts of a character. */
  private static final int WIDTH_UNIT = 256;

  private final PoiBook<?> book;
  private final Sheet sheet;
  private List<CellRangeAddress> merged; // the tool merges and splits none

  public PoiSheet(PoiBook<?> book, Sheet sheet) {
    this.book = book;
    this.sheet = sheet;
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
    return cell == null ? line.createCell(place.column()) : cell;
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
      formula = cell.getCellFormula();
      type = cell.getCachedFormulaResultType();
    }
    return switch (type) {
      case NUMERIC ->
          new CellContent(
              Value.of(cell.getNumericCellValue()),
              formula,
              book.look(cell.getCellStyle().getIndex()));
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
    Cell cell = cellToWrite(place);
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
  }

  @Override
  public void putValue(Place place, Value value) {
    Cell cell = cellToWrite(place);
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
    Cell cell = cellToWrite(place);
    if (!cell.isPartOfArrayFormulaGroup()) {
      Value value = content(place).value();
      cell.setBlank();
      putValue(place, value);
      return;
    }
    Map<Place, Value> values = new LinkedHashMap<>();
    for (var address : cell.getArrayFormulaRange()) {
      Place each = new Place(address.getRow(), address.getColumn());
      values.put(each, content(each).value());
    }
    sheet.removeArrayFormula(cell);
    values.forEach(this::putValue);
  }

  @Override
  public void clear(Place place) {
    cellToWrite(place).setBlank();
  }

  @Override
  public void copyStyle(Place from, Place to, String format) {
    Cell target = cell(to);
    Cell source = cell(from);
    if (target == null || target.getCellStyle().getIndex() != book.plainStyle()) {
      return;
    }
    int like = source == null ? book.plainStyle() : source.getCellStyle().getIndex();
    target.setCellStyle(book.workbook.getCellStyleAt(book.style(like, format)));
  }

  @Override
  public void widen(int column, int characters) {
    if (sheet.getColumnWidth(column) == WIDTH_UNIT * sheet.getDefaultColumnWidth()) {
      sheet.setColumnWidth(column, WIDTH_UNIT * characters);
    }
  }

  @Override
  public Optional<Note> note(Place place) {
    Comment comment =
        sheet.getCellComment(new org.apache.poi.ss.util.CellAddress(place.row(), place.column()));
    return Optional.ofNullable(comment)
        .map(c -> new Note(c.getAuthor(), c.getString().getString()));
  }

  @Override
  public void putNote(Place place, Note note) {
    Cell cell = cellToWrite(place);
    CreationHelper helper = book.workbook.getCreationHelper();
    Comment comment = cell.getCellComment();
    if (comment == null) {
      Drawing<?> drawing = sheet.createDrawingPatriarch();
      ClientAnchor anchor = helper.createClientAnchor();
      anchor.setRow1(place.row());
      anchor.setRow2(place.row() + 4);
      anchor.setCol1(place.column() + 1);
      anchor.setCol2(place.column() + 4);
      comment = drawing.createCellComment(anchor);
      cell.setCellComment(comment);
    }
    comment.setAuthor(note.author());
    comment.setString(helper.createRichTextString(note.text()));
  }

  @Override
  public void removeNote(Place place) {
    cellToWrite(place).removeCellComment();
  }
}
