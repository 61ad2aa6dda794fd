package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.sheet.XCalculatable;
import com.sun.star.sheet.XCellRangeFormula;
import com.sun.star.sheet.XSpreadsheet;
import com.sun.star.sheet.XSpreadsheetDocument;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** A season of 60 casks, typed into the book cell by cell; its answers against a sum of our own. */
class SeasonIT {
  private static final int CASKS = 60;
  private static final int VISITS = 6;
  private static final int FILLED = 45800;
  private static final int TODAY = FILLED + 250;

  private int row = 5;

  @Test
  void aSeasonOfSixtyCasks() throws Exception {
    RemoteOffice office = TestOffice.get();
    Path copy = office.home().resolve("season.ods");
    Files.copy(Samples.file("cellar-book", "ods"), copy, StandardCopyOption.REPLACE_EXISTING);
    Files.setPosixFilePermissions(copy, PosixFilePermissions.fromString("rw-rw-rw-"));
    try (Workbook book = office.open(copy.toUri().toString(), true)) {
      season(book);
    }
  }

  private void season(Workbook book) throws Exception {
    XCalculatable calculation = RemoteOffice.as(XCalculatable.class, book.document());
    calculation.enableAutomaticCalculation(false);
    for (String log :
        List.of(
            "Movements",
            "Readings",
            "Analyses",
            "Tastings",
            "Additions",
            "Lots",
            "Vessels",
            "Past occupants")) {
      clear(book, log);
    }
    book.sheet("Today").cell("B3").setValue(TODAY);
    Workbook vessels = book.sheet("Vessels");
    type(vessels, "A5", "Tank");
    type(vessels, "B5", "tank");
    vessels.cell("J5").setValue(20_000);
    Workbook moves = book.sheet("Movements");
    move(moves, FILLED, "Heather", "Tank", 20_000);
    double[] holds = new double[CASKS];
    double[] lost = new double[CASKS];
    double[] due = new double[CASKS];
    for (int i = 0; i < CASKS; i++) {
      int line = 6 + i;
      double length = 75 + i % 9;
      type(vessels, "A" + line, name(i));
      type(vessels, "B" + line, "cask");
      vessels.cell("G" + line).setValue(50);
      vessels.cell("H" + line).setValue(62);
      vessels.cell("I" + line).setValue(length);
      double full = contents(50, 62, length, 62);
      holds[i] = full - 0.5;
      move(moves, FILLED, "Tank", name(i), holds[i]);
      for (int visit = 1; visit <= VISITS; visit++) {
        double dip = 62 - 3 - 0.1 * ((i + visit) % 6);
        double found = contents(50, 62, length, dip);
        int day = FILLED + 40 * visit;
        moves.cell("A" + row).setValue(day);
        type(moves, "B" + row, "gauge");
        type(moves, "C" + row, name(i));
        moves.cell("E" + row++).setValue(dip);
        lost[i] += holds[i] - found;
        double topped = i % 5 == 0 && visit == VISITS ? 0.1 : full - 0.5 - found;
        move(moves, day, "Tank", name(i), topped);
        holds[i] = found + topped;
        double space = full - holds[i];
        due[i] = space >= 2 ? day : Math.floor(day + (2 - space) / (full * 0.04 / 365.25));
      }
    }
    calculation.enableAutomaticCalculation(true);
    book.recalculate();
    assertEquals(
        "All rows of Movements, Readings and Analyses are complete.",
        book.sheet("Today").shown("A5"));
    Workbook now = book.sheet("Casks now");
    for (int i = 0; i < CASKS; i++) {
      Object[] cells = now.values("A" + (6 + i) + ":I" + (6 + i))[0];
      assertEquals(name(i), cells[0]);
      assertEquals("Heather", cells[1]);
      assertEquals(TODAY - FILLED, (Double) cells[3], 0);
      assertEquals(holds[i], (Double) cells[4], 0.01, name(i));
      assertEquals(due[i], (Double) cells[8], 1e-9, name(i));
    }
    Workbook cask = book.sheet("This cask");
    type(cask, "B3", name(7));
    Object[][] lines = cask.values("A6:B20");
    double found = Double.NaN;
    for (Object[] line : lines) {
      found = "Lost since filling".equals(line[0]) ? (Double) line[1] : found;
    }
    assertEquals(lost[7], found, 0.01);
    // a row half typed stays out, and is told
    moves.cell("A" + row).setValue(TODAY);
    assertTrue(book.sheet("Today").shown("A5").contains("1 in Movements, first in line " + row));
    assertEquals(holds[3], (Double) now.values("E9:E9")[0][0], 0.01);
  }

  /** As a person does who begins a cellar of their own: select the rows, Del. */
  private static void clear(Workbook book, String log) throws Exception {
    XSpreadsheet sheet =
        RemoteOffice.as(
            XSpreadsheet.class,
            RemoteOffice.as(XSpreadsheetDocument.class, book.document())
                .getSheets()
                .getByName(log));
    String[][] nothing = new String[146][log.equals("Vessels") ? 13 : 5];
    for (String[] line : nothing) {
      Arrays.fill(line, "");
    }
    RemoteOffice.as(
            XCellRangeFormula.class,
            sheet.getCellRangeByName("A5:" + (log.equals("Vessels") ? "M" : "E") + "150"))
        .setFormulaArray(nothing);
  }

  private static String name(int cask) {
    return "No. " + (100 + cask);
  }

  private void move(Workbook moves, int day, String from, String to, double litres)
      throws Exception {
    moves.cell("A" + row).setValue(day);
    type(moves, "B" + row, from);
    type(moves, "C" + row, to);
    moves.cell("D" + row++).setValue(litres);
  }

  private static void type(Workbook sheet, String address, String text) throws Exception {
    sheet.cell(address).setFormula(text);
  }

  /** Litres below a level in a cask whose staves are an ellipse, by slices. */
  private static double contents(double head, double bilge, double length, double depth) {
    int slices = 4000;
    double sum = 0;
    for (int i = 0; i < slices; i++) {
      double x = (i + 0.5) / slices * 2 - 1;
      double r = Math.sqrt(bilge * bilge - (bilge * bilge - head * head) * x * x) / 2;
      double h = Math.max(-r, Math.min(r, depth - bilge / 2));
      sum += r * r * (Math.asin(h / r) + Math.PI / 2) + h * Math.sqrt(r * r - h * h);
    }
    return sum * length / slices / 1000;
  }
}
