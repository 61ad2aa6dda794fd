package meadcell.blend;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.catalogue.Tables;
import meadcell.property.Property;
import meadcell.transfers.Ancestry;
import meadcell.transfers.Provenance;
import meadcell.transfers.Slack;
import meadcell.transfers.TransferLog;
import meadcell.transfers.TransferRow;
import org.junit.jupiter.api.Test;

class LineageTest {
  private static final OptionalDouble AT_END = OptionalDouble.empty();

  /** What is in one vessel: litres by source, litre-days by vessel, litres times day of entry. */
  private static final class Content {
    final Map<String, Double> litres = new HashMap<>();
    final Map<String, Double> litreDays = new HashMap<>();
    double entryDays;

    double volume() {
      return litres.values().stream().mapToDouble(v -> v).sum();
    }

    /** Takes a part of another content. */
    void take(Content other, double part) {
      other.litres.forEach((source, v) -> litres.merge(source, part * v, Double::sum));
      other.litreDays.forEach((vessel, v) -> litreDays.merge(vessel, part * v, Double::sum));
      entryDays += part * other.entryDays;
      other.litres.replaceAll((source, v) -> (1 - part) * v);
      other.litreDays.replaceAll((vessel, v) -> (1 - part) * v);
      other.entryDays *= 1 - part;
    }
  }

  /** A random log, and a second, plain account of it that carries everything forward. */
  private static final class Story {
    final List<Object[]> rows = new ArrayList<>();
    final Map<String, Content> vessels = new TreeMap<>();
    final Map<String, Double> inflow = new TreeMap<>();
    double day = 1;

    Story(Random random) {
      int vesselCount = 2 + random.nextInt(6);
      int steps = 1 + random.nextInt(80);
      for (int i = 0; i < steps; i++) {
        pass(random.nextInt(3) == 0 ? 1 + random.nextInt(40) : 0);
        String to = "Vessel " + random.nextInt(vesselCount);
        String from = "Vessel " + random.nextInt(vesselCount);
        double available = vessels.containsKey(from) ? vessels.get(from).volume() : 0;
        int kind = random.nextInt(8);
        if (available < 1 || kind < 2) {
          add("Must " + random.nextInt(4), to, 10 + random.nextInt(400));
        } else if (kind == 2) {
          move(from, "loss", available * random.nextDouble());
        } else if (kind == 3) {
          double left = available * random.nextDouble();
          rows.add(new Object[] {"Gauge", from, left, day});
          vessel("loss").take(vessels.get(from), 1 - left / available);
        } else if (!from.equals(to)) {
          move(from, to, kind == 4 ? available : available * random.nextDouble());
        }
      }
      pass(random.nextInt(30));
    }

    private Content vessel(String name) {
      return vessels.computeIfAbsent(name, n -> new Content());
    }

    private void pass(double days) {
      vessels.forEach(
          (name, content) -> content.litreDays.merge(name, days * content.volume(), Double::sum));
      day += days;
    }

    private void add(String source, String to, double volume) {
      rows.add(new Object[] {source, to, volume, day});
      vessel(to).litres.merge(source, volume, Double::sum);
      vessel(to).entryDays += volume * day;
      inflow.merge(source, volume, Double::sum);
    }

    private void move(String from, String to, double volume) {
      rows.add(new Object[] {from, to, volume, day});
      vessel(to).take(vessels.get(from), volume / vessels.get(from).volume());
    }

    Object[][] table() {
      return rows.stream().map(Object[]::clone).toArray(Object[][]::new);
    }

    /** The rows of later days first, rows of one day still in their order. */
    Object[][] shuffled() {
      Map<Double, List<Object[]>> byDay = new TreeMap<>(Collections.reverseOrder());
      rows.forEach(row -> byDay.computeIfAbsent((Double) row[3], d -> new ArrayList<>()).add(row));
      return byDay.values().stream().flatMap(List::stream).toArray(Object[][]::new);
    }
  }

  private static Rows<TransferRow> rows(Object[][] transfers) {
    return Tables.read("BLEND.LINEAGE", 0, transfers);
  }

  private static Object[][] lineage(
      Object[][] transfers, String lot, OptionalDouble day, double tolerance) {
    return Lineage.lineage(rows(transfers), lot, day, tolerance);
  }

  private static double age(
      Object[][] transfers, String lot, String vessel, OptionalDouble day, double tolerance) {
    return Lineage.age(rows(transfers), lot, vessel, day, tolerance);
  }

  private static Map<String, Double> shares(Object[][] transfers, String lot, double day) {
    Map<String, Double> shares = new TreeMap<>();
    double last = Double.MAX_VALUE;
    for (Object[] row : lineage(transfers, lot, OptionalDouble.of(day), 0)) {
      assertTrue((double) row[1] <= last, "largest first");
      last = (double) row[1];
      shares.put((String) row[0], last);
    }
    return shares;
  }

