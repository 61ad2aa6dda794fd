package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import meadcell.batch.TestBooks;
import meadcell.catalogue.LiteralCall;
import meadcell.cellar.Cellar;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.CellReference;

/** The cells of a workbook before and after it was filled. */
final class GoldenCells {
  /** The sheet of what was replaced by values. */
  static final String KEPT = "Meadcell formulas";

  static final List<String> RESULTS = List.of("D5", "D6", "D7");

  private GoldenCells() {}

  /** What a result is by the catalogue itself. */
  static double expected(int result) {
    String[] calls = {"1.08; 18", "1.06; 17", "1.02; 16"};
    LiteralCall call = LiteralCall.parse("GRAVITY.CORRECT(" + calls[result] + "; ; 1.1)");
    return (Double) Cellar.catalogue().get(call.function()).call(call.arguments());
  }

  /** A sheet's XML but for some cells and what goes with them. */
  static String without(Set<String> cells, String sheet, String original) {
    String rest = sheet;
    for (String a1 : cells) {
      String cell = "<((?:x:)?)c r=\"" + a1 + "\"(?:[^>]*/>|(?:[^>]*[^>/])?>.*?</\\1c>)";
      rest = rest.replaceFirst(cell, "");
    }
    rest = rest.replaceFirst("(<(?:x:)?dimension ref=\")[^\"]*", "$1");
    rest = rest.replaceFirst("<(x:)?col min=\"4\" max=\"4\" width=\"10\" customWidth=\"1\"/>", "");
    rest = original.contains("</cols>") ? rest : rest.replaceFirst("<(x:)?cols></(x:)?cols>", "");
    boolean linked = original.contains("<legacyDrawing");
    return linked ? rest : rest.replaceFirst("<legacyDrawing [^>]*/>", "");
  }

  /** No cell of any sheet differs but some of the log, which hold the results. */
  static void compare(Path old, Path filled, Set<String> cells) throws Exception {
    try (Workbook before = TestBooks.open(old);
        Workbook after = TestBooks.open(filled)) {
      boolean isKept = after.getSheet(KEPT) != null;
      assertEquals(before.getNumberOfSheets(), after.getNumberOfSheets() - (isKept ? 1 : 0));
      for (int s = 0; s < before.getNumberOfSheets(); s++) {
        Set<String> changed = s == 0 ? cells : Set.of();
        Set<String> places = places(before, s);
        places.addAll(places(after, s));
        for (String a1 : places) {
          Cell was = cell(before, s, a1);
          Cell now = cell(after, s, a1);
          if (!changed.contains(a1)) {
            assertEquals(shown(was), shown(now), a1);
            assertEquals(style(was), style(now), a1);
          }
          assertEquals(note(before, s, a1), note(after, s, a1), a1);
        }
      }
      for (int i = 0; i < RESULTS.size(); i++) {
        Cell cell = cell(after, 0, RESULTS.get(i));
        assertEquals(expected(i), cell.getNumericCellValue(), 0, RESULTS.get(i));
      }
    }
  }

  private static Set<String> places(Workbook book, int sheet) {
    Set<String> places = new TreeSet<>();
    for (Row row : book.getSheetAt(sheet)) {
      for (Cell cell : row) {
        places.add(new CellReference(cell.getRowIndex(), cell.getColumnIndex()).formatAsString());
      }
    }
    return places;
  }

  static Cell cell(Workbook book, int sheet, String a1) {
    return TestBooks.cell(book, book.getSheetName(sheet), a1);
  }

  private static int style(Cell cell) {
    return cell == null ? -1 : cell.getCellStyle().getIndex();
  }

  /** A person's note. */
  private static String note(Workbook book, int sheet, String a1) {
    Comment comment = book.getSheetAt(sheet).getCellComment(new CellAddress(a1));
    boolean ours = comment == null || comment.getAuthor().equals("Meadcell");
    return ours ? "" : comment.getString().getString();
  }

  private static String shown(Cell cell) {
    if (cell == null) {
      return "";
    }
    CellType type =
        cell.getCellType() == CellType.FORMULA
            ? cell.getCachedFormulaResultType()
            : cell.getCellType();
    String value =
        switch (type) {
          case NUMERIC -> "" + cell.getNumericCellValue();
          case STRING -> cell.getStringCellValue();
          case BOOLEAN -> "" + cell.getBooleanCellValue();
          case ERROR -> "error " + cell.getErrorCellValue();
          default -> "";
        };
    return cell.getCellType() == CellType.FORMULA ? cell.getCellFormula() + " " + value : value;
  }
}
