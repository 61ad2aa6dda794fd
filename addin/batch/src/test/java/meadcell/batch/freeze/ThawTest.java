package meadcell.batch.freeze;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static meadcell.batch.freeze.FermentLog.LOG;
import static meadcell.batch.freeze.LogCells.assertFormula;
import static meadcell.batch.freeze.LogCells.assertSame;
import static meadcell.batch.freeze.LogCells.cells;
import static meadcell.batch.freeze.LogCells.change;
import static meadcell.batch.freeze.LogCells.content;
import static meadcell.batch.freeze.LogCells.log;
import static meadcell.batch.freeze.LogCells.put;
import static meadcell.batch.freeze.LogCells.sheet;
import static meadcell.batch.freeze.LogCells.swap;
import static meadcell.office.uno.RemoteOffice.as;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.beans.PropertyValue;
import com.sun.star.sheet.XSpreadsheet;
import com.sun.star.table.TableSortField;
import com.sun.star.table.XColumnRowRange;
import com.sun.star.util.XProtectable;
import com.sun.star.util.XSortable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.TestBooks;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Packages;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.office.Office;
import meadcell.office.uno.RemoteOffice;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
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
  private static final String KEPT = "Meadcell formulas";
  private static RemoteOffice office;
  private static OfficeEdits edits;
  private static byte[] openDocument;

  @TempDir Path folder;

  @BeforeAll
  static void startOffice() throws Exception {
    office = new RemoteOffice();
    office.start();
    edits = new OfficeEdits(office);
  }

  @AfterAll
  static void stopOffice() throws Exception {
    office.close();
  }

  private Path stored(String format) throws Exception {
    Path file = folder.resolve("log." + format);
    switch (format) {
      case "xls" -> save(FermentLog.in(new HSSFWorkbook()), file);
      case "xlsm" -> save(FermentLog.in(new XSSFWorkbook(XSSFWorkbookType.XLSM)), file);
      default -> save(FermentLog.in(new XSSFWorkbook()), folder.resolve("log.xlsx"));
    }
    if (format.equals("ods")) {
      Files.write(file, inOpenDocument(folder.resolve("log.xlsx")));
    }
    done("recalc", file);
    return file;
  }

  /** An office writes it, since POI cannot; once, since that takes seconds. */
  private static byte[] inOpenDocument(Path xlsx) throws Exception {
    if (openDocument == null) {
      try (Office converter = new Office("soffice")) {
        openDocument = converter.recalculated(Files.readAllBytes(xlsx), "xlsx", "ods");
      }
    }
    return openDocument;
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
    edits.in(file, OfficeEdits::edited);
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
    edits.in(file, OfficeEdits::edited);
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

  /** A move and what the remarks say of it. */
  record Move(String name, OfficeEdits.Edit edit, String said) {
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
      edits.in(file, move.edit);
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
      edits.in(
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
    edits.in(file, sheet -> as(com.sun.star.container.XNamed.class, sheet).setName("log 24"));
    Run run = run("thaw", file, "--strict");
    assertEquals(ExitCode.LEFT, run.code());
    assertTrue(run.err().contains("not there any more under this name"), run.err());
  }

  @ParameterizedTest
  @ValueSource(strings = {"xlsx", "ods", "xls"})
  void whatAPersonChangedOrEmptiedStays(String format) throws Exception {
    Path file = frozen(format);
    edits.in(
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
    XSSFWorkbook book = FermentLog.in(new XSSFWorkbook());
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
      edits.in(file, (document, sheet) -> as(XProtectable.class, document).protect(""));
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
