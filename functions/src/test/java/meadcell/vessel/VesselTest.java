package meadcell.vessel;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.catalogue.Tables;
import meadcell.cellar.Cellar;
import meadcell.property.Property;
import meadcell.transfers.TransferRow;
import org.junit.jupiter.api.Test;

class VesselTest {
  private static final OptionalDouble AT_END = OptionalDouble.empty();

  private static final Object[][] YEAR = {
    {"Heather must", "Tank", 300.0, 1.0},
    {"Tank", "Cask", 225.0, 9.0},
    {"Tank", "loss", 5.0, 10.0},
    {"gauge", "Cask", 221.0, 100.0},
    {"Tank", "Cask", 4.0, 100.0},
    {"gauge", "Cask", 222.0, 200.0},
    {"Cask", "Keg", 222.0, 300.0},
    {"Cherry must", "Cask", 220.0, 310.0},
  };

  private static Rows<TransferRow> rows(Object[]... cells) {
    return Tables.read("VESSEL.HOLDS", 0, cells);
  }

  private static double holds(String vessel, double day) {
    return Vessel.holds(rows(YEAR), vessel, OptionalDouble.of(day));
  }

  @Test
  void aYearByHand() {
    assertEquals(300, holds("Tank", 8));
    assertEquals(75, holds("tank", 9));
    assertEquals(66, Vessel.holds(rows(YEAR), "Tank", AT_END));
    assertEquals(225, holds("Cask", 99));
    assertEquals(225, holds("Cask", 100));
    assertEquals(0, holds("Cask", 300));
    assertEquals(2, Vessel.fills(rows(YEAR), "Cask"));
    assertEquals(1, Vessel.fills(rows(YEAR), "Keg"));
    assertArrayEquals(
        new Held[] {
          new Held("Tank", "Heather must", 66, 319, 1),
          new Held("Cask", "Cherry must", 220, 10, 2),
          new Held("Keg", "Heather must", 222, 20, 1),
        },
        Vessel.list(rows(YEAR), OptionalDouble.of(320)));
    assertArrayEquals(
        new Account[] {
          new Account("Tank", 300, 0, 229, 5, 66),
          new Account("Cask", 0, 229, 0, 7, 222),
          new Account("sum", 300, 229, 229, 12, 288),
        },
        Vessel.balance(rows(YEAR), 9, 299));
  }

  @Test
  void rowsWithTheirOrderMayStandAnyhow() {
    Object[][] cells = {
      {"gauge", "Cask", 221.0, 100.0, null, 7.0},
      {"Tank", "Cask", 4.0, 100.0, null, null},
      {"Tank", "Cask", 222.0, 9.0, null, 3.0},
      {"Heather must", "Tank", 300.0, 9.0, null, 2.5},
      {"Cask", "Keg", 5.0, 100.0, null, 9.0},
      {"gauge", "Cask", 220.0, 100.0, null, 8.0},
    };
    Held[] held = {
      new Held("Cask", "Heather must", 215, 91, 1),
      new Held("Tank", "Heather must", 74, 91, 1),
      new Held("Keg", "Heather must", 5, 0, 1),
    };
    assertEquals(Set.of(held), Set.of(Vessel.list(rows(cells), AT_END)));
    cells[1][5] = 7.5;
    Random random = new Random(5);
    for (int i = 0; i < 50; i++) {
      Collections.shuffle(Arrays.asList(cells), random);
      assertEquals(Set.of(held), Set.of(Vessel.list(rows(cells), AT_END)));
    }
  }

  /** Else the second spelling is a source, and the cask is filled from nowhere. */
  /** What is done by day is in at its end, whatever time it says. */
  @Test
  void aDayEndsWithItsLastRow() {
    Object[][] log = {{"Mead", "Cask", 200.0, 1.4}, {"Cask", "loss", 10.0, 5.9}};
    FunctionSpec holds = Cellar.catalogue().get("VESSEL.HOLDS");
    assertEquals(200.0, holds.call(log, "Cask", 1.0));
    assertEquals(200.0, holds.call(log, "Cask", 4.99));
    assertEquals(190.0, holds.call(log, "Cask", 5.0));
    assertEquals(190.0, holds.call(log, "Cask", 5.2));
  }

