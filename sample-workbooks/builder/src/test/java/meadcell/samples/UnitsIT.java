package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.table.XCell;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.catalogue.Quantity;
import meadcell.samples.cellar.CellarBook;
import meadcell.samples.sheet.Field;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;

/** The cellar book in US units: every number the same quantity as in metric ones. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class UnitsIT {
  private static final double GALLON = 3.785411784;
  private static final double POUND = 0.45359237;
  private static final double INCH = 2.54;

  /** Numbers with a unit inside a sentence. */
  private static final Pattern METRIC = Pattern.compile("(-?\\d+(?:\\.\\d+)?) (L|kPa|kg|°C)\\b");

  private static final Pattern US =
      Pattern.compile("(-?\\d+(?:\\.\\d+)?) (gal|US gal|psi|lb|°F)\\b");

  /** A solver leaves that much open. */
  private static final double RELATIVE = 1e-5;

  private final Map<XSSFCell, Field> fields = CellarBook.build().fields();
  private final Map<String, Object[][]> metric = new HashMap<>();
  private final Map<String, Object[][]> shownInUs = new HashMap<>();
  private CellarFile book;

  @BeforeAll
  void open() throws Exception {
    book = CellarFile.open("units").recalculate();
    pages(metric);
    book.set("units", "US").recalculate();
    pages(shownInUs);
  }

  @AfterAll
  void close() throws Exception {
    book.close();
  }

  private void pages(Map<String, Object[][]> into) throws Exception {
    for (String page : CellarFile.PAGES) {
      into.put(page, book.page(page));
    }
  }

  /** By hand: the definitions of the US units. */
  private static double us(Quantity quantity, double metric) {
    return switch (quantity) {
      case VOLUME -> metric / GALLON;
      case MASS, MASS_PER_HOUR -> metric / POUND;
      case LENGTH -> metric / INCH;
      case TEMPERATURE -> metric * 9 / 5 + 32;
      case PRESSURE -> metric * 1000 * INCH * INCH / 1e4 / (POUND * 9.80665);
      case AREA -> metric / (0.3048 * 0.3048);
      case ROOM -> metric / (0.3048 * 0.3048 * 0.3048);
      case DENSITY -> metric / POUND * GALLON;
      default -> throw new AssertionError("no US unit known of " + quantity);
    };
  }

  @Test
  @Order(1)
  void shownInUsEveryNumberIsTheSameQuantity() throws Exception {
    assertEquals(List.of(), book.errors());
    List<String> wrong = new ArrayList<>();
    int converted = 0;
    for (Map.Entry<XSSFCell, Field> entry : fields.entrySet()) {
      XSSFCell cell = entry.getKey();
      String page = cell.getSheet().getSheetName();
      if (!metric.containsKey(page) || page.equals("Start")) {
        continue;
      }
      Object before = at(metric, cell);
      Object after = at(shownInUs, cell);
      boolean typed = cell.getCellStyle().getLocked() == false;
      if (before instanceof Double number
          && entry.getValue().quantity().isDimensional()
          && !typed) {
        converted++;
        check(wrong, cell, us(entry.getValue().quantity(), number), after);
      } else {
        check(wrong, cell, before, after);
      }
    }
    assertEquals(List.of(), wrong);
    assertTrue(converted > 60, converted + " were converted");
  }

  @Test
  @Order(2)
  void sentencesSayTheSameInUsUnits() {
    int converted = 0;
    for (String page : CellarFile.PAGES) {
      for (int r = 0; r < metric.get(page).length; r++) {
        for (int c = 0; c < metric.get(page)[r].length; c++) {
          if (metric.get(page)[r][c] instanceof String before
              && shownInUs.get(page)[r][c] instanceof String after
              && !before.equals(after)
              && !page.equals("Start")) {
            converted += sentence(before, after);
          }
        }
      }
    }
    assertTrue(converted > 3, converted + " were converted");
  }

  private static int sentence(String metric, String us) {
    Matcher before = METRIC.matcher(metric);
    Matcher after = US.matcher(us);
    int found = 0;
    while (before.find()) {
      assertTrue(after.find(), metric + " became " + us);
      Quantity quantity =
          switch (before.group(2)) {
            case "L" -> Quantity.VOLUME;
            case "kPa" -> Quantity.PRESSURE;
            case "kg" -> Quantity.MASS;
            default -> Quantity.TEMPERATURE;
          };
      double step = 0.6 * Math.pow(10, -decimals(before.group(1)));
      double most = us(quantity, Double.parseDouble(before.group(1)) + step);
      double least = us(quantity, Double.parseDouble(before.group(1)) - step);
      double shown = Double.parseDouble(after.group(1));
      double rounding = 0.6 * Math.pow(10, -decimals(after.group(1)));
      assertTrue(shown > least - rounding && shown < most + rounding, metric + " became " + us);
      found++;
    }
    assertTrue(!METRIC.matcher(us).find(), us);
    return found;
  }

  private static int decimals(String number) {
    int dot = number.indexOf('.');
    return dot < 0 ? 0 : number.length() - dot - 1;
  }

  /** The same cellar, every number typed in US units: no page shows anything else. */
  @Test
  @Order(3)
  void keptInUsTheSameCellarShowsTheSame() throws Exception {
    book.waiting();
    for (Map.Entry<XSSFCell, Field> entry : fields.entrySet()) {
      XSSFCell cell = entry.getKey();
      if (entry.getValue().quantity().isDimensional() && cell.getCellType() == CellType.NUMERIC) {
        office(cell).setValue(us(entry.getValue().quantity(), cell.getNumericCellValue()));
      }
    }
    book.set("kept", "US").recalculate();
    assertEquals(List.of(), book.errors());
    Map<String, Object[][]> kept = new HashMap<>();
    pages(kept);
    List<String> wrong = new ArrayList<>();
    for (Map.Entry<XSSFCell, Field> entry : fields.entrySet()) {
      XSSFCell cell = entry.getKey();
      String page = cell.getSheet().getSheetName();
      boolean typed = !cell.getCellStyle().getLocked();
      if (kept.containsKey(page) && !page.equals("Start") && !typed) {
        check(wrong, cell, at(shownInUs, cell), at(kept, cell));
      }
    }
    assertEquals(List.of(), wrong);
  }

  private XCell office(Cell cell) throws Exception {
    return book.sheet(cell.getSheet().getSheetName())
        .getCellByPosition(cell.getColumnIndex(), cell.getRowIndex());
  }

  private static Object at(Map<String, Object[][]> pages, Cell cell) {
    return pages.get(cell.getSheet().getSheetName())[cell.getRowIndex()][cell.getColumnIndex()];
  }

  private static void check(List<String> wrong, Cell cell, Object expected, Object shown) {
    boolean same =
        expected instanceof Double one && shown instanceof Double other
            ? Math.abs(one - other) <= RELATIVE * Math.max(1e-3, Math.abs(one))
            : expected instanceof String text && shown instanceof String now
                ? METRIC.matcher(text).find() || US.matcher(text).find() || text.equals(now)
                : expected.equals(shown);
    if (!same) {
      wrong.add(
          cell.getSheet().getSheetName()
              + "!"
              + cell.getAddress()
              + ": "
              + expected
              + ", "
              + shown);
    }
  }
}
