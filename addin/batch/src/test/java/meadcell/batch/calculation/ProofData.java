package meadcell.batch.calculation;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;

import java.util.ArrayList;
import java.util.List;
import meadcell.batch.book.Place;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The sheets of an invented cellar that the formulas of the corpus read. */
final class ProofData {
  /** Original gravities as first stored, and as changed later. */
  record Input(String sheet, Place place, double before, double after) {}

  private static final double[] BEFORE = {
    1.0871, 1.0932, 1.0824, 1.0985, 1.1146, 1.0907, 1.0958, 1.0779, 1.1033, 1.1212
  };
  private static final double[] AFTER = {
    1.0973, 1.0884, 1.0915, 1.0796, 1.1037, 1.1058, 1.0869, 1.1191, 1.0942, 1.0823
  };
  private static final double[] FINAL = {
    1.011, 1.012, 1.009, 1.010, 1.008, 1.012, 1.011, 1.010, 1.006, 1.009
  };
  private final XSSFWorkbook book;
  private final XSSFSheet log;
  private final List<Input> inputs = new ArrayList<>();

  ProofData(XSSFWorkbook book, XSSFSheet log) {
    this.book = book;
    this.log = log;
    data();
    cellar();
    oldLog();
    casks();
    notes();
    names();
  }

  List<Input> inputs() {
    return inputs;
  }

  private void input(Sheet sheet, int row, int column, int index) {
    inputs.add(
        new Input(sheet.getSheetName(), new Place(row, column), BEFORE[index], AFTER[index]));
    sheet.getRow(row).createCell(column).setCellValue(BEFORE[index]);
  }

  private void data() {
    rows(
        log,
        0,
        row(
            "OG",
            "FG",
            "ABV",
            "Date",
            "Litres",
            "Sweetness",
            "Lot",
            "Mixed",
            "Brix",
            "If filled",
            "Refused",
            "Typed",
            "Word",
            "Strong",
            null,
            "Limits",
            "Filled"));
    Object[] mixed = {5, 12, "12", null, "about 7", true, 3.5, "x", 0, -4};
    String[] sweetness = {
      "dry", "sweet", "dry", null, "sweet", "medium", "dry", "Dry", "medium", "sweet"
    };
    String[] lots = {
      "TH-01",
      "TH-02 rye",
      "TH-03",
      "TH-04",
      "TH-05 rye",
      "TH-06",
      "TH-07",
      "TH-08",
      "TH-09",
      "X-10"
    };
    double[] litres = {225, 200, 110, 225, 50, 300, 110, 55.5, 200, 20};
    Object[] limits = {11, "dry", ">12", "TH-0?", null, 3, null, 14, null, null};
    CellStyle date = book.createCellStyle();
    date.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
    for (int i = 0; i < FINAL.length; i++) {
      int r = i + 1;
      String n = String.valueOf(r + 1);
      rows(
          log,
          r,
          row(
              null,
              FINAL[i],
              "=ALCOHOL.ABV(A" + n + ",B" + n + ")",
              46027 + 11 * i,
              litres[i],
              sweetness[i],
              lots[i],
              mixed[i],
              "=GRAVITY.TOBRIX(A" + n + ")",
              "=IF(Q" + n + "=\"\",\"\",ALCOHOL.ABV(A" + n + ",B" + n + "))",
              "=ALCOHOL.ABV(L" + n + ",B" + n + ")",
              i == 4 ? 1085 : null,
              "=IF(C" + n + ">12.5,\"strong\",IF(C" + n + ">10.3,\"table\",\"light\"))",
              "=C" + n + ">12",
              null,
              limits[i],
              i == 3 ? null : 1));
      log.getRow(r).getCell(3).setCellStyle(date);
      input(log, r, 0, i);
      if (i != 4) {
        input(log, r, 11, (i + 3) % FINAL.length);
      }
    }
  }

  private void cellar() {
    Sheet cellar = book.createSheet("Cellar");
    rows(
        cellar,
        0,
        row(
            "Cask",
            "ABV",
            "Litres",
            "Cash",
            null,
            "From",
            "Band",
            null,
            "Sweetness",
            "Lot",
            "ABV",
            "Sweetness",
            "OG"),
        row(
            "rye 1",
            "=ALCOHOL.ABV(M2,1.01)",
            200,
            -1000,
            null,
            0,
            "low",
            null,
            "dry",
            "TH-03",
            ">11",
            "dry"),
        row("rye 2", "=ALCOHOL.ABV(M3,1.01)", 190, 300, null, 10, "table"),
        row("chestnut 1", "=ALCOHOL.ABV(M4,1.01)", 225, 420, null, 11, "high"),
        row("plain 1", "=ALCOHOL.ABV(M5,1.01)", 110, 500, null, 14, "strong"),
        row("plain 2", "=ALCOHOL.ABV(M6,1.01)", 50, 100));
    for (int i = 0; i < 5; i++) {
      input(cellar, i + 1, 12, i);
    }
  }

  private void oldLog() {
    Sheet old = book.createSheet("Old log");
    rows(old, 0, row("OG", "ABV"));
    for (int i = 1; i <= 3; i++) {
      rows(old, i, row(null, "=ALCOHOL.ABV(A" + (i + 1) + ",1.01)"));
      input(old, i, 0, i + 4);
    }
  }

  private void casks() {
    XSSFSheet casks = book.createSheet("Casks");
    String[] woods = {"rye", "chestnut", "plain", "rye"};
    rows(casks, 0, row("Wood", "OG", "FG", "ABV", "Litres", "Alcohol"));
    for (int i = 1; i <= 4; i++) {
      rows(
          casks,
          i,
          row(
              woods[i - 1],
              null,
              1.01,
              "=ALCOHOL.ABV(B" + (i + 1) + ",C" + (i + 1) + ")",
              50 * i,
              "=Casks[[#This Row],[ABV]]*Casks[[#This Row],[Litres]]/100"));
      input(casks, i, 1, i + 3);
    }
    XSSFTable table = casks.createTable(new AreaReference("A1:F5", SpreadsheetVersion.EXCEL2007));
    table.setName("Casks");
    table.setDisplayName("Casks");
  }

  /** Readings as people type them, some of which could be taken for a date. */
  private void notes() {
    rows(book.createSheet("Notes"), 0, row("10.5 cm", "~1.063 sg"));
  }

  private void names() {
    name("Strengths", "Log!$C$2:$C$11");
    name("Limit", "Log!$P$2");
    name("Bands", "Cellar!$F$2:$G$5");
    name("Strongest", "MAX(Log!$C$2:$C$11)");
  }

  private void name(String name, String formula) {
    Name defined = book.createName();
    defined.setNameName(name);
    defined.setRefersToFormula(formula);
  }
}