  @Test
  void aNameIsTheSameWithAnySpaces() {
    for (String spelling : new String[] {"Tank  1", "Tank\u00a01", " tank\u202f1\u00a0"}) {
      Rows<TransferRow> log =
          rows(
              new Object[] {"Heather must", "Tank 1", 300.0, 1.0},
              new Object[] {spelling, "Cask", 225.0, 9.0});
      assertArrayEquals(
          new Held[] {
            new Held("Tank 1", "Heather must", 75, 8, 1),
            new Held("Cask", "Heather must", 225, 0, 1)
          },
          Vessel.list(log, AT_END));
      Object[][] cells = {{"Heather must", "Tank 1", 300.0, 1.0}};
      assertEquals(300.0, Cellar.catalogue().get("VESSEL.HOLDS").call(cells, spelling));
    }
    Object[][] unnamed = {{"Heather must", "\u00a0", 300.0, 1.0}};
    assertThrows(Refusal.class, () -> rows(unnamed));
  }

  @Test
  void lossesAreWhatGaugesFindMissing() {
    Losses both = Vessel.losses(rows(YEAR), "Cask", 1, 320);
    assertEquals(7, both.lostL(), 1e-12);
    // 225 L and 225 L (221 + 4) by the account over 91 and 100 days
    assertEquals(100 * 7 * 365.25 / (225 * 191), both.percentPerYear(), 1e-12);
    double u = 0.005;
    assertEquals(u * Math.sqrt(225 * 225 + 4 * 4 + 222 * 222), both.uncertaintyL(), 1e-12);

    Losses half = Vessel.losses(rows(YEAR), "Cask", 100, 150);
    assertEquals(1.5, half.lostL(), 1e-12);
    assertEquals(u * Math.sqrt(221 * 221 + 4 * 4 + 222 * 222) / 2, half.uncertaintyL(), 1e-12);
    assertEquals(100 * 3 * 365.25 / (225 * 100), half.percentPerYear(), 1e-12);
  }

  /** A cask whose true evaporation is known; what is noted of it has the uncertainty it says. */
  @Test
  void theUncertaintyOfALossHoldsTheTruth() {
    Random random = new Random(4);
    int held = 0;
    int casks = 2000;
    for (int i = 0; i < casks; i++) {
      double perDay = 0.03 + 0.03 * random.nextDouble();
      double u = 0.2 + 0.3 * random.nextDouble();
      double content = 200 + 25 * random.nextDouble();
      int gauges = 1 + random.nextInt(6);
      Object[][] log = new Object[1 + 2 * gauges][];
      log[0] = new Object[] {"Must", "Cask", noted(content, u, random), 1.0, u};
      double day = 1;
      for (int g = 0; g < gauges; g++) {
        double days = 60 + random.nextInt(60);
        day += days;
        content -= perDay * days;
        log[1 + 2 * g] = new Object[] {"gauge", "Cask", noted(content, u, random), day, u};
        content += 3;
        log[2 + 2 * g] = new Object[] {"Must", "Cask", noted(3, 0.05, random), day, 0.05};
      }
      double from = 1 + (day - 1) * random.nextDouble() / 2;
      Losses losses = Vessel.losses(rows(log), "Cask", from, day + 30);
      held += Math.abs(losses.lostL() - perDay * (day - from)) <= 2 * losses.uncertaintyL() ? 1 : 0;
    }
    assertEquals(0.954, held / (double) casks, 0.015);
  }

  private static double noted(double litres, double u, Random random) {
    return litres + u * random.nextGaussian();
  }

