package meadcell.blend;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Tables;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class OxygenTest {
  private static final OptionalDouble ALL = OptionalDouble.empty();

  private static Oxygen.Share[] oxygen(
      Object[][] log, Object[][] vessels, String lot, OptionalDouble from, OptionalDouble day) {
    return Oxygen.oxygen(
        Tables.read("BLEND.OXYGEN", 0, log),
        Tables.read("BLEND.OXYGEN", 1, vessels),
        lot,
        from,
        day,
        3.5,
        0.35,
        280,
        0.8,
        10);
  }

  private static double of(String way, Oxygen.Share[] shares) {
    for (Oxygen.Share share : shares) {
      if (share.way().equals(way)) {
        return share.oxygen();
      }
    }
    throw new AssertionError(way);
  }

  private static final Object[][] LOG = {
    {"Mead", "Tank", 300.0, 1.0},
    {"Tank", "Cask", 200.0, 10.0},
    {"Mead", "Cask", 22.0, 20.0},
    {"Mead", "Cask", 24.7, 30.0},
    {"gauge", "Cask", 240.0, 40.0},
    {"Cask", "Bottles", 240.0, 50.0},
  };
  private static final Object[][] VESSELS = {
    {"Cask", 85.86, 250.0, null}, {"bottles", 0.0, null, 1.0},
  };

  @Test
  void eachWayByHand() {
    OptionalDouble end = OptionalDouble.of(45);
    Oxygen.Share[] shares = oxygen(LOG, VESSELS, "Cask", ALL, end);
    double kept = 222 / 246.7;
    // a tenth or more counts as racked, if it comes from a vessel
    assertEquals(3.5 * 200 / 222 * kept, of("racking", shares), 1e-12);
    assertEquals(0.35 * kept, of("topping", shares), 1e-12);
    double opened = 280 * (50 / 200.0) * 200 / 222;
    opened = (opened + 280 * 28 / 222.0) * kept + 280 * 3.3 / 246.7 + 280 * 10 / 240.0;
    assertEquals(opened, of("opening", shares), 1e-9);
    double perDay = 10 / 365.25;
    double wood = ((10 * 200 / 222.0 + 10) * kept + 15) * perDay;
    assertEquals(wood, of("wood", shares), 1e-12);
    assertEquals(0, of("filling", shares));
    Oxygen.Share[] bottled = oxygen(LOG, VESSELS, "Bottles", ALL, ALL);
    assertEquals(0.8, of("filling", bottled), 1e-12);
    assertEquals(of("racking", shares), of("racking", bottled), 1e-12);
    assertEquals(wood + 5 * perDay, of("wood", bottled), 1e-12);
  }

  @Test
  void lessThanATenthIsATopping() {
    Object[][] log = {
      {"Mead", "Tank", 300.0, 1.0}, {"Tank", "Cask", 90.0, 10.0}, {"Tank", "Cask", 10.0, 20.0},
    };
    assertEquals(3.5, of("racking", oxygen(log, VESSELS, "Cask", ALL, ALL)), 1e-12);
    log[2][2] = 9.9;
    assertEquals(0.35, of("topping", oxygen(log, VESSELS, "Cask", ALL, ALL)), 1e-12);
    assertEquals(3.5 * 90 / 99.9, of("racking", oxygen(log, VESSELS, "Cask", ALL, ALL)), 1e-12);
  }

  /** A cask is left open for the night but once. */
  @Test
  void daysMayHaveATime() {
    Object[][] log = {
      {"Mead", "Tank", 300.0, 1.0}, {"Tank", "Cask", 90.0, 10.0}, {"Tank", "Cask", 10.0, 10.0},
    };
    Oxygen.Share[] whole = oxygen(log, VESSELS, "Cask", ALL, OptionalDouble.of(30));
    log[1][3] = 10.2;
    log[2][3] = 10.6;
    assertArrayEquals(whole, oxygen(log, VESSELS, "Cask", ALL, OptionalDouble.of(30)));
    assertArrayEquals(whole, oxygen(log, VESSELS, "Cask", ALL, OptionalDouble.of(30.5)));
  }

  @Test
  void theLimitsHoldTheSum() {
    Oxygen.Share[] shares = oxygen(LOG, VESSELS, "Bottles", ALL, ALL);
    double sum = 0;
    for (int i = 0; i < shares.length - 1; i++) {
      sum += shares[i].oxygen();
      assertTrue(
          shares[i].lower() <= shares[i].oxygen() && shares[i].oxygen() <= shares[i].upper());
    }
    assertEquals(sum, of("sum", shares), 1e-12);
    assertTrue(shares[shares.length - 1].lower() < sum && sum < shares[shares.length - 1].upper());
  }

  /** Days before the first one to be counted bring nothing, and the more of them the less. */
  @Property(tries = 300)
  void whatCameEarlierIsNotCounted(long seed) {
    Random random = new Random(seed);
    List<Object[]> rows = new ArrayList<>();
    rows.add(new Object[] {"Mead", "Tank", 5000.0, 1.0});
    rows.add(new Object[] {"Tank", "Cask", 100.0, 2.0});
    double day = 2;
    for (int i = 0; i < 20; i++) {
      day += random.nextInt(30);
      rows.add(new Object[] {"Tank", "Cask", 1.0 + random.nextInt(30), day});
    }
    Object[][] log = rows.toArray(Object[][]::new);
    Object[][] vessels = {{"Cask", 100.0, 800.0}};
    OptionalDouble end = OptionalDouble.of(day + 100);
    double before = of("sum", oxygen(log, vessels, "Cask", ALL, end));
    for (double from = 1; from <= day; from += 1 + random.nextInt(50)) {
      double sum = of("sum", oxygen(log, vessels, "Cask", OptionalDouble.of(from), end));
      assertTrue(sum <= before + 1e-9);
      before = sum;
    }
    double last = of("sum", oxygen(log, vessels, "Cask", OptionalDouble.of(day), end));
    assertEquals(10 * 100 / 85.86 * 100 / 365.25, last, 1e-9);
  }

  @Test
  void whatIsNotThereIsRefused() {
    assertTrue(
        assertThrows(Refusal.class, () -> oxygen(LOG, VESSELS, "Cask", ALL, ALL))
            .getMessage()
            .contains("holds nothing"));
  }

  @Test
  void aVesselHasOneRow() {
    Object[][] twice = {{"Cask", 90.0, 228.0}, {"Egg 7", 0.0, 500.0}, {"cask", 90.0, null}};
    Refusal refusal =
        assertThrows(Refusal.class, () -> oxygen(LOG, twice, "Cask", ALL, OptionalDouble.of(20)));
    assertEquals(
        "Row 3 of vessels is of \"cask\", as an earlier one is; a vessel has one row.",
        refusal.getMessage());
  }

  @Test
  void aVesselThatIsMisspeltIsNoTightOne() {
    Object[][] misspelt = {{"Caskk", 90.0, 228.0}};
    Refusal refusal =
        assertThrows(
            Refusal.class, () -> oxygen(LOG, misspelt, "Cask", ALL, OptionalDouble.of(20)));
    assertEquals(
        "Row 1 of vessels is of \"Caskk\", which is not in transfers. Did you mean Cask?",
        refusal.getMessage());
    Object[][] other = {{"Cask", 90.0, 228.0}, {"Egg 7", 0.0, 500.0}};
    assertTrue(of("wood", oxygen(LOG, other, "Cask", ALL, OptionalDouble.of(20))) > 0);
    Object[][] log = {{"Mead", "Tank A", 300.0, 1.0}, {"Tank A", "Tank 12", 300.0, 10.0}};
    Object[][] others = {{"Tank B", 0.0, 400.0}, {"Tank 13", 0.0, 400.0}};
    assertEquals(0, of("opening", oxygen(log, others, "Tank 12", ALL, ALL)));
  }
}
