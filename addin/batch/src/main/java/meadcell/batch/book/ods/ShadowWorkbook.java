package meadcell.batch.book.ods;

import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The names of an OpenDocument spreadsheet where POI's formula parser can see them. */
final class ShadowWorkbook {
  private ShadowWorkbook() {}

  static XSSFWorkbook of(OdsBook book) {
    XSSFWorkbook shadow = new XSSFWorkbook();
    for (OdsSheet sheet : book.sheets()) {
      shadow.createSheet(name(sheet, shadow));
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
}
