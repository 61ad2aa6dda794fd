package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.beans.PropertyValue;
import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XNameAccess;
import com.sun.star.style.XStyleFamiliesSupplier;
import com.sun.star.view.XRenderable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Gauging, nail, first fill, feeds and whole casks in a real office, against sums of our own. */
class CellarToolsIT {
  private static final Pattern CELL = Pattern.compile("'?([^'!(]+)'?!\\$([A-Z]+)\\$(\\d+)");

  /** Start, This cask, Blend, Label, Must plan: two each; Glasses: three. */
  private static final int SHEETS_OF_PAPER = 21;

  private static final int SHEETS_OF_LOGS = 13;

  private static XSSFWorkbook built;
  private static Workbook book;

  @BeforeAll
  static void open() throws Exception {
    built = Samples.open("cellar-book");
    RemoteOffice office = TestOffice.get();
    Path copy = office.home().resolve("tools.ods");
    Files.copy(Samples.file("cellar-book", "ods"), copy, StandardCopyOption.REPLACE_EXISTING);
    Files.setPosixFilePermissions(copy, PosixFilePermissions.fromString("rw-rw-rw-"));
    book = office.open(copy.toUri().toString(), true);
  }

  @AfterAll
  static void close() throws Exception {
    book.close();
    built.close();
  }

  /** Sheet and cell of a name, which may stand for the cell in another unit. */
  private static String[] at(String name) {
    Matcher cell = CELL.matcher(built.getName(name).getRefersToFormula());
    assertTrue(cell.find(), name);
    return new String[] {cell.group(1), cell.group(2) + cell.group(3)};
  }

  private static Object value(String name) throws Exception {
    String[] at = at(name);
    return book.sheet(at[0]).values(at[1] + ":" + at[1])[0][0];
  }

  private static double number(String name) throws Exception {
    return (Double) value(name);
  }

  private static void type(String name, Object typed) throws Exception {
    String[] at = at(name);
    if (typed instanceof Number number) {
      book.sheet(at[0]).cell(at[1]).setValue(number.doubleValue());
    } else {
      book.sheet(at[0]).cell(at[1]).setFormula((String) typed);
    }
  }

  private static Object[][] column(String name) throws Exception {
    String area = built.getName(name).getRefersToFormula().replace("$", "");
    String[] parts = area.split("!");
    return book.sheet(parts[0].replace("'", "")).values(parts[1]);
  }

  @Test
  void dipDropAndWeightAreWhatGeometryAndMassSay() throws Exception {
    type("cask", "C1");
    double head = number("way_head");
    double bilge = number("way_bilge");
    double length = number("way_length");
    double dip = number("way_dip");
    assertEquals(50, head, 0);
    assertEquals(contents(head, bilge, length, dip), number("way_by_dip"), 0.01);
    double drop = number("way_drop");
    assertEquals(contents(head, bilge, length, bilge - drop), number("way_by_drop"), 0.01);
    double held = (number("way_gross") - 47.8) / number("way_density");
    assertEquals(held, number("way_by_weight"), 1e-9);
    assertEquals(0.995, number("way_density"), 0.003);
    double slope =
        (contents(head, bilge, length, dip + 0.01) - contents(head, bilge, length, dip - 0.01))
            / 0.02;
    double weight = Math.hypot(0.5, 0.6) / number("way_density");
    double u = Math.hypot(weight, held * 0.0005 / number("way_density"));
    assertEquals(u, number("way_u_by_weight"), 0.001);
    assertTrue(number("way_u_by_dip") > 0.2 * slope);
    assertEquals(
        simulated(r -> contents(r[0], r[1], r[2], r[3]), head, bilge, length, dip),
        number("way_u_by_dip"),
        0.06 * number("way_u_by_dip"));
    assertEquals(
        simulated(r -> contents(r[0], r[1], r[2], r[1] - r[3]), head, bilge, length, drop),
        number("way_u_by_drop"),
        0.06 * number("way_u_by_drop"));
    for (String way : List.of("D", "E", "F")) {
      assertEquals(100, shares(way), 1e-6, way);
    }
    assertTrue(((String) value("way_verdict")).startsWith("They agree within twice"));
    type("way_gross", 260);
    assertTrue(((String) value("way_verdict")).startsWith("They do not agree"));
    type("way_u_gross", "");
    assertEquals("", value("way_u_dip_weight"));
    type("cask", "C3");
    assertTrue(((String) value("way_verdict")).startsWith("Measured was C1"));
    assertEquals("", value("way_by_dip"));
    type("way_gross", 248.6);
    type("way_u_gross", 0.5);
  }

  /** The spread of many casks, each size off by 0.2 cm, as it is typed on the page. */
  private static double simulated(ToDoubleFunction<double[]> contents, double... sizes) {
    Random random = new Random(19);
    DescriptiveStatistics litres = new DescriptiveStatistics();
    for (int i = 0; i < 2000; i++) {
      double[] of = Arrays.stream(sizes).map(s -> s + 0.2 * random.nextGaussian()).toArray();
      litres.addValue(contents.applyAsDouble(of));
    }
    return litres.getStandardDeviation();
  }

