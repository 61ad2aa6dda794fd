package meadcell.batch.calculation;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import meadcell.batch.Run;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Packages;
import meadcell.batch.book.Place;
import meadcell.batch.book.Setting;
import meadcell.batch.book.Value;
import meadcell.office.uno.RemoteOffice;
import org.apache.poi.hssf.record.DateWindow1904Record;
import org.apache.poi.hssf.record.PrecisionRecord;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Settings that change what people's formulas give; LibreOffice says what is right. */
class SettingsTest {
  /** Column B; each rests on A1, which holds a cellar function of A2. */
  private static final List<String> FORMULAS =
      List.of(
          "A1*3",
          "SUM(A1,A1)",
          "IF(A1>15,1,2)",
          "YEAR(A1*2000)",
          "TEXT(A1*2000,\"yyyy-mm-dd\")",
          "TEXT(A1,\"0.00\")",
          "DATE(2024,3,1)+A1",
          "D5+A1",
          "IF(D1=\"dry\",A1,0)",
          "IF(D1=\"sweet\",A1,0)",
          "COUNTIF(D1:D4,\"dry\")+A1",
          "COUNTIF(D1:D4,\"d*\")+A1",
          "COUNTIF(D1:D4,\"d.y\")+A1",
          "COUNTIF(D1:D4,\"dr\")+A1",
          "COUNTIF(D1:D4,\"sweet\")+A1",
          "COUNTIF(E1:E4,\">2\")+A1",
          "MATCH(\"dr\",D1:D4,0)+A1",
          "MATCH(\"semi\",D1:D4,0)+A1");

  /** A kind of file with a setting, and what the office calls it. */
  record Kind(String ending, Setting setting, String mark) {}

  static Stream<Kind> kinds() {
    return Stream.of(
        new Kind("xlsx", null, ""),
        new Kind("xlsx", Setting.OTHER_DAYS, ""),
        new Kind("xlsx", Setting.AS_SHOWN, ""),
        new Kind("xls", Setting.OTHER_DAYS, ""),
        new Kind("xls", Setting.AS_SHOWN, ""),
        new Kind("ods", Setting.CAPITALS, "case-sensitive=\"true\" table:use-wildcards=\"true\""),
        new Kind(
            "ods",
            Setting.PATTERNS,
            "case-sensitive=\"false\" table:use-regular-expressions=\"true\""),
        new Kind(
            "ods",
            Setting.PATTERNS,
            "case-sensitive=\"false\" table:use-regular-expressions=\"false\""),
        new Kind(
            "ods",
            Setting.PATTERNS,
            "case-sensitive=\"false\" table:use-wildcards=\"true\""
                + " table:search-criteria-must-apply-to-whole-cell=\"false\""),
        new Kind(
            "ods",
            Setting.AS_SHOWN,
            "case-sensitive=\"false\" table:use-wildcards=\"true\""
                + " table:precision-as-shown=\"true\""));
  }

  private static final Map<String, String> FILTERS =
      Map.of("xlsx", "Calc MS Excel 2007 XML", "ods", "calc8", "xls", "MS Excel 97");

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

  private static byte[] recalculated(byte[] workbook, String from, String to) throws Exception {
    Path file = office.home().resolve("settings." + from);
    Path result = office.home().resolve("result." + to);
    Files.write(file, workbook);
    file.toFile().setWritable(true, false);
    try (var open = office.open(file.toUri().toString(), true)) {
      open.recalculate();
      open.store(result, FILTERS.get(to));
    }
    return Files.readAllBytes(result);
  }

  private static <W extends Workbook> W filled(W book) {
    Sheet sheet = book.createSheet("log");
    rows(
        sheet,
        0,
        row("=1*A2", null, null, "Dry", 1),
        row(1.085, null, null, "dry", 2),
        row(null, null, null, "semi-dry", 3),
        row(null, null, null, "semi", 4),
        row(null, null, null, "2024-03-01"));
    CellStyle style = book.createCellStyle();
    style.setDataFormat(book.createDataFormat().getFormat("0.0"));
    sheet.getRow(0).getCell(0).setCellStyle(style);
    for (int i = 0; i < FORMULAS.size(); i++) {
      Sheet there = sheet;
      (there.getRow(i) == null ? there.createRow(i) : there.getRow(i))
          .createCell(1)
          .setCellFormula(FORMULAS.get(i));
    }
    return book;
  }

