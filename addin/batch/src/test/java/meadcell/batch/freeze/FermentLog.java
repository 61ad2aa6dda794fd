package meadcell.batch.freeze;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;

import meadcell.batch.calculation.PoiFunctions;
import meadcell.cellar.Cellar;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** An invented ferment: ours on readings, ours on ours, a person's on ours, other sheets. */
final class FermentLog {
  static final String LOG = "my log";

  private FermentLog() {}

  /** Written into an empty workbook. */
  static <W extends Workbook> W in(W book) {
    if (book instanceof XSSFWorkbook xssf) {
      xssf.setCellFormulaValidation(false);
    } else {
      book.addToolPack(new PoiFunctions(Cellar.catalogue()));
    }
    Sheet log = book.createSheet(LOG);
    rows(
        log,
        0,
        row("Tarn Hollow, heather", "OG", 1.098),
        row(),
        row("Date", "SG", "Temp", "Note", "True SG", "Brix", "Twice"),
        row(45352, 1.098, 24, "pitched", "=GRAVITY.CORRECT(B4,C4)", "=GRAVITY.TOBRIX(E4)", "=E4*2"),
        row(45359, 1.061, 22, "fed", "=GRAVITY.CORRECT(B5,C5)", "=GRAVITY.TOBRIX(E5)", "=E5*2"),
        row(45366, 1.03, 19, "fed", "=GRAVITY.CORRECT(B6,C6)", "=GRAVITY.TOBRIX(E6)", "=E6*2"),
        row(45373, 1.012, 18, "calm", "=GRAVITY.CORRECT(B7,C7)", "=GRAVITY.TOBRIX(E7)", "=E7*2"));
    CellStyle day = book.createCellStyle();
    day.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
    for (int r = 3; r <= 6; r++) {
      log.getRow(r).getCell(0).setCellStyle(day);
    }
    Sheet other = book.createSheet("cask");
    rows(
        other,
        0,
        row("Start", "=GRAVITY.TOBRIX('my log'!$C$1)&\"  °Bx\""),
        row("Mean", "=ROUND(GRAVITY.TOBRIX(AVERAGE('my log'!B4:B7)),1)+B1*0"),
        row("Each"));
    other.getRow(1).getCell(1).setCellFormula("ROUND(GRAVITY.TOBRIX(AVERAGE('my log'!B4:B7)),1)");
    other.setArrayFormula(
        "CELLAR.MAP(\"GRAVITY.TOBRIX\",'my log'!B4:B7)",
        org.apache.poi.ss.util.CellRangeAddress.valueOf("B4:B7"));
    return book;
  }
}
