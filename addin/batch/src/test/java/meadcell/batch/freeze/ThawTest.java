package meadcell.batch.freeze;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static meadcell.office.uno.RemoteOffice.as;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.beans.PropertyValue;
import com.sun.star.lang.XComponent;
import com.sun.star.sheet.XSpreadsheet;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.table.TableSortField;
import com.sun.star.table.XColumnRowRange;
import com.sun.star.util.XProtectable;
import com.sun.star.util.XSortable;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.TestBooks;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Packages;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.cellar.Cellar;
import meadcell.office.Office;
import meadcell.office.uno.RemoteOffice;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbookType;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Frozen logs travel through a real LibreOffice that does not know our functions. */
class ThawTest {
  private static final String LOG = "my log";
  private static final String KEPT = "Meadcell formulas";
  private static RemoteOffice office;

  @TempDir Path folder;

  @BeforeAll
  static void startOffice() throws Exception {
    office = new RemoteOffice();
    office.start();
  }

  @AfterAll
  static void stopOffice() throws Exception {
    office.close();
  }

  // ---- the log ----------------------------------------------------------------------------

  /** An invented ferment: ours on readings, ours on ours, a person's on ours, other sheets. */
  private static <W extends Workbook> W fermentLog(W book) {
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

  private Path stored(String format) throws Exception {
    Path file = folder.resolve("log." + format);
    switch (format) {
      case "xls" -> save(fermentLog(new HSSFWorkbook()), file);
      case "xlsm" -> save(fermentLog(new XSSFWorkbook(XSSFWorkbookType.XLSM)), file);
      default -> save(fermentLog(new XSSFWorkbook()), folder.resolve("log.xlsx"));
    }
    if (format.equals("ods")) {
      try (Office converter = new Office("soffice")) {
        byte[] xlsx = Files.readAllBytes(folder.resolve("log.xlsx"));
        Files.write(file, converter.recalculated(xlsx, "xlsx", "ods"));
      }
    }
    done("recalc", file);
    return file;
  }

  private Path frozen(String format) throws Exception {
    Path file = stored(format);
    done("freeze", file);
    return file;
  }

  private static Run run(String command, Path file, String... more) {
    List<String> args = new ArrayList<>(List.of(command, file.toString(), "--in-place"));
    args.addAll(List.of(more));
    return Run.of(args.toArray(String[]::new));
  }

  private static Run done(String command, Path file, String... more) {
    Run run = run(command, file, more);
    assertEquals(ExitCode.OK, run.code(), run.out() + run.err());
    assertEquals("", run.err());
    return run;
  }

  // ---- looking and changing ---------------------------------------------------------------

  private static Book open(Path file) throws Exception {
    return Books.open(Files.readAllBytes(file), file.toString());
  }

  private static BookSheet sheet(Book book, String name) {
    return book.sheets().stream().filter(s -> s.name().equals(name)).findFirst().orElseThrow();
  }

  private static CellContent content(Path file, String sheet, String cell) throws Exception {
    try (Book book = open(file)) {
      return sheet(book, sheet).content(Place.of(cell));
    }
  }

  /** All cells but those of the sheet with the formulas. */
  private static TreeMap<String, CellContent> cells(Path file) throws Exception {
    TreeMap<String, CellContent> cells = new TreeMap<>();
    try (Book book = open(file)) {
      for (BookSheet sheet : book.sheets()) {
        for (int r = 0; !FormulaSheet.is(sheet.name()) && r <= sheet.lastRow(); r++) {
          for (int c = 0; c <= sheet.lastColumn(r); c++) {
            Place place = new Place(r, c);
            CellContent content = sheet.content(place);
            if (content.isFormula() || !content.isBlank()) {
              cells.put(sheet.name() + "!" + place + " " + sheet.array(place), content);
            }
          }
        }
      }
    }
    return cells;
  }

  /** An office without the functions writes their names in lower case when it converts. */
  private static void assertFormula(String wanted, CellContent got) {
    assertTrue(wanted.equalsIgnoreCase(got.formula()), wanted + " and not " + got.formula());
  }

  private static void assertSame(TreeMap<String, CellContent> wanted, Path file) throws Exception {
    TreeMap<String, CellContent> got = cells(file);
    assertEquals(wanted.keySet(), got.keySet());
    wanted.forEach(
        (cell, content) -> {
          CellContent now = got.get(cell);
          if (content.isFormula()) {
            assertFormula(content.formula(), now);
          } else {
            assertNull(now.formula(), cell);
          }
          if (content.value() instanceof Value.Number number) {
            assertEquals(number.number(), ((Value.Number) now.value()).number(), 1e-12, cell);
          } else {
            assertEquals(content.value(), now.value(), cell);
          }
        });
  }

  /** The cells of the ferment. */
  private static TreeMap<String, CellContent> log(Path file) throws Exception {
    TreeMap<String, CellContent> cells = cells(file);
    cells.keySet().removeIf(cell -> !cell.startsWith(LOG));
    return cells;
  }

  /** Changes a file as a script would, which moves no references along. */
  private static void change(Path file, Consumer<Book> change) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Book book = open(file)) {
      change.accept(book);
      book.write(out);
    }
    Files.write(file, out.toByteArray());
  }

  private static void put(Path file, String cell, Value value) throws Exception {
    change(file, book -> sheet(book, LOG).putValue(Place.of(cell), value));
  }

  private static void swap(BookSheet sheet, Place a, Place b) {
    CellContent first = sheet.content(a);
    CellContent second = sheet.content(b);
    sheet.clear(a);
    sheet.clear(b);
    sheet.putValue(a, second.value());
    sheet.putValue(b, first.value());
  }

  /** Something done in the office. */
  interface Edit {
    void in(XSpreadsheet sheet) throws Exception;
  }

  /** Something done in the office to the document and its first sheet. */
  interface DocumentEdit {
    void in(XComponent document, XSpreadsheet sheet) throws Exception;
  }

  private static void inOffice(Path file, Edit edit) throws Exception {
    inOffice(file, (document, sheet) -> edit.in(sheet));
  }

  private static void inOffice(Path file, DocumentEdit edit) throws Exception {
    Path copy = office.home().resolve(file.getFileName());
    Path result = office.home().resolve("saved-" + file.getFileName());
    Files.copy(file, copy);
    copy.toFile().setWritable(true, false); // what the office cannot write it does not change
    String format = file.toString().substring(file.toString().lastIndexOf('.') + 1);
    String filter =
        switch (format) {
          case "xlsx" -> "Calc MS Excel 2007 XML";
          case "xlsm" -> "Calc MS Excel 2007 VBA XML";
          case "xls" -> "MS Excel 97";
          default -> "calc8";
        };
    try (var book = office.open(copy.toUri().toString(), true)) {
      var sheets = as(XSpreadsheetDocument.class, book.document()).getSheets();
      edit.in(book.document(), as(XSpreadsheet.class, sheets.getByName(LOG)));
      book.store(result, filter);
    }
    Files.write(file, Files.readAllBytes(result));
    Files.delete(copy);
    Files.delete(result);
  }

  private static void edited(XSpreadsheet sheet) throws Exception {
    sheet.getCellRangeByName("B5").getCellByPosition(0, 0).setValue(1.055);
    sheet.getCellRangeByName("C1").getCellByPosition(0, 0).setValue(1.1);
  }

  // ---- there and back ---------------------------------------------------------------------

  @ParameterizedTest
  @ValueSource(strings = {"xlsx", "xlsm", "ods", "xls"})
  void aReadingChangedElsewhereIsAsIfNothingHadEverBeenFrozen(String format) throws Exception {
    Path file = stored(format);
    byte[] live = Files.readAllBytes(file);
    done("freeze", file);
    for (var cell : cells(file).entrySet()) {
      boolean isTheirs = cell.getKey().matches(LOG + "!G[4-7] .*");
      assertEquals(isTheirs, cell.getValue().isFormula(), cell.getKey());
    }
    byte[] frozen = Files.readAllBytes(file);
    done("freeze", file);
    assertArrayEquals(frozen, Files.readAllBytes(file));
    inOffice(file, ThawTest::edited);
    done("thaw", file);
    byte[] thawed = Files.readAllBytes(file);
    done("recalc", file);
    assertArrayEquals(thawed, Files.readAllBytes(file), "thawing computes");

    Path never = folder.resolve("never." + format);
    Files.write(never, live);
    put(never, "B5", Value.of(1.055));
    put(never, "C1", Value.of(1.1));
    done("recalc", never);
    assertSame(cells(never), file);

    Run again = run("thaw", file);
    assertEquals(ExitCode.OK, again.code());
    assertTrue(again.err().contains("No frozen formulas are kept"), again.err());
    assertArrayEquals(thawed, Files.readAllBytes(file));
  }

  @Test
  void withoutAnOfficeInBetweenThawUndoesFreeze() throws Exception {
    Path file = stored("xlsx");
    TreeMap<String, CellContent> before = cells(file);
    done("freeze", file);
    done("thaw", file);
    assertSame(before, file);
  }

  /** No part but those with the cells and the lists of parts differs by a byte. */
  @ParameterizedTest
  @ValueSource(strings = {"xlsx", "xlsm", "ods"})
  void nothingElseInTheFileChanges(String format) throws Exception {
    Path file = stored(format);
    Map<String, byte[]> before = Packages.parts(Files.readAllBytes(file));
    for (String command : List.of("freeze", "thaw")) {
      done(command, file);
      Map<String, byte[]> after = Packages.parts(Files.readAllBytes(file));
      Set<String> changed = new TreeSet<>();
      before.forEach(
          (name, part) -> {
            if (!Arrays.equals(part, after.get(name))) {
              changed.add(name);
            }
          });
      Set<String> expected =
          format.equals("ods")
              ? Set.of("content.xml")
              : Set.of(
                  "[Content_Types].xml",
                  "xl/styles.xml",
                  "xl/workbook.xml",
                  "xl/_rels/workbook.xml.rels");
      if (command.equals("freeze")) { // thawed cells are what they were, to the byte
        changed.removeAll(Set.of("xl/worksheets/sheet1.xml", "xl/worksheets/sheet2.xml"));
      }
      assertEquals(expected, changed);
      Set<String> added = new TreeSet<>(after.keySet());
      added.removeAll(before.keySet());
      assertEquals(format.equals("ods") ? 0 : 1, added.size(), () -> "" + added);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"xlsx", "ods", "xls"})
  void filledValuesAreThawedToo(String format) throws Exception {
    Path plan = save(plan(), folder.resolve("plan.xlsx"));
    Path file = stored(format);
    byte[] before = Files.readAllBytes(file);
    done("fill", file, "--plan", plan.toString(), "--write", "values");
    byte[] filled = Files.readAllBytes(file);
    assertFalse(content(file, LOG, "H4").isFormula());
    done("fill", file, "--plan", plan.toString(), "--write", "values");
    assertArrayEquals(filled, Files.readAllBytes(file));
    inOffice(file, ThawTest::edited);
    done("thaw", file);

    Path never = folder.resolve("never." + format);
    Files.write(never, before);
    done("fill", never, "--plan", plan.toString());
    put(never, "B5", Value.of(1.055));
    put(never, "C1", Value.of(1.1));
    done("recalc", never);
    done("recalc", file);
    assertSame(cells(never), file);
    done("fill", file, "--plan", plan.toString());
    assertSame(cells(never), file);
  }

  private static Workbook plan() {
    Workbook plan = new XSSFWorkbook();
    rows(
        plan.createSheet("Fill"),
        0,
        row("Sheet", "Result", "Formula"),
        row(LOG, "Sugar", "GRAVITY.TOBRIX([SG])"),
        row(LOG, "ABV", "ALCOHOL.ABV({OG}; [SG])"));
    return plan;
  }

  // ---- moved ------------------------------------------------------------------------------

  /** A move and what the remarks say of it. */
  record Move(String name, Edit edit, String said) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static XColumnRowRange lines(XSpreadsheet sheet) {
    return as(XColumnRowRange.class, sheet);
  }

  static Stream<Move> moves() {
    return Stream.of(
        new Move(
            "row inserted", s -> lines(s).getRows().insertByIndex(4, 1), "is 'my log'!$E$6 now"),
        new Move("row deleted", s -> lines(s).getRows().removeByIndex(4, 1), "was deleted"),
        new Move("column inserted", s -> lines(s).getColumns().insertByIndex(2, 1), "$F$4 now"),
        new Move("column deleted", s -> lines(s).getColumns().removeByIndex(3, 1), "$D$4 now"),
        new Move("sorted", ThawTest::sort, "is no longer in row"));
  }

  private static void sort(XSpreadsheet sheet) throws Exception {
    TableSortField byGravity = new TableSortField();
    byGravity.Field = 1;
    byGravity.IsAscending = true;
    as(XSortable.class, sheet.getCellRangeByName("A4:G7"))
        .sort(
            new PropertyValue[] {
              RemoteOffice.property("SortFields", new TableSortField[] {byGravity}),
              RemoteOffice.property("ContainsHeader", false)
            });
  }

  @ParameterizedTest
  @MethodSource("moves")
  void nothingIsThawedWhereRowsOrColumnsMoved(Move move) throws Exception {
    for (String format : List.of("xlsx", "ods", "xls")) {
      Path file = frozen(format);
      inOffice(file, move.edit);
      TreeMap<String, CellContent> moved = log(file);
      Run run = run("thaw", file, "--strict", "--report", folder + "/report.json");
      assertEquals(ExitCode.LEFT, run.code(), format + run.out() + run.err());
      assertTrue(run.err().contains(move.said), format + run.err());
      assertTrue(run.err().contains("my log!F7: was not thawed, because"), run.err());
      assertEquals(moved, log(file), format);
      assertFalse(Files.readString(folder.resolve("report.json")).contains("Exception"));
    }
  }

  @Test
  void rowsBelowAndColumnsBehindMoveNothing() throws Exception {
    for (String format : List.of("xlsx", "ods", "xls")) {
      Path file = frozen(format);
      inOffice(
          file,
          sheet -> {
            lines(sheet).getRows().insertByIndex(8, 2);
            lines(sheet).getColumns().insertByIndex(9, 1);
            sheet.getCellRangeByName("A8").getCellByPosition(0, 0).setValue(45380);
            sheet.getCellRangeByName("D4").getCellByPosition(0, 0).setFormula("pitched at dusk");
            sheet.getCellRangeByName("B3").getCellByPosition(0, 0).setFormula("Gravity");
          });
      done("thaw", file);
      assertFormula("GRAVITY.CORRECT(B7,C7)", content(file, LOG, "E7"));
    }
  }

  @Test
  void scriptsThatSwapRowsOrColumnsAreSeenByLabels() throws Exception {
    Path file = frozen("xlsx");
    byte[] before = Files.readAllBytes(file);
    change(
        file,
        book -> { // the readings of two rows, but not their results
          for (int column = 0; column < 4; column++) {
            swap(sheet(book, LOG), new Place(4, column), new Place(5, column));
          }
        });
    Run run = run("thaw", file, "--strict");
    assertEquals(ExitCode.LEFT, run.code());
    assertTrue(run.err().contains("\"45359 · 1.061 · 22\" is no longer in row 5"), run.err());

    Files.write(file, before);
    change(
        file,
        book -> {
          for (int row = 2; row < 7; row++) {
            swap(sheet(book, LOG), new Place(row, 1), new Place(row, 2));
          }
        });
    run = run("thaw", file, "--strict");
    assertEquals(ExitCode.LEFT, run.code());
    assertTrue(run.err().contains("\"SG\" is no longer above 'my log'!$B$4"), run.err());
  }

  @Test
  void aSheetWithAnotherNameIsListed() throws Exception {
    Path file = frozen("xlsx");
    inOffice(file, sheet -> as(com.sun.star.container.XNamed.class, sheet).setName("log 24"));
    Run run = run("thaw", file, "--strict");
    assertEquals(ExitCode.LEFT, run.code());
    assertTrue(run.err().contains("not there any more under this name"), run.err());
  }

  // ---- changed and emptied ----------------------------------------------------------------

  @ParameterizedTest
  @ValueSource(strings = {"xlsx", "ods", "xls"})
  void whatAPersonChangedOrEmptiedStays(String format) throws Exception {
    Path file = frozen(format);
    inOffice(
        file,
        sheet -> {
          sheet.getCellRangeByName("E4").getCellByPosition(0, 0).setValue(1.2);
          sheet.getCellRangeByName("E5").getCellByPosition(0, 0).setFormula(""); // empties it
          sheet.getCellRangeByName("F6").getCellByPosition(0, 0).setFormula("=E6*250");
        });
    Run run = run("thaw", file);
    assertEquals(ExitCode.OK, run.code());
    assertTrue(run.err().contains("my log!E4: holds 1.2 now, where the formula gave "), run.err());
    assertTrue(run.err().contains("my log!E5: was emptied (--refill-empty puts"), run.err());
    assertTrue(run.err().contains("my log!F6: holds another formula now"), run.err());
    assertFalse(run.err().contains("F7"), run.err());
    assertFalse(run.err().contains(KEPT + "!"), run.err());
    assertEquals(Value.of(1.2), content(file, LOG, "E4").value());
    assertNull(content(file, LOG, "E4").formula());
    assertTrue(content(file, LOG, "E5").isBlank());
    assertEquals("E6*250", content(file, LOG, "F6").formula());
    assertFormula("GRAVITY.TOBRIX(E4)", content(file, LOG, "F4"));

    byte[] once = Files.readAllBytes(file);
    assertEquals(ExitCode.LEFT, run("thaw", file, "--strict").code());
    assertEquals(ExitCode.LEFT, run("thaw", file).code(), "nothing was put back this time");
    assertArrayEquals(once, Files.readAllBytes(file));

    Run refilled = run("thaw", file, "--refill-empty");
    assertEquals(ExitCode.OK, refilled.code(), refilled.err());
    assertFormula("GRAVITY.CORRECT(B5,C5)", content(file, LOG, "E5"));
    assertFalse(content(file, LOG, "E5").value().isBlank());
    assertEquals(Value.of(1.2), content(file, LOG, "E4").value());
  }

  @Test
  void anArrayOfWhichOneCellWasChangedStaysWhole() throws Exception {
    Path file = frozen("xlsx");
    change(file, book -> sheet(book, "cask").putValue(Place.of("B6"), Value.of(7)));
    Run run = run("thaw", file);
    assertEquals(ExitCode.OK, run.code());
    assertTrue(run.err().contains("cask!B6: holds 7.0 now"), run.err());
    assertTrue(run.err().contains("cask!B4: was left, because other cells"), run.err());
    assertNull(content(file, "cask", "B4").formula());
    assertEquals("ROUND(GRAVITY.TOBRIX(AVERAGE('my log'!B4:B7)),1)", formula(file, "B2"));
  }

  private static String formula(Path file, String cell) throws Exception {
    return content(file, "cask", cell).formula();
  }

  @Test
  void freezingAgainKeepsWhatWasLeft() throws Exception {
    Path file = frozen("xlsx");
    TreeMap<String, CellContent> frozen = cells(file);
    CellContent gave = content(file, LOG, "E4");
    put(file, "E4", Value.of(1.2));
    assertEquals(ExitCode.OK, run("thaw", file).code());
    assertNotEquals(frozen.keySet(), cells(file).keySet());
    done("freeze", file);
    put(file, "E4", gave.value());
    done("thaw", file);
    assertEquals("GRAVITY.CORRECT(B4,C4)", content(file, LOG, "E4").formula());
  }

  @Test
  void someoneElsesSheetIsNotTouched() throws Exception {
    XSSFWorkbook book = fermentLog(new XSSFWorkbook());
    rows(book.createSheet(KEPT), 0, row("mine"));
    Path file = save(book, folder.resolve("log.xlsx"));
    byte[] before = Files.readAllBytes(file);
    for (String command : List.of("freeze", "thaw")) {
      Run run = run(command, file);
      assertEquals(ExitCode.REFUSED, run.code());
      assertTrue(run.err().contains("is someone else's"), run.err());
      assertArrayEquals(before, Files.readAllBytes(file));
    }
  }

  private static void lock(Path file) throws Exception {
    if (file.toString().endsWith("xlsx")) { // the office writes nothing of it there
      try (XSSFWorkbook book = (XSSFWorkbook) TestBooks.open(file)) {
        book.lockStructure();
        save(book, file);
      }
    } else {
      inOffice(file, (document, sheet) -> as(XProtectable.class, document).protect(""));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"xlsx", "ods", "xls"})
  void aWorkbookProtectedAgainstNewSheetsIsLeft(String format) throws Exception {
    Path plan = save(plan(), folder.resolve("plan.xlsx"));
    Path file = stored(format);
    byte[] open = Files.readAllBytes(file);
    lock(file);
    byte[] locked = Files.readAllBytes(file);
    List<Run> runs =
        List.of(
            run("freeze", file), run("fill", file, "--plan", plan.toString(), "--write", "values"));
    for (Run run : runs) {
      assertEquals(ExitCode.REFUSED, run.code(), run.out() + run.err());
      assertTrue(run.err().contains("is protected against new sheets"), run.err());
      assertArrayEquals(locked, Files.readAllBytes(file));
    }

    Files.write(file, open);
    TreeMap<String, CellContent> live = cells(file);
    done("freeze", file);
    lock(file);
    done("freeze", file); // the sheet is there
    done("thaw", file);
    assertSame(live, file);
  }

  @Test
  void aLineThatNamesNoCellIsRefused() throws Exception {
    Path file = frozen("xlsx");
    change(file, book -> sheet(book, KEPT).putValue(Place.of("B5"), Value.of("E4 (mine)")));
    Run run = run("thaw", file);
    assertEquals(ExitCode.REFUSED, run.code());
    assertTrue(run.err().contains("Line 5 of the sheet \"Meadcell formulas\""), run.err());
  }
}