  /** What the measurements add to a way's uncertainty. */
  private static double shares(String column) throws Exception {
    int first = Integer.parseInt(at("way_head")[1].substring(1));
    int last = Integer.parseInt(at("way_density")[1].substring(1));
    return Arrays.stream(book.sheet("This cask").values(column + first + ":" + column + last))
        .mapToDouble(CellarToolsIT::typed)
        .sum();
  }

  /** The headspace expands by what runs out, step by step. */
  @Test
  void theNailHoleRunsUntilItsVacuumHoldsTheMead() throws Exception {
    type("cask", "C1");
    double space = number("nail_space");
    double depth = number("nail_depth");
    double wanted = number("nail_amount");
    double area = Math.PI / 4 * Math.pow(number("nail_hole") / 1000, 2);
    double density = 1000;
    double outside = 101_325;
    double run = 0;
    double seconds = 0;
    for (double step = 1e-3; run < wanted; seconds += step) {
      double inside = outside * space / (space + run / 1000);
      double pressure = density * 9.80665 * depth / 100 - (outside - inside);
      run += 0.7 * area * Math.sqrt(2 * pressure / density) * 1e6 * step;
    }
    assertEquals(seconds, number("nail_time"), 0.02 * seconds);
    double column = density * 9.80665 * depth / 100;
    assertEquals(space * column / (outside - column) * 1000, number("nail_most"), 1);
    type("nail_amount", 4000);
    assertEquals("", value("nail_time"));
    assertTrue(((String) value("nail_verdict")).startsWith("It gives "));
    type("nail_amount", 30);
  }

  @Test
  void theFirstFillTakesUpTheSpirit() throws Exception {
    type("cask", "C1");
    double spirit = number("first_soaked") - number("first_rinsed");
    double volume = number("first_volume");
    assertEquals(198.2, volume, 1e-9);
    double mixed = (volume * number("first_abv") + spirit * 60) / (volume + spirit);
    assertEquals(mixed, number("first_after"), 0.03);
    type("cask", "C3");
    assertEquals("", value("first_after"));
    assertEquals("Past occupants has nothing of C3.", value("first_verdict"));
  }

  /** Sugar in, counted in °Plato by the polynomial of the ASBC (from memory). */
  @Test
  void feedsAddUpToTheOriginalGravityThatCounts() throws Exception {
    double volume = number("fed_volume");
    double original = number("fed_original");
    double mass = volume * original * 0.99823;
    double sugar = mass * plato(original) / 100;
    double honey = Arrays.stream(column("fed_honeys")).mapToDouble(CellarToolsIT::typed).sum();
    double solids = honey * (1 - number("must_moisture") / 100);
    double together = 100 * (sugar + solids) / (mass + honey);
    assertEquals(together, plato(number("fed_counts")), 0.4);
    assertEquals(honey, number("fed_honey"), 1e-9);
    assertEquals(volume + honey / 1.42, number("fed_filled"), 0.6);
    assertTrue(number("fed_abv") > number("fed_wrong") + 3);
  }

  private static double typed(Object[] row) {
    return row[0] instanceof Double number ? number : 0;
  }

  private static double plato(double sg) {
    return -616.868 + 1111.14 * sg - 630.272 * sg * sg + 135.997 * sg * sg * sg;
  }

  @Test
  void wholeCasksAreTheBestOfAllChoices() throws Exception {
    Object[][] names = column("blend_vessels");
    Object[][] stock = column("blend_stock");
    int[] known =
        IntStream.range(0, names.length).filter(i -> stock[i][0] instanceof Double).toArray();
    double wanted = number("blend_volume");
    List<int[]> good = new ArrayList<>();
    for (int choice = 1; choice < 1 << known.length; choice++) {
      int taken = choice;
      int[] of =
          IntStream.range(0, known.length)
              .filter(i -> (taken >> i & 1) == 1)
              .map(i -> known[i])
              .toArray();
      if (within("abv", mean(stock, of, 2))
          && within("sugar", mean(stock, of, 3))
          && within("acid", mean(stock, of, 4))) {
        good.add(of);
      }
    }
    assertTrue(good.size() > 1);
    assertTrue(
        ((String) value("whole_verdict"))
            .startsWith(good.size() + " of " + ((1 << known.length) - 1) + " choices"));
    int[] best =
        good.stream()
            .min(Comparator.comparingDouble(of -> Math.abs(volume(stock, of) - wanted)))
            .orElseThrow();
    String emptied =
        String.join(" + ", IntStream.of(best).mapToObj(i -> (String) names[i][0]).toList());
    String[] at = at("whole_verdict");
    int top = Integer.parseInt(at[1].substring(1)) - 5;
    Object[] first = book.sheet(at[0]).values("A" + top + ":H" + top)[0];
    assertEquals(emptied, first[0]);
    assertEquals(volume(stock, best), (Double) first[1], 0.002 * volume(stock, best));
    assertEquals(mean(stock, best, 2), (Double) first[3], 0.02);
    assertEquals(mean(stock, best, 3), (Double) first[4], 1e-9);
    assertEquals("", first[7]);
  }

