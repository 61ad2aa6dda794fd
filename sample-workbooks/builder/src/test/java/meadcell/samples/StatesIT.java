package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.table.XCell;
import com.sun.star.table.XColumnRowRange;
import com.sun.star.table.XTableRows;
import com.sun.star.text.XText;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import meadcell.office.uno.RemoteOffice;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Blank, half typed, in either unit, empty: no page shows an error, and a blank no verdict. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class StatesIT {
  private static final LocalDate DAY = LocalDate.of(2026, 2, 27);

  /** Sentences that say which rows are not complete: all that a half-typed row may change. */
  private static final List<String> TOLD = List.of("book_sound", "tool_verdict");

  /** Whose framed cells other pages look at. */
  private static final List<String> SHARED = List.of("Start", "Today");

  /** Which look at no log. */
  private static final List<String> ALONE = List.of("Start", "Must plan", "Cautions");

  private CellarFile book;
  private Map<String, Object[][]> asShipped;

  @BeforeAll
  void open() throws Exception {
    book = CellarFile.open("states").recalculate();
    asShipped = pages();
  }

  @AfterAll
  void close() throws Exception {
    book.close();
  }

  @Test
  @Order(1)
  void inAnyUnits() throws Exception {
    List<String> wrong = new ArrayList<>();
    for (String kept : List.of("US", "metric")) {
      for (String units : List.of("US", "metric")) {
        book.set("kept", kept).set("units", units);
        for (String error : book.errors()) {
          wrong.add(kept + " typed, shown in " + units + ": " + error);
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  @Order(2)
  void withAnyFramedCellBlank() throws Exception {
    List<String> wrong = new ArrayList<>();
    for (Map.Entry<String, List<String>> page : framed().entrySet()) {
      for (String address : page.getValue()) {
        XCell cell = cell(page.getKey(), address);
        String typed = cell.getFormula();
        cell.setFormula("");
        List<String> errors =
            SHARED.contains(page.getKey()) ? book.errors() : book.errors(List.of(page.getKey()));
        if (!errors.isEmpty()) {
          wrong.add(page.getKey() + "!" + address + " blank: " + errors);
        }
        cell.setFormula(typed);
      }
    }
    assertEquals(List.of(), wrong);
  }

  /** Each is a row that counts; its last cells are left out one after another. */
  static Stream<Arguments> rows() {
    return Stream.of(
        row("Movements", "0123", DAY, "Tank 1", "C1", 0.5, null, 0.1, "x"),
        row("Movements", "0124", DAY, "gauge", "C1", null, 58.0),
        row("Readings", "0123", DAY, "Heather 26", 1.050, 15, "x"),
        row("Readings", "0123", DAY, "C2", 0.996, 20, "x"),
        row("Analyses", "0123", "C1", DAY, "free SO2", 30, 2, "x"),
        row("Analyses", "0123", "C2", DAY, "strength", 14.2, 0.1, "x"),
        row("Tastings", "013", DAY, "C1", "F", 15, 2, 5, 4, 6, 14, "none", "wait", "x"),
        row("Additions", "012", DAY, "C1", "potassium metabisulfite", 10, "g", "x"),
        row(
            "Instrument checks",
            "01234567",
            "Hydrometer 1",
            DAY,
            "hydrometer",
            "sugar",
            12,
            20,
            20,
            1.049),
        row("Past occupants", "012", "C1", "vermouth", DAY, DAY, 17, 200, "x"),
        row("Lots", "02", "New 26", "traditional", DAY, 1.1, 0.996, 20, DAY, "x"),
        row("Vessels", "0", "C9", "cask", "oak", "light", 2020, 1, 50, 60, 80, 200, 2, 4, "x"));
  }

  /** {@code needed}: the columns without which a row does not count. */
  private static Arguments row(String log, String needed, Object... cells) {
    return Arguments.of(log, needed, cells);
  }

  @ParameterizedTest
  @MethodSource("rows")
  @Order(3)
  void aRowHalfTyped(String log, String needed, Object[] cells) throws Exception {
    int row = book.freeRow(log);
    for (int typed = 0; typed < cells.length; typed++) {
      book.typeInto(log, row, typed, cells[typed]);
      check(needed, Arrays.copyOf(cells, typed + 1), log, row);
    }
    for (int column : needed.chars().map(c -> c - '0').toArray()) {
      Object[] rest = cells.clone();
      rest[column] = null;
      book.waiting().clear(log, row);
      for (int c = 0; c < rest.length; c++) {
        book.typeInto(log, row, c, rest[c]);
      }
      book.resume();
      check(needed, rest, log, row);
    }
    book.waiting().clear(log, row);
    for (int c = 0; c < cells.length; c++) {
      book.typeInto(log, row, c, cells[c]);
    }
    book.resume();
    assertEquals("", lacks(log, row), log + " whole");
    book.clear(log, row);
    assertEquals("", lacks(log, row), log + " empty");
  }

  /** What the log says of a row, at its top. */
  private String lacks(String log, int row) throws Exception {
    Matcher line =
        Pattern.compile("in line " + (row + 1) + ", (.*?)(; in line .*)?\\.$").matcher(head(log));
    return line.find() ? line.group(1) : "";
  }

  private String head(String log) throws Exception {
    return RemoteOffice.as(XText.class, book.sheet(log).getCellByPosition(1, 1)).getString();
  }

  static Stream<Arguments> unknown() {
    return Stream.of(
        Arguments.of("Tastings", "unknown vessel", new Object[] {DAY, "C77", "F", 15}),
        Arguments.of(
            "Tastings",
            "a day without a time",
            new Object[] {CellarFile.serial(DAY) + 0.7, "C1", "F", 15}),
        Arguments.of("Additions", "unknown vessel", new Object[] {DAY, "C77", "honey", 1, "kg"}),
        Arguments.of("Readings", "unknown lot or vessel", new Object[] {DAY, "C77", 1.05, 15}),
        Arguments.of("Movements", "unknown vessel", new Object[] {DAY, "Tank 1", "C77", 1}),
        Arguments.of("Movements", "unknown source", new Object[] {DAY, "Carbyos", "C1", 1}),
        Arguments.of(
            "Movements", "a day that is no text", new Object[] {"'2026-02-27", "Tank 1", "C1", 1}),
        Arguments.of(
            "Movements", "a volume that is no text", new Object[] {DAY, "Tank 1", "C1", "'2,5"}),
        Arguments.of(
            "Movements", "a depth within the bilge", new Object[] {DAY, "gauge", "C2", null, 70}),
        Arguments.of("Analyses", "unknown vessel or lot", new Object[] {"C77", DAY, "pH", 3.4}),
        Arguments.of("Past occupants", "unknown cask", new Object[] {"C77", "rye", DAY, DAY}),
        Arguments.of("Vessels", "a name of its own", new Object[] {"C1", "cask"}),
        Arguments.of("Lots", "a name of its own", new Object[] {"Heather 26"}));
  }

  @ParameterizedTest
  @MethodSource("unknown")
  @Order(3)
  void aNameThatIsNotKnown(String log, String says, Object[] cells) throws Exception {
    int row = book.freeRow(log);
    for (int c = 0; c < cells.length; c++) {
      book.typeInto(log, row, c, cells[c]);
    }
    assertEquals(says, lacks(log, row).split(", so it")[0]);
    book.clear(log, row);
  }

  /** What stands in a row goes with it, and a row between others counts as they do. */
  @Test
  @Order(3)
  void aRowInserted() throws Exception {
    int row = book.freeRow("Tastings");
    book.typeInto("Tastings", row, 0, DAY);
    book.typeInto("Tastings", row, 1, "C1");
    XTableRows tastings = lines("Tastings");
    tastings.insertByIndex(9, 1);
    assertEquals("no taster, no score", lacks("Tastings", row + 1));
    book.typeInto("Tastings", 9, 2, "F");
    assertEquals("no day, no vessel, no score", lacks("Tastings", 9));
    assertEquals("no taster, no score", lacks("Tastings", row + 1));
    tastings.removeByIndex(9, 1);
    assertEquals("no taster, no score", lacks("Tastings", row));
    book.clear("Tastings", row);

    Object held = book.set("bottle_lot", "C2").text("bottle_volume");
    XTableRows moves = lines("Movements");
    moves.insertByIndex(9, 1);
    Object[] dipped = {DAY, "gauge", "C2", 123, null, null, null, 5000};
    for (int c = 0; c < dipped.length; c++) {
      book.typeInto("Movements", 9, c, dipped[c]);
    }
    assertEquals("", lacks("Movements", 9));
    assertEquals("123.0 L", book.text("bottle_volume"));
    moves.removeByIndex(9, 1);
    assertEquals(held, book.text("bottle_volume"));
  }

  private XTableRows lines(String log) throws Exception {
    return RemoteOffice.as(XColumnRowRange.class, book.sheet(log)).getRows();
  }

  private void check(String needed, Object[] typed, String log, int row) throws Exception {
    boolean counts =
        needed.chars().map(c -> c - '0').allMatch(c -> c < typed.length && typed[c] != null);
    String lacks = lacks(log, row);
    assertEquals(
        List.of(), counts ? book.errors() : changes(), log + " with " + Arrays.toString(typed));
    // a liquid that does not ferment is a name in Lots, and no more
    boolean whole = counts || log.equals("Lots") && typed[0] != null && typed.length < 4;
    assertTrue(whole || !lacks.isEmpty(), log + " says nothing of " + Arrays.toString(typed));
  }

  @Test
  @Order(4)
  void withAllFramedCellsBlank() throws Exception {
    blank();
    assertEquals(List.of(), book.errors());
    assertNoVerdict();
  }

  @Test
  @Order(5)
  void withEmptyLogs() throws Exception {
    book.waiting().emptyAllLogs();
    book.recalculate();
    assertEquals(List.of(), book.errors());
    assertNoVerdict();
    inAnyUnits();
  }

  @Test
  @Order(6)
  void withEmptyLogsAndPagesAsTheyShip() throws Exception {
    try (CellarFile fresh = CellarFile.open("fresh").waiting()) {
      fresh.emptyAllLogs();
      fresh.recalculate();
      assertEquals(List.of(), fresh.errors());
      assertEquals(List.of(), fresh.below("Today", "Due", "Days late"));
    }
  }

  private void blank() throws Exception {
    book.waiting();
    for (Map.Entry<String, List<String>> page : framed().entrySet()) {
      if (!page.getKey().equals("Start")) {
        for (String address : page.getValue()) {
          cell(page.getKey(), address).setFormula("");
        }
      }
    }
    book.recalculate();
  }

  /** What a page says when it has come to a conclusion. */
  private static final List<String> VERDICTS =
      List.of(
          "On target",
          "Balanced",
          "The label holds",
          "The label does not",
          "Bottle: ",
          "Stabilise: ",
          "Alike enough",
          "They differ: ",
          "They agree",
          "They do not agree",
          "Some differ",
          "It drifts",
          "No drift",
          "Still improving",
          "Level",
          "Past its best",
          "finished",
          "stalled",
          "within the limit of a single one",
          "Too little");

  private void assertNoVerdict() throws Exception {
    for (Map.Entry<String, Object[][]> page : pages().entrySet()) {
      for (Object[] line : page.getValue()) {
        for (Object cell : line) {
          for (String verdict : VERDICTS) {
            assertFalse(
                cell instanceof String text && text.startsWith(verdict), page.getKey() + cell);
          }
        }
      }
    }
  }

  private Map<String, Object[][]> pages() throws Exception {
    Map<String, Object[][]> pages = new LinkedHashMap<>();
    for (String page : CellarFile.PAGES) {
      pages.put(page, book.page(page));
    }
    return pages;
  }

  /** Cells of pages that show another thing than at the beginning, an error included. */
  private List<String> changes() throws Exception {
    List<String> changes = new ArrayList<>();
    List<String> told = new ArrayList<>();
    for (String name : TOLD) {
      told.add(book.place(name));
    }
    for (Map.Entry<String, Object[][]> page : asShipped.entrySet()) {
      if (ALONE.contains(page.getKey())) {
        continue;
      }
      Object[][] now = book.page(page.getKey());
      for (int r = 0; r < now.length; r++) {
        for (int c = 0; c < now[r].length; c++) {
          Object before = page.getValue()[r][c];
          String at = page.getKey() + "!" + (char) ('A' + c) + (r + 1);
          if (!Samples.sameValue(before, now[r][c]) && !told.contains(at)) {
            changes.add(at + ": " + before + " became " + now[r][c]);
          }
        }
      }
    }
    return changes;
  }

  private XCell cell(String page, String address) throws Exception {
    return book.sheet(page).getCellRangeByName(address).getCellByPosition(0, 0);
  }

  /** The cells to type into, by page. */
  private static Map<String, List<String>> framed() throws Exception {
    Map<String, List<String>> framed = new LinkedHashMap<>();
    try (XSSFWorkbook built = Samples.open("cellar-book")) {
      for (String page : CellarFile.PAGES) {
        Sheet sheet = built.getSheet(page);
        for (Row row : sheet) {
          for (Cell cell : row) {
            if (!cell.getCellStyle().getLocked()) {
              framed
                  .computeIfAbsent(page, p -> new ArrayList<>())
                  .add(cell.getAddress().formatAsString());
            }
          }
        }
      }
    }
    return framed;
  }
}
