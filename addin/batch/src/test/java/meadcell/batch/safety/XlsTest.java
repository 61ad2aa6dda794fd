package meadcell.batch.safety;

import static meadcell.batch.TestBooks.cell;
import static meadcell.batch.TestBooks.open;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.book.xls.Records;
import meadcell.batch.book.xls.Records.Each;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.Workbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Old binary workbooks as other programs write them; each fill puts a note. */
class XlsTest {
  private static final int COUNTRY = 0x008C;
  private static final int NAME = 0x0018;
  private static final int LINKED_BOOK = 0x01AE;
  private static final int LINKED_SHEETS = 0x0017;
  private static final int LINKED_NAME = 0x0023;
  private static final int FORMULA = 0x0006;
  private static final int TABLE = 0x0236;
  private static final int NOTE = 0x001C;

  @TempDir Path folder;
  private Scene scene;
  private HSSFWorkbook book;

  @BeforeEach
  void scene() {
    scene = new Scene(folder);
    book = Scene.log(new HSSFWorkbook());
  }

  private Path save() throws Exception {
    return scene.save(book, "log.xls");
  }

  private static void checkFilled(Path file) throws Exception {
    assertTrue(Records.isSound(file));
    try (Workbook after = open(file)) {
      assertEquals(1.07946, cell(after, Scene.SHEET, "D5").getNumericCellValue(), 1e-5);
      assertEquals("Meadcell", cell(after, Scene.SHEET, "D6").getCellComment().getAuthor());
    }
  }

  @Test
  void withoutACountry() throws Exception {
    Path file = save();
    Records.edit(file, records -> records.removeIf(each -> each.kind == COUNTRY));
    Path filled = scene.filled(file);
    checkFilled(filled);
    assertEquals(0, Records.count(filled, COUNTRY));
    scene.plan("Brix", "GRAVITY.TOBRIX([SG])", "True SG", Scene.CORRECT);
    Run again = scene.fill(filled, "--in-place");
    assertEquals(ExitCode.OK, again.code(), again.err());
    checkFilled(filled);
  }

  @Test
  void sheetsKeepTheirChartsAndNotesGoElsewhere() throws Exception {
    Path file = save();
    Records.edit(
        file,
        records -> {
          Records.addChart(records);
          Records.addChart(records);
        });
    Run run = scene.fill(file, "--out", folder.resolve("out").toString(), "--report-sheet");
    assertEquals(ExitCode.OK, run.code(), run.err());
    Path filled = scene.out(file);
    assertEquals(
        Records.count(file, Records.BEGIN) + 1, Records.count(filled, Records.BEGIN)); // the report
    assertEquals(0, Records.count(filled, NOTE));
    assertTrue(run.err().contains("would lose its charts"), run.err());
    try (Workbook after = open(filled)) {
      assertEquals("17 °C", noteInReport(after));
    }
  }

  private static String noteInReport(Workbook after) {
    for (var row : after.getSheet("Meadcell report")) {
      for (var each : row) {
        if (each.toString().contains("read as 17 °C")) {
          return "17 °C";
        }
      }
    }
    return "";
  }

  /** A macro of a name, as other programs call functions that this format does not know. */
  private static byte[] macroName(String name) {
    byte[] data = new byte[15 + name.length()];
    data[0] = 0x0E; // a macro's name, called as a function
    data[3] = (byte) name.length();
    System.arraycopy(name.getBytes(StandardCharsets.ISO_8859_1), 0, data, 15, name.length());
    return data;
  }

  private static byte[] withTokens(byte[] formula, byte[] tokens) {
    byte[] changed = Arrays.copyOf(formula, 22 + tokens.length);
    changed[20] = (byte) tokens.length;
    changed[21] = 0;
    System.arraycopy(tokens, 0, changed, 22, tokens.length);
    return changed;
  }

  @Test
  void macroFunctionsWithoutAListOfSheets() throws Exception {
    book.getSheet("Other").getRow(0).createCell(3).setCellFormula("SUM(1,2)");
    Path file = save();
    byte[] macro = {0x23, 1, 0, 0, 0, 0x1E, 7, 0, 0x42, 2, (byte) 255, 0}; // MYMACRO(7)
    Records.edit(
        file,
        records -> {
          int texts = 0;
          for (int i = 0; i < records.size(); i++) {
            Each each = records.get(i);
            texts = each.kind == 0x00FC && texts == 0 ? i : texts;
            if (each.kind == FORMULA) {
              each.data = withTokens(each.data, macro);
            }
          }
          records.add(texts, new Each(NAME, macroName("MYMACRO")));
          records.removeIf(
              each -> List.of(LINKED_BOOK, LINKED_SHEETS, LINKED_NAME).contains(each.kind));
        });
    String before = Records.formula(file, 1, "D1");
    Path filled = scene.filled(file);
    checkFilled(filled);
    assertEquals(before, Records.formula(filled, 1, "D1"));
    assertEquals(1, Records.count(filled, NAME));
  }

