package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.beans.XPropertySet;
import com.sun.star.table.XCell;
import com.sun.star.text.XText;
import com.sun.star.util.CellProtection;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import meadcell.samples.week.FirstWeek;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a new hire may type into the exercises in a real office, and which sentence answers. */
class ExercisesIT {
  /** Exercise, what is typed ({@code '} before a text), the text that the answer begins with. */
  private static final String METRIC =
      """
      moisture | 18 | right
      moisture | =HONEY.MOISTURE(moisture_index) | right
      moisture | =honey.moisture(1.4915;20) | right
      moisture | =9*2 | right
      moisture | =HONEY.MOISTURE(1.4915 | right
      moisture | 18.5 | nearly.high
      moisture | 17.6 | nearly.low
      moisture | 0.18 | no
      moisture | =18% | no
      moisture | -5 | no
      moisture | 1000000000 | no
      moisture | =TRUE() | no
      moisture | =DATE(2026;1;10) | date
      moisture | '18 % | text
      moisture | '18,0 | text
      moisture | ' | text.blank
      moisture | ="" | text.blank
      moisture | =HONEY.MOISTURE() | error.count
      moisture | =HONEY.MOISTUR(1.4915) | error.name
      moisture | =HONEY MOISTURE(1.4915) | error.unfinished
      moisture | =HONEY.MOISTURE(14915) | error.refused
      moisture | =HONEY.MOISTURE("1.4915 n") | error.value
      moisture | =moisture_answer | error.circle
      moisture | =1/0 | error.other
      moisture | =NA() | error.other
      brix | 1.083 | right
      brix | 1.08 | nearly.low
      brix | 1.082 | nearly.low
      brix | 1083 | no
      brix | 20 | no
      brix | =GRAVITY.TOBRIX(brix_given) | error.refused
      fruit | 7.6 | right
      fruit | 8 | nearly.high
      fruit | 16.8 | other
      fruit | 76 | high
      fruit | =MUST.FRUITSUGAR("sour cherry";fruit_mass;units) | right
      fruit | =MUST.FRUITSUGAR(sour cherry;fruit_mass) | error.unfinished
      fruit | =MUST.FRUITSUGAR("cherry";fruit_mass) | error.refused
      fruit | =MUST.FRUITSUGAR(fruit_mass) | error.count
      fruit | =MUST.FRUITSUGAR(fruit_mass;"sour cherry") | error.value
      cold | 1.0975 | right
      cold | 1.098 | right
      cold | 1.097 | nearly.low
      cold | 1.1 | cold.away
      cold | 1.1025 | cold.away
      cold | 1.09 | low
      cold | =GRAVITY.CORRECT(cold_reading) | error.count
      cold | =GRAVITY.CORRECT(cold_temperature;cold_reading) | error.refused
      air | 1330 | right
      air | 1300 | right
      air | 1200 | nearly.low
      air | 420 | low
      air | =FERMENT.ROOMCO2(air_gas;air_room) | error.count
      air | =FERMENT.ROOMCO2(air_room;air_gas;air_changes) | error.refused
      dry | 14.1 | right
      dry | 14 | nearly.low
      dry | 13.78 | dry.thumb
      dry | =(1.1-0.995)*131.25 | dry.thumb
      dry | 13.5 | low
      dry | 0.141 | no
      dry | =ALCOHOL.ABV(dry_original) | error.count
      dry | =ALCOHOL.ABV(dry_now;dry_original) | error.refused
      gauge | 238 | right
      gauge | 237.9 | right
      gauge | =BARREL.VOLUME(2.54*gauge_head;2.54*gauge_bilge;2.54*gauge_length)/3.785411784 | right
      gauge | 240 | nearly.high
      gauge | 900.6 | high
      gauge | '238 gal | text
      gauge | =BARREL.VOLUME(gauge_head;gauge_bilge;gauge_length) | gauge.litres
      gauge | =BARREL.VOLUME(gauge_head;gauge_bilge;"US") | error.value
      gauge | =BARREL.VOLUME(gauge_head;gauge_bilge) | error.count
      gauge | =BARREL.VOLUME(gauge_bilge;gauge_head;gauge_length;"US") | error.refused
      gauge | =BARREL.VOLUME(gauge_head;gauge_bilge;gauge_length;US) | error.name
      space | 4.94 | right
      space | 5 | right
      space | 4.5 | nearly.low
      space | 1.3 | other
      space | -1 | no
      space | =BARREL.HEADSPACE(space_head;space_bilge;space_length) | error.count
      stick | 480 | no
      stick | 48 | right
      stick | 47 | nearly.low
      stick | 18.9 | other
      stick | =BARREL.DIP(stick_head;stick_bilge;stick_length;stick_scale;units) | right
      triangle | 13 | right
      triangle | 12 | triangle.few
      triangle | 20 | high
      triangle | 12.5 | no
      triangle | 25 | no
      blend | 22.6 | right
      blend | 23 | right
      blend | 22 | nearly.low
      blend | =BLEND.PARTS(blend_first;blend_second;blend_wanted) | blend.other
      blend | =INDEX(BLEND.PARTS(blend_first;blend_second;blend_wanted);1;2) | right
      sulfite | 40 | right
      sulfite | 42 | nearly.high
      sulfite | 25 | low
      sulfite | =SULFITE.FREENEEDED(sulfite_wanted) | error.count
      sulfite | =SULFITE.FREENEEDED(sulfite_ph;sulfite_wanted) | error.refused
      bottle | 535 | right
      bottle | 500 | nearly.low
      bottle | 77.6 | other
      bottle | =BOTTLE.REFERMENT(bottle_sugar;bottle_strength) | bottle.warm
      bottle | =BOTTLE.REFERMENT(bottle_sugar) | error.count
      """;