  @Property
  void aSecondAccountAgreesOnSharesAndDays(long seed) {
    Story story = new Story(new Random(seed));
    Object[][] table = story.table();
    story.vessels.forEach(
        (lot, content) -> {
          double volume = content.volume();
          if (volume < 0.01) {
            return;
          }
          Map<String, Double> shares = shares(table, lot, story.day);
          content.litres.forEach(
              (source, v) ->
                  assertEquals(100 * v / volume, shares.getOrDefault(source, 0.0), 1e-8));
          assertEquals(100, shares.values().stream().mapToDouble(v -> v).sum(), 1e-9);
          double age = 0;
          for (String vessel : story.vessels.keySet()) {
            double days = age(table, lot, vessel, OptionalDouble.of(story.day), 0);
            double expected = content.litreDays.getOrDefault(vessel, 0.0) / volume;
            assertEquals(expected, days, 1e-7 * story.day);
            age += days;
          }
          assertEquals(story.day - content.entryDays / volume, age, 1e-7 * story.day);
        });
  }

  @Property
  void whatCameInIsHeldOrLost(long seed) {
    Story story = new Story(new Random(seed));
    TransferLog log = TransferLog.of(rows(story.table()), AT_END, Slack.ofFill(0));
    Map<String, Double> found = new TreeMap<>();
    double total = 0;
    for (int vessel = 0; vessel < log.size(); vessel++) {
      double volume = log.volumeL(vessel);
      total += volume;
      if (volume > 0) {
        double[] shares = new Ancestry(log, vessel).sourceShare();
        for (int source = 0; source < shares.length; source++) {
          found.merge(log.name(source), volume * shares[source], Double::sum);
        }
      }
    }
    double in = story.inflow.values().stream().mapToDouble(v -> v).sum();
    assertEquals(in, total, 1e-9 * in);
    story.inflow.forEach((source, v) -> assertEquals(v, found.get(source), 1e-9 * in));
  }

  /** Followed forwards, source by source, it comes to what following back comes to. */
  @Property
  void theStoryTellsTheSameSharesAndDays(long seed) {
    Story story = new Story(new Random(seed));
    TransferLog log =
        TransferLog.of(rows(story.table()), OptionalDouble.of(story.day), Slack.ofFill(0));
    log.filled()
        .filter(lot -> log.volumeL(lot) > 0.01)
        .forEach(
            lot -> {
              Ancestry back = new Ancestry(log, lot);
              Provenance made = new Provenance(log, lot);
              double[] shares = new double[log.size()];
              double[] days = new double[log.size()];
              made.shares()
                  .forEach(
                      (source, share) -> {
                        shares[source] = share;
                        made.days(source).forEach((vessel, d) -> days[vessel] += share * d);
                      });
              assertArrayEquals(back.sourceShare(), shares, 1e-9);
              assertArrayEquals(back.days(), days, 1e-7 * story.day);
            });
  }

  @Property
  void rowsMayStandInAnyOrderOfDays(long seed) {
    Story story = new Story(new Random(seed));
    for (String lot : story.vessels.keySet()) {
      if (story.vessels.get(lot).volume() > 0.01) {
        assertEquals(
            shares(story.table(), lot, story.day), shares(story.shuffled(), lot, story.day));
      }
    }
  }

  private static final Object[][] LOOP = {
    {"Heather", "Tank", 300.0, 1.0},
    {"Tank", "Cask", 200.0, 11.0},
    {"Cherry", "Tank", 100.0, 21.0},
    {"Cask", "Tank", 100.0, 31.0},
    {"gauge", "Cask", 90.0, 41.0},
  };

  @Test
  void aLoopBackIsFollowed() {
    Object[][] rows = lineage(LOOP, "tank", AT_END, 3);
    assertArrayEquals(new Object[] {"Heather", "Cherry"}, new Object[] {rows[0][0], rows[1][0]});
    assertEquals(200 / 3.0, (double) rows[0][1], 1e-12);
    // the 100 L that came back were 10 days in the tank, 20 in the cask, then in the tank again
    assertEquals(20 / 3.0, age(LOOP, "Tank", "Cask", AT_END, 3), 1e-12);
    assertEquals((40 + 20 + 10 + 10) / 3.0, age(LOOP, "Tank", "Tank", AT_END, 3), 1e-12);
    assertEquals(30, age(LOOP, "Cask", "Cask", AT_END, 3), 1e-12);
    assertEquals(59, age(LOOP, "Cask", "Cask", OptionalDouble.of(70), 3), 1e-12);
    assertEquals(0, age(LOOP, "Cask", "Cask", OptionalDouble.of(11), 3), 1e-12);
    assertEquals("Heather", lineage(LOOP, "LOSS", AT_END, 3)[0][0]);
  }