  /**
   * Functions of the macro sheets before Visual Basic ([MS-XLS] 2.5.198.4 and 2.5.198.17): by
   * number, as a command, with a fixed number of arguments, and of an add-in's own macro sheet.
   */
  private enum Macro {
    BY_NUMBER(0x1E, 38, 0, 0x1E, 7, 0, 0x42, 2, 185, 0),
    AS_A_COMMAND(0x1E, 7, 0, 0x42, 1, 3, 0x80),
    WITH_A_FIXED_COUNT(0x1E, 7, 0, 0x41, 0x9E, 0),
    UNKNOWN_TO_ANYONE(0x1E, 7, 0, 0x42, 1, 0xFE, 0x02),
    OF_AN_ADD_IN(0x39, 0, 0, 1, 0, 0, 0, 0x1E, 7, 0, 0x42, 2, 255, 0);

    final byte[] tokens;

    Macro(int... tokens) {
      this.tokens = new byte[tokens.length];
      for (int i = 0; i < tokens.length; i++) {
        this.tokens[i] = (byte) tokens[i];
      }
    }
  }

  /** An add-in that lies in another file, and the one function that is used of it. */
  private static void addAddIn(List<Each> records) {
    byte[] file = "\0\0x\0\0\1MACROS.XLA".getBytes(StandardCharsets.ISO_8859_1);
    file[2] = (byte) (file.length - 5);
    byte[] name = "\0\0\0\0\0\0\5OLDIE\2\0\34\27".getBytes(StandardCharsets.ISO_8859_1);
    byte[] name8 = Arrays.copyOf(name, name.length + 1); // no compression flag yet
    System.arraycopy(name, 7, name8, 8, name.length - 7);
    name8[7] = 0;
    int texts = 0;
    while (records.get(texts).kind != 0x00FC) {
      texts++;
    }
    records.removeIf(each -> List.of(LINKED_BOOK, LINKED_SHEETS, LINKED_NAME).contains(each.kind));
    records.add(texts, new Each(LINKED_SHEETS, new byte[] {1, 0, 0, 0, -2, -1, -2, -1}));
    records.add(texts, new Each(LINKED_NAME, name8));
    records.add(texts, new Each(LINKED_BOOK, file));
  }

  @ParameterizedTest
  @EnumSource
  void olderMacroFunctionsAreKeptOrTheFileIsRefused(Macro macro) throws Exception {
    book.getSheet("Other").getRow(0).createCell(3).setCellFormula("SUM(1,2)");
    Path file = save();
    Records.edit(
        file,
        records -> {
          if (macro == Macro.OF_AN_ADD_IN) {
            addAddIn(records);
          }
          records.stream()
              .filter(each -> each.kind == FORMULA)
              .forEach(each -> each.data = withTokens(each.data, macro.tokens));
        });
    byte[] original = Files.readAllBytes(file);
    String before = Records.formula(file, 1, "D1");
    Run run = scene.fill(file, "--in-place");
    if (run.code() == ExitCode.OK) {
      checkFilled(file);
      assertEquals(before, Records.formula(file, 1, "D1"));
    } else {
      assertEquals(ExitCode.REFUSED, run.code(), run.err());
      assertTrue(run.err().contains("save it as .xlsx"), run.err());
      assertArrayEquals(original, Files.readAllBytes(file));
    }
    assertFalse(run.err().contains("fault"), run.err());
  }

  @Test
  void whatIfTables() throws Exception {
    book.getSheet("Other").getRow(1).createCell(3).setCellFormula("B2*2");
    Path file = save();
    Records.edit(
        file,
        records -> {
          for (int i = 0; i < records.size(); i++) {
            Each each = records.get(i);
            if (each.kind == FORMULA) {
              each.data = withTokens(each.data, new byte[] {0x02, 1, 0, 3, 0});
              records.add(
                  i + 1,
                  new Each(TABLE, new byte[] {1, 0, 1, 0, 3, 3, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0}));
              return;
            }
          }
        });
    String before = Records.formula(file, 1, "D2");
    Path filled = scene.filled(file);
    checkFilled(filled);
    assertEquals(before, Records.formula(filled, 1, "D2"));
    assertEquals(ExitCode.OK, Run.of("recalc", filled.toString(), "--in-place").code());
  }

  @Test
  void ofExcel95() throws Exception {
    POIFSFileSystem old = new POIFSFileSystem();
    byte[] begin = {9, 8, 8, 0, 0, 5, 5, 0, 0, 0, 0, 0, 10, 0, 0, 0};
    old.getRoot().createDocument("Book", new ByteArrayInputStream(begin));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    old.writeFilesystem(out);
    Path file = Files.write(folder.resolve("old.xls"), out.toByteArray());
    Run run = scene.fill(file, "--in-place");
    assertEquals(ExitCode.REFUSED, run.code());
    assertTrue(run.err().contains("made by Excel 95 or an older program"), run.err());
    assertFalse(run.err().contains("damaged"), run.err());
  }
}
