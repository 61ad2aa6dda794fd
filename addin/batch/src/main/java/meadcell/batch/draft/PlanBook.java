package meadcell.batch.draft;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import meadcell.batch.draft.Draft.Row;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;

/** A drafted plan as a workbook that a person reads and changes, and {@code fill} takes. */
public final class PlanBook {
  private static final int CHARACTER = 256;
  private static final int MOST_LINES = 12;

  private static final List<List<String>> EXAMPLES =
      List.of(
          List.of(
              "please write",
              "*",
              "True SG",
              "GRAVITY.CORRECT([SG]; [Temp]; ; {OG})",
              "0.0000",
              "An example: the hydrometer at 20 °C. [SG] and [Temp] are headers, {OG} is a label."),
          List.of(
              "please write",
              "*",
              "ABV (% vol)",
              "ALCOHOL.ABV({OG}; [True SG])",
              "0.0",
              "An example: a line may use the result of one above it."));

  private final Workbook book;
  private final CellStyle head;
  private final CellStyle plain;
  private final CellStyle check;

  private PlanBook(Workbook book) {
    this.book = book;
    this.plain = style(null);
    this.check = style(IndexedColors.LEMON_CHIFFON);
    this.head = style(IndexedColors.GREY_25_PERCENT);
    Font bold = book.createFont();
    bold.setBold(true);
    head.setFont(bold);
  }

  /** Writes what was drafted. */
  public static void write(Draft draft, OutputStream out) throws IOException {
    write(draft, draft.rows(), out);
  }

  static void write(Draft draft, List<Row> rows, OutputStream out) throws IOException {
    try (Workbook book = WorkbookFactory.create(true)) {
      PlanBook plan = new PlanBook(book);
      plan.lines(draft, rows);
      plan.names(draft);
      plan.unused(draft);
      if (draft.logNames().size() > 1) {
        plan.logs(draft, rows);
      }
      plan.about();
      book.write(out);
    }
  }

  /** Writes a plan without a log: what a line is like, and what the sheets are for. */
  public static void writeEmpty(OutputStream out) throws IOException {
    try (Workbook book = WorkbookFactory.create(true)) {
      PlanBook plan = new PlanBook(book);
      Sheet fill = plan.sheet("Fill", 14, 12, 24, 62, 10, 60);
      plan.row(fill, plan.head, "Mark", "Sheet", "Result", "Formula", "Format", "Note");
      EXAMPLES.forEach(line -> plan.row(fill, plan.check, line.toArray(String[]::new)));
      Sheet names = plan.sheet("Names", 20, 24, 24, 24);
      plan.row(names, plan.plain, "SG", "Hydrometer", "Dichte");
      plan.row(names, plan.plain, "Temp", "Temperature", "Temperatur");
      plan.about();
      book.write(out);
    }
  }

  private void lines(Draft draft, List<Row> rows) {
    boolean many = rows.stream().anyMatch(row -> !row.workbook().isEmpty());
    Sheet sheet =
        many
            ? sheet("Fill", 13, 18, 14, 20, 44, 9, 36, 36, 40, 24)
            : sheet("Fill", 13, 14, 20, 44, 9, 36, 36, 40, 24);
    row(
        sheet,
        head,
        with(
            many,
            "Workbook",
            "Mark",
            "Sheet",
            "Result",
            "Formula",
            "Format",
            "Note",
            "Look at",
            "Found",
            "First results"));
    for (Row row : rows) {
      Line line = row.line();
      row(
          sheet,
          row.isSure() ? plain : check,
          with(
              many,
              row.workbook(),
              row.isSure() ? "sure" : "please check",
              row.sheet(),
              line.result(),
              line.formula(),
              line.format(),
              line.reason(),
              String.join(" ", row.doubts()),
              draft.takes(row),
              row.preview()));
    }
  }

  /** The mark, the workbook where one is to be named, and the rest. */
  private static String[] with(boolean many, String workbook, String mark, String... rest) {
    List<String> cells = new ArrayList<>(List.of(mark));
    if (many) {
      cells.add(workbook);
    }
    cells.addAll(List.of(rest));
    return cells.toArray(String[]::new);
  }

  private void names(Draft draft) {
    Sheet sheet = sheet("Names", 20, 24, 24, 24, 24);
    draft
        .names()
        .forEach(
            (header, spellings) -> {
              List<String> cells = new ArrayList<>(List.of(header));
              cells.addAll(spellings);
              row(sheet, plain, cells.toArray(String[]::new));
            });
  }

  private void unused(Draft draft) {
    Sheet sheet = sheet("Seen, not used", 26, 22, 30, 80);
    row(sheet, head, "Workbook", "Cells", "What stands there", "Why no line takes it");
    for (Unused seen : draft.unused()) {
      row(sheet, plain, seen.log(), seen.where(), seen.written(), seen.why());
    }
  }

  /** Which log has a line and which lacks it. */
  private void logs(Draft draft, List<Row> rows) {
    List<String> results = rows.stream().map(row -> row.line().result()).distinct().toList();
    int[] widths = new int[results.size() + 1];
    java.util.Arrays.fill(widths, 14);
    widths[0] = 26;
    Sheet sheet = sheet("Logs", widths);
    List<String> first = new ArrayList<>(List.of("Workbook"));
    first.addAll(results);
    row(sheet, head, first.toArray(String[]::new));
    for (String log : draft.logNames()) {
      List<String> cells = new ArrayList<>(List.of(log));
      for (String result : results) {
        boolean has =
            rows.stream()
                .filter(row -> row.line().result().equals(result))
                .map(draft::logsOf)
                .anyMatch((Set<String> in) -> in.contains(log));
        cells.add(has ? "yes" : "lacks it");
      }
      row(sheet, plain, cells.toArray(String[]::new));
    }
  }

  private void about() {
    Sheet sheet = sheet("About", 110);
    for (String line : PlanPage.lines()) {
      row(sheet, plain, line);
    }
  }

  private Sheet sheet(String name, int... widths) {
    Sheet sheet = book.createSheet(name);
    sheet.setFitToPage(true);
    sheet.getPrintSetup().setLandscape(true);
    sheet.getPrintSetup().setFitHeight((short) 0);
    for (int column = 0; column < widths.length; column++) {
      sheet.setColumnWidth(column, widths[column] * CHARACTER);
    }
    return sheet;
  }

  private void row(Sheet sheet, CellStyle style, String... cells) {
    org.apache.poi.ss.usermodel.Row row = sheet.createRow(sheet.getPhysicalNumberOfRows());
    int lines = 1;
    for (int column = 0; column < cells.length; column++) {
      Cell cell = row.createCell(column);
      cell.setCellStyle(style);
      if (!cells[column].isEmpty()) {
        cell.setCellValue(cells[column]);
      }
      int width = sheet.getColumnWidth(column) / CHARACTER;
      lines = Math.max(lines, 1 + cells[column].length() / width);
    }
    row.setHeightInPoints(Math.min(MOST_LINES, lines) * sheet.getDefaultRowHeightInPoints());
    if (style == head) {
      sheet.createFreezePane(0, 1);
    }
  }

  private CellStyle style(IndexedColors colour) {
    CellStyle style = book.createCellStyle();
    style.setWrapText(true);
    style.setVerticalAlignment(VerticalAlignment.TOP);
    style.setDataFormat(book.createDataFormat().getFormat("@"));
    if (colour != null) {
      style.setFillForegroundColor(colour.getIndex());
      style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
    }
    return style;
  }
}