  private static final String US =
      """
      fruit | 16.8 | right
      fruit | 7.6 | other
      cold | =GRAVITY.CORRECT(cold_reading;cold_temperature;cold_calibration;units) | right
      cold | =GRAVITY.CORRECT(cold_reading;cold_temperature;"US") | nearly.high
      air | =FERMENT.ROOMCO2(air_gas;air_room;air_changes;"US") | right
      gauge | 238 | right
      space | =BARREL.HEADSPACE(space_head;space_bilge;space_length;space_drop;"US") | right
      space | =BARREL.HEADSPACE(space_head;space_bilge;space_length;space_drop) | forgotten
      space | 4.94 | other
      stick | 18.9 | right
      stick | =BARREL.DIP(stick_head;stick_bilge;stick_length;stick_scale) | error.refused
      stick | 48 | other
      bottle | 77.6 | right
      bottle | =BOTTLE.REFERMENT(bottle_sugar;bottle_strength;"US") | bottle.warm
      """;

  /** The exercises in order, each with an answer that is right in metric units. */
  private static final Map<String, Double> RIGHT =
      Map.ofEntries(
          Map.entry("moisture", 18.0),
          Map.entry("brix", 1.083),
          Map.entry("fruit", 7.6),
          Map.entry("cold", 1.0975),
          Map.entry("air", 1330.0),
          Map.entry("dry", 14.1),
          Map.entry("gauge", 238.0),
          Map.entry("space", 4.94),
          Map.entry("stick", 48.0),
          Map.entry("triangle", 13.0),
          Map.entry("blend", 22.6),
          Map.entry("sulfite", 40.0),
          Map.entry("bottle", 535.0));

  @ParameterizedTest
  @CsvSource({"first-week, ods, en", "erste-woche, xlsx, de"})
  void everyAnswerGetsItsSentence(String name, String ending, String language) throws Exception {
    Properties texts = texts(language);
    try (Hire hire = new Hire(name, ending)) {
      List<String> wrong = new ArrayList<>(hire.told(METRIC, texts));
      hire.cell("units").setFormula("US");
      wrong.addAll(hire.told(US, texts));
      assertEquals(List.of(), wrong);
    }
  }

  @ParameterizedTest
  @CsvSource({"first-week, xlsx", "erste-woche, ods"})
  void aSolvedWeekIsStillSolvedWhenOpenedAgain(String name, String ending) throws Exception {
    double[] page = {1.1036, 1.0876, 1.0668, 1.0484, 0, 0, 0, 0, 1.004, 0.9971};
    Path saved;
    try (Hire hire = new Hire(name, ending)) {
      assertTrue(hire.shown("solved").startsWith("0 "), hire.shown("solved"));
      for (Map.Entry<String, Double> answer : RIGHT.entrySet()) {
        hire.cell(answer.getKey() + "_answer").setValue(answer.getValue());
      }
      for (int i = 0; i < page.length; i++) {
        if (page[i] > 0) {
          hire.cell("page_" + (i + 1) + "_answer").setValue(page[i]);
        }
      }
      saved = hire.saved(ending);
    }
    try (Hire again = new Hire(saved, name)) {
      assertTrue(again.shown("solved").matches("14 \\w+ 14"), again.shown("solved"));
      assertTrue(again.shown("page_score").startsWith("6 "), again.shown("page_score"));
    }
  }