  private static Object[][] drawnTwice(double first, double second) {
    return new Object[][] {
      {"Heather", "Tank", 100.0, 1.0},
      {"Tank", "Cask", first, 2.0},
      {"Tank", "Keg", second, 3.0},
    };
  }

  private static String refusal(Object[][] transfers, String lot) {
    Refusal refusal = assertThrows(Refusal.class, () -> lineage(transfers, lot, AT_END, 3));
    return refusal.getMessage();
  }

  @Test
  void aSmallOverdraftIsScaledAndALargerOneRefusedWithItsRow() {
    assertEquals(100.0, lineage(drawnTwice(60, 43), "Keg", AT_END, 3)[0][1]);
    assertEquals(100.0, lineage(drawnTwice(101, 2), "Keg", AT_END, 3)[0][1]);
    assertEquals(
        "Row 3 of transfers draws from \"Tank\" 3.1 % of its fill more than it holds by then;"
            + " tolerance is 3 %. Is a filling before it missing?",
        refusal(drawnTwice(60, 43.1), "Keg"));
    assertTrue(refusal(drawnTwice(101, 2.1), "Keg").startsWith("Row 3"));
    Object[][] emptied = {
      {"Heather", "Tank", 100.0, 1.0}, {"Tank", "gauge", 0.0, 2.0}, {"Tank", "Keg", 1.0, 3.0},
    };
    assertEquals(
        "Row 3 of transfers draws from \"Tank\", which is empty by then. Is a filling before it"
            + " missing?",
        refusal(emptied, "Keg"));
  }

  @Test
  void gaugesOpenLowerAndRaise() {
    Object[][] opened = {
      {"gauge", "Cask", 50.0, 1.0}, {"Cherry", "Cask", 150.0, 2.0}, {"gauge", "Cask", 206.0, 3.0},
    };
    Object[][] rows = lineage(opened, "Cask", AT_END, 3);
    assertArrayEquals(new Object[] {"Cherry", 75.0}, rows[0]);
    assertArrayEquals(new Object[] {"Cask", 25.0}, rows[1]);
    assertEquals(206, TransferLog.of(rows(opened), AT_END, Slack.ofFill(3)).volumeL(2));
    opened[2][2] = 206.1;
    assertTrue(refusal(opened, "Cask").startsWith("Row 3 of transfers gauges in \"Cask\" 3.05 %"));
  }

  @Test
  void anUnloggedFillingIsNotGuessed() {
    Object[][] rows = {{"Cask", "Tank", 50.0, 1.0}, {"Cherry", "Cask", 100.0, 2.0}};
    assertEquals("Cask", lineage(rows, "Tank", OptionalDouble.of(1), 3)[0][0]);
    assertTrue(refusal(rows, "Cask").startsWith("Row 2 of transfers fills \"Cask\", which row 1"));
    Object[][] gauged = {
      rows[0], {"Cask", "gauge", 0.0, 2.0}, {"Cherry", "Cask", 100.0, 2.0},
    };
    assertArrayEquals(new Object[][] {{"Cherry", 100.0}}, lineage(gauged, "Cask", AT_END, 3));
  }

  @Test
  void rowsThatSayNothingClearAreRefused() {
    for (Object[] row :
        new Object[][] {
          {"Tank", "Tank", 5.0, 1.0},
          {"loss", "Tank", 5.0, 1.0},
          {"gauge", "loss", 5.0, 1.0},
          {"Tank", "Cask", 0.0, 1.0},
          {"Tank", "Cask", -5.0, 1.0},
          {"Tank", "Cask", "5 L", 1.0},
          {"Tank", "Cask", 5.0, null},
          {null, "Cask", 5.0, 1.0},
        }) {
      assertTrue(
          refusal(new Object[][] {row}, "Cask")
              .toLowerCase(Locale.ROOT)
              .contains("row 1 of transfers"));
    }
    assertTrue(
        refusal(new Object[][] {{"Tank", "Cask", 5.0}}, "Cask")
            .contains("3 columns; due are from, to, volume, day"));
    Object[][] plain = {{"Heather", "Tank", 5.0, 1.0}};
    assertEquals("The lot \"Tnk\" is not known. Did you mean Tank?", refusal(plain, "Tnk"));
    assertTrue(refusal(plain, "Heather").contains("holds nothing"));
    assertTrue(refusal(plain, "gauge").contains("not known"));
    assertThrows(Refusal.class, () -> lineage(plain, "Tank", OptionalDouble.of(0.5), 3));
  }

  @Test
  void namesMayBeNumbersAndBlankRowsAreSkipped() {
    Object[][] rows = {
      {20_240_317.0, 7.0, 5.0, 1.0}, {null, null, null, null}, {7.0, "Cask", 5.0, 2.0},
    };
    assertArrayEquals(new Object[][] {{"20240317", 100.0}}, lineage(rows, "cask", AT_END, 3));
    assertEquals(1, age(rows, "Cask", "7", AT_END, 3), 1e-12);
  }
}