  private byte[] made(Kind kind) throws Exception {
    Path file = folder.resolve("made." + (kind.ending.equals("xls") ? "xls" : "xlsx"));
    if (kind.ending.equals("xls")) {
      HSSFWorkbook book = filled(new HSSFWorkbook());
      var records = book.getInternalWorkbook();
      if (kind.setting == Setting.OTHER_DAYS) {
        ((DateWindow1904Record) records.findFirstRecordBySid(DateWindow1904Record.sid))
            .setWindowing((short) 1);
      } else {
        ((PrecisionRecord) records.findFirstRecordBySid(PrecisionRecord.sid))
            .setFullPrecision(false);
      }
      save(book, file);
    } else {
      XSSFWorkbook book = filled(new XSSFWorkbook());
      if (kind.setting == Setting.OTHER_DAYS) {
        book.getCTWorkbook().getWorkbookPr().setDate1904(true);
      } else if (kind.setting == Setting.AS_SHOWN && kind.ending.equals("xlsx")) {
        book.getCTWorkbook().addNewCalcPr().setFullPrecision(false);
      }
      save(book, file);
    }
    byte[] made = Files.readAllBytes(file);
    if (!kind.ending.equals("ods")) {
      return made;
    }
    Map<String, byte[]> parts = Packages.parts(recalculated(made, "xlsx", "ods"));
    String content = new String(parts.get("content.xml"), StandardCharsets.UTF_8);
    String settings = "<table:calculation-settings table:" + kind.mark + "/>";
    assertTrue(content.contains("<table:calculation-settings"), "nothing to change");
    content = content.replaceFirst("<table:calculation-settings[^>]*/>", settings);
    assertTrue(content.contains(settings), "another form");
    parts.put("content.xml", content.getBytes(StandardCharsets.UTF_8));
    return Packages.zip(parts);
  }

  /** A change of the first sheet. */
  interface Change {
    void of(BookSheet sheet);
  }

  private static byte[] with(byte[] file, String ending, Change change) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Book book = Books.open(file, "log." + ending)) {
      change.of(book.sheets().get(0));
      book.write(out);
    }
    return out.toByteArray();
  }

  private static CellContent content(byte[] file, String ending, Place place) throws Exception {
    try (Book book = Books.open(file, "log." + ending)) {
      return book.sheets().get(0).content(place);
    }
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void aFormulaIsRightOrListed(Kind kind) throws Exception {
    String ending = kind.ending;
    Path file = folder.resolve("log." + ending);
    Place ours = new Place(0, 0);
    byte[] first = made(kind);
    try (Book book = Books.open(first, "log." + ending)) {
      assertEquals(kind.setting == null ? Set.of() : Set.of(kind.setting), book.settings());
    }
    double before = result(1.085);
    double after = result(1.06);
    byte[] values = with(first, ending, sheet -> fixed(sheet, ours, before));
    byte[] computed = recalculated(values, ending, ending);
    Files.write(
        file,
        with(
            first,
            ending,
            sheet -> {
              sheet.putFormula(ours, "GRAVITY.TOBRIX(A2)");
              sheet.putValue(ours, Value.of(before));
              for (int i = 0; i < FORMULAS.size(); i++) {
                sheet.putValue(new Place(i, 1), value(computed, ending, i));
              }
              sheet.putValue(new Place(1, 0), Value.of(1.06));
            }));
    Path report = folder.resolve("report.json");
    Run run = Run.of("recalc", file.toString(), "--in-place", "--report", report.toString());
    String told = Files.readString(report);
    byte[] truth =
        recalculated(with(first, ending, sheet -> fixed(sheet, ours, after)), ending, ending);
    byte[] got = Files.readAllBytes(file);
    Set<String> listed = new TreeSet<>();
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i < FORMULAS.size(); i++) {
      String formula = FORMULAS.get(i);
      Value mine = value(got, ending, i);
      String keeps = "\"cell\": \"%s\",[^}]*keeps its old value".formatted(new Place(i, 1));
      if (Pattern.compile(keeps).matcher(told).find()) {
        listed.add(formula);
      } else if (!isSame(mine, value(truth, ending, i))) {
        wrong.add(formula + " gives " + mine + " and not " + value(truth, ending, i));
      }
    }
    assertEquals(List.of(), wrong);
    if (kind.setting == Setting.AS_SHOWN) {
      assertEquals(FORMULAS.size(), listed.size());
      assertTrue(run.err().contains("are stored in full here"), run.err());
    } else {
      assertFalse(listed.contains("A1*3") || listed.contains("IF(A1>15,1,2)"), "" + listed);
      assertFalse(listed.contains("COUNTIF(E1:E4,\">2\")+A1"), "" + listed);
    }
    if (kind.setting != null) {
      assertTrue(run.err().contains(kind.setting.sentence()), run.err());
    }
  }

  private static double result(double gravity) {
    return (Double)
        meadcell.cellar.Cellar.catalogue().get("GRAVITY.TOBRIX").call(new Object[] {gravity});
  }

  private static void fixed(BookSheet sheet, Place place, double value) {
    sheet.clear(place);
    sheet.putValue(place, Value.of(value));
  }

  private static Value value(byte[] file, String ending, int row) {
    try {
      return content(file, ending, new Place(row, 1)).value();
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  private static boolean isSame(Value a, Value b) {
    return a instanceof Value.Number x && b instanceof Value.Number y
        ? Math.abs(x.number() - y.number()) <= 1e-9 * Math.max(1, Math.abs(y.number()))
        : a.toString().equals(b.toString());
  }
}