  @Test
  void aLeakIsSaidButNotRefused() {
    String call = "VESSEL.LOSSES";
    Object[][] leak = {{"Must", "Cask", 225.0, 1.0}, {"gauge", "Cask", 210.0, 31.0}};
    Object[][] tight = {{"Must", "Cask", 225.0, 1.0}, {"gauge", "Cask", 224.0, 31.0}};
    assertTrue(why(call, leak, "Cask", 1.0, 31.0).contains("look for a leak"));
    assertEquals(
        "1 L went missing over 30 days between gauge rows, 5.4 % a year of what it held, give or take"
            + " 17 % (95 %). Casks lose 1 % to 9 % a year.",
        why(call, tight, "Cask", 1.0, 31.0));
    assertTrue(why(call, tight, "Cask", 1.0, 31.0, "US").startsWith("1 US gal went missing"));
  }

  private static String why(Object... call) {
    return (String) Cellar.catalogue().get("CELLAR.WHY").call(call);
  }

  @Test
  void unitsReachEveryCellOfTheRows() {
    Object[][] gallons = {{"Must", "Cask", 60.0, 1.0}, {"Cask", "loss", 1.0, 2.0}};
    Object[][] list = (Object[][]) Cellar.catalogue().get("VESSEL.LIST").call(gallons, 5.0, "US");
    assertArrayEquals(new Object[] {"Cask", "Must", 59.0, 4.0, 1.0}, rounded(list[0]));
    Object[][] balance =
        (Object[][]) Cellar.catalogue().get("VESSEL.BALANCE").call(gallons, 2.0, 2.0, "US");
    assertArrayEquals(new Object[] {"sum", 60.0, 0.0, 0.0, 1.0, 59.0}, rounded(balance[1]));
  }

  private static Object[] rounded(Object[] row) {
    return Arrays.stream(row)
        .map(cell -> cell instanceof Double number ? Math.rint(number * 1e9) / 1e9 : cell)
        .toArray();
  }

  @Test
  void moreThanTheUncertaintyExplainsIsRefusedWithItsRow() {
    Object[][] log = {{"Must", "Cask", 200.0, 1.0, 1.0}, {"gauge", "Cask", 202.8, 9.0, 1.0}};
    assertEquals(202.8, Vessel.holds(rows(log), "Cask", AT_END));
    assertEquals(-2.8, Vessel.balance(rows(log), 1, 9)[0].lostL(), 1e-12);
    log[1][2] = 202.9;
    assertEquals(
        "Row 2 of transfers gauges in \"Cask\" 2.9 L more than it holds by then; the uncertainty of"
            + " the account explains 2.83 L. Is a filling before it missing?",
        refusal(() -> Vessel.holds(rows(log), "Cask", AT_END)));
    Object[][] drawn = {{"Must", "Cask", 200.0, 1.0, 1.0}, {"Cask", "Keg", 202.8, 9.0, 1.0}};
    assertEquals(0, Vessel.holds(rows(drawn), "Cask", AT_END));
    drawn[1][2] = 203.0;
    assertTrue(
        refusal(() -> Vessel.holds(rows(drawn), "Keg", AT_END))
            .startsWith("Row 2 of transfers draws from \"Cask\" 3 L more"));
  }