  private static boolean within(String property, double mean) throws Exception {
    return mean >= number("blend_" + property + "_low")
        && mean <= number("blend_" + property + "_high");
  }

  private static double volume(Object[][] stock, int[] of) {
    return IntStream.of(of).mapToDouble(i -> (Double) stock[i][0]).sum();
  }

  private static double mean(Object[][] stock, int[] of, int column) {
    return IntStream.of(of).mapToDouble(i -> (Double) stock[i][0] * (Double) stock[i][column]).sum()
        / volume(stock, of);
  }

  @ParameterizedTest
  @ValueSource(strings = {"ods", "xlsx"})
  void everyPageSaysThatTheExtensionIsMissing(String ending) throws Exception {
    try (RemoteOffice bare = new RemoteOffice()) {
      bare.recalculateNever();
      bare.start();
      Path copy = bare.home().resolve("bare." + ending);
      Files.copy(Samples.file("cellar-book", ending), copy);
      try (Workbook unaided = bare.open(copy.toUri().toString(), true)) {
        assertTrue(unaided.sheet("Start").shown("A3").startsWith("Meadcell is not installed"));
        for (String page : List.of("Today", "This cask", "Blend", "Bottle this", "Story")) {
          assertTrue(unaided.sheet(page).shown("A2").startsWith("Meadcell is not installed"), page);
        }
      }
    }
    assertEquals("", book.sheet("Start").shown("A3"));
    assertTrue(book.sheet("Today").shown("A2").startsWith("What the cellar wants"));
  }

  /** Sheets of paper: no page spills over, on either paper, nor prints what is empty. */
  @Test
  void pagesPrintOnAsFewSheetsAsTheyHaveParts() throws Exception {
    assertEquals(SHEETS_OF_PAPER + SHEETS_OF_LOGS, rendered(), "A4");
    XNameAccess styles =
        RemoteOffice.as(
            XNameAccess.class,
            RemoteOffice.as(XStyleFamiliesSupplier.class, book.document())
                .getStyleFamilies()
                .getByName("PageStyles"));
    for (String name : styles.getElementNames()) {
      XPropertySet style = RemoteOffice.as(XPropertySet.class, styles.getByName(name));
      boolean across = (Boolean) style.getPropertyValue("IsLandscape");
      style.setPropertyValue("Width", across ? 27940 : 21590);
      style.setPropertyValue("Height", across ? 21590 : 27940);
    }
    int more = rendered() - SHEETS_OF_PAPER - SHEETS_OF_LOGS;
    assertTrue(more >= 0 && more <= 2, more + " more of the shorter US Letter, for long logs");
  }

  private static int rendered() throws Exception {
    return RemoteOffice.as(XRenderable.class, book.document())
        .getRendererCount(book.document(), new PropertyValue[0]);
  }

  /** Every cell to type into is emptied: nothing may show an error. */
  @ParameterizedTest
  @ValueSource(strings = {"This cask", "Blend"})
  void emptyPagesShowNoError(String page) throws Exception {
    List<Cell> typed = new ArrayList<>();
    for (Row row : built.getSheet(page)) {
      for (Cell cell : row) {
        if (!cell.getCellStyle().getLocked() && Samples.value(cell) != null) {
          typed.add(cell);
        }
      }
    }
    assertFalse(typed.isEmpty());
    for (Cell cell : typed) {
      book.sheet(page).cell(cell.getAddress().formatAsString()).setFormula("");
    }
    Object[][] shown = book.sheet(page).values("A1:L100");
    for (int r = 0; r < shown.length; r++) {
      for (int c = 0; c < shown[r].length; c++) {
        Object got = shown[r][c];
        String where = page + " " + (char) ('A' + c) + (r + 1);
        assertTrue(got instanceof String || got instanceof Double, where);
        assertFalse(Objects.toString(got).startsWith("#"), where);
      }
    }
    for (Cell cell : typed) {
      Object demo = Samples.value(cell);
      var at = book.sheet(page).cell(cell.getAddress().formatAsString());
      if (demo instanceof Double number) {
        at.setValue(number);
      } else {
        at.setFormula((String) demo);
      }
    }
  }

  /** Litres below a level in a cask whose staves are an ellipse, by slices. */
  private static double contents(double head, double bilge, double length, double depth) {
    int slices = 500;
    double sum = 0;
    for (int i = 0; i < slices; i++) {
      double x = (i + 0.5) / slices * 2 - 1;
      double r = Math.sqrt(bilge * bilge - (bilge * bilge - head * head) * x * x) / 2;
      double h = Math.max(-r, Math.min(r, depth - bilge / 2));
      sum += r * r * (Math.asin(h / r) + Math.PI / 2) + h * Math.sqrt(r * r - h * h);
    }
    return sum * length / slices / 1000;
  }
}
