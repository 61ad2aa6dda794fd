package meadcell.batch.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;

/** The remarks of a run as a sheet of the workbook itself. The same remarks leave it as it is. */
public final class ReportSheet {
  private static final String NAME = "Meadcell report";
  private static final String OURS = "Remarks of Meadcell on this workbook";
  private static final String FIRST_LINE = OURS + ", written anew by each run with --report-sheet";

  private static final int[] WIDTHS = {16, 8, 16, 40, 100};
  private static final int MOST_REMARKS = 10_000;
  private static final int LONGEST_TEXT = 1_000;

  private ReportSheet() {}

  /** Whether a sheet is the report, which is no part of the log. */
  public static boolean is(String sheetName) {
    return sheetName.equalsIgnoreCase(NAME);
  }

  /**
   * Adds the sheet, or writes it anew.
   *
   * @return whether the workbook is now another
   */
  public static boolean write(Book book, Report report) {
    BookSheet sheet = book.sheets().stream().filter(s -> is(s.name())).findFirst().orElse(null);
    boolean isNew = sheet == null;
    if (isNew && book.isStructureProtected()) {
      report.remark(
          Report.Code.FILE,
          "",
          "",
          "",
          "The workbook is protected against new sheets; no report was added.");
      return false;
    }
    if (isNew) {
      sheet = book.addSheet(NAME);
      for (int column = 0; column < WIDTHS.length; column++) {
        sheet.widen(column, WIDTHS[column]);
      }
    } else if (!(sheet.content(new Place(0, 0)).value() instanceof Value.Text head
        && head.text().startsWith(OURS))) {
      report.remark(
          Report.Code.FILE,
          "",
          "",
          "",
          "A sheet \"" + sheet.name() + "\" of someone else is there; no report was added.");
      return false;
    }
    List<List<String>> rows = rows(Alike.of(report.remarks()));
    boolean changed = isNew;
    for (int row = 0; row < Math.max(rows.size(), sheet.lastRow() + 1); row++) {
      List<String> cells = row < rows.size() ? rows.get(row) : List.of();
      for (int column = 0; column < Math.max(cells.size(), sheet.lastColumn(row) + 1); column++) {
        changed |=
            put(sheet, new Place(row, column), column < cells.size() ? cells.get(column) : "");
      }
    }
    return changed;
  }

  private static boolean put(BookSheet sheet, Place place, String text) {
    CellContent before = sheet.content(place);
    if (text.isEmpty() && before.isBlank() || Value.of(text).equals(before.value())) {
      return false;
    }
    sheet.clear(place);
    if (!text.isEmpty()) {
      sheet.putValue(place, Value.of(text));
    }
    return true;
  }

  private static List<List<String>> rows(List<Alike> remarks) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of(FIRST_LINE));
    rows.add(List.of());
    rows.add(List.of("Sheet", "Cell", "Kind", "Text", "Sentence"));
    for (Alike alike : remarks.subList(0, Math.min(remarks.size(), MOST_REMARKS))) {
      Report.Remark remark = alike.first();
      rows.add(
          List.of(
              remark.sheet(),
              alike.cells(),
              remark.code().name().toLowerCase(Locale.ROOT).replace('_', ' '),
              shortened(remark.text()),
              shortened(remark.sentence())));
    }
    if (remarks.size() > MOST_REMARKS) {
      rows.add(List.of("… and " + (remarks.size() - MOST_REMARKS) + " more"));
    } else if (remarks.isEmpty()) {
      rows.add(List.of("Nothing to look at"));
    }
    return rows;
  }

  private static String shortened(String text) {
    return text.length() <= LONGEST_TEXT ? text : text.substring(0, LONGEST_TEXT) + "…";
  }
}
