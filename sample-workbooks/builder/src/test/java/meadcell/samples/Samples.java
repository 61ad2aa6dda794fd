package meadcell.samples;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The files as they are checked in, and what their cells hold. */
final class Samples {
  private Samples() {}

  static Stream<String> names() {
    return Build.BOOKS.keySet().stream();
  }

  static Path file(String name, String ending) {
    return Path.of("..", name + "." + ending).toAbsolutePath().normalize();
  }

  static XSSFWorkbook open(String name) throws IOException {
    try (InputStream in = Files.newInputStream(file(name, "xlsx"))) {
      return new XSSFWorkbook(in);
    }
  }

  /** The cell of a workbook-wide name. */
  static Cell named(Workbook book, String name) {
    CellReference at = new CellReference(book.getName(name).getRefersToFormula());
    return book.getSheet(at.getSheetName()).getRow(at.getRow()).getCell(at.getCol());
  }

  /** Number or text that a cell shows, or null: typed, or stored with its formula. */
  static Object value(Cell cell) {
    CellType type =
        cell.getCellType() == CellType.FORMULA
            ? cell.getCachedFormulaResultType()
            : cell.getCellType();
    return switch (type) {
      case NUMERIC -> cell.getNumericCellValue();
      case STRING -> cell.getStringCellValue();
      case ERROR -> "error " + cell.getErrorCellValue();
      default -> null;
    };
  }

  /** What differs between two workbooks in formulas, formats and what was typed, cell by cell. */
  static List<String> differences(Workbook one, Workbook other) {
    Map<String, Cell> ones = cells(one);
    Map<String, Cell> others = cells(other);
    Set<String> addresses = new TreeSet<>(ones.keySet());
    addresses.addAll(others.keySet());
    return addresses.stream()
        .filter(at -> !same(ones.get(at), others.get(at)))
        .map(at -> at + ": " + ones.get(at) + " and " + others.get(at))
        .toList();
  }

  private static Map<String, Cell> cells(Workbook book) {
    Map<String, Cell> cells = new TreeMap<>();
    for (Sheet sheet : book) {
      for (Row row : sheet) {
        for (Cell cell : row) {
          cells.put(sheet.getSheetName() + "!" + cell.getAddress(), cell);
        }
      }
    }
    return cells;
  }

  private static boolean same(Cell one, Cell other) {
    return one != null
        && other != null
        && one.getCellType() == other.getCellType()
        && (one.getCellType() != CellType.FORMULA
            || one.getCellFormula().equals(other.getCellFormula()))
        && one.getCellStyle()
            .getDataFormatString()
            .equals(other.getCellStyle().getDataFormatString())
        && (one.getCellType() == CellType.FORMULA || sameValue(value(one), value(other)));
  }

  /** Numbers may differ in what a solver leaves open. */
  static boolean sameValue(Object one, Object other) {
    return one instanceof Double a && other instanceof Double b
        ? Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a))
        : Objects.equals(one, other);
  }
}