  /** An office refuses formulas wherever it may answer with an error box, and asks no test. */
  @ParameterizedTest
  @CsvSource({"first-week, ods", "erste-woche, xlsx"})
  void formulasMayBeTypedAndNoFormulaTellsTheAnswer(String name, String ending) throws Exception {
    try (Hire hire = new Hire(name, ending)) {
      int asked = 0;
      int veiled = 0;
      for (Cell cell : hire.cells()) {
        XPropertySet here = RemoteOffice.as(XPropertySet.class, hire.at(cell));
        if (!cell.getCellStyle().getLocked()
            && cell.getCellType() != CellType.STRING) { // but the units
          XPropertySet prompt =
              RemoteOffice.as(XPropertySet.class, here.getPropertyValue("Validation"));
          assertEquals(false, prompt.getPropertyValue("ShowErrorMessage"), "" + cell.getAddress());
          assertEquals(true, prompt.getPropertyValue("ShowInputMessage"), "" + cell.getAddress());
          asked++;
        } else if (cell.getCellType() == CellType.FORMULA) {
          CellProtection protection = (CellProtection) here.getPropertyValue("CellProtection");
          assertTrue(protection.IsFormulaHidden && protection.IsLocked, "" + cell.getAddress());
          veiled++;
        }
      }
      assertEquals(RIGHT.size() + 10, asked);
      assertTrue(veiled > 60, veiled + " formulas");
    }
  }

  private static Properties texts(String language) throws Exception {
    Properties texts = new Properties();
    try (Reader reader =
        new InputStreamReader(
            FirstWeek.class.getResourceAsStream(language + ".properties"),
            StandardCharsets.UTF_8)) {
      texts.load(reader);
    }
    return texts;
  }

  /** Someone at a copy of a workbook. */
  private static final class Hire implements AutoCloseable {
    private final Workbook book;
    private final XSSFWorkbook map;

    Hire(String name, String ending) throws Exception {
      this(copy(name, ending), name);
      book.recalculate();
    }

    Hire(Path file, String name) throws Exception {
      book = TestOffice.get().open(file.toUri().toString(), true);
      map = Samples.open(name);
    }

    private static Path copy(String name, String ending) throws Exception {
      Path copy = TestOffice.get().home().resolve(name + "-typed." + ending);
      Files.copy(Samples.file(name, ending), copy, StandardCopyOption.REPLACE_EXISTING);
      Files.setPosixFilePermissions(copy, PosixFilePermissions.fromString("rw-rw-rw-"));
      return copy;
    }

    Path saved(String ending) throws Exception {
      Path copy = TestOffice.get().home().resolve("solved." + ending);
      book.store(copy, ending.equals("ods") ? "calc8" : "Calc MS Excel 2007 XML");
      return copy;
    }

    /** The cells of all sheets, as the checked-in file has them. */
    List<Cell> cells() {
      List<Cell> cells = new ArrayList<>();
      map.forEach(sheet -> sheet.forEach(row -> row.forEach(cells::add)));
      return cells;
    }

    XCell at(Cell cell) throws Exception {
      return book.sheet(cell.getSheet().getSheetName()).cell(cell.getAddress().formatAsString());
    }

    XCell cell(String name) throws Exception {
      return at(Samples.named(map, name));
    }

    String shown(String name) throws Exception {
      return RemoteOffice.as(XText.class, cell(name)).getString();
    }

    /** Types answers one after the other, and gives those that were answered otherwise. */
    List<String> told(String table, Properties texts) throws Exception {
      List<String> wrong = new ArrayList<>();
      for (String line : table.lines().toList()) {
        String[] parts = line.split(" \\| ");
        XCell typed = cell(parts[0] + "_answer");
        if (parts[1].startsWith("'")) {
          RemoteOffice.as(XText.class, typed).setString(parts[1].replaceFirst("'", "") + " ");
        } else {
          typed.setFormula(parts[1]);
        }
        String verdict = shown(parts[0] + "_answer_verdict");
        String expected = texts.getProperty(parts[2]).replaceAll("(?s)\\{\\d}.*", "").strip();
        boolean isPublished =
            !shown(parts[0] + "_answer_published").equals(texts.getProperty("later"));
        if (!verdict.startsWith(expected) || isPublished != parts[2].equals("right")) {
          wrong.add(line + ": " + verdict);
        }
        typed.setFormula("");
      }
      return wrong;
    }

    @Override
    public void close() throws com.sun.star.uno.Exception, IOException {
      book.close();
      map.close();
    }
  }
}