  @Test
  void whatHasNoAnswerIsRefused() {
    assertEquals(
        "\"Heather must\" was never filled by the end of that day: to the log it is a liquid, not a"
            + " vessel.",
        refusal(() -> Vessel.holds(rows(YEAR), "heather must", AT_END)));
    assertTrue(refusal(() -> holds("Keg", 299)).startsWith("\"Keg\" was never filled"));
    assertTrue(refusal(() -> holds("Casc", 299)).endsWith("Did you mean Cask?"));
    assertEquals(
        "from is day number 9, after to, day number 8.",
        refusal(() -> Vessel.balance(rows(YEAR), 9, 8)));
    assertEquals(
        "No vessel held or moved anything between these days.",
        refusal(() -> Vessel.balance(rows(YEAR), 0.1, 0.5)));
    assertEquals(
        "No vessel holds anything at the end of that day.",
        refusal(() -> Vessel.list(rows(YEAR), OptionalDouble.of(0.5))));
    assertTrue(
        refusal(() -> Vessel.losses(rows(YEAR), "Cask", 200, 320))
            .startsWith("What \"Cask\" lost between these days is not known"));
    assertTrue(refusal(() -> Vessel.losses(rows(YEAR), "Tank", 1, 320)).contains("not known"));
  }

  private static String refusal(org.junit.jupiter.api.function.Executable call) {
    return assertThrows(Refusal.class, call).getMessage();
  }

  /** A random cellar, and a plain account of it. */
  @Property
  void aSecondAccountAgrees(long seed) {
    Random random = new Random(seed);
    Map<String, Double> litres = new TreeMap<>();
    Map<String, Integer> fills = new TreeMap<>();
    Map<String, double[]> flows = new TreeMap<>(); // in, out, lost
    int steps = 1 + random.nextInt(60);
    Object[][] log = new Object[steps][];
    for (int i = 0; i < steps; i++) {
      String from = "Vessel " + random.nextInt(5);
      String to = "Vessel " + random.nextInt(5);
      double there = litres.getOrDefault(from, 0.0);
      double part = there * random.nextDouble();
      int kind = random.nextInt(6);
      if (there == 0 || kind == 0 || from.equals(to)) {
        double volume = 10 + random.nextInt(300);
        log[i] = new Object[] {"Must", to, volume, i + 1.0};
        fill(litres, fills, flows, to, volume);
      } else if (kind == 1) {
        log[i] = new Object[] {"gauge", from, there - part, i + 1.0};
        litres.put(from, there - part);
        flow(flows, from)[2] += part;
      } else if (kind == 2) {
        log[i] = new Object[] {from, "loss", part, i + 1.0};
        litres.put(from, there - part);
        flow(flows, from)[2] += part;
      } else {
        double volume = kind == 3 ? there : part;
        log[i] = new Object[] {from, to, volume, i + 1.0};
        litres.put(from, there - volume);
        flow(flows, from)[1] += volume;
        fill(litres, fills, flows, to, volume);
      }
    }
    Rows<TransferRow> rows = rows(log);
    litres.forEach((vessel, l) -> assertEquals(l, Vessel.holds(rows, vessel, AT_END), 1e-9));
    fills.forEach((vessel, times) -> assertEquals(times, Vessel.fills(rows, vessel)));
    for (Account account : Vessel.balance(rows, 0.5, steps)) {
      if (!account.vessel().equals("sum")) {
        double[] flow = flows.get(account.vessel());
        assertEquals(flow[0], account.inL(), 1e-9);
        assertEquals(flow[1], account.outL(), 1e-9);
        assertEquals(flow[2], account.lostL(), 1e-9);
      }
    }
    double first = 1 + random.nextInt(steps);
    for (Account account : Vessel.balance(rows, first, first + random.nextInt(steps))) {
      double closing = account.openingL() + account.inL() - account.outL() - account.lostL();
      assertEquals(closing, account.closingL(), 1e-9);
    }
  }

  private static void fill(
      Map<String, Double> litres,
      Map<String, Integer> fills,
      Map<String, double[]> flows,
      String vessel,
      double volume) {
    if (litres.getOrDefault(vessel, 0.0) == 0) {
      fills.merge(vessel, 1, Integer::sum);
    }
    litres.merge(vessel, volume, Double::sum);
    flow(flows, vessel)[0] += volume;
  }

  private static double[] flow(Map<String, double[]> flows, String vessel) {
    return flows.computeIfAbsent(vessel, v -> new double[3]);
  }
}
