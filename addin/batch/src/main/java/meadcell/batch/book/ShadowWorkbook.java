package meadcell.batch.book;

import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The cells of an OpenDocument spreadsheet where POI's evaluator can see them. */
final class ShadowWorkbook {
  private ShadowWorkbook() {}

  static XSSFWorkbook of(OdsBook book) {
    XSSFWorkbook shadow = new XSSFWorkbook();
    shadow.setCellFormulaValidation(false);
    for (OdsSheet sheet : book.sheets()) {
      shadow.createSheet(name(sheet, shadow));
    }
    for (int i = 0; i < book.sheets().size(); i++) {
      copy(book.sheets().get(i), shadow.getSheetAt(i));
    }
    book.namedRanges().forEach((name, range) -> name(shadow, name, range));
    return shadow;
  }

  private static void name(XSSFWorkbook shadow, String text, String range) {
    Name name = shadow.createName();
    try {
      name.setNameName(text);
      name.setRefersToFormula(range);
    } catch (IllegalArgumentException e) {
      shadow.removeName(name); // not a name in workbook files; formulas with it are reported
    }
  }

  /** The sheet's name where workbook files allow it, else one of its own. */
  private static String name(OdsSheet sheet, XSSFWorkbook shadow) {
    String name = WorkbookUtil.createSafeSheetName(sheet.name());
    return shadow.getSheetIndex(name) < 0 ? name : "sheet " + shadow.getNumberOfSheets();
  }

  private static void copy(OdsSheet from, Sheet to) {
    for (int r = 0; r <= from.lastRow(); r++) {
      int lastColumn = from.lastColumn(r);
      Row row = lastColumn < 0 ? null : to.createRow(r);
      for (int c = 0; c <= lastColumn; c++) {
        Place place = new Place(r, c);
        CellContent content = from.content(place);
        if (content.value() == null && !content.isFormula()) {
          continue;
        }
        Cell cell = row.getCell(c) == null ? row.createCell(c) : row.getCell(c);
        if (content.isFormula()) {
          formula(from, to, place, cell, content.formula());
        }
        value(cell, content.value());
      }
    }
  }

  private static void formula(OdsSheet from, Sheet to, Place place, Cell cell, String formula) {
    int[] size = from.arraySize(place);
    if (size[0] == 0) {
      cell.setCellFormula(formula);
    } else {
      to.setArrayFormula(
          formula,
          new CellRangeAddress(
              place.row(),
              place.row() + size[0] - 1,
              place.column(),
              place.column() + size[1] - 1));
    }
  }

  private static void value(Cell cell, Object value) {
    if (value instanceof Double number) {
      cell.setCellValue(number);
    } else if (value instanceof Boolean truth) {
      cell.setCellValue(truth);
    } else if (value instanceof CellError error) {
      cell.setCellErrorValue(poiError(error).getCode());
    } else if (value instanceof String text) {
      cell.setCellValue(text);
    }
  }

  /** The office has more errors than workbook files; the others count as {@code #VALUE!}. */
  private static FormulaError poiError(CellError error) {
    for (FormulaError known : FormulaError.values()) {
      if (known.getString().equals(error.text())) {
        return known;
      }
    }
    return FormulaError.VALUE;
  }
}
