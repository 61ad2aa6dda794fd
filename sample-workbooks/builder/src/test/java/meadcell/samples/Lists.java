package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.beans.XPropertySet;
import com.sun.star.sheet.ValidationType;
import com.sun.star.sheet.XSheetCondition;
import com.sun.star.sheet.XSpreadsheet;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.sheet.XSpreadsheets;
import com.sun.star.table.XCell;
import com.sun.star.table.XCellRange;
import com.sun.star.text.XText;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.Workbook;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;

/** The entries of each cell's list, as the office works them out in the row where it is opened. */
final class Lists {
  private static final String SCRATCH = "lists asked";

  /** Rows of a range that are asked: its ends, and some between. */
  private static final int ASKED = 5;

  private final XSpreadsheets sheets;
  private final XSpreadsheet scratch;

  private Lists(Workbook book) throws Exception {
    sheets = RemoteOffice.as(XSpreadsheetDocument.class, book.document()).getSheets();
    sheets.insertNewByName(SCRATCH, (short) sheets.getElementNames().length);
    scratch = sheet(SCRATCH);
  }

  private XSpreadsheet sheet(String name) throws Exception {
    return RemoteOffice.as(XSpreadsheet.class, sheets.getByName(name));
  }

  /** Every list of every sheet has entries, the same in each row; those of registers are known. */
  static void check(Workbook book, Iterable<Sheet> built) throws Exception {
    Lists lists = new Lists(book);
    for (Sheet sheet : built) {
      for (DataValidation validation : sheet.getDataValidations()) {
        if (validation.getValidationConstraint().getValidationType()
            == DataValidationConstraint.ValidationType.LIST) {
          for (CellRangeAddress range : validation.getRegions().getCellRangeAddresses()) {
            lists.check(sheet.getSheetName(), range);
          }
        }
      }
    }
  }

  private void check(String sheet, CellRangeAddress range) throws Exception {
    Set<Integer> rows = new TreeSet<>(List.of(range.getLastRow()));
    int step = Math.max(1, (range.getLastRow() - range.getFirstRow()) / ASKED);
    for (int row = range.getFirstRow(); row <= range.getLastRow(); row += step) {
      rows.add(row);
    }
    for (int row : rows) {
      String at = sheet + " " + range.formatAsString() + " in row " + (row + 1);
      XCellRange cell =
          sheet(sheet)
              .getCellRangeByPosition(range.getFirstColumn(), row, range.getFirstColumn(), row);
      Object validation = RemoteOffice.as(XPropertySet.class, cell).getPropertyValue("Validation");
      assertEquals(
          ValidationType.LIST,
          RemoteOffice.as(XPropertySet.class, validation).getPropertyValue("Type"),
          at);
      String list = RemoteOffice.as(XSheetCondition.class, validation).getFormula1();
      assertEquals(expected(list), entries(list, range.getFirstColumn(), row), at + ": " + list);
    }
  }

  /** Of words, they themselves; of a register, what is typed there. */
  private List<String> expected(String list) throws Exception {
    return switch (list) {
      case "vessel_list" -> names("Vessels");
      case "lot_list" -> names("Lots");
      case "target_list" -> joined(List.of("loss"), names("Vessels"));
      case "source_list" -> joined(List.of("gauge"), joined(names("Vessels"), names("Lots")));
      case "tool_list" -> names("Instrument checks").stream().distinct().toList();
      case "property_list" ->
          List.of(
              "strength",
              "sugar",
              "titratable acidity",
              "total SO2",
              "free SO2",
              "pH",
              "volatile acidity");
      case "show_list" ->
          List.of("all", "cannot wait", "top up", "taste", "sulfite", "analyse", "ferments");
      case "addition_list" ->
          List.of(
              "potassium metabisulfite",
              "potassium sorbate",
              "ammonium phosphate",
              "organic nutrient",
              "honey",
              "tartaric acid",
              "fining");
      default -> {
        assertTrue(list.matches("\"[^\"]+\"(;\"[^\"]+\")*"), "a list that no test knows: " + list);
        yield List.of(list.substring(1, list.length() - 1).split("\";\""));
      }
    };
  }

  /** A register's first column, which has no gaps. */
  private List<String> names(String register) throws Exception {
    List<String> names = new ArrayList<>();
    XCellRange cells = sheet(register);
    for (int row = CellarFile.FIRST; ; row++) {
      String name = RemoteOffice.as(XText.class, cells.getCellByPosition(0, row)).getString();
      if (name.isEmpty()) {
        return names;
      }
      names.add(name);
    }
  }

  private static List<String> joined(List<String> first, List<String> rest) {
    List<String> all = new ArrayList<>(first);
    all.addAll(rest);
    return all;
  }

  private List<String> entries(String list, int column, int row) throws Exception {
    XCell cell = scratch.getCellByPosition(column, row);
    cell.setFormula("=TEXTJOIN(\"|\";FALSE();" + list + ")");
    String joined = RemoteOffice.as(XText.class, cell).getString();
    cell.setFormula("");
    return List.of(joined.split("\\|", -1));
  }
}
